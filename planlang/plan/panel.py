"""Panel types: frame, core, coverings and what they hang by. Lengths are exact mm."""

from fractions import Fraction
from typing import Literal

from planlang.plan.node import Node
from planlang.plan.stock import Bands, Batt, Cloth, Hardware, Sheet
from planlang.syntax.record import record


@record(kw_only=True)
class Frame(Node):
    """A frame of strips on edge. `full` says which pair runs full; the other pair loses two thicknesses."""

    sheet: Sheet
    full: Literal["ends", "sides"]


@record(kw_only=True)
class Braces(Node):
    """Cross members between the sides. Positions are centre lines from the panel's end (its `start`).

    `lie` is flat (wide face to the front) or edge (narrow face to the front). `setback` is the gap between the
    front edge of the frame and the brace.
    """

    sheet: Sheet
    positions: tuple[Fraction, ...]
    at_batt_joints: bool
    at_mid_length: bool
    width: Fraction
    lie: Literal["flat", "edge"]
    setback: Fraction


@record(kw_only=True)
class Core(Node):
    """What fills the frame: batts cut to the inside of the frame plus `fit` on length and width."""

    batt: Batt
    layers: int
    fit: Fraction


@record(kw_only=True)
class Covering(Node):
    """Cloth over the front (wrapped round the edge to the back by `wrap`) or over the back (`wrap` 0: to the edge)."""

    cloth: Cloth
    wrap: Fraction


@record(kw_only=True)
class Eyes(Node):
    """Eyes on the side rails: `count` in pairs, the outer ones `inset` from the ends of the panel."""

    hardware: Hardware
    count: int
    inset: Fraction


@record(kw_only=True)
class Cleats(Node):
    """Short hooked cleats in a line `below_top` under the panel's upper edge, the outer ones `inset` from its sides."""

    hardware: Hardware
    count: int
    below_top: Fraction
    inset: Fraction


@record(kw_only=True)
class Measured(Node):
    """Laboratory figures of a panel type (ISO 354): coefficients in octaves, which report, which mounting."""

    alphas: Bands
    report: str
    mounting: str


@record(kw_only=True)
class PanelType(Node):
    """A framed absorber. `width` x `length` is the face, length the longer one by custom; `depth` the
    frame's. `mark` is short enough to write on wood."""

    name: str
    words: str
    mark: str
    width: Fraction
    length: Fraction
    depth: Fraction
    frame: Frame
    core: Core
    braces: Braces | None
    front: Covering
    back: Covering | None
    hung_by: Eyes | Cleats | None
    size_rule: Literal["", "outside", "whole-batts"] = ""
    measured: Measured | None = None


# --- room ---------------------------------------------------------------------------------------------------

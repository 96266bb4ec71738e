"""Panel types: what all kinds have, and each kind with what it is made of. Lengths are exact mm."""

from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from planlang.plan.node import Node
from planlang.plan.stock import Bands, Batt, Cloth, Hardware, Sheet
from planlang.syntax.record import record
from planlang.syntax.span import Span

if TYPE_CHECKING:
    from planlang.plan.outline import Outline

SUPPORT_PITCH = Fraction(400)
"""How far apart a well bottom is supported at most, mm. Common practice, no source."""


@record(kw_only=True)
class Frame(Node):
    """A frame of strips on edge. `full` says which pair runs full; the other pair stands between.

    A rabbet is cut in the pair that runs full, `rabbet` deep; 0 with other joints. Mitred, both pairs run full.
    """

    sheet: Sheet
    full: Literal["ends", "sides"]
    joint: Literal["butt", "rabbet", "mitre"] = "butt"
    rabbet: Fraction = Fraction(0)


@record(kw_only=True)
class BackBoard(Node):
    """A sheet over the whole back, `less` smaller than the panel on every side."""

    sheet: Sheet
    less: Fraction


@record(kw_only=True)
class ShadowGap(Node):
    """Strips flat on the back, `width` wide and `inset` from the panel's edges, as thick as the gap is deep."""

    sheet: Sheet
    width: Fraction
    inset: Fraction


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

    @property
    def breadth(self) -> Fraction:
        """How much of the panel's length one brace covers: its width when flat, its thickness on edge."""
        return self.width if self.lie == "flat" else self.sheet.thickness


@record(kw_only=True)
class Facing(Node):
    """A sheet over the front with holes, `opening` in diameter, or slots as wide, `pitch` from centre to centre.

    Holes stand on a square grid; slots run along the panel. Both keep clear of the frame.
    """

    sheet: Sheet
    slotted: bool
    opening: Fraction
    pitch: Fraction

    def along(self, inside: Fraction) -> int:
        """How many openings stand side by side on a length, mm."""
        return int((inside - self.opening) / self.pitch) + 1


@record(kw_only=True)
class Core(Node):
    """What fills the frame: batts cut to the inside of the frame plus `fit` on length and width."""

    batt: Batt
    layers: int
    fit: Fraction


@record(kw_only=True)
class Covering(Node):
    """Cloth over the front (wrapped round the edge to the back by `wrap`) or over the back (`wrap` 0: to the edge).

    `railroaded`: the panel's width lies along the roll, not its length. `seamed`: widths of it may be sewn together.
    """

    cloth: Cloth
    wrap: Fraction
    railroaded: bool = False
    seamed: bool = False


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


@record
class Use:
    """One stock that a panel is made of, and as what: cloth, core, frame ..."""

    stock: Sheet | Batt | Cloth
    part: str


@record(kw_only=True)
class PanelType(Node):
    """What all kinds of panel have; each kind is a class of its own that adds what it is made of.

    `width` x `length` is the face, length the longer one by custom; `depth` is from the back to the front. `mark` is
    short enough to write on wood. An `outline` lies within the face; without one the face is the outline.
    """

    name: str
    words: str
    mark: str
    width: Fraction
    length: Fraction
    depth: Fraction
    hung_by: Eyes | Cleats | None
    size_rule: Literal["", "outside", "whole-batts"] = ""
    measured: Measured | None = None
    outline: "Outline | None" = None

    @property
    def face(self) -> Fraction:
        """Area of its front, mm2."""
        return self.outline.area if self.outline else self.width * self.length

    @property
    def kind(self) -> str:
        """What it is, in words: `framed absorber`."""
        raise NotImplementedError

    @property
    def uses(self) -> tuple[Use, ...]:
        """What it is made of, hardware aside, in the order in which it is cut."""
        raise NotImplementedError

    @property
    def rail(self) -> Sheet | None:
        """The sheet on edge along its long sides, to which eyes are fixed; None where it has none."""
        return None

    @property
    def eyes_in_line(self) -> bool:
        """Whether its eyes stand in one line along its length, and not in pairs on two rails."""
        return False

    @property
    def in_corner(self) -> bool:
        """Whether it lies on two surfaces at once, its length along the corner."""
        return False

    @property
    def pieces_at_most(self) -> tuple[tuple[int, Span], ...]:
        """Bounds for how many parts of each sort one panel has, and where the plan asks for them."""
        return ()


@record(kw_only=True)
class FramedAbsorber(PanelType):
    """Batts in a frame of strips on edge, under cloth. `depth` is the frame's with its back board and facing."""

    frame: Frame
    core: Core
    braces: Braces | None
    front: Covering
    back: Covering | None
    board: BackBoard | None = None
    facing: Facing | None = None
    gap: ShadowGap | None = None

    @property
    def front_at(self) -> Fraction:
        """How far the front edge of the frame is behind the panel's front: the thickness of a facing."""
        return self.facing.sheet.thickness if self.facing else Fraction(0)

    @property
    def frame_depth(self) -> Fraction:
        """Width of the frame's strips: the depth less a facing, a back board and a shadow gap."""
        return self.depth - self.front_at - (self.board.sheet.thickness if self.board else 0) - self.gap_depth

    @property
    def gap_depth(self) -> Fraction:
        """Depth of the shadow gap, mm; 0 without one."""
        return self.gap.sheet.thickness if self.gap else Fraction(0)

    @property
    def kind(self) -> str:
        """What it is, in words."""
        return "framed absorber"

    @property
    def uses(self) -> tuple[Use, ...]:
        """What it is made of."""
        braces = (Use(self.braces.sheet, "braces"),) if self.braces else ()
        back = (Use(self.back.cloth, "cloth"),) if self.back else ()
        board = (Use(self.board.sheet, "back board"),) if self.board else ()
        facing = (Use(self.facing.sheet, "facing"),) if self.facing else ()
        gap = (Use(self.gap.sheet, "shadow gap"),) if self.gap else ()
        core, front = Use(self.core.batt, "core"), Use(self.front.cloth, "cloth")
        return (Use(self.frame.sheet, "frame"), *braces, *facing, *board, *gap, core, front, *back)

    @property
    def rail(self) -> Sheet | None:
        """The sheet of its frame."""
        return self.frame.sheet

    @property
    def pieces_at_most(self) -> tuple[tuple[int, Span], ...]:
        """Pieces of batt, whichever way they are laid, and braces."""
        batts = (batts_at_most(self, self.core), self.core.at)
        if self.braces is None:
            return (batts,)
        joints = fills(self.length, min(self.core.batt.length, self.core.batt.width))
        braces = len(self.braces.positions) + self.braces.at_mid_length + self.braces.at_batt_joints * joints
        return (batts, (braces, self.braces.at))


@record(kw_only=True)
class WrappedBoard(PanelType):
    """A stiff batt on a back board, wrapped in cloth, without a frame. `depth` is that of both."""

    core: Core
    front: Covering
    board: BackBoard

    @property
    def kind(self) -> str:
        """What it is, in words."""
        return "board absorber"

    @property
    def uses(self) -> tuple[Use, ...]:
        """What it is made of."""
        return (
            Use(self.board.sheet, "back board"),
            Use(self.core.batt, "core"),
            Use(self.front.cloth, "cloth"),
        )

    @property
    def pieces_at_most(self) -> tuple[tuple[int, Span], ...]:
        """Pieces of batt."""
        return ((batts_at_most(self, self.core), self.core.at),)


@record(kw_only=True)
class Wells(Node):
    """The wells of a diffuser by a sequence of number theory, each `width` wide, the sequence `periods` times over.

    The lowest frequency is the design frequency, Hz. `root` is 0 for quadratic residues.
    """

    sequence: Literal["quadratic-residue", "primitive-root"]
    prime: int
    root: int
    width: Fraction
    design: Fraction
    periods: int

    @property
    def steps(self) -> tuple[int, ...]:
        """The steps of one period."""
        from planlang.plan import sequences  # noqa: PLC0415 - few plans have a diffuser

        if self.root:
            return sequences.primitive_root_sequence(self.prime, self.root)
        return sequences.quadratic_residues(self.prime)

    @property
    def depths(self) -> tuple[Fraction, ...]:
        """How deep the wells of one period are behind the front, mm, exact."""
        from planlang.plan.sequences import exact_depths  # noqa: PLC0415 - few plans have a diffuser

        return exact_depths(self.steps, self.prime, self.design)


@record(kw_only=True)
class Diffuser(PanelType):
    """Wells between fins along the panel, their bottoms at depths of a sequence, closed by ends and a back board."""

    wells: Wells
    fins: Sheet
    bottoms: Sheet
    board: BackBoard

    @property
    def frame_depth(self) -> Fraction:
        """Width of the fins: the depth less the back board."""
        return self.depth - self.board.sheet.thickness

    @property
    def kind(self) -> str:
        """What it is, in words."""
        return f"{self.wells.sequence} diffuser"

    @property
    def uses(self) -> tuple[Use, ...]:
        """What it is made of."""
        return Use(self.fins, "fins and ends"), Use(self.bottoms, "well bottoms"), Use(self.board.sheet, "back board")

    @property
    def rail(self) -> Sheet | None:
        """The sheet of its outer fins."""
        return self.fins

    @property
    def pieces_at_most(self) -> tuple[tuple[int, Span], ...]:
        """Fins, bottoms and their supports."""
        wells = self.wells.periods * self.wells.prime
        return ((wells * (3 + fills(self.length, SUPPORT_PITCH)), self.wells.at),)


def batts_at_most(panel: PanelType, core: Core) -> int:
    """Pieces of batt in one panel, whichever way they are laid."""
    batt = core.batt
    ways = ((batt.length, batt.width), (batt.width, batt.length))
    return core.layers * max(fills(panel.length, along) * fills(panel.width, across) for along, across in ways)


def fills(total: Fraction, step: Fraction) -> int:
    """So many steps fill a length, or one less."""
    return int(total / step) + 1

"""The core of a framed absorber: how batts lie in the frame, where they meet, which pieces are cut.

Batts are laid from the inner face of the start end and from the inner face of one side. Whole batts come first and the
last piece takes what is left. The core is `fit` longer and wider than the inside; that goes on the last piece, so
joints are reckoned from whole batts uncompressed. All layers are laid alike.

Batts lie with their length along the panel unless turning them saves a joint: a joint along the panel counts first
(nothing runs under it), then joints across. A joint along the panel that remains is a warning where braces cross it,
an error where the panel has none.
"""

from collections import Counter
from fractions import Fraction
from typing import NamedTuple

from planlang.materials import messages
from planlang.materials.model import Piece
from planlang.materials.parts import inside
from planlang.plan.panel import Core, FramedAbsorber, WrappedBoard
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record


@record
class CoreLay:
    """Pieces by size, joints across the panel (from the outside of its start end) and seams along it (from a side)."""

    pieces: tuple[Piece, ...]
    joints: tuple[Fraction, ...]
    seams: tuple[Fraction, ...]
    turned: bool


def runs(total: Fraction, step: Fraction) -> tuple[Fraction, ...]:
    """Fill `total` mm with whole steps and one rest: (1200, 500) -> 500, 500, 200."""
    whole, rest = divmod(total, step)
    return (step,) * int(whole) + ((rest,) if rest else ())


def lay_core(panel: FramedAbsorber, panels: int, tape: TapeStyle) -> Outcome[CoreLay]:
    """Lay the batts of one panel type. Errors: `core-seam` without braces; warnings: `core-seam`, `core-sliver`."""
    core, start = panel.core, panel.frame.sheet.thickness
    way = _best_way(core, inside(panel))
    joints = _meetings(way.along, start)
    seams = _meetings(way.across, start)
    laid = "laid from the inner face of the start end"
    lay = CoreLay(_pieces(panel.mark, core, panels, way, laid, tape=tape), joints, seams, way.turned)
    findings: list[Diagnostic] = []
    if seams:
        findings.append(messages.core_seam(panel, core, seams, panel.braces is not None, tape))
    for sizes in (way.along, way.across):
        if len(sizes) > 1 and sizes[-1] < core.batt.thickness:
            findings.append(messages.core_sliver(panel, core, sizes[-1], tape))
    return Outcome(lay, tuple(findings))


def lay_on_board(panel: WrappedBoard, panels: int, tape: TapeStyle) -> CoreLay:
    """Lay the batts of one board absorber over its whole face; its back board carries every joint."""
    way = _best_way(panel.core, (panel.length, panel.width))
    pieces = _pieces(panel.mark, panel.core, panels, way, "laid from the start end", tape=tape)
    return CoreLay(pieces, _meetings(way.along, Fraction(0)), _meetings(way.across, Fraction(0)), way.turned)


def lay_within(
    mark: str, core: Core, room: tuple[Fraction, Fraction], panels: int, tape: TapeStyle, start: Fraction = Fraction(0)
) -> CoreLay:
    """Lay the batts of a room of that size along and across which something else carries at every joint."""
    way = _best_way(core, room)
    pieces = _pieces(mark, core, panels, way, "laid from the inner face of the start end", tape=tape)
    return CoreLay(pieces, _meetings(way.along, start), _meetings(way.across, start), way.turned)


def batt_grid(core: Core, room: tuple[Fraction, Fraction]) -> tuple[tuple[Fraction, ...], tuple[Fraction, ...]]:
    """The sizes of the pieces that fill a room, along and across, in the order in which they are laid."""
    way = _best_way(core, room)
    return way.along, way.across


class _Way(NamedTuple):
    """One way to lay the batts: sizes along the panel, sizes across it."""

    along: tuple[Fraction, ...]
    across: tuple[Fraction, ...]
    turned: bool


def _best_way(core: Core, room: tuple[Fraction, Fraction]) -> _Way:
    batt = core.batt
    length, width = (size + core.fit for size in room)
    straight = _Way(runs(length, batt.length), runs(width, batt.width), False)
    turned = _Way(runs(length, batt.width), runs(width, batt.length), True)
    return min(straight, turned, key=lambda way: (len(way.across), len(way.along), way.turned))


def _meetings(sizes: tuple[Fraction, ...], start: Fraction) -> tuple[Fraction, ...]:
    return tuple(start + sum(sizes[:count], Fraction(0)) for count in range(1, len(sizes)))


def _pieces(mark: str, core: Core, panels: int, way: _Way, laid: str, *, tape: TapeStyle) -> tuple[Piece, ...]:
    counts = Counter((length, width) for width in way.across for length in way.along)
    fit = f", fit {on_tape(core.fit, tape)} included" if core.fit else ""
    turned = ", batts turned to save a joint" if way.turned else ""
    return tuple(
        Piece(
            mark=f"{mark}-K{number}",
            role="core",
            stock=core.batt,
            length=length,
            width=width,
            per_panel=count * core.layers,
            panels=panels,
            how=f"{laid}{fit}{turned}",
            at=core.at,
        )
        for number, ((length, width), count) in enumerate(counts.items(), start=1)
    )

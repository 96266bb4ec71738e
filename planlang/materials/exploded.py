"""The parts of a panel taken apart, front to back: what an exploded drawing shows and the table beside it says.

Lengths are exact mm: `along` the panel's length, `across` its width, `high` off the back of the layer towards the
front. A baffle is laid on its face: across is its height, high its thickness.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from fractions import Fraction
from itertools import pairwise
from math import cos, pi, sin
from typing import Any

from planlang.geometry.footprint import inset
from planlang.materials.cores import batt_grid
from planlang.materials.covering import blank_size
from planlang.materials.model import PanelBuild, Part, Piece
from planlang.materials.outlined import brace_at
from planlang.materials.parts import inside, member_length
from planlang.plan.further_panels import Baffle, CornerTrap, MembraneAbsorber
from planlang.plan.outline import Outline
from planlang.plan.panel import Braces, Core, Diffuser, Frame, FramedAbsorber, PanelType, ShadowGap, WrappedBoard
from planlang.syntax.record import record

Corner = tuple[Fraction, Fraction]
NONE = Fraction(0)
ROUND = 48  # corners that a circle is drawn with


@record
class Solid:
    """A block of one outline all along: corners (across, high), against the clock as seen from the panel's end."""

    start: Fraction
    end: Fraction
    outline: tuple[Corner, ...]


@record
class Plate:
    """A block of one outline all through: corners (along, across), against the clock as seen from the front."""

    corners: tuple[Corner, ...]
    low: Fraction
    high: Fraction


@record
class Apart:
    """One layer: the parts and pieces in it, and where they are. A `sheet` is so thin that only its face shows."""

    items: tuple[Part | Piece, ...]
    solids: tuple[Solid | Plate, ...]
    sheet: bool = False

    @property
    def marks(self) -> tuple[str, ...]:
        """The marks of all that is in it."""
        return tuple(item.mark for item in self.items)


def apart(build: PanelBuild) -> tuple[Apart, ...]:
    """The layers of a panel, front to back; each part and piece of it is in one of them."""
    if build.type.outline is not None:
        return _outlined(build, build.type, build.type.outline)
    return KINDS[type(build.type)](build, build.type)


def _framed(build: PanelBuild, panel: FramedAbsorber) -> tuple[Apart, ...]:
    t = panel.frame.sheet.thickness
    between = (t, panel.width - t)
    braces = [_brace(panel, panel.braces, centre, between) for centre in build.braces] if panel.braces else []
    ring = Apart(_of(build, "side", "end", "brace"), (*_ring(panel.frame, _face(panel), panel.frame_depth), *braces))
    return _kept(
        _flat(build, "facing", panel.facing.sheet.thickness if panel.facing else NONE),
        _cloth(build, "front"),
        ring,
        _batts(build, panel.core, inside(panel), (t, t)),
        _cloth(build, "back"),
        _flat(build, "back board", panel.board.sheet.thickness if panel.board else NONE),
        _gap(build, panel, panel.gap) if panel.gap else None,
    )


def _gap(build: PanelBuild, panel: FramedAbsorber, gap: ShadowGap) -> Apart:
    along, across = (gap.inset, panel.length - gap.inset), (gap.inset + gap.width, panel.width - gap.inset - gap.width)
    high = (NONE, gap.sheet.thickness)
    long = [_box(along, (at, at + gap.width), high) for at in (gap.inset, panel.width - gap.inset - gap.width)]
    short = [_box((at, at + gap.width), across, high) for at in (gap.inset, panel.length - gap.inset - gap.width)]
    return Apart(_of(build, "long strip of the shadow gap", "short strip of the shadow gap"), (*long, *short))


def _outlined(build: PanelBuild, panel: PanelType, outline: Outline) -> tuple[Apart, ...]:
    """A framed or a board absorber of another outline; its braces are drawn with square ends."""
    around = outline_corners(outline)
    frame = panel.frame if isinstance(panel, FramedAbsorber) else None
    within = inset(around, frame.sheet.thickness) if frame else around
    ring: list[Solid | Plate] = []
    core = panel.core if isinstance(panel, FramedAbsorber | WrappedBoard) else None
    board = panel.board if isinstance(panel, FramedAbsorber | WrappedBoard) else None
    if isinstance(panel, FramedAbsorber):
        pairs = zip(around, (*around[1:], around[0]), within, (*within[1:], within[0]), strict=True)
        ring = [_plate((one, two, four, three), NONE, panel.frame_depth) for one, two, three, four in pairs]
        if panel.braces:
            for centre in build.braces:
                reach = brace_at(within, centre, panel.braces.breadth)
                ring.append(_brace(panel, panel.braces, centre, (reach.low, reach.high)))
    thick = core.layers * core.batt.thickness if core else NONE
    return _kept(
        _cloth(build, "front"),
        Apart(_of(build, "side", "brace"), tuple(ring)),
        Apart(_of(build, "core"), (_plate(within, NONE, thick),)),
        _cloth(build, "back"),
        Apart(_of(build, "back board"), (_plate(around, NONE, board.sheet.thickness),)) if board else None,
    )


def _plate(spots: Sequence[Corner], low: Fraction, high: Fraction) -> Plate:
    """From corners (across, along) as an outline has them, which swaps their sense."""
    return Plate(tuple((along, across) for across, along in reversed(spots)), low, high)


def outline_corners(outline: Outline) -> tuple[Corner, ...]:
    """Corners (across, along); of a circle those of a polygon in it, for the eye."""
    if not outline.radius:
        return outline.corners
    (centre,) = outline.corners
    turns = (2 * pi * step / ROUND for step in range(ROUND))
    return tuple(
        (centre[0] + outline.radius * Fraction(cos(turn)), centre[1] + outline.radius * Fraction(sin(turn)))
        for turn in turns
    )


def _board(build: PanelBuild, panel: WrappedBoard) -> tuple[Apart, ...]:
    core = _batts(build, panel.core, _face(panel), (NONE, NONE))
    return _kept(_cloth(build, "front"), core, _flat(build, "back board", panel.board.sheet.thickness))


def _membrane(build: PanelBuild, panel: MembraneAbsorber) -> tuple[Apart, ...]:
    t = panel.frame.sheet.thickness
    room = (panel.length - 2 * t, panel.width - 2 * t)
    ring = Apart(_of(build, "side", "end"), _ring(panel.frame, _face(panel), panel.frame_depth))
    core = _batts(build, panel.core, room, (t, t)) if panel.core else None
    plate = _flat(build, "plate", panel.plate.thickness)
    return _kept(plate, ring, core, _flat(build, "back board", panel.board.sheet.thickness))


def _baffle(build: PanelBuild, panel: Baffle) -> tuple[Apart, ...]:
    size, t = (panel.length, panel.depth), panel.frame.sheet.thickness
    top, middle = size[1] - t, (panel.width - t) / 2
    rail = _box((t, size[0] - t), (top - panel.rail_depth, top), (middle, middle + t))
    ring = Apart(_of(build, "side", "end", "hanging rail"), (*_ring(panel.frame, size, panel.width), rail))
    return _kept(_cloth(build, "front", size), ring, _batts(build, panel.core, panel.room, (t, t)))


def _diffuser(build: PanelBuild, panel: Diffuser) -> tuple[Apart, ...]:
    t, deep, well = panel.fins.thickness, panel.frame_depth, panel.wells.width
    inner, count = (t, panel.length - t), panel.wells.periods * len(panel.wells.steps)
    fins = [_box(inner, (n * (t + well), n * (t + well) + t), (NONE, deep)) for n in range(count + 1)]
    ends = [_box(at, (NONE, panel.width), (NONE, deep)) for at in ((NONE, t), (panel.length - t, panel.length))]
    starts = [t + n * (t + well) for n in range(count)]
    depths = panel.wells.depths * panel.wells.periods
    thick = panel.bottoms.thickness
    bottoms = [_box(inner, (at, at + well), (NONE, thick)) for at in starts]
    stands = [
        _box((along, along + t), (at, at + well), (NONE, deep - depth - thick))
        for at, depth in zip(starts, depths, strict=True)
        if deep - depth - thick > 0
        for along in (t, panel.length - 2 * t)
    ]
    return _kept(
        Apart(_of(build, "well bottom"), tuple(bottoms)),
        Apart(_of(build, "support"), tuple(stands)),
        Apart(_of(build, "fin", "end"), (*fins, *ends)),
        _flat(build, "back board", panel.board.sheet.thickness),
    )


def _corner(build: PanelBuild, panel: CornerTrap) -> tuple[Apart, ...]:
    """With the corner on the far side, so that the face is seen."""
    t, leg, length = panel.boards.thickness, panel.inner_leg, panel.length
    slant = t if panel.shape == "triangular" else NONE
    body: tuple[Corner, ...] = ((t, NONE), (t + leg, NONE), (t, leg))
    if panel.shape == "square":
        body = ((t, NONE), (t + leg, NONE), (t + leg, leg), (t, leg))
    pitch = panel.bay + t
    formers = tuple(Solid(n * pitch, n * pitch + t, body) for n in range(panel.formers))
    filling = tuple(Solid(n * pitch + t, (n + 1) * pitch, body) for n in range(panel.formers - 1))
    strips = tuple(_box((n * pitch + t, (n + 1) * pitch), (t + leg - min(leg, Fraction(40)), t + leg), (leg - t, leg))
                   for n in range(panel.formers - 1))  # fmt: skip
    narrow = Solid(NONE, length, ((NONE, NONE), (t, NONE), (t, panel.width - t - slant), (NONE, panel.width - t)))
    wide = Solid(NONE, length, ((NONE, NONE), (panel.width, NONE), (panel.width - slant, t), (NONE, t)))
    groups = (("core", filling), ("corner strip", strips), ("former", formers), ("narrow board", (narrow,)),
              ("wide board", (wide,)))  # fmt: skip
    return _kept(
        _cloth(build, "front"),
        *(
            Apart(_of(build, role, f"pair of {role}s"), tuple(_mirrored(solid, panel.width) for solid in solids))
            for role, solids in groups
        ),
    )


KINDS: Mapping[type[PanelType], Callable[[PanelBuild, Any], tuple[Apart, ...]]] = {
    FramedAbsorber: _framed,
    WrappedBoard: _board,
    MembraneAbsorber: _membrane,
    Baffle: _baffle,
    Diffuser: _diffuser,
    CornerTrap: _corner,
}


def _kept(*layers: Apart | None) -> tuple[Apart, ...]:
    return tuple(layer for layer in layers if layer is not None and layer.items)


def _of(build: PanelBuild, *roles: str) -> tuple[Part | Piece, ...]:
    items: tuple[Part | Piece, ...] = (*build.parts, *build.pieces)
    return tuple(item for item in items if item.role in roles)


def _face(panel: PanelType) -> Corner:
    return panel.length, panel.width


def _box(along: Corner, across: Corner, high: Corner) -> Solid:
    corners = ((across[0], high[0]), (across[1], high[0]), (across[1], high[1]), (across[0], high[1]))
    return Solid(*along, corners)


def _mirrored(solid: Solid, width: Fraction) -> Solid:
    return Solid(solid.start, solid.end, tuple((width - across, high) for across, high in reversed(solid.outline)))


def _ring(frame: Frame, size: Corner, deep: Fraction) -> tuple[Solid, ...]:
    """The four members of a frame; mitred ones as if the full pair were butted, for the eye."""
    t = frame.sheet.thickness
    full_sides = frame.full == "sides"
    short = (size[0] - member_length(size[0], frame, full_sides)) / 2
    narrow = (size[1] - member_length(size[1], frame, not full_sides)) / 2
    high = (NONE, deep)
    ends = (_box(at, (narrow, size[1] - narrow), high) for at in ((NONE, t), (size[0] - t, size[0])))
    sides = (_box((short, size[0] - short), at, high) for at in ((NONE, t), (size[1] - t, size[1])))
    return (*ends, *sides)


def _brace(panel: FramedAbsorber, braces: Braces, centre: Fraction, across: Corner) -> Solid:
    """A brace from side to side, `across` where it begins and ends."""
    deep = braces.sheet.thickness if braces.lie == "flat" else braces.width
    wide, top = braces.breadth, panel.frame_depth - braces.setback
    return _box((centre - wide / 2, centre + wide / 2), across, (top - deep, top))


def _flat(build: PanelBuild, role: str, thickness: Fraction) -> Apart:
    items = _of(build, role)
    panel = build.type
    sizes = [(item.length, item.width) for item in items]
    solids = [
        _box(_middle(panel.length, length), _middle(panel.width, width), (NONE, thickness)) for length, width in sizes
    ]
    return Apart(items, tuple(solids))


def _cloth(build: PanelBuild, role: str, face: Corner | None = None) -> Apart | None:
    """The blank round the middle of the face, as it is laid out."""
    blank = next((piece for piece in build.pieces if piece.role == role), None)
    if blank is None:
        return None
    size = face or _face(build.type)
    length, width = blank_size(blank)[::-1] if blank.railroaded else blank_size(blank)
    return Apart((blank,), (_box(_middle(size[0], length), _middle(size[1], width), (NONE, NONE)),), sheet=True)


def _middle(size: Fraction, extent: Fraction) -> Corner:
    return (size - extent) / 2, (size + extent) / 2


def _batts(build: PanelBuild, core: Core, room: Corner, start: Corner) -> Apart:
    along, across = batt_grid(core, room)
    thick = core.layers * core.batt.thickness
    solids = [_box(one, other, (NONE, thick)) for one in _steps(start[0], along) for other in _steps(start[1], across)]
    return Apart(_of(build, "core"), tuple(solids))


def _steps(start: Fraction, sizes: Iterable[Fraction]) -> list[Corner]:
    edges = [start]
    for size in sizes:
        edges.append(edges[-1] + size)
    return list(pairwise(edges))

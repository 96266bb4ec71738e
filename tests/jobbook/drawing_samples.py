"""Compiled plans made by hand for the tests of the drawings. All figures are invented."""

from __future__ import annotations

from fractions import Fraction as F
from math import cos, nan, radians, sin

from planlang.acoustics.model import Absorber, Acoustics, Decay, Ranged, RayCheck, TargetBand
from planlang.geometry.model import (
    Box,
    HangPoint,
    LaserLine,
    Layout,
    MassItem,
    PlacedFeature,
    PlacedPanel,
    RailRun,
    RoomGeometry,
    Surface,
)
from planlang.hardware.model import Loads
from planlang.jobbook.compiled import CompiledPlan
from planlang.materials.model import (
    Cut,
    Cutting,
    Materials,
    PanelBuild,
    PlacedPart,
    RollCut,
    SheetLayout,
    StackLine,
)
from planlang.plan.model import Array
from planlang.plan.panel import PanelType
from planlang.plan.room import Feature, Members
from planlang.plan.tape import TapeStyle
from planlang.syntax.span import NOWHERE
from tests import builders as b

Place = tuple[int | F, int | F]
LETTERS = "abcdefgh"


def feature(kind: str, name: str, surface: str, box: Box, is_round: bool = False) -> PlacedFeature:
    across, up = (box.left + box.right) / 2, (box.lower + box.upper) / 2
    stated = Feature(
        at=NOWHERE, kind=kind, name=name, surface=surface, across=across, up=up, width=box.width,
        height=box.height, round=is_round, lining=None,
    )  # fmt: skip
    return PlacedFeature(stated, box)


def box(left: int | F, lower: int | F, width: int | F, height: int | F) -> Box:
    return Box(F(left), F(lower), F(left) + width, F(lower) + height)


def rafters(runs: str = "up", centres: int | F = 600, first: int | F = 310, word: str = "rafter") -> Members:
    return Members(
        at=NOWHERE, word=word, timber=b.timber(), width=F(45), depth=F(145), centres=F(centres), first=F(first),
        runs=runs,
    )  # fmt: skip


def rectangle(width: float, height: float) -> tuple[tuple[float, float], ...]:
    return ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))


def surface(name: str, kind: str, origin, across_dir, up_dir, inward, size: Place, **over) -> Surface:
    width, height = F(size[0]), F(size[1])
    values = {
        "outline": rectangle(float(width), float(height)), "area_mm2": float(width * height), "pitch_deg": 0.0,
        "datum_words": "the lower left corner", "across_words": "to the right", "up_words": "from the floor",
        "lining": b.lining(), "members": None, "exposed": False,
    }  # fmt: skip
    return Surface(
        name=name, kind=kind, origin=origin, across_dir=across_dir, up_dir=up_dir, inward=inward, width=width,
        height=height, **{**values, **over},
    )  # fmt: skip


def walls(width: F, depth: F, height: F) -> tuple[Surface, ...]:
    w, d = float(width), float(depth)
    up = (0.0, 0.0, 1.0)
    return (
        surface("south wall", "wall", (w, 0.0, 0.0), (-1.0, 0.0, 0.0), up, (0.0, 1.0, 0.0), (width, height)),
        surface("east wall", "wall", (w, d, 0.0), (0.0, -1.0, 0.0), up, (-1.0, 0.0, 0.0), (depth, height)),
        surface("north wall", "wall", (0.0, d, 0.0), (1.0, 0.0, 0.0), up, (0.0, -1.0, 0.0), (width, height)),
        surface("west wall", "wall", (0.0, 0.0, 0.0), (0.0, 1.0, 0.0), up, (1.0, 0.0, 0.0), (depth, height)),
    )


def flat_ceiling(width: F, depth: F, height: F, **over) -> Surface:
    words = {
        "datum_words": "the south-west corner",
        "across_words": "east",
        "up_words": "north, seen as on the floor plan",
    }
    ways = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, -1.0))
    return surface("ceiling", "ceiling", (0.0, 0.0, float(height)), *ways, (width, depth), **{**words, **over})


def panel(on: Surface, array: Array, index: int, at: Place, inset: int | F = 100) -> PlacedPanel:
    face = array.panel
    size = (face.width, face.length) if array.upright else (face.length, face.width)
    placed = box(at[0], at[1], *size)
    mark = f"{array.mark}{index}"
    spots = [(x, y) for y in (placed.lower + inset, placed.upper - inset) for x in (placed.left + 6, placed.right - 6)]
    points = tuple(
        HangPoint(f"{mark}.{letter}", F(x), F(y), on.in_room(float(x), float(y)), "lining only", None, array.hang.drop)
        for letter, (x, y) in zip(LETTERS, spots, strict=False)
    )
    drop = float(array.hang.drop)
    corners = tuple(on.in_room(float(x), float(y), drop) for x, y in placed.corners)
    return PlacedPanel(mark, array, on.name, placed, corners, points, "by hand")


def laser_lines(panels: tuple[PlacedPanel, ...]) -> tuple[LaserLine, ...]:
    found: dict[tuple[str, str, F], list[str]] = {}
    for one in panels:
        for point in one.points:
            found.setdefault((one.surface, "up", point.up), []).append(point.name)
            found.setdefault((one.surface, "across", point.across), []).append(point.name)
    return tuple(
        LaserLine(on, fixed, at, tuple(names), "from the datum")
        for (on, fixed, at), names in found.items()
        if len(names) > 1
    )


def compiled(
    surfaces, features, panels, tape: TapeStyle, rails=(), width: F = F(6000), depth: F = F(4000)
) -> CompiledPlan:
    arrays = tuple({one.array.name: one.array for one in panels}.values())
    plan = b.plan(job=b.job(tape=tape), room=b.room(width=width, depth=depth), arrays=arrays)
    return CompiledPlan(
        plan=plan,
        room=RoomGeometry(tuple(surfaces), tuple(features), 1.0),
        layout=Layout(tuple(panels), laser_lines(tuple(panels)), tuple(rails)),
        materials=Materials((), (), (), (), (), (), None, ()),
        estimated=acoustics(),
        loads=Loads((), (), (), (), ()),
        warnings=(),
    )


def loft() -> CompiledPlan:
    """Two slopes and a flat between them; clouds between rooflights on the south slope, panels on the west wall."""
    width, depth = F(7200), F(5400)
    tilt = radians(40)
    run, rise = cos(tilt), sin(tilt)
    slope_length = F(2333)
    slopes = {
        "datum_words": "the left end of the lower edge", "across_words": "to the right as you face up the slope",
        "up_words": "along the slope from its lower edge", "members": rafters(), "pitch_deg": 40.0,
    }  # fmt: skip
    south = surface(
        "south-pitch", "ceiling", (7200.0, 0.0, 1500.0), (-1.0, 0.0, 0.0), (0.0, run, rise), (0.0, rise, -run),
        (width, slope_length), **slopes,
    )  # fmt: skip
    north = surface(
        "north-pitch", "ceiling", (0.0, 5400.0, 1500.0), (1.0, 0.0, 0.0), (0.0, -run, rise), (0.0, -rise, -run),
        (width, slope_length), **slopes,
    )  # fmt: skip
    flat_depth = F(5400) - 2 * F(f"{2333 * run:.3f}")
    flat = surface(
        "collar", "ceiling", (0.0, 2333 * run, 3000.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, -1.0),
        (width, flat_depth),
    )  # fmt: skip
    around = walls(width, depth, F(3000))
    gable = (
        (0.0, 0.0),
        (5400.0, 0.0),
        (5400.0, 1500.0),
        (5400 - 2333 * run, 3000.0),
        (2333 * run, 3000.0),
        (0.0, 1500.0),
    )
    west = surface(
        "west wall", "wall", (0.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0), (depth, F(3000)),
        outline=gable,
    )  # fmt: skip
    surfaces = (*around[:3], west, south, flat, north)
    features = (
        *(feature("rooflight", f"R{i}", "south-pitch", box(1600 * i - 675, 500, 550, 780)) for i in (1, 2, 3, 4)),
        feature("luminaire", "L1", "collar", box(3555, 855, 90, 90), is_round=True),
        feature("vent", "V1", "collar", box(5600, 800, 300, 300)),
        feature("door", "d1", "west wall", box(250, 0, 900, 2050)),
        feature("window", "w1", "east wall", box(1100, 900, 1600, 1100)),
    )  # fmt: skip
    clouds = b.array(name="south-clouds", mark="SC", surface="south-pitch")
    back = b.array(
        name="back-wall",
        mark="BW",
        surface="west wall",
        panel=b.panel_type(name="broadband-1200", length=F(1200)),
        upright=True,
    )
    placed = (
        *(panel(south, clouds, i, (at - 300, 400)) for i, at in enumerate((2000, 3600, 5200), 1)),
        *(panel(west, back, i + 1, (1600 + 700 * (i % 3), 300 + 1300 * (i // 3))) for i in range(6)),
    )
    return compiled(surfaces, features, placed, b.style("mm", 1), width=width, depth=depth)


def lesson_room() -> CompiledPlan:
    """An imperial room with a flat ceiling, a grid of clouds on rails under joists, and a crowd of lamps."""
    width, depth, height = b.inches(186, 5, 8), b.inches(140, 3, 16), b.inches(100)
    ceiling = flat_ceiling(width, depth, height, members=rafters("up", b.inches(16), b.inches(9, 1, 2), "joist"))
    clouds = b.array(panel=b.tape_panel(mark="T"), mark="TC", upright=True, hang=b.hang(drop=b.inches(4)))
    inch = b.INCH
    placed = tuple(
        panel(ceiling, clouds, column + 1, (b.inches(22, 5, 16) + column * 36 * inch, 10 * inch), 4 * inch)
        for column in range(4)
    )
    lamps = tuple(box((30 + 36 * i) * inch, 95 * inch, 5 * inch, 5 * inch) for i in range(4))
    features = (
        *(feature("luminaire", f"lamp-{i}", "ceiling", lamp, True) for i, lamp in enumerate(lamps)),
        feature("door", "door", "south wall", box(20 * inch, 0, 32 * inch, 80 * inch)),
        feature("window", "bay-window", "west wall", box(30 * inch, 30 * inch, 60 * inch, 48 * inch)),
    )  # fmt: skip
    rails = (RailRun("rail 1", "ceiling", b.inches(14), b.inches(18), b.inches(160), (), ("TC1.a",)),)
    return compiled(
        (*walls(width, depth, height), ceiling),
        features,
        placed,
        b.style("in", b.inches(0, 1, 16)),
        rails,
        width,
        depth,
    )


def hall(columns: int = 9, rows: int = 3) -> CompiledPlan:
    """A long hall with many panels, so that marks and dimensions are crowded."""
    width, depth = F(600 + 1537 * columns), F(1450 + 2250 * rows)
    ceiling = flat_ceiling(width, depth, F(3600), members=rafters("across", 625, 300, "joist"))
    clouds = b.array(mark="CLOUD", upright=False, panel=b.panel_type(length=F(1200)))
    placed = tuple(
        panel(ceiling, clouds, column + columns * row, (413 + 1537 * column + 40 * row, 700 + 2250 * row + 55 * column))
        for row in range(rows)
        for column in range(columns)
    )
    features = tuple(feature("luminaire", f"L{i}", "ceiling", box(900 + 1300 * i, 2500, 150, 150)) for i in range(10))
    return compiled((*walls(width, depth, F(3600)), ceiling), features, placed, b.style("mm", 1), (), width, depth)


def small_room() -> CompiledPlan:
    """One small panel in a small room."""
    width, depth = F(2000), F(1500)
    ceiling = flat_ceiling(width, depth, F(2400))
    one = b.array(mark="A", panel=b.panel_type(width=F(300), length=F(600)))
    return compiled(
        (*walls(width, depth, F(2400)), ceiling),
        (),
        (panel(ceiling, one, 1, (850, 450)),),
        b.style("mm", 1),
        (),
        width,
        depth,
    )


def build(type_: PanelType | None = None, **over) -> PanelBuild:
    face = type_ or b.panel_type()
    values = {
        "panels": ("SC1", "SC2", "SC3"), "parts": (), "pieces": (), "braces": (F(750), F(1212)),
        "joints": (F(1212),),
        "stack": (
            StackLine("setback of the brace", F(6), F(6)), StackLine("brace, birch ply 12", F(12), F(18)),
            StackLine("core, mineral wool 50", F(50), F(68)), StackLine("free", F(12), F(80)),
        ),
        "hardware": (), "fastenings": (), "steps": (), "masses": (MassItem("frame", 3.0, 40.0),),
    }  # fmt: skip
    return PanelBuild(type=face, **{**values, **over})


def tape_build() -> PanelBuild:
    stack = (
        StackLine("setback", b.inches(0, 1, 4), b.inches(0, 1, 4)),
        StackLine("brace, 5/8 ply", b.inches(0, 5, 8), b.inches(0, 7, 8)),
        StackLine("core, 3 in batt", b.inches(3), b.inches(3, 7, 8)),
        StackLine("free", b.inches(0, 1, 8), b.inches(4)),
    )
    return build(
        b.tape_panel(), panels=("TC1", "TC2"), braces=(b.inches(24), b.inches(36), b.inches(48)),
        joints=(b.inches(48, 5, 8),), stack=stack,
    )  # fmt: skip


def cutting() -> Cutting:
    """A sheet of strips: rips first, then cross cuts; kerf 3."""
    parts, cuts = [], []
    for row in range(6):
        parts.append(PlacedPart(f"C-S{row + 1}", F(0), F(83 * row), F(1476), F(80), False))
        parts.append(PlacedPart(f"C-E{row + 1}", F(1479), F(83 * row), F(600), F(80), False))
        cuts.append(Cut(2 * row + 1, f"piece {row}", "rip", F(80), (f"strip {row}", f"piece {row + 1}")))
        cuts.append(Cut(2 * row + 2, f"strip {row}", "cross", F(1476), (f"C-S{row + 1}", f"rest {row}")))
    offcuts = ((F(0), F(498), F(2440), F(722)), *((F(2082), F(83 * row), F(358), F(80)) for row in range(6)))
    layout = SheetLayout(tuple(parts), tuple(cuts), tuple(offcuts), 2)
    return Cutting(b.sheet(), (layout,), 2, 1, F(1, 8))


def roll(pieces: int = 9) -> RollCut:
    front, back = ("C-F", F(0), F(760)), ("C-B", F(760), F(600))
    parts = tuple(
        PlacedPart(mark, F(1760 * (index // 2)), y, F(1760), width, False)
        for index in range(pieces)
        for mark, y, width in ((front, back)[index % 2],)
    )
    return RollCut(b.cloth(), parts, F(1760 * ((pieces + 1) // 2)), F(1, 10))


def rays() -> RayCheck:
    """Straight decays of 0.3 to 0.8 s, but for one octave that was not followed far."""
    times = tuple(Ranged(0.3 + 0.1 * n, 0.2 + 0.1 * n, 0.4 + 0.1 * n) for n in range(6))
    nowhere = Ranged(nan, nan, nan)
    curves = [tuple(-60 * 0.01 * n / time.value for n in range(int(time.value * 66))) for time in times]
    return RayCheck(
        rays=20_000, followed=20_000, lost=0, source="counter", t20=times, edt=times, listeners=(), step=0.01,
        levels=(*curves[:-1], (0.0, -0.8)), outside=(), scattering=(),
        falls=tuple(
            (fall, (*(Ranged(*(fall / 60 * end for end in (t.value, t.low, t.high))) for t in times[:-1]), nowhere))
            for fall in (10, 20, 30)
        ),
    )  # fmt: skip


def acoustics() -> Acoustics:
    before = (1.21, 1.08, 0.98, 0.92, 0.87, 0.80)
    after = (0.93, 0.62, 0.46, 0.41, 0.40, 0.39)
    target = TargetBand(0.52, 0.42, 0.62)

    def decay(values: tuple[float, ...]) -> Decay:
        alpha = tuple(0.2 for _ in values)
        return Decay(
            sabine=tuple(v * 1.08 for v in values), eyring=values, low=tuple(v * 0.85 for v in values),
            high=tuple(v * 1.17 for v in values), mean_alpha=alpha, figures=(),
        )  # fmt: skip

    def absorber(words: str, area: float, alpha: float) -> Absorber:
        absorption = tuple(area * alpha for _ in before)
        return Absorber(words, area, tuple(alpha for _ in before), absorption, absorption, absorption, "invented")

    rest = (absorber("walls", 40, 0.1), absorber("floor", 38, 0.15))
    return Acoustics(
        bands=(125, 250, 500, 1000, 2000, 4000), volume=90, surface=130, before=rest,
        after=(*rest, absorber("south-clouds", 4, 0.9)), air_m=(0, 0.0003, 0.0006, 0.001, 0.0019, 0.0058),
        decay_before=decay(before), decay_after=decay(after), target_words="DIN 18041 A3",
        target=(TargetBand(None, None, None), *(target for _ in range(4)), TargetBand(0.52, 0.35, None)),
        verdict_before=("not asked", *("too long",) * 5),
         verdict_after=("not asked", "within by part of the range", *("within",) * 4),
        schroeder_before=220.0, schroeder_after=180.0, assumes=(), warnings=(),
    )  # fmt: skip

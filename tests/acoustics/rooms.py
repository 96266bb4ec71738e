"""Rooms and layouts made by hand for the acoustic engine. All figures are invented."""

from fractions import Fraction as F

from planlang.geometry.model import Box, Layout, PlacedFeature, PlacedPanel, RoomGeometry, Surface
from planlang.plan.model import Array
from planlang.plan.room import Feature, Target, Use
from planlang.plan.stock import OCTAVES, Lining
from planlang.syntax.span import NOWHERE, Span
from tests import builders as make

WALLS = ("south wall", "east wall", "north wall", "west wall")
INWARD = {
    "floor": (0.0, 0.0, 1.0),
    "south wall": (0.0, 1.0, 0.0),
    "east wall": (-1.0, 0.0, 0.0),
    "north wall": (0.0, -1.0, 0.0),
    "west wall": (1.0, 0.0, 0.0),
    "ceiling": (0.0, 0.0, -1.0),
}
NAMES = ("floor", *WALLS, "ceiling")


def lined(name: str, *alphas: float) -> Lining:
    """A lining with one coefficient for all octaves, or one for each."""
    values = alphas if len(alphas) > 1 else alphas * len(OCTAVES)
    absorption = {band: F(str(value)) for band, value in zip(OCTAVES, values, strict=True)}
    return make.lining(name=name, words=name, absorption=absorption)


def surface(name: str, width: int, height: int, lining: Lining | None, pitch: float = 0.0) -> Surface:
    kind = "floor" if name == "floor" else "wall" if name in WALLS else "ceiling"
    return Surface(
        name=name,
        kind=kind,
        origin=(0.0, 0.0, 0.0),
        across_dir=(1.0, 0.0, 0.0),
        up_dir=(0.0, 1.0, 0.0),
        inward=INWARD.get(name, (0.0, 0.0, -1.0)),
        outline=((0.0, 0.0), (width, 0.0), (width, height), (0.0, height)),
        width=F(width),
        height=F(height),
        area_mm2=float(width * height),
        pitch_deg=pitch,
        datum_words="",
        across_words="",
        up_words="",
        lining=lining,
        members=None,
        exposed=False,
    )


def box(
    linings: dict[str, Lining | None] | Lining,
    size: tuple[int, int, int] = (6000, 4000, 2500),
    features: tuple[PlacedFeature, ...] = (),
) -> RoomGeometry:
    width, depth, height = size
    sides = {"floor": (width, depth), "ceiling": (width, depth)}
    sides |= {"south wall": (width, height), "north wall": (width, height)}
    sides |= {"east wall": (depth, height), "west wall": (depth, height)}
    by_name = linings if isinstance(linings, dict) else dict.fromkeys(NAMES, linings)
    surfaces = tuple(surface(name, *sides[name], by_name.get(name)) for name in NAMES)
    return RoomGeometry(surfaces, features, width * depth * height / 1e9)


def feature(kind: str, name: str, on: str, size: tuple[int, int], lining: Lining | None, **over):
    stated = Feature(
        at=NOWHERE, kind=kind, name=name, surface=on, across=F(1000), up=F(1000), width=F(size[0]),
        height=F(size[1]), lining=lining, **{"round": False, **over},
    )  # fmt: skip
    half = F(size[0]) / 2, F(size[1]) / 2
    return PlacedFeature(stated, Box(F(1000) - half[0], F(1000) - half[1], F(1000) + half[0], F(1000) + half[1]))


def placed(array: Array, count: int) -> tuple[PlacedPanel, ...]:
    outline = Box(F(0), F(0), array.panel.width, array.panel.length)
    return tuple(
        PlacedPanel(f"{array.mark}{number}", array, array.surface, outline, (), (), "")
        for number in range(1, count + 1)
    )


def layout(*groups: tuple[Array, int]) -> Layout:
    return Layout(tuple(panel for array, count in groups for panel in placed(array, count)), (), ())


def wall_array(**over) -> Array:
    base = {"name": "back-wall", "mark": "BW", "surface": "west wall"}
    return make.array(**{**base, "hang": make.hang(by="cleats", link=None, drop=F(0)), **over})


def target(rule: str = "", seconds: F | None = None, share: F = F(1, 5), bands: tuple[int, int] = (250, 2000)) -> Use:
    stated = Target(
        at=Span("a.plan", 7, 3, 6), rule=rule, seconds=seconds, tolerance=share, from_hz=bands[0], to_hz=bands[1]
    )
    return Use(at=NOWHERE, target=stated, places=())

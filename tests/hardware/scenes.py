"""Small rooms with hung panels, made by hand. All figures are invented."""

import math
from fractions import Fraction as F

from planlang.geometry.model import Box, HangPoint, Layout, MassItem, PlacedPanel, RailRun, RoomGeometry, Surface
from planlang.hardware.loads import check_loads
from planlang.plan.model import Rail
from planlang.plan.room import Members
from planlang.plan.safety import SafetyRules, SecondSupport
from tests import builders as b

MASSES = (MassItem("frame", 3.0, 40.0), MassItem("core", 2.0, 45.0), MassItem("cloth", 0.5, 70.0))


def members(**over):
    base = {
        "word": "rafters", "timber": b.timber(), "width": F(45), "depth": F(145), "centres": F(600), "first": F(300),
        "runs": "up",
    }  # fmt: skip
    return b.make(Members, base, over)


def surface(kind="ceiling", pitch=0.0, **over):
    """A surface 6 x 4 m; a wall faces north, a slope rises north."""
    steep = math.radians(90 if kind == "wall" else pitch)
    up = (0.0, math.cos(steep), math.sin(steep))
    inward = (0.0, 1.0, 0.0) if kind == "wall" else (0.0, math.sin(steep), -math.cos(steep))
    base = {
        "name": "ceiling" if kind == "ceiling" else "south wall", "kind": kind,
        "origin": (0.0, 0.0, 0.0 if kind == "wall" else 2400.0), "across_dir": (1.0, 0.0, 0.0), "up_dir": up,
        "inward": inward, "outline": ((0.0, 0.0), (6000.0, 0.0), (6000.0, 4000.0), (0.0, 4000.0)), "width": F(6000),
        "height": F(4000), "area_mm2": 24e6, "pitch_deg": 90.0 if kind == "wall" else pitch, "datum_words": "",
        "across_words": "", "up_words": "", "lining": b.lining(), "members": members(), "exposed": False,
    }  # fmt: skip
    return Surface(**{**base, **over})


def hung(array, face, left=300, lower=600, number=1, off_centre=F(0), lands_on="rafter 1"):
    """A panel 600 x 1500, upright, with points 100 from its ends on both sides, or two cleats 60 below its top."""
    box = Box(F(left), F(lower), F(left + 600), F(lower + 1500))
    sides = (box.left, box.right)
    if array.hang.by == "cleats":
        places = [(side, box.upper - 60) for side in (box.left + 100, box.right - 100)]
    else:
        places = [(side, up) for up in (box.lower + 100, box.upper - 100) for side in sides]
    mark = f"{array.mark}{number}"
    points = tuple(
        HangPoint(
            f"{mark}.{letter}",
            across,
            up,
            face.in_room(float(across), float(up)),
            lands_on,
            off_centre,
            array.hang.drop,
        )
        for letter, (across, up) in zip("abcdefgh", places, strict=False)
    )
    corners = tuple(face.in_room(float(x), float(y)) for x, y in box.corners)
    return PlacedPanel(mark, array, face.name, box, corners, points, "by hand")


def rail_runs(panel, crossings=(0, 600, 1200), start=0, end=1200):
    rows = sorted({point.up for point in panel.points})
    return tuple(
        RailRun(
            f"rail {index}", panel.surface, row, F(start), F(end), tuple(F(c) for c in crossings),
            tuple(point.name for point in panel.points if point.up == row),
        )
        for index, row in enumerate(rows, 1)
    )  # fmt: skip


LAG_EYE = b.screw_eye(words="forged lag eye 6 x 80", thread=F(60))


def ceiling_array(panel=None, second=None, added=(), **hang):
    over = {"panel": panel} if panel else {}
    return b.array(hang=b.hang(**{"anchor": LAG_EYE, **hang}), second_support=second, added=added, **over)


def second_support(**over):
    strong = b.hardware(name="strong-plate", words="strong eye plate", rated_n=F(20_000), bolts=(8, F(8)))
    base = {
        "count": 2, "eye": strong, "slack": F(1),
        "tie": b.hardware(name="tie", words="soft tie", rated_n=F(20_000), stretch=(F(50), F(1000))),
        "anchor": b.screw_eye(name="big-eye", words="big lag eye", rated_n=F(20_000), shank=F(12), thread=F(140)),
    }  # fmt: skip
    return b.make(SecondSupport, base, over)


def wall_array(**hang):
    screw = b.hardware(name="screw-5", words="wood screw 5 x 60", rated_n=None, shank=F(5), thread=F(50))
    base = {"by": "cleats", "link": None, "anchor": screw, "drop": F(0), "screws_each": 2}
    panel = b.panel_type(hung_by=b.cleats())
    return b.array(name="wall", mark="W", surface="south wall", panel=panel, hang=b.hang(**{**base, **hang}))


def check(array, face, panels=None, rails=(), masses=MASSES, tape=None, rules=None):
    placed = panels if panels is not None else (hung(array, face),)
    over = {"job": b.job(tape=tape)} if tape else {}
    plan = b.plan(arrays=(array,), **over, **({"safety": b.make(SafetyRules, {}, rules)} if rules else {}))
    layout = Layout(tuple(placed), (), tuple(rails))
    return check_loads(plan, RoomGeometry((face,), (), 60.0), layout, {array.panel.name: masses})


def codes(outcome):
    return [finding.code for finding in outcome.diagnostics]


def rail(**over):
    base = {
        "timber": b.timber(),
        "screw": b.hardware(
            name="rail-screw", words="rail screw 8 x 120", rated_n=None, shank=F(8), thread=F(80), head=F(16)
        ),
    }
    return b.make(Rail, base, over)


def standing_off(drop=20, shank=8, thread=70, rated=2000, upright=True, second=None, **over):
    """A panel fixed to a slope by stand-offs `drop` long, a coach screw through each."""
    bracket = b.hardware(name="bracket", words="slope bracket", bolts=(2, F(5)))
    off = b.hardware(name="stand-off", words="stand-off sleeve", reach=(F(drop), F(drop)))
    screw = b.hardware(name="coach", words="coach screw", rated_n=F(rated), shank=F(shank), thread=F(thread))
    hang = b.hang(link=off, anchor=screw, drop=F(drop), fixed=True, **over)
    panel = b.panel_type(hung_by=b.eyes(hardware=bracket))
    return b.array(panel=panel, hang=hang, upright=upright, second_support=second)

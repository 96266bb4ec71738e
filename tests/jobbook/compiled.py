"""A whole compiled plan for the tests of the job book: room, shop and estimate by their phases, the rest by hand.

The small studio of this plan, its people and its prices are invented.
"""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from fractions import Fraction as F
from typing import Any

from planlang.acoustics.estimate import estimate_acoustics
from planlang.geometry.model import Box, HangPoint, LaserLine, Layout, MassItem, PlacedPanel, RailRun
from planlang.geometry.room import build_room
from planlang.hardware.model import Loads, PanelLoad, Step
from planlang.jobbook.compiled import CompiledPlan
from planlang.materials.workshop import resolve_materials
from planlang.plan.figure import Figure
from planlang.plan.model import Array, Assumption, Plan
from planlang.plan.room import Feature, Members, Occupants, SurfaceLining, Target, Use
from planlang.plan.stock import Seating
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic, Severity
from planlang.syntax.span import Span
from tests import builders as b

AT = Span("plans/studio.plan", 12, 3, 5)
CHOICES = frozenset(
    (
        *("kind", "role", "direction", "fixed", "runs", "origin", "status", "lie", "full", "by", "into", "alignment"),
        *("units", "unit", "paper", "file", "foot", "per", "code", "currency", "least_rule"),
        *("verdict_before", "verdict_after"),
    )
)  # fields whose text is one of a few words of the program, not of the plan


def compiled_plan(status: str = "holds", plan: Plan | None = None) -> CompiledPlan:
    """A studio with four clouds on eyes and two wall panels on cleats."""
    stated = plan or studio()
    room = build_room(stated).value
    layout = layout_of(stated)
    return CompiledPlan(
        plan=stated,
        room=room,
        layout=layout,
        materials=resolve_materials(stated, layout).value,
        estimated=estimate_acoustics(stated, room, layout).value,
        loads=loads_of(stated, status),
        warnings=(Diagnostic("gap-narrow", "SC1 and SC2 are 96 mm apart", AT, "100 mm is wanted", Severity.WARNING),),
    )


def studio(**over: Any) -> Plan:
    clouds = b.array(name="south-clouds", mark="SC", hang=b.hang(into="rail", rail=None))
    wall = b.array(
        name="back-wall", mark="BW", surface="west wall", placement=b.grid(2, 1),
        panel=b.panel_type(name="broadband-1200", mark="B", length=F(1200), back=None, hung_by=b.cleats()),
        hang=b.hang(
            by="cleats", link=None, anchor=b.screw_eye(name="screw-5", words="wood screw 5 x 60"), drop=F(0),
            screws_each=2,
        ),
    )  # fmt: skip
    base = {
        "title": "Reading room of the weaving shed", "note": "Small talks and readings, twelve people.",
        "job": b.job(client="Weaving Shed Trust", site="1 Mill Lane", issue="C"),
        "room": _room(), "arrays": (clouds, wall),
        "use": Use(
            at=AT, places=(),
            target=Target(
                at=AT, rule="din-18041 A3", seconds=None, tolerance=F(1, 5), from_hz=125, to_hz=4000
            ),
        ),
        "assumptions": (Assumption(at=AT, subject="fit of cores", value="0 mm", reason="the plan doesn't say"),),
    }  # fmt: skip
    return b.plan(**{**base, **over})


def imperial() -> Plan:
    return studio(job=b.job(tape=TapeStyle("in", b.inches(0, 1, 16)), paper="Letter", currency="GBP"))


def _room() -> Any:
    surfaces = ("floor", "south wall", "east wall", "north wall", "west wall", "ceiling")
    joists = Members(
        at=AT, word="joist", timber=b.timber(), width=F(45), depth=F(195), centres=F(600), first=F(310), runs="up"
    )
    readers = Seating(
        at=AT, name="readers", words="seated readers", absorption_m2={f: F(4, 10) for f in b.OCTAVES}, source="invented"
    )
    return b.room(
        linings=tuple(
            SurfaceLining(
                at=AT, surface=name, lining=b.lining(), members=joists if name == "ceiling" else None, exposed=False
            )
            for name in surfaces
        ),
        features=(
            _feature("door", "d1", "east wall", 900, 1025, 900, 2050),
            _feature("luminaire", "L1", "ceiling", 3000, 2000, 90, 90),
        ),
        occupants=(Occupants(at=AT, count=12, seating=readers),),
    )  # fmt: skip


def _feature(kind: str, name: str, surface: str, across: int, up: int, width: int, height: int) -> Feature:
    return Feature(
        at=AT, kind=kind, name=name, surface=surface, across=F(across), up=F(up), width=F(width), height=F(height),
        round=width == 90, lining=None,
    )  # fmt: skip


def layout_of(plan: Plan) -> Layout:
    clouds, wall = plan.arrays
    spots = [(F(1500 + 1400 * column), F(400 + 1700 * row)) for row in range(2) for column in range(2)]
    placed = [_panel(clouds, n, spot, (F(600), F(1500))) for n, spot in enumerate(spots, 1)]
    placed += [_panel(wall, n, (F(900 + 800 * n), F(900)), (F(600), F(1200))) for n in (1, 2)]
    lines = tuple(
        LaserLine("ceiling", "up", at, tuple(f"SC{n}.a" for n in (1, 2)), "north") for at in (F(500), F(1800), F(2200))
    )
    rails = (RailRun("rail 1", "ceiling", F(500), F(1400), F(3700), (F(1510), F(2110), F(2710)), ("SC1.a", "SC2.a")),)
    return Layout(tuple(placed), lines, rails)


def _panel(array: Array, number: int, spot: tuple[F, F], size: tuple[F, F]) -> PlacedPanel:
    box = Box(spot[0], spot[1], spot[0] + size[0], spot[1] + size[1])
    mark = f"{array.mark}{number}"
    ends = ((box.left + 6, box.lower + 100), (box.right - 6, box.lower + 100), (box.right - 6, box.upper - 100))
    points = tuple(
        HangPoint(
            f"{mark}.{letter}",
            across,
            up,
            (float(across), float(up), 2500.0),
            "joist 3",
            F(4) if letter != "c" else None,
            array.hang.drop,
        )
        for letter, (across, up) in zip("abc", ends, strict=True)
    )
    corners = tuple((float(x), float(y), 2440.0) for x, y in box.corners)
    return PlacedPanel(mark, array, array.surface, box, corners, points, "600 wide, centred in a bay of 1400 mm")


def loads_of(plan: Plan, status: str) -> Loads:
    return Loads(
        panels=tuple(_load(array, status if array.mark == "SC" else "holds") for array in plan.arrays),
        surface_mass=(("ceiling", Figure(31.62, "kg", "4 panels")), ("west wall", Figure(12.8, "kg", "2 panels"))),
        cautions=("panels hang over people",),
        not_checked=("the joists themselves", "earthquake"),
        confirm=(
            ("The joists may carry 32 kg more", "a structural engineer"), ("The eyes carry the marking", "the builder"),
        ),
    )  # fmt: skip


def _load(array: Array, status: Any) -> PanelLoad:
    demand = Figure(51.731, "N", "share of 25.9 N, doubled", (("share", "25.9 N"),), (AT,), "project policy")
    marked = Step(
        "quick link 3.5", Figure(199.99, "N", "marked load / 5", source="maker"), "maker data", demand, 3.866, "holds"
    )
    thread = Step(
        "eye in joist", Figure(61.2, "N", "withdrawal", source="NDS 12.2"), "code formula", demand, 1.183, "holds"
    )
    if status == "not verified":
        thread = replace(thread, allowed=None, origin="unknown", ratio=None, status=status)
    if status == "fails":
        thread = replace(thread, allowed=Figure(51.6, "N", "withdrawal"), ratio=0.9975, status=status)
    return PanelLoad(
        array=array.name, mark=array.mark, panels=tuple(f"{array.mark}{n}" for n in range(1, 5)),
        masses=(MassItem("birch ply 12", 3.61, 42.0), MassItem("mineral wool 50", 2.1, 40.0)),
        mass=Figure(7.905, "kg", "sum"), weight=Figure(77.52, "N", "m g"), points=4,
        share=Figure(25.84, "N", "two of four carry"),
        rule="two of four points carry", demand=demand, steps=(marked, thread), weakest=1, status=status,
        overhead=array.mark == "SC", second_support=array.mark == "SC", lift_words="two people",
    )  # fmt: skip


def with_every_text(value: Any, added: str) -> Any:
    """The same value with `added` behind every text of the plan, wherever it stands."""
    if isinstance(value, str):
        return value + added if value else ""
    if isinstance(value, Span):
        return value._replace(file=value.file + added)
    if isinstance(value, tuple):
        return tuple(with_every_text(item, added) for item in value)
    if is_dataclass(value) and not isinstance(value, type):
        return type(value)(**{f.name: _changed(f.name, getattr(value, f.name), added) for f in fields(value)})
    return value


def _changed(name: str, value: Any, added: str) -> Any:
    return value if name in CHOICES else with_every_text(value, added)

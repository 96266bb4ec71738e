"""Invented rooms, features and members for the tests of geometry."""

from __future__ import annotations

import math
from fractions import Fraction as F
from typing import Any

from planlang.geometry.layout import place_arrays
from planlang.geometry.model import Layout, RoomGeometry
from planlang.geometry.room import build_room
from planlang.plan.build.walk import names_of
from planlang.plan.model import Array, Bays, Keep, Plan, Rail, Row
from planlang.plan.room import CeilingPlane, Feature, Floor, Members, Solid, SurfaceLining
from planlang.plan.stated import Zone
from planlang.plan.usual import USUAL
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.span import NOWHERE, Span
from tests import builders


def line(number: int) -> Span:
    return Span("test.plan", number, 1)


def slope(name: str, foot: str, height: F | int, pitch: int | None = None, rise: float | None = None) -> CeilingPlane:
    rise_over_run = math.tan(math.radians(pitch or 0)) if rise is None else rise
    degrees = F(pitch) if pitch is not None else F(math.degrees(math.atan(rise_over_run)))
    return CeilingPlane(
        at=NOWHERE, name=name, foot=f"{foot} wall", height=F(height), pitch_deg=degrees, rise_over_run=rise_over_run
    )


def feature(name: str, surface: str, centre: tuple[Any, Any], size: tuple[Any, Any], **over: Any) -> Feature:
    base = {
        "kind": "rooflight", "name": name, "surface": surface, "across": F(centre[0]), "up": F(centre[1]),
        "width": F(size[0]), "height": F(size[1]), "round": False, "lining": None,
    }  # fmt: skip
    return builders.make(Feature, base, over)


def lamp(name: str, centre: tuple[Any, Any], across: Any = 90, surface: str = "ceiling") -> Feature:
    return feature(name, surface, centre, (across, across), kind="luminaire", round=True)


def members(**over: Any) -> Members:
    base = {
        "word": "joists", "timber": builders.timber(), "width": F(45), "depth": F(145), "centres": F(400),
        "first": F(300), "runs": "up",
    }  # fmt: skip
    return builders.make(Members, base, over)


def lined(surface: str, **over: Any) -> SurfaceLining:
    base = {"surface": surface, "lining": builders.lining(), "members": None, "exposed": False}
    return builders.make(SurfaceLining, base, over)


def bays(*names: str, **over: Any) -> Bays:
    base = {"each": 1, "gap": F(0), "features": names, "up": builders.along()}
    return builders.make(Bays, base, over)


def row(count: int, gap: F | int | None = None, **over: Any) -> Row:
    base = {
        "count": count, "gap": None if gap is None else F(gap), "across": builders.along(), "up": builders.along(),
    }  # fmt: skip
    return builders.make(Row, base, over)


def rail() -> Rail:
    return Rail(at=NOWHERE, timber=builders.timber(), screw=builders.screw_eye(), overhang=F(60))


def usual(kind: str, across: F | int, surface: str = "north wall", **over: Any) -> Feature:
    """A thing 200 x 400 that keeps what is usual for its kind; its left edge is 100 less than `across`."""
    base = {"kind": kind, "keep_clear": USUAL[kind].distance, "keep_source": USUAL[kind].why}
    return feature("f1", surface, (across, 1000), (200, 400), **{**base, **over})


def at(left: int, lower: int, **over: Any) -> Array:
    """A panel 600 x 1500 with its lower left corner there, on the north wall."""
    placement = builders.grid(1, 1, 0, across=builders.along("start", left), up=builders.along("start", lower))
    return wall_array(placement=placement, **over)


def zone(forbids: str, box: tuple[int, int, int, int], surface: str = "north wall", name: str = "z1") -> Zone:
    left, lower, right, upper = (F(edge) for edge in box)
    return Zone(
        at=NOWHERE,
        name=name,
        surface=surface,
        left=left,
        lower=lower,
        right=right,
        upper=upper,
        forbids=forbids,  # type: ignore[arg-type]
        author="the owner",
    )


def keep(distance: int, kind: str = "", name: str = "") -> Keep:
    return Keep(at=NOWHERE, distance=F(distance), kind=kind, feature=name)


def rooms_of(*planes: CeilingPlane, **over: Any) -> Outcome[RoomGeometry]:
    return build_room(builders.plan(room=builders.room(ceiling=planes, **over)))


def wall_array(**over: Any) -> Array:
    """A panel on the north wall by cleats, fixed into its lining: no rule of members comes in."""
    base = {
        "name": "wall", "mark": "W", "surface": "north wall", "panel": builders.panel_type(hung_by=builders.cleats()),
        "hang": builders.hang(by="cleats", into="lining", drop=F(0)), "placement": row(1),
    }  # fmt: skip
    return builders.array(**{**base, **over})


def laid_out(plan: Plan) -> Outcome[Layout]:
    room = build_room(plan)
    assert room.diagnostics == ()
    return place_arrays(plan, room.value)


def layout_of(*arrays: Array, **room: Any) -> Outcome[Layout]:
    return laid_out(builders.plan(arrays=arrays, room=builders.room(**room)))


def codes(outcome: Outcome[Any]) -> list[str]:
    return [finding.code for finding in outcome.diagnostics]


def only(outcome: Outcome[Any], code: str) -> Diagnostic:
    """The single finding of an outcome, which has that code."""
    assert codes(outcome) == [code], outcome.diagnostics
    return outcome.diagnostics[0]


def floor_of(*corners: tuple[Any, Any]) -> Floor:
    """A floor by its corners, anticlockwise."""
    places = tuple((F(east), F(north)) for east, north in corners)
    return Floor(at=NOWHERE, corners=places, walls=names_of(places, [None] * len(places), "wall", []))


def solid(kind: str, name: str, box: tuple[Any, Any, Any, Any], level: Any = 0) -> Solid:
    left, lower, right, upper = (F(edge) for edge in box)
    corners = ((left, lower), (right, lower), (right, upper), (left, upper))
    faces = tuple(f"{name} {side} face" for side in ("south", "east", "north", "west"))
    lining = builders.lining()
    return Solid(at=NOWHERE, kind=kind, name=name, corners=corners, faces=faces, level=F(level), lining=lining)  # type: ignore[arg-type]

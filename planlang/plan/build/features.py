"""What keeps panels away from things on a surface."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from planlang.plan.build.names import Names, maybe_value
from planlang.plan.entry import Entry
from planlang.plan.room import Feature
from planlang.plan.usual import USUAL

PAIRED = ("luminaire", "vent", "sprinkler", "detector", "exit-sign", "speaker", "socket")


def clearance_of(part: Entry) -> dict[str, Any]:
    """The fields of a feature that say how far it stands out, and how far panels keep from it.

    Raises:
        Unknown: one of them is at fault; that has been reported.
    """
    usual = USUAL[part.kind.word]
    stated = maybe_value(part, "keep")
    return {
        "depth": maybe_value(part, "deep", Fraction(0)),
        "keep_clear": usual.distance if stated is None else stated,
        "keep_source": usual.why if stated is None else "",
        "opens": maybe_value(part, "opens", ""),
        "hinge": maybe_value(part, "hinge", ""),
    }


def assume_clearances(names: Names, features: Sequence[Feature], parts: Sequence[Entry]) -> None:
    """Note the clear distances that were taken, one line for each kind of thing."""
    for part in {part.kind.word: part for part in reversed(parts)}.values():
        kind = part.kind.word
        taken = [feature.name for feature in features if feature.kind == kind and feature.keep_source]
        if taken:
            usual = USUAL[kind]
            assumed = [(f"keep {float(usual.distance):g} mm clear, where no array says another distance", usual.why)]
            names.assume(Entry(part.kind, part.span, assumed=assumed), f"{kind} {', '.join(taken)}")


def assume_swings(names: Names, features: Sequence[Feature], parts: Sequence[Entry]) -> None:
    """Note what was taken for doors of which the plan does not say how they open."""
    doors: dict[str, list[str]] = {}
    for feature in features:
        if feature.kind == "door" and (taken := swing_words(feature)):
            doors.setdefault(taken, []).append(feature.name)
    for taken, those in doors.items():
        part = next(part for part in parts if part.kind.word == "door")
        assumed = [(taken, "the plan does not say how it opens: all that it could sweep is kept free")]
        names.assume(Entry(part.kind, part.span, assumed=assumed), f"door {', '.join(those)}")


def swing_words(door: Feature) -> str:
    """What is taken for a door of which the plan does not say all; nothing for one that opens out of the room."""
    if door.opens == "outward":
        return ""
    return ", ".join([*([] if door.opens else ["opens inward"]), *([] if door.hinge else ["hinged on either side"])])

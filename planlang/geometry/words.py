"""Lengths and directions in the crew's words."""

from fractions import Fraction
from typing import Literal

from planlang.geometry.model import Surface, Vector
from planlang.geometry.polygon import TOLERANCE, Move
from planlang.plan.tape import TapeStyle, on_tape, round_half_up
from planlang.syntax.record import record

Axis = Literal["across", "up"]

COMPASS = {(1, 0): "east", (-1, 0): "west", (0, 1): "north", (0, -1): "south"}


@record
class Worst:
    """The worst of several alike: its name, its figure in mm, and how many others there are."""

    name: str
    size: float | Fraction
    others: int = 0

    @property
    def and_others(self) -> str:
        """What to add to a message about the worst."""
        if self.others == 0:
            return ""
        return f", and {self.others} more like it" if self.others > 1 else ", and one more like it"


def at_least(length: Fraction | float, tape: TapeStyle) -> str:
    """Print a length rounded up to the tape's step: how far a thing must move, by how much it sticks out."""
    steps = Fraction(length) / tape.step - Fraction(1, 10**6)
    return on_tape(max(-(-steps.numerator // steps.denominator), 0) * tape.step, tape)


def at_most(length: Fraction | float, tape: TapeStyle) -> str:
    """Print a length rounded down to the tape's step: the distance that is left."""
    steps = Fraction(length) / tape.step + Fraction(1, 10**6)
    return on_tape((steps.numerator // steps.denominator) * tape.step, tape)


def to_step(length: Fraction, tape: TapeStyle) -> Fraction:
    """The length on the tape's nearest mark."""
    steps = round_half_up(abs(length) / tape.step)
    return steps * tape.step if length >= 0 else -steps * tape.step


def bare(length: Fraction, tape: TapeStyle) -> str:
    """A length inside a sum: metric without its unit."""
    return on_tape(length, tape, with_unit=False)


def is_level(surface: Surface) -> bool:
    """True for the floor and for a flat ceiling, whose directions are those of the compass."""
    return surface.kind != "wall" and surface.pitch_deg == 0


def direction(surface: Surface, axis: Axis, positive: bool) -> str:
    """Which way that is: 'right', 'down', 'up the slope', 'east'."""
    if is_level(surface):
        return _compass(surface.across_dir if axis == "across" else surface.up_dir, positive)
    if axis == "across":
        return "right" if positive else "left"
    way = "up" if positive else "down"
    return way if surface.kind == "wall" else f"{way} the slope"


def edge_words(surface: Surface, axis: Axis, end: bool) -> str:
    """The edge at the start or the end of a direction: 'left edge', 'upper edge', 'north edge'."""
    if axis == "up" and not is_level(surface):
        return "upper edge" if end else "lower edge"
    return f"{direction(surface, axis, end)} edge"


def move_words(surface: Surface, move: Move, tape: TapeStyle) -> str:
    """'38 mm left and 20 mm down'."""
    parts = []
    axes: tuple[tuple[Axis, float], ...] = (("across", move.across), ("up", move.up))
    for axis, size in axes:
        if abs(size) > TOLERANCE:
            parts.append(f"{at_least(abs(size), tape)} {direction(surface, axis, size > 0)}")
    return " and ".join(parts)


def and_list(names: tuple[str, ...], word: str = "and") -> str:
    """'A', 'A and B', 'A, B and C'; or with another word for the last."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} {word} {names[-1]}"


def singular(word: str) -> str:
    """'rafter' for 'rafters'; members are named in the plural, one of them in the singular."""
    return word[:-1] if word.endswith("s") and not word.endswith("ss") else word


def _compass(way: Vector, positive: bool) -> str:
    sign = 1 if positive else -1
    return COMPASS[(sign * round(way[0]), sign * round(way[1]))]

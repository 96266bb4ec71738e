"""One figure of the book that can be asked about."""

import re
from collections.abc import Iterator

from planlang.plan.figure import Figure
from planlang.plan.model import Plan
from planlang.plan.tape import TapeStyle
from planlang.syntax.record import record
from planlang.syntax.span import Span


@record
class Topic:
    """`name` is what a command takes, `value` what the book prints, `table` the caption of the table that prints it."""

    name: str
    value: str
    table: str
    figure: Figure


Topics = Iterator[Topic]
EXACT = "geometry, exact; rounded only to be printed"


def finer(tape: TapeStyle) -> TapeStyle:
    """Finer than the tape, so that what goes into a figure adds up to it when it is reckoned again."""
    return TapeStyle(tape.units, tape.step / (16 if tape.is_imperial else 10))


def surveyed(plan: Plan, *names: str) -> tuple[Span, ...]:
    """Where a survey took another figure for one of these names than the plan was drawn with."""
    return tuple(each.at for each in plan.differences if set(names) & set(re.findall(r"[^\s,]+", each.subject)))

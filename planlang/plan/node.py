"""What every part of a typed plan has: the place where it was stated."""

from planlang.syntax.record import record
from planlang.syntax.span import Span


@record(kw_only=True)
class Node:
    """Anything that is stated at one place of a plan."""

    at: Span

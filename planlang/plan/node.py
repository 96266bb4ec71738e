"""What every part of a typed plan has: the place where it was stated."""

from dataclasses import dataclass

from planlang.syntax.span import Span


@dataclass(frozen=True, kw_only=True)
class Node:
    """Anything that is stated at one place of a plan."""

    at: Span

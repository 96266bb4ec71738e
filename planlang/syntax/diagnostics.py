"""What the compiler has to say about a plan: values, never exceptions."""

from collections.abc import Iterable
from enum import Enum
from typing import Generic, TypeVar

from planlang.syntax.record import record
from planlang.syntax.span import Span

T = TypeVar("T")


class Severity(Enum):
    """An error makes the build fail; a warning is printed and listed in the job book."""

    ERROR = "error"
    WARNING = "warning"


@record
class Diagnostic:
    """One finding: a stable code, where, what is wrong in the plan's words, and what would mend it.

    `also` names further places that belong to the finding, each with a short remark. `stops_book` says of an error
    whether it stands in the way of the job book. Where it doesn't, the build fails all the same and the book is marked.
    """

    code: str
    message: str
    span: Span
    mend: str = ""
    severity: Severity = Severity.ERROR
    also: tuple[tuple[str, Span], ...] = ()
    stops_book: bool = True

    @property
    def is_error(self) -> bool:
        """True when the finding makes the build fail."""
        return self.severity is Severity.ERROR

    @property
    def forbids_book(self) -> bool:
        """True when no job book may be written because of the finding."""
        return self.is_error and self.stops_book


@record
class Outcome(Generic[T]):
    """What a phase returns: its value, as far as it could be known, and its findings."""

    value: T
    diagnostics: tuple[Diagnostic, ...] = ()

    @property
    def ok(self) -> bool:
        """True when no finding is an error."""
        return not any(finding.is_error for finding in self.diagnostics)


def in_order(findings: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Sort by place and code, and drop repeats."""
    unique = dict.fromkeys(findings)
    return tuple(sorted(unique, key=lambda f: (f.span, f.code, f.message)))

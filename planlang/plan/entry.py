"""What a checked statement is, and the compiled clauses of its kind."""

from __future__ import annotations

from dataclasses import field, replace
from functools import cache

from planlang.plan.forms import Pattern, Values, pattern_of
from planlang.plan.values import Setting
from planlang.plan.vocabulary.declare import Clause, StatementKind
from planlang.syntax.nodes import Item, Statement
from planlang.syntax.parser import plan_parser
from planlang.syntax.record import record, workpiece
from planlang.syntax.span import Span


@workpiece
class Entry:
    """A checked statement. `faulty`: it, or a part of it, is at fault and has been reported.

    `assumed` holds what was taken for clauses left out: (clause, reason). `more` collects repeated clauses,
    `stated` the forms of the clauses that stand in the plan,
    `guess` is the name that a faulty statement probably defines. `origin` lets a block that takes figures be read
    again with others.
    """

    kind: StatementKind
    span: Span
    values: Values = field(default_factory=dict)
    more: list[Values] = field(default_factory=list)
    body: list[Entry] = field(default_factory=list)
    assumed: list[tuple[str, str]] = field(default_factory=list)
    stated: set[str] = field(default_factory=set)
    faulty: bool = False
    guess: str = ""
    origin: tuple[Statement, Setting] | None = None

    def copied(self) -> Entry:
        """A copy to build from: what is laid over it, or taken over by it, leaves this one as it was read."""
        copy = replace(self, values=dict(self.values), body=[part.copied() for part in self.body])
        copy.assumed = list(self.assumed)
        return copy

    def values_of_clause(self, parameter: str) -> list[Values]:
        """The occurrences of a repeated clause that has a parameter."""
        return [values for values in self.more if parameter in values]

    def all(self, word: str) -> list[Entry]:
        """The statements of its block with a word."""
        return [entry for entry in self.body if entry.kind.word == word]


@record
class Clauses:
    """The compiled clauses of a kind of statement, and the words that begin one."""

    patterns: tuple[tuple[Clause, Pattern], ...]
    stop: frozenset[str]


@cache
def clauses_of(kind: StatementKind) -> Clauses:
    """Compile the clauses of a kind, once."""
    patterns = tuple((clause, pattern_of(clause.form)) for clause in kind.clauses)
    return Clauses(patterns, frozenset().union(*(pattern.first for _, pattern in patterns)))


@cache
def items_of(text: str) -> list[Item]:
    """The items of a statement or clause that is written in the vocabulary itself."""
    return plan_parser(False).parse(text, start="line")  # type: ignore[return-value]

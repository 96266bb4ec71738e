"""What the vocabulary says about layout: where the names of a statement end, where its clauses begin."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache

from lark import Token

from planlang.plan.entries import best_fit, next_clause, read_line
from planlang.plan.entry import Entry, clauses_of, items_of
from planlang.plan.forms import Parameter, fit, goes_on, pattern, pattern_of
from planlang.plan.kinds import NoFit, sort_of
from planlang.plan.quantity import Quantity
from planlang.plan.values import Setting, ValueFault
from planlang.plan.vocabulary import FILE
from planlang.plan.vocabulary.declare import Clause, StatementKind
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.nodes import Item
from planlang.syntax.span import NOWHERE
from planlang.syntax.tidy.guide import Guide, Shape

NAMING = tuple(sort_of(kind) for kind in ("new", "names", "surface"))


class EveryFigure(Mapping[str, Quantity | None]):
    """Takes any name for a figure of unknown value: a file's layout does not depend on the files it uses."""

    def __contains__(self, name: object) -> bool:
        return True

    def __getitem__(self, name: str) -> None:
        return None

    def __iter__(self) -> Iterator[str]:
        return iter(())

    def __len__(self) -> int:
        return 0


COMMA = Token("COMMA", ",")
SETTINGS = (Setting("", "mm", {}), Setting("", "mm", EveryFigure()))


class VocabularyGuide:
    """A `Guide` to the statements of one block, or to nothing where the block is unknown."""

    def __init__(self, kind: StatementKind | None = FILE) -> None:
        self.kind = kind

    def within(self, word: str) -> Guide:
        """The guide to the block of a statement."""
        return VocabularyGuide(self.kind.by_word.get(word) if self.kind else None)

    def shape_of(self, items: list[Item]) -> Shape:
        """The shape of a statement as far as it is declared and rightly written."""
        kind = self.kind.by_word.get(str(items[0])) if self.kind else None
        if kind is None:
            return Shape()
        for setting in SETTINGS:
            starts = clause_starts(kind, items, setting)
            if starts is not None:
                commas = missing_commas(kind, items, starts, setting)
                return Shape(names_end(kind, items), frozenset(starts), commas)
        return Shape(names_end(kind, items))


def names_end(kind: StatementKind, items: list[Item]) -> int:
    """The index after the names with which a repeated statement begins, when more of its form follows; else 0."""
    if not kind.many:
        return 0
    for form in kind.forms:
        first, *others = pattern_of(form).pieces or (None,)
        if not isinstance(first, Parameter) or not (first.sort in NAMING or first.name == "name") or not others:
            continue
        try:
            found = fit(pattern(form, (first,)), items, 1, SETTINGS[0], clauses_of(kind).stop)
        except ValueFault:
            return 0
        if not isinstance(found, NoFit):
            return found.index
    return 0


def clause_starts(kind: StatementKind, items: list[Item], setting: Setting) -> dict[int, Clause] | None:
    """The items at which clauses begin, with the clauses; None for a statement that can't be read."""
    clauses = clauses_of(kind)
    starts: dict[int, Clause] = {}
    try:
        lead = best_fit(kind, items, setting, clauses.stop)
        if isinstance(lead, NoFit):
            return None
        index = lead.index
        while index < len(items):
            if items[index].type == "COMMA":
                index += 1
                continue
            found = next_clause(kind, items, index, setting, clauses)
            if isinstance(found, Diagnostic):
                return None
            starts[index] = found[0]
            index = found[1].index
    except ValueFault:
        return None
    return starts


def missing_commas(
    kind: StatementKind, items: list[Item], starts: dict[int, Clause], setting: Setting
) -> frozenset[int]:
    """The clauses that may be given a comma: none at all when the statement would then read differently."""
    without = written_without_comma(kind)
    wanted: set[int] = set()
    before = kind.forms
    for start, clause in starts.items():
        bare = start > 1 and items[start - 1].type != "COMMA"
        if bare and clause.form not in without and not would_join_list(kind, before, items[start : start + 2]):
            wanted.add(start)
        before = (clause.form,)
    with_commas = [each for index, item in enumerate(items) for each in ((COMMA, item) if index in wanted else (item,))]
    return frozenset(wanted if wanted and reads_the_same(kind, items, with_commas, setting) else ())


@cache
def written_without_comma(kind: StatementKind) -> frozenset[str]:
    """The forms of the clauses that the kind's own example writes without a comma, as in `spare 10 % of cloth`."""
    items = items_of(kind.example.removesuffix("{").rstrip())
    starts = clause_starts(kind, items, SETTINGS[0]) or {}
    return frozenset(clause.form for start, clause in starts.items() if items[start - 1].type != "COMMA")


def would_join_list(kind: StatementKind, forms: tuple[str, ...], following: list[Item]) -> bool:
    """Whether items after a comma could be read as more of the list that one of the forms before it ends in."""
    last_pieces = (piece for form in forms for piece in pattern_of(form).pieces[-1:])
    if not any(isinstance(piece, Parameter) and piece.many for piece in last_pieces):
        return False
    return goes_on([COMMA, *following], 0, clauses_of(kind).stop, frozenset())


def reads_the_same(kind: StatementKind, items: list[Item], others: list[Item], setting: Setting) -> bool:
    """Whether two spellings of a statement are both right and say the same."""
    entries = Entry(kind, NOWHERE), Entry(kind, NOWHERE)
    findings = [read_line(entry, spelt, setting) for entry, spelt in zip(entries, (items, others), strict=True)]
    first, second = ((entry.values, entry.more, entry.stated, entry.assumed) for entry in entries)
    return not any(findings) and first == second

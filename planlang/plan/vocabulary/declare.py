"""How the vocabulary is declared: statements, their forms and clauses. The checker and the manual read nothing else.

A form is words and parameters: `from {foot:south|north} wall at {height:length}`. A parameter is `{name:kind}`, or
`{name:kind+}` for a list; `[…]` encloses what may be left out; `a|b` outside braces are words that mean the same.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property

from planlang.syntax.record import record


@record
class Clause:
    """What may follow a statement's form after a comma, in any order. `default` is a form of the same clause, taken
    when it is left out, for the stated `reason`; the job book lists it as an
    assumption; without a reason it is not listed.

    `repeat` collects every occurrence under `key`.
    """

    form: str
    help: str = ""
    required: bool = False
    default: str = ""
    reason: str = ""
    repeat: str = ""


@record
class Variant:
    """A sort of block that one of its statements chooses: `word`, with `value` where it has several.

    `name` says what the block then is. It `needs` some statements that not all sorts take, and may take others.
    """

    word: str
    value: str
    name: str
    needs: tuple[str, ...]
    takes: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class StatementKind:
    """One kind of statement: its word, form, clauses and, for a block, the kinds of statement it takes.

    `many` statements of the kind may stand in one block; `required` ones must. `default` is a whole statement, taken
    when there is none, for the stated `reason`. Where a block has `variants`, one of them has to be chosen.
    """

    word: str
    form: str = ""
    help: str = ""
    example: str = ""
    clauses: tuple[Clause, ...] = ()
    block: tuple[StatementKind, ...] | None = None
    block_optional: bool = False
    many: bool = False
    required: bool = False
    default: str = ""
    reason: str = ""
    other_forms: tuple[str, ...] = field(default=())
    variants: tuple[Variant, ...] = ()

    @property
    def forms(self) -> tuple[str, ...]:
        """All forms, the usual one first."""
        return (self.form, *self.other_forms)

    @cached_property
    def of_variants(self) -> frozenset[str]:
        """The words that only some of its variants take."""
        return frozenset(word for variant in self.variants for word in (*variant.needs, *variant.takes))

    @cached_property
    def by_word(self) -> dict[str, StatementKind]:
        """The kinds of statement that its block takes, by their words."""
        return {kind.word: kind for kind in self.block or ()}

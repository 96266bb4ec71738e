"""A better word for a statement that doesn't follow its form: what slipped, and a mend that was tried."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from lark import Token

from planlang.plan import messages
from planlang.plan.forms import Optional, Parameter, Piece, Word, pattern_of, words_at
from planlang.plan.kinds import WALL_SIDES, sort_of
from planlang.plan.units import nearest_unit
from planlang.plan.values import NUMBERS
from planlang.plan.vocabulary.declare import StatementKind
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.nearest import nearest
from planlang.syntax.nodes import Item, first_token, last_token, span_of
from planlang.syntax.span import Span

# words that people put before a name, and that a plan leaves out
FILLERS = frozenset((
    *("the", "a", "an", "is", "are", "be", "my", "our", "door", "window", "rooflight", "luminaire", "vent", "panel"),
    *("array", "sheet", "wall", "surface"),
))  # fmt: skip
THREE_DIGITS = re.compile(r"\d{3}(?!\d)")
THOUSANDS = re.compile(r"\d{1,3}")

Repair = tuple[list[Item], str]


def item_at(items: Sequence[Item], finding: Diagnostic) -> int:
    """The index of the item at which a finding stands; behind the last where the line ends too soon."""
    if finding.code == "wrong-form" and finding.message.endswith("the line ends"):
        return len(items)
    here = (finding.span.line, finding.span.column)
    return next((index for index, item in enumerate(items) if (item.line, item.column) >= here), len(items))


def slip(kind: StatementKind, items: list[Item], finding: Diagnostic) -> Diagnostic | None:
    """The finding for a slip in how numbers are written, where there is one beside the item at fault."""
    at = item_at(items, finding)
    for index in (at, at + 1, at - 1):
        if 0 < index < len(items):
            found = beside(items, index, finding)
            if found is not None and (found.code != "size-sign" or takes_size(kind)):
                return found
    return None


def takes_size(kind: StatementKind) -> bool:
    """Whether a size may stand in a statement."""
    return any(":size" in form for form in (*kind.forms, *(clause.form for clause in kind.clauses)))


def beside(items: list[Item], index: int, finding: Diagnostic) -> Diagnostic | None:
    """What two neighbours tell: numbers without a comma, a decimal comma, `by` in a size, a loose inch mark."""
    left, right = last_token(items[index - 1]), first_token(items[index])
    span = span_of(left, finding.span.file)
    if items[index].type == "COMMA":
        after = first_token(items[index + 1]) if index + 1 < len(items) else None
        return decimal_comma(left, right, after, span) if after is not None else None
    if left.type not in NUMBERS or left.line != right.line:
        return None
    span = span.to(span_of(right, span.file))
    if right.type in NUMBERS:
        return messages.numbers_run_together(span, f"{left} {right}", readings(str(left), str(right)))
    if right.type == "STRING" and right[1:2] == " ":
        return messages.loose_inch_mark(span, str(left))
    after = first_token(items[index + 1]) if index + 1 < len(items) else None
    if str(right) == "by" and after is not None and after.type in NUMBERS:
        span = span.to(span_of(after, span.file))
        return messages.not_a_size(span, f"{left} by {after}", f"{left} x {after}")
    return None


def decimal_comma(left: Token, comma: Token, after: Token, span: Span) -> Diagnostic | None:
    """Two numbers with a comma close between them, which may be one."""
    close = comma.column == (left.column or 0) + len(left) and after.column == (comma.column or 0) + 1
    if not close or left.type != "NUMBER" or not left.isdecimal() or after.type not in NUMBERS:
        return None
    thousands = THREE_DIGITS.match(after) and THOUSANDS.fullmatch(left)
    span = span.to(span_of(after, span.file))
    one = f"{left}{after}" if thousands else f"{left}.{after}"
    return messages.decimal_comma(span, f"{left},{after}", one, f"{left}, {after}")


def readings(left: str, right: str) -> tuple[str, str]:
    """Two numbers that stand side by side: as one, where they may be one, and as two."""
    one = ""
    if THREE_DIGITS.match(right) and THOUSANDS.fullmatch(left):
        one = left + right
    elif right.endswith('"') and "'" not in right and left.isdecimal():
        one = f"{left}' {right}"
    elif right.startswith("-"):
        one = f"{left} - {right[1:]}"
    return one, f"{left}, {right}"


def repairs(kind: StatementKind, items: list[Item], finding: Diagnostic) -> Iterator[Repair]:
    """Other spellings of a statement that is at fault, each with the mend that it stands for; the likelier go first."""
    at = item_at(items, finding)
    before, here = words_at(items, at - 1), words_at(items, at)
    if " wants a name" in finding.message:
        if at != 1:
            return
        name = kind.example.split()[1].rstrip(",")
        text = " ".join(filter(None, (before, name, here.strip(","))))
        yield with_word(items, at, name), f"give it a name, such as `{text}`"
        return
    if before in FILLERS and at > 1:
        yield [*items[: at - 1], *items[at:]], f"take `{before}` out"
    if here == "and":
        yield [*items[:at], comma(), *items[at + 1 :]], "write a comma in the place of `and`"
    for index in (at, at - 1):
        if 0 < index < len(items) and items[index].type == "COMMA":
            yield [*items[:index], *items[index + 1 :]], "take the comma out"
    for index, word in ((at, before), (at + 1, here)):
        if 1 < index < len(items):
            yield [*items[:index], comma(), *items[index:]], f"put a comma after `{word}`"
    if at < len(items) and items[at].type == "NAME":
        yield from other_names(kind, items, at)
    for word in words_of(kind):
        text = " ".join(filter(None, (before, word, here)))
        yield with_word(items, at, word), f"`{word}` is missing: write `{text}`"
    if here in FILLERS:
        yield [*items[:at], *items[at + 1 :]], f"take `{here}` out"


def other_names(kind: StatementKind, items: list[Item], at: int) -> Iterator[Repair]:
    """Another word or name in the place of one: a word that is near, or both parts of a name that was parted."""
    before, here = words_at(items, at - 1), words_at(items, at)
    for near in (nearest_unit(here), *nearest(here, words_of(kind), 3, 0.6)):
        if near and near != here:
            yield [*items[:at], Token("NAME", near), *items[at + 1 :]], f"did you mean `{near}`?"
    if items[at - 1].type == "NAME":
        name = f"{before}-{here}"
        yield [*items[: at - 1], Token("NAME", name), *items[at + 1 :]], f"join the words of a name: `{name}`"


def nearest_form(kind: StatementKind, items: list[Item]) -> str:
    """The form that shares more words with the items than the first, which the example shows; else empty."""
    said = {str(item) for item in items[1:] if item.type == "NAME"}
    words = {form: {word for piece in pattern_of(form).pieces for word in words_in(piece)} for form in kind.forms}
    shared = {form: len(said & words[form]) for form in kind.forms}
    best = max(kind.forms, key=lambda form: shared[form])
    return best if shared[best] > shared[kind.forms[0]] else ""


def with_word(items: list[Item], at: int, word: str) -> list[Item]:
    """The items with a word put in."""
    return [*items[:at], Token("NAME", word), *items[at:]]


def comma() -> Token:
    """A comma that the plan does not have."""
    return Token("COMMA", ",")


def words_of(kind: StatementKind) -> list[str]:
    """The fixed words of a statement and its clauses, and the choices of words, each once."""
    forms = [*kind.forms, *(clause.form for clause in kind.clauses)]
    pieces = [piece for form in forms for piece in pattern_of(form).pieces]
    words = [word for piece in pieces for word in words_in(piece)]
    if any(isinstance(piece, Parameter) and piece.sort is sort_of("surface") for piece in pieces):
        words += ["wall", *WALL_SIDES]
    return list(dict.fromkeys(word for word in words if word != ","))


def words_in(piece: Piece) -> Iterator[str]:
    """The words that a piece of a form may stand for."""
    if isinstance(piece, Optional):
        for inner in piece.inner.pieces:
            yield from words_in(inner)
    else:
        yield from piece.choices if isinstance(piece, Word) else piece.sort.choices

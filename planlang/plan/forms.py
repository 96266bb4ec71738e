"""Forms: how the items of a statement are matched with the declared words and parameters."""

from __future__ import annotations

import re
from functools import cache

from planlang.plan import messages
from planlang.plan.kinds import MOST_NAMES, NoFit, Sort, Value, sort_of
from planlang.plan.values import VALUE_TYPES, Setting, ValueFault
from planlang.syntax.nodes import Compound, Item, span_of
from planlang.syntax.record import record, workpiece
from planlang.syntax.span import Span

DEEPEST_SHOWN, MOST_SHOWN = 4, 12
PIECE = re.compile(r"\{([\w-]+):([^}+]+)(\+?)\}|(\[)|(\])|([^\s\[\]{}]+)")


@record
class Word:
    """A fixed word, or one of several that mean the same; also a comma."""

    choices: tuple[str, ...]


@record
class Parameter:
    """A named parameter; `many` takes a list after commas."""

    name: str
    sort: Sort
    many: bool


@record
class Optional:
    """Words and parameters that may be left out together."""

    inner: Pattern


Piece = Word | Parameter | Optional
Values = dict[str, Value]


@record
class Fit:
    """A match: the parameters, and the index of the first item after it."""

    values: Values
    index: int


@workpiece
class Pattern:
    """A compiled form. `first` are the words it may begin with; empty when it begins with a parameter. `then` are those
    that may follow each of its pieces.
    """

    form: str
    pieces: tuple[Piece, ...]
    first: frozenset[str]
    then: tuple[frozenset[str], ...]


@cache
def pattern_of(form: str) -> Pattern:
    """Compile a form, once."""
    stack: list[list[Piece]] = [[]]
    for name, kind, many, opens, closes, word in PIECE.findall(form):
        if opens:
            stack.append([])
        elif closes:
            inner = pattern(form, tuple(stack.pop()))
            stack[-1].append(Optional(inner))
        elif name:
            stack[-1].append(Parameter(name, sort_of(kind), bool(many)))
        else:
            stack[-1].append(Word(tuple(word.split("|"))))
    return pattern(form, tuple(stack[0]))


def pattern(form: str, pieces: tuple[Piece, ...]) -> Pattern:
    """Pieces as a pattern."""
    then = tuple(first_words(pieces[number + 1 :]) for number in range(len(pieces)))
    return Pattern(form, pieces, first_words(pieces), then)


def first_words(pieces: tuple[Piece, ...]) -> frozenset[str]:
    """The words that pieces may begin with."""
    words: set[str] = set()
    for piece in pieces:
        if isinstance(piece, Word):
            return frozenset(words | set(piece.choices))
        if isinstance(piece, Parameter):
            return frozenset(words | set(piece.sort.choices)) if piece.sort.choices else frozenset()
        words |= piece.inner.first
    return frozenset(words)


def fit(pattern: Pattern, items: list[Item], index: int, setting: Setting, stop: frozenset[str]) -> Fit | NoFit:
    """Match a pattern with the items from an index on. `stop` are words that end a list of names.

    Raises:
        ValueFault: the items fit, but a value among them makes no sense.
    """
    values: Values = {}
    for number, piece in enumerate(pattern.pieces):
        if isinstance(piece, Optional):
            found = fit(piece.inner, items, index, setting, stop)
        elif isinstance(piece, Word):
            found = _fit_word(piece, items, index)
        elif piece.sort.free and is_left_out(items, index, pattern.then[number] or stop):
            found = NoFit(index, piece.sort.words)
        else:
            found = _fit_parameter(piece, items, index, setting, (stop, pattern.then[number]))
        if isinstance(found, NoFit):
            if isinstance(piece, Optional) and found.index == index:
                continue
            return found
        values.update(found.values)
        index = found.index
    return Fit(values, index)


def is_left_out(items: list[Item], index: int, then: frozenset[str]) -> bool:
    """Whether a name was left out: the word that should follow it stands in its place, and does not follow."""
    if index + 1 >= len(items) or str(items[index]) not in then:
        return False
    following = items[index + 1]
    return following.type in ("NAME", *VALUE_TYPES) and str(following) not in then


def _fit_word(piece: Word, items: list[Item], index: int) -> Fit | NoFit:
    if index < len(items):
        item = items[index]
        if item.type == "COMMA" and piece.choices == (",",):
            return Fit({}, index + 1)
        if item.type == "NAME" and str(item) in piece.choices:
            return Fit({}, index + 1)
    return NoFit(index, f"`{piece.choices[0]}`")


def _fit_parameter(
    piece: Parameter, items: list[Item], index: int, setting: Setting, ends: tuple[frozenset[str], frozenset[str]]
) -> Fit | NoFit:
    found = piece.sort.read(items, index, setting)
    if isinstance(found, NoFit):
        return found
    value, index = found
    if not piece.many:
        return Fit({piece.name: value}, index)
    values = [value]
    while goes_on(items, index, *ends):
        found = piece.sort.read(items, index + 1, setting)
        if isinstance(found, NoFit):
            break
        values.append(found[0])
        index = found[1]
        if len(values) > MOST_NAMES:
            raise ValueFault(messages.list_too_long(value.span, MOST_NAMES))
    what = None if any(value.what is None for value in values) else tuple(value.what for value in values)
    return Fit({piece.name: Value(what, value.span)}, index)


def goes_on(items: list[Item], index: int, stop: frozenset[str], then: frozenset[str]) -> bool:
    """Whether a list goes on after a comma: with a name that begins no clause (`stop`), or with a value that stands
    alone, before the words that follow the list (`then`), or before a clause.
    """
    if index + 1 >= len(items) or items[index].type != "COMMA":
        return False
    following = items[index + 1]
    if following.type in ("NAME", "RANGE"):
        return str(following) not in stop
    if following.type not in VALUE_TYPES:
        return False
    after = items[index + 2] if index + 2 < len(items) else None
    return after is None or after.type == "COMMA" or str(after) in then or str(after) in stop


def words_at(items: list[Item], index: int) -> str:
    """The item at an index as the plan writes it; empty at the end of the line."""
    if index >= len(items):
        return ""
    item = items[index]
    if item.type == "COMMA":
        return ","
    return str(item) if isinstance(item, str) else text_of(item)


def text_of(value: Compound, depth: int = 0) -> str:
    """A value of several parts, as a plan may write it; what is long or deep is cut short."""
    if depth > DEEPEST_SHOWN or len(value.parts) > MOST_SHOWN:
        return "…"
    parts = [part if isinstance(part, str) else text_of(part, depth + 1) for part in value.parts]
    if value.type == "CALL":
        return f"{parts[0]} ({', '.join(parts[1:])})"
    return (" x " if value.type == "SIZE" else " ").join(parts)


def place_at(items: list[Item], index: int, setting: Setting) -> Span:
    """The place of the item at an index, or of the last one when the line ends before it."""
    return span_of(items[min(index, len(items) - 1)], setting.file)

"""The generated tables and samples of the manual: kinds of value, units, surfaces, a message."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator

from planlang.compiler import Compilation
from planlang.manual.collection import all_pages
from planlang.manual.example import changed, compiled, small_plan, wrong_text
from planlang.plan.entries import PARAMETER
from planlang.plan.entry import items_of
from planlang.plan.kinds import SORTS, label_of
from planlang.plan.quantity import UNITS, Kind
from planlang.plan.values import VALUE_TYPES, Setting, value_of
from planlang.plan.vocabulary import FILE
from planlang.plan.vocabulary.declare import StatementKind
from planlang.syntax.report import finding_as_json, finding_as_text

EXAMPLE = re.compile(r"such as `([^`]+)`")
UNIT_WORDS = {
    Kind.LENGTH: "and feet with inches; a bare number takes the unit of its file",
    Kind.ANGLE: "or rise:run",
    Kind.MONEY: "the three capitals of a currency",
}


def table(heads: Iterable[str], rows: Iterable[Iterable[str]]) -> list[str]:
    """A Markdown table."""
    lines = [row_of(heads), "|" + "---|" * len(list(heads))]
    return lines + [row_of(row) for row in rows]


def row_of(cells: Iterable[str]) -> str:
    """One row of a table."""
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"


def kinds_below(kind: StatementKind) -> Iterator[StatementKind]:
    """All kinds of statement that a block takes, and those that their blocks take."""
    for inner in kind.block or ():
        yield inner
        yield from kinds_below(inner)


def kinds_table() -> list[str]:
    """What the capitals in the forms stand for: all kinds of parameter that the vocabulary uses."""
    forms = [form for kind in kinds_below(FILE) for form in (*kind.forms, *(clause.form for clause in kind.clauses))]
    used = {kind for form in forms for kind in PARAMETER.findall(form) if kind in SORTS}
    words: dict[str, str] = {}
    for kind, sort in SORTS.items():
        if kind in used:
            words.setdefault(label_of(kind), sort.words)
    return table(("In a form", "What is written there"), ((f"`{label}`", text) for label, text in words.items()))


def units_table() -> list[str]:
    """The units of each kind of quantity."""
    rows: dict[Kind, list[str]] = {kind: [] for kind in kinds_with_units()}
    for unit, (kind, _) in UNITS.items():
        rows.setdefault(kind, []).append(f"`{unit}`")
    cells = ((kind.value, " ".join([*units, UNIT_WORDS.get(kind, "")]).strip()) for kind, units in rows.items())
    return table(("Kind", "Units"), cells)


def kinds_with_units() -> list[Kind]:
    """The kinds of quantity that the examples of `SORTS` show, without plain numbers."""
    found: dict[Kind, None] = {}
    for sort in SORTS.values():
        example = EXAMPLE.search(sort.words)
        kind = kind_of(example[1]) if example else None
        if kind is not None and kind is not Kind.NUMBER:
            found[kind] = None
    return list(found)


def kind_of(text: str) -> Kind | None:
    """The kind of a value as it is written; None for what is no quantity."""
    item = items_of(text)[0]
    if item.type not in VALUE_TYPES:
        return None
    value = value_of(item, Setting("", "mm", {}))
    return value.kind if value else None


def surfaces_table() -> list[str]:
    """Datum and directions of each surface of a room with a flat ceiling and a slope, as geometry names them."""
    slope = (
        "flat ceiling at 2800",
        "flat ceiling at 2800\n    slope south-slope from south wall at 1500, pitch 60 deg",
    )
    lining = ("lining walls, floor plaster", "lining walls, floor, south-slope plaster")
    compilation = compiled(changed(small_plan(), (slope, lining)))
    if compilation.compiled is None:
        raise ValueError("the room of the manual can't be compiled")
    surfaces = compilation.compiled.room.surfaces
    rows = ((s.name.replace("-", " "), s.datum_words, s.across_words, s.up_words) for s in surfaces)
    return table(("Surface", "Datum", "`across`", "`up`"), rows)


def sample() -> Compilation:
    """A plan with one misspelt name."""
    return compiled(wrong_text(all_pages()["unknown-name"]))


def message_sample() -> list[str]:
    """A message as the commands print it."""
    compilation = sample()
    return ["```text", *finding_as_text(compilation.findings[0], compilation.project).splitlines(), "```"]


def json_sample() -> list[str]:
    """The same message as JSON."""
    return ["```json", *json.dumps(json.loads(finding_as_json(sample().findings[0])), indent=2).splitlines(), "```"]

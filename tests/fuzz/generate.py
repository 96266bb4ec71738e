"""Plans from the vocabulary: the base plan with statements written by chance after their declared forms."""

from __future__ import annotations

import re
from functools import cache

from hypothesis import strategies as st

from planlang.plan.vocabulary import FILE
from planlang.plan.vocabulary.declare import StatementKind
from tests.fuzz.base import BASE, MAIN
from tests.fuzz.oracle import Case

PIECE = re.compile(r"\{([\w-]+):([^}+]+)(\+?)\}|(\[)|(\])|([^\s\[\]{}]+)")
LENGTHS = ("0", "1", "3.2", "12", "50", "75", "100", "300", "450", "600", "1200", "2000", "2600", "5000")
ODD_LENGTHS = ("1000000", "1/3", "0.0001", "margin", "edge", "5' 10 3/4\"", '70 3/4"', "1 797 mm", "1.5 m", "nothing")
AMOUNTS = ("0", "1", "2", "4", "7.5", "0.05", "45", "500", "9000", "1000000000", "-1")
UNITS = {
    "density": "kg/m3", "areal_mass": "g/m2", "flow_resistivity": "Pa.s/m2", "flow_resistance": "Pa.s/m",
    "force": "N", "mass": "kg", "time": "s", "hours": "h", "frequency": "Hz", "share": "%", "temperature": "C",
    "money": "GBP", "absorption_area": "m2", "angle": "deg",
}  # fmt: skip
NAMES = {
    "sheet": ("ply",), "batt": ("wool",), "cloth": ("serge",), "hardware": ("eye", "lag-eye"), "link": ("eye",),
    "anchor": ("lag-eye", "eye"), "screw": ("lag-eye", "eye"), "timber": ("spruce", "batten"), "lining": ("plaster",),
    "panel": ("cloud", "flag"), "array": ("clouds", "flags", "drops", "lights"), "seating": ("person",),
    "stock": ("ply", "wool", "serge"), "of": ("doors", "windows", "edges", "d1", "R2", "luminaires"),
    "takes": ("width",), "base": ("cloud", "ply", "eye", "spruce", "wool"),
}  # fmt: skip
NEW_NAMES = ("a1", "b2", "cloud", "clouds", "K", "R9", "width", "leaner")
SURFACES = ("ceiling", "pitched", "floor", "walls", "south wall", "east wall", "west wall", "attic")
COUNTS = ("1", "1", "2", "2", "3", "4", "6", "20", "500", "501", "1.5")


@st.composite
def quantities(draw: st.DrawFn, kind: str) -> str:
    """A value of a kind, now and then an odd one, or a sum."""
    if kind in ("length", "distance", "position"):
        one = draw(st.sampled_from(LENGTHS * 4 + ODD_LENGTHS))
    else:
        one = f"{draw(st.sampled_from(AMOUNTS))} {UNITS.get(kind, '')}".strip()
    match draw(st.integers(0, 24)):
        case 0:
            return f"({one} + {draw(st.sampled_from(LENGTHS))}) * {draw(st.sampled_from(AMOUNTS))}"
        case 1:
            return f"most of ({one}, {one} / {draw(st.sampled_from(AMOUNTS))})"
        case 2:
            return draw(st.sampled_from(ODD_LENGTHS))
    return one


@st.composite
def parameters(draw: st.DrawFn, name: str, kind: str) -> str:
    """What may stand for a parameter of a form."""
    if kind in ("ref", "new"):
        known = NAMES.get(name, NEW_NAMES)
        return draw(st.sampled_from(known * 4 + NEW_NAMES))
    if kind in ("size2", "size3"):
        return " x ".join(draw(st.sampled_from(LENGTHS)) for _ in range(int(kind[-1])))
    known = {
        "surface": SURFACES, "names": ("n1", "n1..n3", "R1..R3", "R2, R3", "clouds", "D1"), "count": COUNTS,
        "counting": ("one", "two", "six"), "text": ('"a text"', '""', '"<b>&"'), "currency": ("GBP", "EUR"),
        "date": ("2026-11-25", "2026-12-01", "0000-00-00"), "absorption": ("0", "0.1", "0.5", "1", "1.3", "2"),
        "number": AMOUNTS, "specific_gravity": ("0.36", "0.42", "0.05", "1.5", "0", "42"),
        "quantity": (*LENGTHS, "5 kg", "20 %", "40 deg", "3 GBP", "0.5"),
    }.get(kind)  # fmt: skip
    if known:
        return draw(st.sampled_from(known))
    if "|" in kind or kind not in (*UNITS, "length", "distance", "position"):
        return draw(st.sampled_from(kind.split("|")))
    return draw(quantities(kind))


@st.composite
def written(draw: st.DrawFn, form: str) -> str:
    """A form with its parameters filled in."""
    words: list[str] = []
    skipping = False
    for name, kind, many, opens, closes, word in PIECE.findall(form):
        if opens:
            skipping = draw(st.booleans())
        elif closes:
            skipping = False
        elif skipping:
            continue
        elif name:
            count = draw(st.sampled_from((1, 1, 2, 6))) if many else 1
            words.append(", ".join(draw(parameters(name, kind)) for _ in range(count)))
        else:
            words.append(word.split("|")[0])
    return " ".join(words)


@st.composite
def statements(draw: st.DrawFn, kind: StatementKind, depth: int = 1) -> list[str]:
    """The lines of a statement of a kind, with clauses and, where it takes one, a block."""
    line = f"{kind.word} {draw(written(draw(st.sampled_from(kind.forms))))}".rstrip()
    for clause in kind.clauses:
        if draw(st.integers(0, 9)) < (9 if clause.required else 3):
            line += ", " + draw(written(clause.form))
    if kind.block is None:
        return [line]
    lines = [f"{line} {{"]
    for inner in kind.block:
        if inner.required or draw(st.integers(0, 9)) < (2 if depth < 3 else 0):
            lines += draw(statements(inner, depth + 1))
    return [*lines, "}"]


@cache
def template() -> tuple[tuple[str, StatementKind], ...]:
    """The lines of the base plan, each with the kind of block that it stands in."""
    stack: list[StatementKind] = [FILE]
    lines: list[tuple[str, StatementKind]] = []
    for line in BASE.splitlines():
        if line.strip() == "}":
            stack.pop()
            lines.append((line, stack[-1]))
            continue
        lines.append((line, stack[-1]))
        if line.endswith("{"):
            stack.append(stack[-1].by_word[line.split()[0]])
    return tuple(lines)


@st.composite
def cases(draw: st.DrawFn) -> Case:
    """The base plan with one to four statements put in, each in the place of one of its word where there is one."""
    lines = [[line] for line, _ in template()]
    for _ in range(draw(st.integers(1, 4))):
        at = draw(st.integers(0, len(lines) - 1))
        within = template()[at][1]
        kind = draw(st.sampled_from(within.block or ()))
        new = draw(statements(kind))
        same = [
            number
            for number, (line, block) in enumerate(template())
            if block is within and line.split()[:1] == [kind.word] and not line.endswith("{")
        ]
        if same and draw(st.integers(0, 9)) < 8:
            lines[draw(st.sampled_from(same))] = new
        else:
            lines[at] = [*new, *lines[at]] if draw(st.booleans()) else [*lines[at], *new]
    text = "\n".join(line for group in lines for line in group)
    command = draw(st.sampled_from(("check",) * 15 + ("build",)))
    option = draw(st.sampled_from(("", "", "leaner"))) if command == "build" else ""
    return Case({MAIN: text.encode()}, MAIN, command, option)

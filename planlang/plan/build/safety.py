"""What the loads are checked by, and the papers of the materials."""

from __future__ import annotations

from dataclasses import fields
from fractions import Fraction
from functools import partial
from typing import Any

from planlang.plan import messages
from planlang.plan.build.names import Definition, Names, Unknown, all_of, maybe, one, value
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name
from planlang.plan.safety import Evidence, SafetyRules, Stricter
from planlang.syntax.record import record
from planlang.syntax.span import Span

COVERED = ("sheet", "batt", "cloth", "timber", "panel")
DEFAULT: dict[str, Any] = {field.name: field.default for field in fields(SafetyRules)}


def build_safety(names: Names, entry: Entry | None, start: Span) -> SafetyRules:
    """The rules that the loads are checked by: the defaults, and what the plan makes stricter."""
    if entry is None:
        return SafetyRules(at=start)
    rules = one(entry, "timber-rules")
    names.assume(rules, "safety")
    figures: dict[str, Any] = {}
    changed = [_stricter(names, part, figures) for part in entry.body if part.kind.word != "timber-rules"]
    return SafetyRules(
        at=entry.span,
        timber_rules=value(rules, "rules"),
        changed=tuple(changed),
        **figures,
    )


def _stricter(names: Names, part: Entry, figures: dict[str, Any]) -> Stricter:
    """Note one figure; it must be at least as careful as the default."""
    if part.faulty:
        raise Unknown
    parameter, figure = next((each, FIGURES[each]) for each in _parameters(part) if each in FIGURES)
    amount = value(part, parameter.rpartition(" ")[2])
    default: Fraction = DEFAULT[figure.field]
    if amount > default if figure.less_is_stricter else amount < default:
        bound = "most" if figure.less_is_stricter else "least"
        shown = f"{float(default * figure.scale):g}{figure.unit}"
        rule = f"{figure.words} can only be made stricter: it is {shown} at {bound}"
        names.sink.append(messages.out_of_range(part.span, rule))
        raise Unknown
    if figure.field in figures:
        names.sink.append(messages.disagree(part.span, f"{figure.words} is stated twice", "take one out"))
        raise Unknown
    figures[figure.field] = amount
    return Stricter(at=part.span, what=figure.words, value=Fraction(amount), reason=value(part, "reason"))


def _parameters(part: Entry) -> list[str]:
    """What a statement is looked up by: its word, where it applies, its parameter."""
    where = f"{value(part, 'where')} " if "where" in part.values else ""
    return [f"{part.kind.word} {where}{name}" for name in part.values]


@record
class Limit:
    """A figure of the safety rules: its field, what it is called, how it is printed, which way it is stricter."""

    field: str
    words: str
    unit: str = ""
    scale: int = 1
    less_is_stricter: bool = False


FIGURES = {
    "factor hardware factor": Limit("hardware_factor", "the design factor on hardware"),
    "factor people factor": Limit("people_factor", "the design factor over people"),
    "masses share": Limit("tolerance", "the tolerance on masses", " %", 100),
    "damp share": Limit("damp", "the allowance for damp", " %", 100),
    "blows factor": Limit("dynamic", "the factor for blows"),
    "second-support mass": Limit("second_kg", "the mass that needs a second support", " kg", less_is_stricter=True),
    "second-support height": Limit(
        "second_height", "the height that needs a second support", " mm", less_is_stricter=True
    ),
    "inspect months": Limit("inspect_months", "the time between looks", " months", less_is_stricter=True),
}


def build_papers(names: Names) -> tuple[Evidence, ...]:
    """All papers, in the order of the plan."""
    papers = [each for each in names.definitions.values() if each.entry.kind.word == "evidence"]
    return tuple(all_of(*(partial(names.build, paper.name, "evidence", build_evidence) for paper in papers)))


def build_evidence(names: Names, definition: Definition) -> Evidence:
    """One paper; what it covers must be stock or a panel type of the plan."""
    entry = definition.entry
    covers, paper, tested, says = all_of(
        lambda: tuple(_covered(names, name) for name in value(one(entry, "covers"), "of")),
        lambda: value(one(entry, "paper"), "text"),
        lambda: value(one(entry, "tested"), "text"),
        lambda: value(one(entry, "says"), "text"),
    )
    until = maybe(entry, "until")
    return Evidence(
        at=definition.name.span,
        name=definition.name.text,
        covers=covers,
        paper=paper,
        tested=tested,
        says=says,
        until=value(until, "date") if until else "",
    )


def _covered(names: Names, name: Name) -> str:
    names.find(name, COVERED)
    return name.text

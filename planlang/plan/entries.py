"""Statements -> entries: each statement checked against its declared kind, with its parameters read."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache

from planlang.plan import messages
from planlang.plan.entry import Clauses, Entry, clauses_of, items_of
from planlang.plan.forms import Fit, Values, fit, pattern_of, place_at, words_at
from planlang.plan.kinds import NoFit, Value, label_of, misspelt_unit
from planlang.plan.quantity import Quantity
from planlang.plan.values import Setting, ValueFault, in_plan_unit, value_of
from planlang.plan.vocabulary import homes_of
from planlang.plan.vocabulary.declare import Clause, StatementKind
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.nearest import nearest
from planlang.syntax.nodes import Item, Statement, span_across, span_of
from planlang.syntax.span import NOWHERE, Span

DEEPEST_BLOCK = 8
MOST_FINDINGS = 1000
MOST_MENDED = 100  # findings after which no mends are tried out any more
FORMS = frozenset({"wrong-form", "unknown-clause", "stated-twice"})
CODES = FORMS | {"wrong-kind", "unit-not-stated", "count-differs"}
PARAMETER = re.compile(r"\{[\w-]+:([^}+]+)\+?\}")


def read_block(
    statements: list[Statement],
    kind: StatementKind,
    where: str,
    setting: Setting,
    sink: list[Diagnostic],
    depth: int = 0,
) -> list[Entry]:
    """Check the statements of one block; findings go to `sink`."""
    entries: list[Entry] = []
    first: dict[str, Span] = {}
    for statement in parted(statements, kind, setting, sink):
        if len(sink) >= MOST_FINDINGS:
            end_of_findings(statement, setting, sink)
            break
        entry = read_statement(statement, kind, where, setting, sink, depth)
        word = entry.kind.word
        if word in first and not entry.kind.many and not statement.faulty:
            sink.append(messages.statement_twice(entry.span, word, first[word]))
            continue
        first.setdefault(word, entry.span)
        entries.append(entry)
    return entries


def parted(
    statements: list[Statement], within: StatementKind, setting: Setting, sink: list[Diagnostic]
) -> Iterator[Statement]:
    """The statements of a block, where a comma at the end of a line took the next statement with it as two."""
    for statement in statements:
        comma = last_swallowing_comma(statement, within)
        kind = within.by_word.get(statement.word)
        if not comma or kind is None or not read_line(Entry(kind, NOWHERE), statement.items, replace(setting)):
            yield statement
            continue
        before, after = statement.items[:comma], statement.items[comma + 1 :]
        yield from parted([Statement(before)], within, setting, sink)
        sink.append(messages.statement_swallowed(span_of(statement.items[comma], setting.file), str(after[0])))
        yield Statement(after, statement.body)


def last_swallowing_comma(statement: Statement, within: StatementKind) -> int:
    """The index of the last comma at the end of a line after which a word of the block's statements stands; else 0."""
    items = statement.items
    if statement.faulty or items[0].line == items[-1].line:
        return 0
    places = (
        index
        for index in range(len(items) - 2, 0, -1)
        if items[index].type == "COMMA" and "\n" in str(items[index]) and str(items[index + 1]) in within.by_word
    )
    return next(places, 0)


def end_of_findings(statement: Statement, setting: Setting, sink: list[Diagnostic]) -> None:
    """Say once that no more is said."""
    if len(sink) == MOST_FINDINGS:
        sink.append(messages.too_many_errors(span_of(statement.items[0], setting.file), MOST_FINDINGS))


def read_statement(
    statement: Statement, within: StatementKind, where: str, setting: Setting, sink: list[Diagnostic], depth: int
) -> Entry:
    """Check one statement. One whose word says nothing here is an entry of no kind that its block takes."""
    head = statement.items[0]
    span = span_of(head, setting.file)
    whole = parted_word(statement.items, within)
    kind = within.by_word.get(str(head)) if not whole else None
    misspelt = kind is None
    if kind is None:
        word = words_at(statement.items, 0)
        near = [whole] if whole else nearest(word, within.by_word, 1, 0.7)
        if not statement.faulty:
            homes, known = homes_of(word), list(within.by_word)
            sink.append(
                messages.unknown_statement(span, word, where, near[0] if near else "", known=known, homes=homes)
            )
        if not near:
            return Entry(unknown_kind(word, statement.body is not None), span, faulty=True)
        kind = within.by_word[near[0]]
    entry = Entry(kind, span, faulty=statement.faulty, guess=second_word(statement))
    if not statement.faulty:
        findings = read_well(entry, statement.items, setting, bare=len(sink) > MOST_MENDED)
        entry.faulty = bool(findings)
        sink.extend(findings if not misspelt else ())
    if entry.faulty and entry.guess in words_after_name(kind):
        entry.guess = ""
    take_block(entry, statement, setting, sink, depth)
    return entry


@cache
def words_with_hyphens(within: StatementKind) -> dict[str, list[list[str]]]:
    """The words of a block's statements that have hyphens, in parts, by the first part."""
    words = [word.split("-") for word in within.by_word if "-" in word]
    return {parts[0]: [other for other in words if other[0] == parts[0]] for parts in words}


def parted_word(items: list[Item], within: StatementKind) -> str:
    """The word of a statement that is written with blanks in the place of its hyphens; empty where there is none."""
    for parts in words_with_hyphens(within).get(str(items[0]), ()):
        if [str(item) for item in items[: len(parts)]] == parts:
            return "-".join(parts)
    return ""


@cache
def unknown_kind(word: str, has_block: bool) -> StatementKind:
    """Stands for a statement whose word says nothing where it stands."""
    return StatementKind(word, block=() if has_block else None, many=True)


def is_unknown(entry: Entry, within: StatementKind) -> bool:
    """Whether an entry of a block stands for a statement whose word says nothing there."""
    return entry.kind.word not in within.by_word


def second_word(statement: Statement) -> str:
    """What a statement names, most often: its second word."""
    return str(statement.items[1]) if len(statement.items) > 1 and statement.items[1].type in ("NAME", "RANGE") else ""


@cache
def words_after_name(kind: StatementKind) -> frozenset[str]:
    """The words that follow the name of a statement of a kind, and so are hardly a name themselves."""
    patterns = [pattern_of(form) for form in kind.forms]
    return clauses_of(kind).stop.union(*(pattern.then[0] for pattern in patterns if pattern.then))


def take_block(entry: Entry, statement: Statement, setting: Setting, sink: list[Diagnostic], depth: int) -> None:
    """Check the block of a statement, or that it has none."""
    kind = entry.kind
    if statement.body is None:
        if kind.block is not None and not kind.block_optional and not statement.faulty:
            sink.append(messages.block_missing(entry.span, kind.word))
            entry.faulty = True
        return
    if kind.block is None or depth >= DEEPEST_BLOCK:
        if not statement.faulty:
            sink.append(messages.block_unwanted(entry.span, kind.word))
        return
    where = f"`{kind.word} {entry.guess}`" if entry.guess else f"`{kind.word}`"
    if "takes" in kind.by_word:
        entry.origin = (statement, setting)
        setting = with_taken(statement.body, setting, {})
    entry.body = read_block(statement.body, kind, where, setting, sink, depth + 1)


def with_taken(statements: list[Statement], setting: Setting, given: Mapping[str, Quantity]) -> Setting:
    """The setting inside a block that takes figures: their usual values, unless others are given."""
    usual: dict[str, Quantity | None] = {}
    for statement in statements:
        if statement.word == "takes" and not statement.faulty and len(statement.items) == 3:
            usual[str(statement.items[1])] = taken_value(statement.items[2], setting)
    return Setting(setting.file, setting.unit, {**setting.figures, **usual, **given})


def taken_value(item: Item, setting: Setting) -> Quantity | None:
    """The usual value of a figure that a block takes; None where it is at fault, which its statement reports."""
    try:
        found = value_of(item, setting)
        return in_plan_unit(found, setting, item) if found else None
    except ValueFault:
        return None


def read_variant(entry: Entry, given: Mapping[str, Quantity], sink: list[Diagnostic]) -> list[Entry]:
    """The block of an entry read again with other figures for what it takes."""
    assert entry.origin is not None
    statement, setting = entry.origin
    inner = with_taken(statement.body or [], setting, given)
    return read_block(statement.body or [], entry.kind, f"`{entry.kind.word} {entry.guess}`", inner, sink, 1)


def read_well(entry: Entry, items: list[Item], setting: Setting, bare: bool) -> list[Diagnostic]:
    """Read one statement; what is wrong comes with the mend that was tried and works, where there is one.

    `bare`: so much is wrong already that no time is spent on mends.
    """
    unit = setting.unit
    findings = read_line(entry, items, setting)
    if not findings or findings[0].code not in CODES or bare:
        return findings
    from planlang.plan.repair import repairs, slip  # noqa: PLC0415 - most plans are without a fault

    finding = slip(entry.kind, items, findings[0])
    if finding is not None:
        setting.unit = unit
        return [finding]
    if findings[0].code not in FORMS:
        return findings
    for other, mend in repairs(entry.kind, items, findings[0]):
        if not read_line(Entry(entry.kind, entry.span), other, replace(setting)):
            return [replace(findings[0], mend=mend)]
    return findings


def read_line(entry: Entry, items: list[Item], setting: Setting) -> list[Diagnostic]:
    """Read the parameters of one statement into its entry; returns what is wrong, at most one finding."""
    kind = entry.kind
    clauses = clauses_of(kind)
    try:
        lead = best_fit(kind, items, setting, clauses.stop)
        if isinstance(lead, NoFit):
            return [misfit(kind, items, lead, setting)]
        entry.values = lead.values
        return read_clauses(entry, items, lead.index, setting, clauses)
    except ValueFault as fault:
        return [fault.finding]


def best_fit(kind: StatementKind, items: list[Item], setting: Setting, stop: frozenset[str]) -> Fit | NoFit:
    """The form that takes most of the items; where none goes on as far as another fails, that failure."""
    fits: list[Fit] = []
    misfits: list[NoFit] = []
    for form in kind.forms:
        found = fit(pattern_of(form), items, 1, setting, stop)
        (fits if isinstance(found, Fit) else misfits).append(found)  # type: ignore[arg-type]
    best = max(fits, key=lambda found: found.index, default=None)
    worst = max(misfits, key=lambda found: found.index, default=None)
    if best is None:
        assert worst is not None
        wanted = dict.fromkeys(found.wanted for found in misfits if found.index == worst.index)
        return NoFit(worst.index, " or ".join(wanted))
    ended = best.index >= len(items) or items[best.index].type == "COMMA" or str(items[best.index]) in stop
    return best if ended or worst is None or worst.index <= best.index else worst


def read_clauses(entry: Entry, items: list[Item], index: int, setting: Setting, clauses: Clauses) -> list[Diagnostic]:
    """Read what follows the form; clauses may stand in any order, with or without a comma between."""
    used = entry.stated
    while index < len(items):
        if items[index].type == "COMMA":
            index += 1
            if index == len(items):
                return [
                    messages.wrong_form(
                        place_at(items, index, setting), entry.kind.word, "another clause", "", entry.kind.example
                    )
                ]
            continue
        found = next_clause(entry.kind, items, index, setting, clauses)
        if isinstance(found, Diagnostic):
            return [found]
        clause, taken = found
        if clause.repeat:
            entry.more.append(taken.values)
        elif clause.form in used:
            return [messages.clause_twice(place_at(items, index, setting), plain_form(clause.form))]
        else:
            entry.values.update(taken.values)
        used.add(clause.form)
        index = taken.index
    return complete_clauses(entry, span_across(items[0], items[-1], setting.file))


def next_clause(
    kind: StatementKind, items: list[Item], index: int, setting: Setting, clauses: Clauses
) -> tuple[Clause, Fit] | Diagnostic:
    """The clause that begins at an item and takes most, or what is wrong there."""
    best: tuple[Clause, Fit] | None = None
    furthest: NoFit | None = None
    for clause, pattern in clauses.patterns:
        if pattern.first and str(items[index]) not in pattern.first:
            continue
        found = fit(pattern, items, index, setting, clauses.stop)
        if isinstance(found, NoFit):
            furthest = found if furthest is None or found.index > furthest.index else furthest
        elif best is None or found.index > best[1].index:
            best = (clause, found)
    if best is not None:
        return best
    if furthest is not None and furthest.index > index:
        return misfit(kind, items, furthest, setting)
    return stray(kind, items, index, setting)


def misfit(kind: StatementKind, items: list[Item], found: NoFit, setting: Setting) -> Diagnostic:
    """The finding for items that leave a form half way."""
    place = place_at(items, found.index, setting)
    unit = None if "date" in found.wanted else stray_unit(items, found.index, setting)
    from planlang.plan.repair import nearest_form  # noqa: PLC0415 - as above

    meant = nearest_form(kind, items)
    shown = f"{kind.word} {plain_form(meant)}" if meant else kind.example
    return unit or messages.wrong_form(place, kind.word, found.wanted, words_at(items, found.index), shown)


def stray(kind: StatementKind, items: list[Item], index: int, setting: Setting) -> Diagnostic:
    """The finding for items that begin no clause."""
    finding = stray_unit(items, index, setting)
    if finding:
        return finding
    text = words_at(items, index)
    forms = [plain_form(clause.form) for clause in kind.clauses]
    heads = sorted({word for clause in kind.clauses for word in pattern_of(clause.form).first})
    near = nearest(text, heads, 1, 0.75)
    return messages.unknown_clause(place_at(items, index, setting), kind.word, text, near[0] if near else "", forms)


def stray_unit(items: list[Item], index: int, setting: Setting) -> Diagnostic | None:
    """The finding for a misspelt unit after a number, if that is what stands here or next."""
    if index + 1 < len(items) and items[index].type == "NUMBER":
        index += 1
    return misspelt_unit(items, index, setting)


def plain_form(form: str) -> str:
    """A form as it is printed: `pitch ANGLE`, `frame NAME`."""
    return PARAMETER.sub(lambda found: label_of(found[1]), form.replace("[and] ", "")).replace("[", "").replace("]", "")


def complete_clauses(entry: Entry, span: Span) -> list[Diagnostic]:
    """Take the defaults of clauses left out; a required one that is missing is a finding."""
    for clause in entry.kind.clauses:
        if clause.form in entry.stated:
            continue
        if clause.required:
            return [messages.clause_missing(span, entry.kind.word, plain_form(clause.form), clause.help)]
        if clause.default:
            entry.values.update(values_of_default(clause.form, clause.default, entry.span))
            entry.assumed.append((clause.default, clause.reason))
    return []


def values_of_default(form: str, text: str, span: Span) -> Values:
    """The parameters of a default, placed where the statement stands."""
    found = fit(pattern_of(form), items_of(text), 0, Setting(span.file, None, {}), frozenset())
    if isinstance(found, NoFit):
        raise ValueError(f"the default `{text}` does not fit its form `{form}`")
    return {name: Value(value.what, span) for name, value in found.values.items()}


def entry_of_default(kind: StatementKind, span: Span) -> Entry:
    """The entry of a statement that was left out, from its declared default."""
    entry = Entry(kind, span)
    findings = read_line(entry, items_of(kind.default), Setting(span.file, None, {}))
    if findings:
        raise ValueError(f"the default `{kind.default}` is at fault: {findings[0].message}")
    entry.values = {name: Value(value.what, span) for name, value in entry.values.items()}
    entry.assumed = [(kind.default, kind.reason)]
    return entry

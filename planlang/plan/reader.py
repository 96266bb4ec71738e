"""A project's files -> the typed plan."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import partial
from typing import TypeVar

from planlang.plan import messages
from planlang.plan.build.arrays import build_array
from planlang.plan.build.bays import cut_to_bays, is_cut_to_bays
from planlang.plan.build.buying import build_market
from planlang.plan.build.changes import apply_option, check_options, option_names
from planlang.plan.build.names import Definition, Names, Unknown, all_of, attempt, maybe, one, value
from planlang.plan.build.rooms import build_room, build_use
from planlang.plan.build.safety import build_papers, build_safety
from planlang.plan.build.sketch import Sketch, sketch_of
from planlang.plan.build.stated import build_phases, build_region, build_requirements, build_rules
from planlang.plan.build.stock import build_rates, known_sheets
from planlang.plan.build.survey import Readings, measure_stock, survey_room, surveys_in_order
from planlang.plan.entries import is_unknown, parted, read_block
from planlang.plan.entry import Entry
from planlang.plan.model import Array, Job, Plan
from planlang.plan.quantity import INCH, Quantity
from planlang.plan.room import Room
from planlang.plan.tape import METRIC, USUAL_TAPES, TapeStyle
from planlang.plan.units import nearest_unit
from planlang.plan.values import Setting
from planlang.plan.vocabulary import FILE
from planlang.syntax.diagnostics import Diagnostic, Outcome, in_order
from planlang.syntax.nearest import nearest
from planlang.syntax.nodes import PlanFile, Statement
from planlang.syntax.project import Project
from planlang.syntax.record import record
from planlang.syntax.span import Span

T = TypeVar("T")
UNITS = ("mm", "cm", "m", "in", "ft-in")


@record
class Checked:
    """The checked statements of a project, file by file, with what was found: read once, typed once for each option."""

    project: Project
    files: tuple[Entry, ...]
    findings: tuple[Diagnostic, ...]


def read_plan(project: Project, option: str = "") -> Outcome[Plan | None]:
    """The typed plan of a project, with an option laid over it; None where too much is at fault."""
    return type_plan(check_statements(project), option)


def check_statements(project: Project) -> Checked:
    """Check the statements of all files of a project."""
    sink: list[Diagnostic] = []
    figures: dict[str, Quantity | None] = {}
    files = tuple(read_file(file, figures, sink) for file in project.files)
    return Checked(project, files, tuple(sink))


def type_plan(checked: Checked, option: str, surveyed: bool = True) -> Outcome[Plan | None]:
    """The typed plan, with an option laid over it; None where too much is at fault. All findings come at once.

    Not `surveyed`: as it is drawn, without what surveys found.
    """
    project = checked.project
    sink = list(checked.findings)
    entries = [entry.copied() for entry in checked.files]
    names = Names(sink, sure=not project.incomplete, tape=tape_of(project))
    for file_entry in entries:
        for entry in file_entry.body:
            named = "name" in entry.values or (entry.faulty and entry.guess)
            if entry.kind.block is not None and named and entry.kind.word != "option":
                names.define(entry)
    check_options(names, entries)
    apply_option(names, entries, option)
    names.complete_all()
    plan = build_plan(names, entries, project.files[-1], option, surveyed) if project.files else None
    return Outcome(plan, in_order(sink))


def read_file(file: PlanFile, figures: dict[str, Quantity | None], sink: list[Diagnostic]) -> Entry:
    """Check the statements of one file. Its figures are read first to last, before all else."""
    setting = Setting(file.path, unit_of(file), figures)
    statements = list(parted(file.statements, FILE, setting, sink))
    read_figures(statements, setting, figures, sink)
    others = [statement for statement in statements if statement.word != "figure" or statement.faulty]
    entry = Entry(FILE, Span(file.path, 1, 1))
    entry.body = read_block(others, FILE, "a plan file", setting, sink)
    return entry


def unit_of(file: PlanFile) -> str | None:
    """The unit that a file states for bare lengths; what it seems to state where that statement is at fault."""
    for statement in file.statements:
        word = statement.word
        if word == "units" or (word not in FILE.by_word and nearest(word, FILE.by_word, 1, 0.7) == ["units"]):
            stated = str(statement.items[1]) if len(statement.items) > 1 else ""
            meant = stated if stated in UNITS else nearest_unit(stated)
            return meant if meant in UNITS else "mm"
    return None


def tape_of(project: Project) -> TapeStyle:
    """How a plan's lengths are printed in what is said before its job is read: in its unit, to the usual step."""
    units = unit_of(project.files[-1]) if project.files else None
    return USUAL_TAPES.get(units or "mm", METRIC)


def read_figures(
    statements: list[Statement], setting: Setting, figures: dict[str, Quantity | None], sink: list[Diagnostic]
) -> None:
    """Read the figures of a file, each of which may refer to those before it."""
    places: dict[str, Span] = {}
    for statement in statements:
        if statement.word != "figure" or statement.faulty:
            continue
        read_figure(statement, setting, figures, places, sink)


def read_figure(
    statement: Statement,
    setting: Setting,
    figures: dict[str, Quantity | None],
    places: dict[str, Span],
    sink: list[Diagnostic],
) -> None:
    """Read one figure; one at fault is known by name, so that what refers to it is not reported again."""
    read = read_block([statement], FILE, "a plan file", setting, sink)
    if not read:  # so much is wrong that nothing more is said
        return
    entry = read[0]
    name = str(statement.items[1]) if len(statement.items) > 1 else ""
    if name in places:
        sink.append(messages.name_twice(entry.span, name, places[name]))
        return
    places[name] = entry.span
    figures[name] = None if entry.faulty or "value" not in entry.values else entry.values["value"].what


def build_plan(names: Names, files: list[Entry], main: PlanFile, option: str, surveyed: bool) -> Plan | None:
    """Put the plan together from the entries of all files."""
    own = files[-1]
    start = own.span
    title = made(lambda: title_of(names, own, start))
    job = made(lambda: build_job(names, sole(names, files, "job", start), unit_of(main) or "mm", start))
    rates = made(lambda: build_rates(names, shop_of(names, files, start)))
    market = build_market(names, files, sole(names, files, "buying", None), start)
    readings = Readings(names)
    surveys = surveys_in_order(files) if surveyed else []
    measure_stock(readings, surveys)
    rooms = [entry for file in files for entry in file.all("room")]
    room = made(lambda: survey_room(readings, surveys, build_the_room(names, files, start)))
    use = made(lambda: build_use(names, sole(names, files, "use-of-room", None), start, room))
    sketch = sketch_of(rooms[0], names.sink) if rooms else None
    arrays = build_arrays(names, sketch, room) if sketch else None
    stated = made(
        lambda: all_of(
            lambda: build_requirements(names, files, sketch.surfaces if sketch else None),
            lambda: build_phases(names, files),
            lambda: value(note, "text") if (note := maybe(own, "note")) else "",
            lambda: build_region(maybe(own, "region")),
            lambda: build_safety(names, sole(names, files, "safety", None), start),
            lambda: build_papers(names),
        )
    )
    if title is None or job is None or rates is None or room is None or arrays is None or use is None or stated is None:
        return None
    note_what_is_passed_over(names, files[:-1])
    return Plan(
        at=start,
        title=title,
        note=stated[2],
        job=job,
        rates=rates,
        room=room,
        use=use,
        arrays=arrays,
        assumptions=tuple(names.assumptions),
        requirements=stated[0],
        differences=tuple(readings.differences),
        option=option,
        options=tuple(option_names(files)),
        phases=stated[1],
        region=stated[3][0],
        rules_of=stated[3][1],
        rules=build_rules(files),
        safety=stated[4],
        evidence=stated[5],
        suppliers=market.suppliers,
        buying=market.buying,
        offcuts=market.offcuts,
        known_sheets=known_sheets(names),
    )


def note_what_is_passed_over(names: Names, used: list[Entry]) -> None:
    """Warn of titles and notes in used files: those of the plan's own file count alone."""
    for entry in (entry for file in used for word in ("plan", "note") for entry in file.all(word)):
        what = "title" if entry.kind.word == "plan" else "note"
        message = f"this {what} stands in a file that the plan uses, and changes nothing"
        names.sink.append(messages.unused_statement(entry.span, message, "take it out, or make it a comment with `#`"))


def made(make: Callable[[], T]) -> T | None:
    """What can be made, or None where a part of it is at fault."""
    return attempt(make)[0]


def title_of(names: Names, own: Entry, start: Span) -> str:
    """The title, from the plan's own file."""
    stated = maybe(own, "plan")
    if stated is None:
        kind = FILE.by_word["plan"]
        if not has_unknown([own], with_block=False):
            names.sink.append(messages.statement_missing(start, "a plan", kind.word, kind.example))
        raise Unknown
    title: str = value(stated, "title")
    return title


def has_unknown(files: list[Entry], with_block: bool) -> bool:
    """Whether a statement outside all blocks, with a block or without one, could not be told by its word.

    It has been reported, and may be what seems to be missing.
    """
    unknown = (entry for file in files for entry in file.body if is_unknown(entry, FILE))
    return any((entry.kind.block is not None) == with_block for entry in unknown)


def sole(names: Names, files: list[Entry], word: str, needed_at: Span | None) -> Entry | None:
    """The one block of a kind in all files; a second one is reported, and so is none where it is needed."""
    found = [entry for file in files for entry in file.all(word)]
    for second in found[1:]:
        names.sink.append(messages.one_only(second.span, word, found[0].span))
    if not found and needed_at is not None and not has_unknown(files, with_block=True):
        kind = FILE.by_word[word]
        names.sink.append(messages.statement_missing(needed_at, "a plan", word, kind.example))
    if not found or found[0].faulty:
        if needed_at is not None:
            raise Unknown
        return None
    names.complete(found[0], f"`{word}`")
    return found[0]


def shop_of(names: Names, files: list[Entry], start: Span) -> Entry:
    """The shop's rates; a plan without any has all of them assumed."""
    stated = sole(names, files, "shop", None)
    if stated is None:
        stated = Entry(FILE.by_word["shop"], start)
        names.complete(stated, "`shop`")
    return stated


def build_job(names: Names, entry: Entry | None, units: str, start: Span) -> Job:
    """Who, where, which issue; how lengths are printed."""
    if entry is None:
        raise Unknown
    imperial = units in ("in", "ft-in")
    issue = one(entry, "issue")
    tape, paper = maybe(entry, "tape"), maybe(entry, "paper")
    step = value(tape, "step") if tape else (INCH / 16 if imperial else Fraction(1))
    for part in entry.body:
        names.assume(part, "job")
    return Job(
        at=entry.span,
        client=value(one(entry, "client"), "text"),
        site=value(one(entry, "site"), "text"),
        issue=value(issue, "letter").text,
        date=value(issue, "date"),
        tape=TapeStyle(units, step),
        currency=value(one(entry, "money"), "currency"),
        paper=value(paper, "paper") if paper else ("Letter" if imperial else "A4"),
    )


def build_the_room(names: Names, files: list[Entry], start: Span) -> Room:
    """The plan's one room."""
    definitions = [each for each in names.definitions.values() if each.entry.kind.word == "room"]
    if not definitions:
        kind = FILE.by_word["room"]
        if not has_unknown(files, with_block=True) and not any(file.all("room") for file in files):
            names.sink.append(messages.statement_missing(start, "a plan", kind.word, kind.example))
        raise Unknown
    for second in definitions[1:]:
        names.sink.append(messages.one_only(second.name.span, "room", definitions[0].name.span))
    return names.build(definitions[0].name, "room", build_room)


def build_arrays(names: Names, sketch: Sketch, room: Room | None) -> tuple[Array, ...] | None:
    """The arrays, in the order of the plan; None where one is at fault."""
    definitions = [each for each in names.definitions.values() if each.entry.kind.word == "array"]
    groups = [made(partial(arrays_of, names, definition, sketch, room)) for definition in definitions]
    known = [array for group in groups if group is not None for array in group]
    marks: dict[str, Span] = {}
    for array in known:
        if array.first == 1:
            check_mark(names, marks, array.mark, array.at)
    check_panel_marks(names, known)
    return None if None in groups else tuple(known)


def arrays_of(names: Names, definition: Definition, sketch: Sketch, room: Room | None) -> tuple[Array, ...]:
    """The array of a statement, or several where its panels are cut to bays that differ."""
    if not is_cut_to_bays(definition):
        return (build_array(names, definition, sketch),)
    before = len(names.assumptions)
    arrays = cut_to_bays(names, definition, room, lambda sized: build_array(names, sized, sketch))
    names.assumptions[before:] = dict.fromkeys(names.assumptions[before:])  # each was assumed for every bay
    return arrays


def check_panel_marks(names: Names, arrays: list[Array]) -> None:
    """Parts of two types must not carry the same mark."""
    marks: dict[str, Span] = {}
    for panel in {array.panel.name: array.panel for array in arrays}.values():
        check_mark(names, marks, panel.mark, panel.at)


def check_mark(names: Names, marks: dict[str, Span], mark: str, span: Span) -> None:
    """Note a mark; one that is taken is reported."""
    if mark in marks:
        names.sink.append(messages.mark_twice(span, mark, marks[mark]))
    marks.setdefault(mark, span)

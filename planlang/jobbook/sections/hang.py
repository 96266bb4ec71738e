"""Hang schedule: what is read on the ladder. Laser lines first, then every point by running dimensions."""

from planlang.geometry.hanging.checking import checks_of
from planlang.geometry.model import HangPoint, PlacedPanel, RailRun, Surface
from planlang.hardware.model import PanelLoad
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Cell, Column, Figure, Heading, Paragraph, Table, Tick, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawings import profiles, slope_section, surface_drawing
from planlang.jobbook.drawings.symbols import exact
from planlang.jobbook.sections.moved import moved_points
from planlang.jobbook.sections.safety import not_for_hanging
from planlang.plan.tape import TapeStyle


def hang(compiled: CompiledPlan) -> Blocks:
    """For each surface: datum and directions, drawing, laser lines, rails, points."""
    blocks: list[Block] = [
        Heading(2, "Hang schedule"),
        Paragraph(
            "Read the safety part and have its lines signed first. Every figure runs from the datum of its surface. "
            "Set the laser lines, mark the points, then drill."
        ),
    ]
    if not compiled.loads.hangable:
        blocks.append(not_for_hanging(compiled))
    for surface in compiled.room.surfaces:
        placed = compiled.layout.on(surface.name)
        if placed:
            blocks += _surface(compiled, surface, placed)
    return tuple(blocks)


def _surface(compiled: CompiledPlan, surface: Surface, placed: tuple[PlacedPanel, ...]) -> list[Block]:
    tape = compiled.plan.job.tape
    blocks: list[Block] = [
        Heading(3, f"Hanging on {surface.name}"),
        facts(
            f"Measure from here on {surface.name}",
            (("Datum", surface.datum_words), ("Across", surface.across_words), ("Up", surface.up_words)),
            heads=("What", "Where"),
        ),
        Figure(surface_drawing(compiled, surface.name)),
    ]
    blocks += _laser_lines(compiled, surface.name, tape)
    rails = [rail for rail in compiled.layout.rails if rail.surface == surface.name]
    if rails:
        blocks.append(_rails(surface.name, rails, tape))
    blocks += [
        _points(compiled, surface, placed),
        *moved_points(compiled, surface.name),
        *_checks(surface, placed, tape),
    ]
    beside = (*_up_slope_ties(surface, placed, tape), *_second_supports(surface, placed, tape))
    return [*blocks, *beside, *_section(compiled, surface)]


def _checks(surface: Surface, placed: tuple[PlacedPanel, ...], tape: TapeStyle) -> list[Block]:
    """What the marks are measured by a second time, against other figures than those they were set out by."""
    found = {panel.mark: {check.kind: check for check in checks_of(surface, panel)} for panel in placed}
    if not any(found.values()):
        return []
    columns = [Column("Panel")]
    heads = (("Points", "Apart"), ("To the far edge across", "Across"), ("To the far edge up", "Up"))
    for from_to, distance in heads:
        columns += [Column(from_to), Column(words.column_head(distance, tape), "right", big=True)]
    rows: list[tuple[Cell, ...]] = []
    for mark, by_kind in found.items():
        cells: list[Cell] = []
        for kind in ("diagonal", "across", "up"):
            check = by_kind.get(kind)
            cells += [check.between, words.in_column(check.distance, tape)] if check else ["one point alone", "none"]
        if by_kind:
            rows.append((mark, *cells, Tick()))
    note = (
        "Measure the marks again by these before you drill: they are other figures than those that the marks were set "
        "out by. Where one differs, don't drill: find out whether the mark or the room is off."
    )
    return [Paragraph(note), Table(f"Checks on {surface.name}", (*columns, Column("Measured")), tuple(rows))]


def _up_slope_ties(surface: Surface, placed: tuple[PlacedPanel, ...], tape: TapeStyle) -> list[Block]:
    """One row a panel that ties keep up the slope."""
    rows = tuple(
        (
            panel.mark,
            f"{tie.count} x {tie.tie.words}, from {tie.eye.words} on the back at the upper edge",
            f"{tie.plate.words} with {tie.screws} x {tie.screw.words}",
            words.in_column(tie.reach, tape),
            Tick(),
        )
        for panel in placed
        if (tie := panel.array.up_slope_tie) is not None and surface.pitch_deg
    )
    if not rows:
        return []
    columns = (
        Column("Panel"),
        Column("Tie up the slope"),
        Column("To, screws in line in the middle of a member"),
        Column(words.column_head("Up the slope from the eye", tape), "right", big=True),
        Column("Hung"),
    )
    return [Table(f"Ties up the slope of {surface.name}", columns, rows)]


def _second_supports(surface: Surface, placed: tuple[PlacedPanel, ...], tape: TapeStyle) -> list[Block]:
    """One row a panel that has a second support; where each anchor goes, within its reach, is found on site."""
    rows = tuple(
        (
            panel.mark,
            f"{second.count} x {second.tie.words}, from {second.eye.words} to {second.anchor.words}",
            words.in_column(second.slack, tape),
            words.in_column(second.aside(panel.array.hang.drop), tape),
            Tick(),
        )
        for panel in placed
        if (second := panel.array.second_support) is not None
    )
    if not rows:
        return []
    columns = (
        Column("Panel"),
        Column("Second support, each with a hole of its own in the middle of a member"),
        Column(words.column_head("Slack at most", tape), "right", big=True),
        Column(words.column_head("Anchors from the hang points at most", tape), "right", big=True),
        Column("Hung"),
    )
    return [Table(f"Second supports on {surface.name}", columns, rows)]


def _section(compiled: CompiledPlan, surface: Surface) -> list[Block]:
    """The section through a slope, and its heights as a table; nothing for a surface that is level or plumb."""
    if surface.kind != "ceiling" or not surface.pitch_deg:
        return []
    tape = compiled.plan.job.tape
    columns = (
        Column("Place"),
        Column(words.column_head("From the wall, level", tape), "right"),
        Column(words.column_head("Above the floor", tape), "right", big=True),
    )
    rows = []
    for profile in profiles(compiled, surface):
        marks = words.listed(profile.marks)
        places = [
            (f"lowest corner of {marks}", profile.lowest),
            (f"highest corner of {marks}", profile.highest),
            *((words.listed(names), on_surface) for on_surface, _, names in profile.points),
        ]
        rows += [(what, *(words.in_column(exact(value), tape) for value in place)) for what, place in places]
    return [Figure(slope_section(compiled, surface)), Table(f"Heights on {surface.name}", columns, tuple(rows))]


def _laser_lines(compiled: CompiledPlan, surface: str, tape: TapeStyle) -> list[Block]:
    found = [line for line in compiled.layout.lines if line.surface == surface]
    if not found:
        return []
    columns = (
        Column("Line"),
        Column(words.column_head("At", tape), "right", big=True),
        Column("Measured"),
        Column("Serves"),
        Column("Set"),
    )
    rows = tuple(
        (
            "level" if line.fixed == "up" else "plumb",
            words.in_column(line.position, tape),
            line.measured,
            words.listed(line.points),
            Tick(),
        )
        for line in found
    )
    return [Table(f"Laser lines on {surface}", columns, rows)]


def _rails(surface: str, rails: list[RailRun], tape: TapeStyle) -> Table:
    columns = (
        Column("Rail"),
        Column(words.column_head("At", tape), "right", big=True),
        Column(words.column_head("From", tape), "right", big=True),
        Column(words.column_head("To", tape), "right", big=True),
        Column("Screw to members at"),
        Column("Carries"),
        Column("Fixed"),
    )
    rows = tuple(
        (
            rail.name,
            words.in_column(rail.position, tape),
            words.in_column(rail.start, tape),
            words.in_column(rail.end, tape),
            words.running(rail.crossings, tape) if rail.crossings else "none",
            words.listed(rail.points),
            Tick(),
        )
        for rail in rails
    )
    return Table(f"Rails on {surface}", columns, rows)


def _points(compiled: CompiledPlan, surface: Surface, placed: tuple[PlacedPanel, ...]) -> Table:
    tape = compiled.plan.job.tape
    columns = (
        Column("Point"),
        Column(words.column_head("Across", tape), "right", big=True),
        Column(words.column_head("Up", tape), "right", big=True),
        Column("Lands on"),
        Column(words.column_head("Off centre", tape), "right"),
        Column("Fix"),
        Column(words.column_head("Drop", tape), "right"),
        Column("Carries", "right"),
        Column("Hung"),
    )
    rows = tuple(
        (
            point.name,
            words.in_column(point.across, tape),
            words.in_column(point.up, tape),
            point.lands_on,
            words.in_column(point.off_centre, tape) if point.off_centre is not None else "no member",
            fixing_of(panel),
            words.in_column(point.drop, tape),
            _carries(compiled, panel, tape),
            Tick(),
        )
        for panel, point in _all_points(placed)
    )
    return Table(f"Hang points on {surface.name}", columns, rows)


def _all_points(placed: tuple[PlacedPanel, ...]) -> list[tuple[PlacedPanel, HangPoint]]:
    return [(panel, point) for panel in placed for point in panel.points]


def fixing_of(panel: PlacedPanel) -> str:
    """What holds a point, and into what."""
    way = panel.array.hang
    into = {"members": "the member", "rail": "the rail", "lining": "the lining"}[way.into]
    number = f"{way.screws_each} x " if way.screws_each > 1 else ""
    link = f", {way.link.words}" if way.link else ""
    return f"{number}{way.anchor.words} into {into}{link}"


def _carries(compiled: CompiledPlan, panel: PlacedPanel, tape: TapeStyle) -> str:
    load = load_of(compiled, panel)
    return words.demand(load.share, tape) if load else "not known"


def load_of(compiled: CompiledPlan, panel: PlacedPanel) -> PanelLoad | None:
    """The load path of a panel's hang points."""
    found = (load for load in compiled.loads.panels if panel.mark in load.panels)
    return next(found, None)

"""Hang points that a survey has moved: as drawn, as surveyed, and the difference."""

from fractions import Fraction

from planlang.geometry.model import HangPoint
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Cell, Column, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.plan.tape import TapeStyle


def moved_points(compiled: CompiledPlan, surface: str) -> list[Block]:
    """A row for each point of a surface that hangs elsewhere than drawn; nothing where no survey found anything.

    What moved by less than the tape shows is left out.
    """
    plan, tape = compiled.plan, compiled.plan.job.tape
    if not plan.differences:
        return []
    if compiled.drawn is None:
        return [Paragraph("As drawn, without the surveys, nothing can be placed: there is nothing to compare.")]
    drawn = {point.name: point for panel in compiled.drawn.on(surface) for point in panel.points}
    here = [point for panel in compiled.layout.on(surface) for point in panel.points]
    rows = tuple(_row(point, drawn.get(point.name), tape) for point in here if not _as_drawn(point, drawn, tape))
    gone = sorted(drawn.keys() - {point.name for point in here})
    blocks: list[Block] = []
    if gone:
        blocks.append(Paragraph(f"Drawn, and not there as surveyed: {words.listed(gone)}."))
    if not rows:
        return [*blocks, Paragraph(f"Hang points on {surface} are where they are drawn: no survey moved one.")]
    columns = [Column("Point")]
    for axis in ("Across", "Up"):
        for head in ("drawn", "surveyed", "difference"):
            columns.append(Column(words.column_head(f"{axis}, {head}", tape), "right"))
    return [*blocks, Table(f"Moved by the surveys on {surface}", tuple(columns), rows)]


def _as_drawn(point: HangPoint, drawn: dict[str, HangPoint], tape: TapeStyle) -> bool:
    before = drawn.get(point.name)
    return before is not None and max(abs(before.across - point.across), abs(before.up - point.up)) < tape.step


def _row(point: HangPoint, before: HangPoint | None, tape: TapeStyle) -> tuple[Cell, ...]:
    if before is None:
        nothing = "not drawn"
        now = (words.in_column(point.across, tape), words.in_column(point.up, tape))
        return (point.name, nothing, now[0], nothing, nothing, now[1], nothing)
    return (point.name, *_three(before.across, point.across, tape), *_three(before.up, point.up, tape))


def _three(was: Fraction, now: Fraction, tape: TapeStyle) -> tuple[str, str, str]:
    """Drawn, surveyed, and how far apart, to the finest step that a tape shows: right or up is more."""
    finer = TapeStyle(tape.units, tape.step / 16 if tape.is_imperial else tape.step / 10)
    sign = "+" if now > was else ""
    return words.in_column(was, tape), words.in_column(now, tape), sign + words.in_column(now - was, finer)

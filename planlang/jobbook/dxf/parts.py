"""Every part of every panel type as it is cut, one under the other: a layer for each stock, true size."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.dxf.sheet import Sheet
from planlang.plan.tape import size_on_tape
from planlang.syntax.record import record

LETTER, GAP = 20.0, 60.0  # mm


@record
class Outline:
    """A rectangle to cut: stock, what to call it, length and width, mm; what is cut out of it, where that is less."""

    stock: str
    words: str
    length: Fraction
    width: Fraction
    corners: tuple[tuple[Fraction, Fraction], ...] = ()


def parts_dxf(compiled: CompiledPlan) -> bytes:
    """Rectangles of finished size, each drawn once with how many the job needs. Kerf is not added."""
    plan, sheet = compiled.plan, Sheet()
    y = 0.0
    for part in _outlines(compiled):
        layer = sheet.layer(f"CUT {part.stock}")
        length, width = float(part.length), float(part.width)
        y -= width
        sheet.outline(((0, y), (length, y), (length, y + width), (0, y + width)), layer)
        if part.corners:
            sheet.outline([(float(along), y + float(across)) for along, across in part.corners], layer)
        sheet.text((0, y + width + LETTER / 2), part.words, LETTER)
        y -= GAP
    title = f"{plan.title}. Issue {plan.job.issue or 'not stated'}. Finished sizes in mm, kerf not added; one of each."
    sheet.notes((0, y - GAP), (title,), LETTER, compiled.loads.hangable)
    return sheet.content()


def _outlines(compiled: CompiledPlan) -> Iterator[Outline]:
    tape = compiled.plan.job.tape
    for build in compiled.materials.builds:
        for part in build.parts:
            size = size_on_tape((part.length, part.width, part.sheet.thickness), tape)
            words = f"{part.mark}, {part.role} of {build.type.name}, {part.count} off, {size}, {part.sheet.words}"
            yield Outline(part.sheet.name, words, part.length, part.width, part.outline)
        for piece in build.pieces:
            size = size_on_tape((piece.length, piece.width), tape)
            words = f"{piece.mark}, {piece.role} of {build.type.name}, {piece.count} off, {size}, {piece.stock.words}"
            yield Outline(piece.stock.name, words, piece.length, piece.width)

"""A framed absorber as it is stated."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from planlang.plan import messages
from planlang.plan.build.kinds.common import build_board, build_core, build_covering
from planlang.plan.build.names import Names, Unknown, all_of, maybe, maybe_value, one, value
from planlang.plan.build.stock import build_sheet
from planlang.plan.entry import Entry
from planlang.plan.panel import Braces, Facing, Frame, ShadowGap


def framed_fields(names: Names, entry: Entry) -> dict[str, Any]:
    """What a framed absorber has beside what all panels have."""
    depth, frame, core, braces, front, back, board, facing, gap = all_of(
        lambda: value(one(entry, "depth"), "depth"),
        lambda: build_frame(names, one(entry, "frame")),
        lambda: build_core(names, one(entry, "core")),
        lambda: build_braces(names, maybe(entry, "braces"), entry),
        lambda: build_covering(names, one(entry, "front")),
        lambda: build_covering(names, stated) if (stated := maybe(entry, "back")) else None,
        lambda: build_board(names, stated) if (stated := maybe(entry, "back-board")) else None,
        lambda: build_facing(names, stated) if (stated := maybe(entry, "facing")) else None,
        lambda: build_gap(names, stated, entry) if (stated := maybe(entry, "shadow-gap")) else None,
    )
    if back and board:
        message = "the back is closed by cloth or by a board, not by both"
        names.sink.append(messages.disagree(board.at, message, "take one out"))
        raise Unknown
    face = value(one(entry, "face"), "size")
    if facing and facing.opening > min(face) - 2 * frame.sheet.thickness:
        message = "an opening of the facing is larger than the inside of the frame"
        names.sink.append(messages.disagree(facing.at, message, "make it smaller"))
        raise Unknown
    closed = [(each.at, each.sheet.thickness) for each in (facing, board, gap) if each]
    if closed and sum(thickness for _, thickness in closed) >= depth:
        message = "what closes the front and the back takes the whole depth"
        names.sink.append(messages.disagree(closed[0][0], message, "take thinner sheet, or make the panel deeper"))
        raise Unknown
    return {
        "depth": depth, "frame": frame, "core": core, "braces": braces, "front": front, "back": back, "board": board,
        "facing": facing, "gap": gap,
    }  # fmt: skip


def build_gap(names: Names, entry: Entry, panel: Entry) -> ShadowGap:
    """A shadow gap, with a check that its strips have room within the panel."""
    sheet = names.build(value(entry, "sheet"), "sheet", build_sheet)
    width, inset = value(entry, "width"), value(entry, "inset")
    if 2 * (width + inset) >= min(value(one(panel, "face"), "size")):
        message = "the strips of the shadow gap meet: nothing is left between them"
        names.sink.append(messages.disagree(entry.span, message, "make them narrower, or set them in less"))
        raise Unknown
    return ShadowGap(at=entry.span, sheet=sheet, width=width, inset=inset)


def build_facing(names: Names, entry: Entry) -> Facing:
    """A facing, with a check that something is left between its openings."""
    sheet = names.build(value(entry, "sheet"), "sheet", build_sheet)
    opening, pitch = value(entry, "opening"), value(entry, "pitch")
    if opening >= pitch:
        message = "nothing is left of the facing between its openings"
        names.sink.append(messages.disagree(entry.span, message, "make the centres farther apart than an opening"))
        raise Unknown
    return Facing(at=entry.span, sheet=sheet, slotted=value(entry, "shape") == "slots", opening=opening, pitch=pitch)


def build_frame(names: Names, entry: Entry) -> Frame:
    """The frame, with a check that the two clauses agree."""
    full = value(entry, "full")
    between = maybe_value(entry, "between")
    if between is not None and between == full:
        message = f"the {full} can't both run full and sit between"
        names.sink.append(
            messages.disagree(entry.span, message, "write `ends full, sides between` or the other way round")
        )
        raise Unknown
    sheet = names.build(value(entry, "sheet"), "sheet", build_sheet)
    joint, rabbet = value(entry, "joint"), maybe_value(entry, "rabbet")
    if rabbet is not None and joint != "rabbet":
        message = f"a frame with {joint} joints has no rabbets"
        names.sink.append(messages.disagree(entry.span, message, "write `rabbet joints`, or take the depth out"))
        raise Unknown
    if joint == "rabbet":
        rabbet = sheet.thickness / 2 if rabbet is None else rabbet
    if rabbet is not None and rabbet >= sheet.thickness:
        message = "the rabbet goes through the whole thickness of the sheet"
        names.sink.append(messages.disagree(entry.span, message, "write less than the thickness, usually half of it"))
        raise Unknown
    return Frame(at=entry.span, sheet=sheet, full=full, joint=joint, rabbet=rabbet or Fraction(0))


def build_braces(names: Names, entry: Entry | None, panel: Entry) -> Braces | None:
    """Cross members; they come from the frame's sheet unless the plan says otherwise."""
    if entry is None:
        return None
    words = {clause for clause in ("at every batt joint", "at mid-length") if clause in stated_words(entry)}
    positions: tuple[Fraction, ...] = maybe_value(entry, "positions", ())
    if not words and not positions:
        names.sink.append(messages.clause_missing(entry.span, "braces", "at every batt joint"))
        raise Unknown
    cut_from = entry if "sheet" in entry.values else one(panel, "frame")
    return Braces(
        at=entry.span,
        sheet=names.build(value(cut_from, "sheet"), "sheet", build_sheet),
        positions=positions,
        at_batt_joints="at every batt joint" in words,
        at_mid_length="at mid-length" in words,
        width=value(entry, "width"),
        lie="edge" if value(entry, "lie") == "on-edge" else "flat",
        setback=value(entry, "setback"),
    )


def stated_words(entry: Entry) -> set[str]:
    """The clauses of an entry that have no parameter."""
    return {clause.removeprefix("[and] ") for clause in entry.stated}

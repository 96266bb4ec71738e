"""Membranes, corner traps and baffles as they are stated."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from planlang.plan.build.kinds.common import build_board, build_core, build_covering
from planlang.plan.build.kinds.framed import build_frame
from planlang.plan.build.names import Names, all_of, maybe, one, refused, value
from planlang.plan.build.stock import build_batt, build_sheet
from planlang.plan.entry import Entry
from planlang.plan.further_panels import Baffle, CornerTrap, MembraneAbsorber
from planlang.plan.panel import PanelType


def membrane_fields(names: Names, entry: Entry) -> dict[str, Any]:
    """What a membrane absorber has beside what all panels have."""
    plate_entry = one(entry, "plate")
    depth, frame, plate, board, core = all_of(
        lambda: value(one(entry, "depth"), "depth"),
        lambda: build_frame(names, one(entry, "frame")),
        lambda: names.build(value(plate_entry, "sheet"), "sheet", build_sheet),
        lambda: build_board(names, one(entry, "back-board")),
        lambda: build_core(names, stated) if (stated := maybe(entry, "core")) else None,
    )
    if plate.thickness + board.sheet.thickness >= depth:
        raise refused(names, plate_entry, "plate and back board take the whole depth", "make the panel deeper")
    fields = {"depth": depth, "frame": frame, "plate": plate, "plate_at": plate_entry.span, "board": board}
    return {**fields, "core": core}


def corner_fields(names: Names, entry: Entry) -> dict[str, Any]:
    """What a corner trap has beside what all panels have; its depth is what it takes of the second surface."""
    filling_entry = one(entry, "filling")
    shape, size, boards, filling, front = all_of(
        lambda: value(one(entry, "corner-trap"), "shape"),
        lambda: value(one(entry, "corner"), "size"),
        lambda: names.build(value(one(entry, "boards"), "sheet"), "sheet", build_sheet),
        lambda: names.build(value(filling_entry, "batt"), "batt", build_batt),
        lambda: build_covering(names, one(entry, "front")),
    )
    if min(size[0], size[1]) <= 2 * boards.thickness:
        mend = "make it larger, or its boards thinner"
        raise refused(names, one(entry, "corner"), "nothing is left between the boards of this corner trap", mend)
    fields = {"shape": shape, "boards": boards, "filling": filling, "filling_at": filling_entry.span}
    return {**fields, "front": front, "depth": size[0]}


def baffle_fields(names: Names, entry: Entry) -> dict[str, Any]:
    """What a baffle has: as it hangs, it is as wide as it is thick and as deep as its face is high."""
    thick, size, frame, core, front = all_of(
        lambda: value(one(entry, "baffle"), "thick"),
        lambda: value(one(entry, "face"), "size"),
        lambda: build_frame(names, one(entry, "frame")),
        lambda: build_core(names, one(entry, "core")),
        lambda: build_covering(names, one(entry, "front")),
    )
    if size[1] <= 2 * frame.sheet.thickness or size[0] <= 2 * frame.sheet.thickness + thick:
        message = "nothing is left inside the frame, under the rail that the eyes are bolted to"
        raise refused(names, one(entry, "face"), message, "make the face larger")
    if frame.joint == "mitre":
        mend = "write butt or rabbet joints, so that the end members carry the top one"
        raise refused(names, one(entry, "frame"), "mitred corners hold a hanging frame by their glue alone", mend)
    fields: dict[str, Fraction] = {"width": thick, "length": size[1], "depth": size[0]}
    return {**fields, "frame": frame, "core": core, "front": front}


FIELDS: Mapping[str, Callable[[Names, Entry], dict[str, Any]]] = {
    "membrane": membrane_fields,
    "corner-trap": corner_fields,
    "baffle": baffle_fields,
}
MADE: Mapping[str, Callable[..., PanelType]] = {
    "membrane": MembraneAbsorber,
    "corner-trap": CornerTrap,
    "baffle": Baffle,
}

"""A board absorber as it is stated."""

from __future__ import annotations

from typing import Any

from planlang.plan.build.kinds.common import build_board, build_core, build_covering
from planlang.plan.build.names import Names, all_of, one
from planlang.plan.entry import Entry


def board_fields(names: Names, entry: Entry) -> dict[str, Any]:
    """What a board absorber has beside what all panels have; its depth is that of its batts and its back board."""
    core, front, board = all_of(
        lambda: build_core(names, one(entry, "core")),
        lambda: build_covering(names, one(entry, "front")),
        lambda: build_board(names, one(entry, "back-board")),
    )
    depth = core.layers * core.batt.thickness + board.sheet.thickness
    return {"depth": depth, "core": core, "front": front, "board": board}

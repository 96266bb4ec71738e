"""Lines -> the text of a file: blank lines, groups, the columns of each group."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from planlang.syntax.tidy.lines import Line
from planlang.syntax.tidy.rows import lay_out_group


def text_of(lines: list[Line], verbatim: frozenset[int] = frozenset()) -> str:
    """The canonical text of lines; statements that start on a `verbatim` line of their file keep their spacing."""
    settle_blank_lines(lines)
    text: list[str] = []
    for group in groups_of(lines):
        if group[0].blank_before:
            text.append("")
        text += lay_out_group(group, verbatim)
    return "".join(line.rstrip() + "\n" for line in text)


def settle_blank_lines(lines: list[Line]) -> None:
    """Keep blank lines between lines, not at the edges of a block; outer blocks have one before and one after."""
    for before, line in pairwise(lines):
        if before.opens or line.closes:
            line.blank_before = False
        elif before.closes and before.depth == 0:
            line.blank_before = True
    for index, line in enumerate(lines):
        if line.opens and line.depth == 0:
            first_of_lead(lines, index).blank_before = True
    if lines:
        lines[0].blank_before = False


def first_of_lead(lines: list[Line], index: int) -> Line:
    """The first of the comments that stand right above a line, or the line itself."""
    while index and not lines[index].blank_before and lines[index - 1].is_comment:
        index -= 1
    return lines[index]


def groups_of(lines: list[Line]) -> Iterator[list[Line]]:
    """Lines whose columns go together: up to a blank line, and never across the head or the end of a block."""
    group: list[Line] = []
    for line in lines:
        stands_alone = line.opens or line.closes
        if group and (stands_alone or line.blank_before or group[-1].opens or group[-1].closes):
            yield group
            group = []
        group.append(line)
    if group:
        yield group

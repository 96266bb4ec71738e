"""Examples of the manual: the small plan with changes, compiled as a user's plan would be."""

from __future__ import annotations

import re
from difflib import SequenceMatcher
from functools import cache
from importlib import resources
from pathlib import Path
from tempfile import TemporaryDirectory

from planlang.compiler import Compilation, compile_plan
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.pages import Change, Page

FILE = "small.plan"
LEAVE = "…"


@cache
def small_plan() -> str:
    """The plan that all examples start from."""
    return (resources.files("planlang.manual") / FILE).read_text(encoding="utf-8")


def wrong_text(page: Page) -> str:
    """The plan of a page's wrong example."""
    return changed(given_text(page), page.wrong)


def right_text(page: Page) -> str:
    """The plan of a page's right example."""
    return changed(given_text(page), page.right)


def given_text(page: Page) -> str:
    """What both examples of a page start from."""
    return changed(small_plan(), page.given)


def changed(text: str, changes: tuple[Change, ...]) -> str:
    """Text after changes.

    Raises:
        ValueError: what a change speaks of does not stand in the text, or stands there twice.
    """
    for old, new in changes:
        if not old:
            text += f"\n{new}\n"
            continue
        places = list(re.finditer(r"\s+".join(re.escape(word) for word in old.split()), text))
        if len(places) != 1:
            raise ValueError(f"`{old}` stands in the example {len(places)} times")
        text = text[: places[0].start()] + new + text[places[0].end() :]
    return text


def compiled(text: str, files: tuple[tuple[str, str | bytes], ...] = ()) -> Compilation:
    """What the compiler makes of an example, in a project folder of its own."""
    with TemporaryDirectory(prefix="planlang-") as place:
        folder = Path(place)
        (folder / ".planlang").touch()
        for name, content in files:
            (folder / name).write_bytes(content if isinstance(content, bytes) else content.encode())
        (folder / FILE).write_text(text, encoding="utf-8")
        return compile_plan(folder / FILE, for_book=False)


@cache
def said_of(text: str, files: tuple[tuple[str, str | bytes], ...] = ()) -> tuple[Diagnostic, ...]:
    """What the compiler says of an example; each is compiled once a process."""
    return compiled(text, files).findings


def excerpts(wrong: str, right: str, marked: frozenset[int]) -> tuple[list[str], list[str]]:
    """The lines that matter of a wrong and a right example, with `…` for what is left out between them.

    Of the wrong example these are the lines that the small plan or the right example does not have, and the `marked`
    ones (from 1); of the right example those in which it differs from the wrong one. Where one shows such a line that
    both have, the other shows it too; all come with the heads and the ends of their blocks.
    """
    texts = (wrong.split("\n"), right.split("\n"))
    chosen_wrong = differing(*texts) | {number - 1 for number in marked if 0 < number <= len(texts[0])}
    chosen_right = differing(*texts[::-1])
    for here, there in aligned(*texts):
        if here in chosen_wrong or there in chosen_right:
            chosen_wrong.add(here)
            chosen_right.add(there)
    chosen_wrong |= differing(texts[0], small_plan().split("\n"))
    return shown(texts[0], chosen_wrong), shown(texts[1], chosen_right)


def shown(lines: list[str], chosen: set[int]) -> list[str]:
    """The chosen lines with the heads and ends of their blocks, and a mark for what is left out."""
    return with_gaps(lines, sorted(within_blocks(lines, chosen)))


def within_blocks(lines: list[str], chosen: set[int]) -> set[int]:
    """The chosen lines that say something, with the heads and ends of their blocks."""
    said = {index for index in chosen if lines[index].strip()}
    return said.union(*(around(lines, index) for index in said))


def aligned(lines: list[str], other: list[str]) -> list[tuple[int, int]]:
    """The lines that two texts share, as pairs of places."""
    blocks = SequenceMatcher(None, lines, other, autojunk=False).get_matching_blocks()
    return [(block.a + step, block.b + step) for block in blocks for step in range(block.size)]


def differing(lines: list[str], other: list[str]) -> set[int]:
    """The lines that another text does not have; where it has more, the lines on both sides of the place."""
    found: set[int] = set()
    for tag, start, end, _, _ in SequenceMatcher(None, lines, other, autojunk=False).get_opcodes():
        if tag in ("replace", "delete"):
            found |= set(range(start, end))
        elif tag == "insert":
            found |= {index for index in (start - 1, start) if 0 <= index < len(lines)}
    return found


def around(lines: list[str], index: int) -> set[int]:
    """The heads and the ends of the blocks that a line stands in, by its indent; of a head, the end of its block."""
    found: set[int] = set()
    depth = indent(lines[index]) + lines[index].strip().startswith("}")
    for before in range(index - 1, -1, -1):
        line = lines[before]
        if line.rstrip().endswith("{") and indent(line) < depth:
            depth = indent(line)
            found |= {before, end_of(lines, before)}
    if lines[index].rstrip().endswith("{"):
        found.add(end_of(lines, index))
    return found


def end_of(lines: list[str], head: int) -> int:
    """The line that closes the block of a head; the head itself when there is none."""
    for index in range(head + 1, len(lines)):
        if lines[index].startswith(" " * indent(lines[head]) + "}"):
            return index
    return head


def indent(line: str) -> int:
    """Spaces before the first word."""
    return len(line) - len(line.lstrip())


def with_gaps(lines: list[str], wanted: list[int]) -> list[str]:
    """Some of the lines, with a mark where others are left out between them."""
    found: list[str] = []
    last = None
    for index in wanted:
        if last is not None and any(line.strip() for line in lines[last + 1 : index]):
            deep = lines[index] if not lines[index].strip().startswith("}") else f"  {lines[index]}"
            found.append(" " * indent(deep) + LEAVE)
        elif last is not None and index > last + 1:
            found.append("")
        found.append(lines[index])
        last = index
    return found

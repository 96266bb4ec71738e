"""The Markdown of every demo's job book is the one that is kept, and that somebody has read.

Where a change is meant to show in the books: `python -m tests.tools.golden`, then read what git shows as changed.
"""

from __future__ import annotations

from difflib import unified_diff
from pathlib import Path

import pytest

from tests.jobbook.demo_books import KEPT, demo_book, kept_book
from tests.plans import DEMO_PLANS

MOST_LINES = 60


def difference(kept: str, made: str) -> list[str]:
    """What changed, with its part of the book, as `diff -u` shows it; cut where it is long."""
    found = list(unified_diff(kept.splitlines(), made.splitlines(), "kept", "made", n=1, lineterm=""))
    left = len(found) - MOST_LINES
    return [*found[:MOST_LINES], f"… and {left} lines more"] if left > 0 else found


@pytest.mark.parametrize("plan", DEMO_PLANS, ids=lambda plan: plan.stem)
def test_the_book_is_the_one_that_is_kept(plan: Path) -> None:
    kept = kept_book(plan).read_text(encoding="utf-8")
    lines = difference(kept, demo_book(plan).markdown)
    if lines:
        said = "if these lines are meant to change: python -m tests.tools.golden, and read the diff"
        pytest.fail("\n".join([said, *lines]), pytrace=False)


def test_nothing_is_kept_of_what_is_no_demo() -> None:
    assert {path.name for path in KEPT.iterdir()} == {kept_book(plan).name for plan in DEMO_PLANS}


def test_a_difference_shows_the_lines_and_is_cut() -> None:
    assert difference("a\nb\nc\n", "a\nB\nc\n") == ["--- kept", "+++ made", "@@ -1,3 +1,3 @@", " a", "-b", "+B", " c"]
    assert difference("a\n", "a\n") == []
    assert difference("", "x\n" * 500)[-1] == "… and 443 lines more"

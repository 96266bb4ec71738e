"""What holds a panel up a slope, in the book, the hang schedule and the order. The plan is invented."""

import re

from planlang.cli import main
from planlang.hardware.pages import PAGES
from planlang.manual.example import right_text


def markdown(folder, *changes):
    text = right_text(PAGES["slides-down-slope"])
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    (folder / ".planlang").touch()
    (folder / "slope.plan").write_text(text, encoding="utf-8")
    main(["build", str(folder / "slope.plan"), "--out", str(folder / "book")])
    return (folder / "book" / "job-book.md").read_text(encoding="utf-8")


def test_the_tie_is_in_the_loads_the_schedule_and_the_order(tmp_path):
    book = markdown(tmp_path)
    assert re.search(r"\| What holds it up the slope \| 2 x eye on each panel, from eye at its upper edge", book)
    schedule = book[book.index("## Hang schedule") :]
    assert re.search(
        r"\| K1 \| 2 x eye, from eye on the back at the upper edge \| eye with 4 x screw \| \*\*300\*\*", schedule
    )
    # 2 panels x 2 ties x 4 screws
    assert re.search(r"\| screw \|.*\b16\b", book[book.index("## Order") : book.index("## Hang schedule")])
    assert "Fit and tighten the ties up the slope first" in book


def test_plumb_links_say_that_they_hold_it_and_how_far_lower_it_comes_to_rest(tmp_path):
    tie = "\n  up-slope-tie 2 of eye from eye, to eye on 4 of screw, reaching 300"
    text = markdown(tmp_path, (", square to the slope", ""), (tie, ""))
    # 100 mm x tan 20 deg = 36.4 mm, rounded up
    assert re.search(r"\| What holds it up the slope \| Its links, which hang plumb.*drop x tan\(pitch\) = 37 mm", text)
    assert "Ties up the slope" not in text

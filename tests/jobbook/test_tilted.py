"""Links of unequal drops in the book: schedule, loads, drawings, estimate, CSV and JSON. The plan is invented."""

import csv
import json
import math
import re
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from planlang.cli import main
from planlang.manual.example import changed, small_plan

TILTED = (
    ("flat ceiling at 2800", "slope ceiling from south wall at 2600, pitch 20 deg"),
    ("drop 100", "drop 100, 300 more at the upper eyes"),
    ("joists 45 x 145 of spruce at 200 centres, first at 100, running across",
     "rafters 45 x 145 of spruce at 588 centres, first at 480"),
    ("into joists", "into rafters"),
    ("grid 2 across by 1 up, gap 500, centred across", "grid 1 across by 1 up, left edge at 1650"),
)  # fmt: skip


@cache
def book():
    """The Markdown, the rows of the hang schedule as CSV, the JSON, and the words of the page."""
    with TemporaryDirectory(prefix="planlang-") as place:
        folder = Path(place)
        (folder / ".planlang").touch()
        (folder / "tilted.plan").write_text(changed(small_plan(), TILTED), encoding="utf-8")
        main(["build", str(folder / "tilted.plan"), "--out", str(folder / "book")])
        rows = list(csv.DictReader((folder / "book" / "job-book-hang-schedule.csv").open(encoding="utf-8")))
        data = json.loads((folder / "book" / "job-book.json").read_text(encoding="utf-8"))
        text, page = ((folder / "book" / f"job-book.{kind}").read_text(encoding="utf-8") for kind in ("md", "html"))
        return text, rows, data, " ".join(re.sub(r"<[^>]*>", " ", page).split())


def test_the_schedule_has_the_drop_of_each_point_in_the_book_as_csv_and_as_json():
    text, rows, data, _ = book()
    drops = dict(re.findall(r"^\| (K1\.[a-d]) \|.*\| (\d+) \| [\d.]+ N \|", text, re.MULTILINE))
    assert drops == {"K1.a": "100", "K1.b": "100", "K1.c": "400", "K1.d": "400"}
    (column,) = [name for name in rows[0] if name.startswith("drop")]
    assert [row[column] for row in rows] == ["100", "100", "400", "400"]
    (panel,) = data["panels"]
    assert [point["drop"]["mm"] for point in panel["points"]] == [100, 100, 400, 400]


def test_the_book_says_how_it_hangs_and_what_the_estimate_takes():
    text, _, _, _ = book()
    # sin = 300 / 1000
    assert "600 x 1200 mm, long side up, tilted: the upper eyes hang lower, at 17.5 deg to the surface" in text
    assert "Clouds: panels that hang tilted are reckoned as if they hung parallel to their surface at the mean" in text
    assert "250 mm of air to ceiling" in text
    assert "by the drop of its higher row x tan(pitch) = 37 mm" in text
    assert "panels that hang tilted, for which a plan has no words" not in text


def test_the_section_and_its_table_show_the_tilted_panel_and_the_load_path_both_drops():
    text, _, _, page = book()
    assert "drop 100 mm to 400 mm" in page
    assert "Links are drawn square to the slope, but for the lower row of a tilted panel" in page
    found = re.search(r"\| lowest corner of K1 \| (\d+) \| \*\*(\d+)\*\* \|", text)
    highest = re.search(r"\| highest corner of K1 \| (\d+) \| \*\*(\d+)\*\* \|", text)
    assert found and highest
    # the front is 1200 long, and 20 - 17.4576 deg from level
    slant = math.radians(20 - math.degrees(math.asin(0.3)))
    # from the front's lower corner to the back's upper one: along the length, and up through the depth of 75
    run = 1200 * math.cos(slant) - 75 * math.sin(slant)
    rise = 1200 * math.sin(slant) + 75 * math.cos(slant)
    assert abs(int(highest[1]) - int(found[1]) - run) <= 1
    assert abs(int(highest[2]) - int(found[2]) - rise) <= 1

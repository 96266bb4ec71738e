"""What people get wrong: each slip said once, where it was made, with what to write instead; no consequences."""

from __future__ import annotations

from pathlib import Path

import pytest

from planlang.compiler import compile_plan
from planlang.manual.example import changed, said_of, small_plan
from planlang.plan.units import nearest_unit
from tests.plans import SMALL, findings_after, read_text

PLANS = sorted((Path(__file__).parent / "mistakes").glob("*.plan"))


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_twenty_mistakes_are_twenty_messages(path):
    """Each line that ends in `# !` holds one mistake, and no other line does."""
    marked = [number for number, line in enumerate(path.read_text().split("\n"), 1) if line.endswith("# !")]
    findings = compile_plan(path, for_book=False).findings
    assert len(marked) == 20
    assert sorted(finding.span.line for finding in findings) == marked
    assert all(finding.mend and finding.is_error for finding in findings)


def mend_after(folder, old, new):
    """The one finding after a change of the small plan: its code and its mend."""
    assert old in SMALL
    findings = read_text(folder, SMALL.replace(old, new, 1))[1]
    assert len(findings) == 1, findings
    return findings[0].code, findings[0].mend


SLIPS = [
    # (what stands there, what somebody writes, code, mend)
    ("gap 500", "gap 1 500", "numbers-run-together", "write `1500` for one value, or `1, 500` for two"),
    ("rectangle 5000 x 4000", "rectangle 5 000 x 4 000", "numbers-run-together",
     "write `5000` for one value, or `5, 000` for two"),
    ("at 2600", "at 8 6\"", "numbers-run-together", "write `8' 6\"` for one value, or `8, 6\"` for two"),
    ("0.10, 0.08, 0.05", "0.10 0.08, 0.05", "numbers-run-together", "write `0.10, 0.08`"),
    ("depth     75", "depth 75,5", "decimal-comma", "write `75.5` for one value, or `75, 5` for two"),
    ("face      600 x 1200", "face 600 x 1,200", "decimal-comma", "write `1200` for one value, or `1, 200` for two"),
    ("face      600 x 1200", "face 600 by 1200", "size-sign", "write `600 x 1200`"),
    ("face      600 x 1200", 'face 24 " x 48 "', "loose-inch-mark",
     'write an inch mark straight after its number: `24"`'),
    ("680 kg/m3", "680 kgm3", "unknown-unit", "write `680 kg/m3`"),
    ("680 kg/m3", "680 kg/m", "unknown-unit", "write `680 kg/m3`"),
    ("at 2600", "at 102 inches", "unknown-unit", "write `102 in`"),
    ("units mm", "units inches", "wrong-form", "did you mean `in`?"),
    ("units mm", "unit mm", "unknown-statement", "did you mean `units`?"),
    ("on east wall", "on eats wall", "unknown-name", "did you mean `east wall`?"),
    ("on east wall", "on east wal", "wrong-form", "did you mean `wall`?"),
    ("on east wall", "on the east wall", "wrong-form", "take `the` out"),
    ("d1            on east wall", "on east wall", "wrong-form", "give it a name, such as `door d1 on`"),
    ("flat  ceiling  at 2600", "flat at 2600", "wrong-form", "give it a name, such as `flat collar at`"),
    ("flat  ceiling  at 2600", "flat ceiling 2600", "wrong-form", "`at` is missing: write `ceiling at 2600`"),
    ("4 of eye", "4 eye", "wrong-form", "`of` is missing: write `4 of eye`"),
    ("into joists", "in joists", "wrong-form", "did you mean `into`?"),
    ("centred across, lowest", "centered across, lowest", "unknown-clause", "did you mean `centred`?"),
    ("wrapped 50\n", "wrapped 50,\n", "comma-goes-on", "take the comma out"),
    ("  issue  A of 2026-11-25\n", "  issue  A of 2026-11-25,\n", "comma-goes-on", "take the comma out"),
    ("panel cloud, mark C {", "panel cloud, mark C, {", "wrong-form", "take the comma out"),
    ("room box {", "room box\n{", "stray-brace",
     "put it at the end of the line above, after the statement whose block it opens"),
    ("room box {", "room box", "brace-missing", "put `{` at the end of this line"),
    ("  ceiling {", "  ceiling", "brace-missing", "put `{` at the end of this line"),
    ("rectangle 5000 x 4000", "rectangle 5 x 4 m", "size-unit", "write the unit after each side: `5 m x 4 m`"),
    ("face      600 x 1200", 'face 24 x 48"', "size-unit", 'write the unit after each side: `24" x 48"`'),
    ("array clouds, mark K", "array sky clouds, mark K", "unknown-clause", "join the words of a name: `sky-clouds`"),
    ("room box {", "room {", "wrong-form", "give it a name, such as `room loft`"),
    ("room box {", "chamber box {", "unknown-statement", None),
    ("    flat  ceiling  at 2600", "    level ceiling at 2600", "unknown-statement", "it takes: flat, slope"),
    ("  depth     75", "  thickness 75", "unknown-statement", None),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "code", "mend"), SLIPS, ids=[slip[1].strip() for slip in SLIPS])
def test_a_slip_is_said_once_with_what_to_write(tmp_path, old, new, code, mend):
    found, said = mend_after(tmp_path, old, new)
    assert found == code
    assert mend is None or said == mend


def test_what_can_only_mean_one_thing_is_read(tmp_path):
    changes = [
        ('specific-gravity  0.42, "invented"', 'specific-gravity 0.42 "invented"'),
        ("density  680 kg/m3", "density  680   kg/m³"),
        ("at 2600", "at 2 600 mm"),
        (", drop 100", " drop 100"),
        (
            "  door     d1 ",
            "  luminaire L1..L3 on ceiling centred at 1200, 2500, 3800 up 600, 90 across\n  door     d1 ",
        ),
        ("gap 500", "gap (400 +\n      100)"),
    ]
    assert findings_after(tmp_path, *changes) == []


def test_what_a_comma_swallowed_is_read_all_the_same(tmp_path):
    changes = [("units mm\n", "units mm\nfigure gap 400,\nfigure more gap + 100,\n"), ("gap 500", "gap more")]
    assert findings_after(tmp_path, *changes) == [("comma-goes-on", 3), ("comma-goes-on", 4)]


def test_in_a_misspelt_block_other_mistakes_are_found_and_its_names_are_known(tmp_path):
    changes = [("room box {", "romm box {"), ("  floor    rectangle 5000 x 4000", "  floor    rectangle 5000 x")]
    assert findings_after(tmp_path, *changes) == [("unknown-statement", 58), ("wrong-form", 59)]


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("kgm3", "kg/m3"), ("kg/m", "kg/m3"), ("mn", "mm"), ("MM", "mm"), ("hz", "Hz"), ("lbs", "lb"),
        ("Pas/m2", "Pa.s/m2"), ("Inches", "in"), ("feet", "ft"), ("percent", "%"), ("by", ""), ("of", ""), ("on", ""),
        ("wide", ""), ("eye", ""),
    ],
)  # fmt: skip
def test_the_unit_that_was_meant(text, unit):
    assert nearest_unit(text) == unit


def test_a_rating_that_several_pieces_share_is_said_once_where_it_is_stated():
    text = changed(small_plan(), (("maker's sheet E-1", "assumed"),))
    findings = said_of(text)
    assert [(finding.code, text.split("\n")[finding.span.line - 1].split()[0]) for finding in findings] == [
        ("rating-not-sourced", "rated"),
    ]  # fmt: skip

"""How much a plan may ask for: what is at a bound is worked on, what is over it is refused unplaced."""

from __future__ import annotations

import time

import pytest

from planlang.compiler import compile_plan
from planlang.plan.bounds import MOST_PANELS_IN_OPTIONS, panels_of, too_much
from planlang.plan.build.changes import MOST_OPTIONS
from planlang.plan.build.names import MOST_LIKES
from planlang.plan.entries import MOST_FINDINGS
from planlang.plan.tidying import VocabularyGuide
from planlang.syntax.tidy.tidy import tidy_text
from tests.plans import SMALL, findings_after, read_text

GRID = "grid 2 across by 1 up, gap 500"
SECONDS = 10


def codes(folder, text):
    return {finding.code for finding in read_text(folder, text)[1]}


def found(folder, text):
    """The codes of all errors of a whole check; it must end well within the time that any plan may take."""
    path = folder / "main.plan"
    path.write_text(text, encoding="utf-8")
    start = time.process_time()
    findings = compile_plan(path, for_book=False).findings
    assert time.process_time() - start < SECONDS
    return {finding.code for finding in findings if finding.is_error}


def with_grid(columns, rows):
    return SMALL.replace(GRID, f"grid {columns} across by {rows} up, gap 0")


def options(count, columns):
    block = "option o{} {{\n  array clouds {{\n    place row of {}, gap 0, lowest edge at 0\n  }}\n}}\n"
    return "".join(block.format(number, columns) for number in range(count))


def test_the_panels_of_a_plan_are_bounded(tmp_path):
    at_bound, over = (read_text(tmp_path, with_grid(*size))[0] for size in ((50, 10), (167, 3)))
    assert (panels_of(at_bound), too_much(at_bound)) == (500, ())
    assert [finding.code for finding in too_much(over)] == ["too-many-panels"]


@pytest.mark.parametrize(("columns", "rows"), [(500, 500), (500, 2), (1, 500)])
def test_a_large_grid_ends_in_time(tmp_path, columns, rows):
    assert found(tmp_path, with_grid(columns, rows))


def test_a_finding_stands_at_the_array_that_is_too_much(tmp_path):
    plan, _ = read_text(tmp_path, with_grid(400, 1) + SMALL[SMALL.index("array clouds") :].replace(
        "clouds, mark K", "others, mark L").replace(GRID, "grid 101 across by 1 up, gap 0"))  # fmt: skip
    (finding,) = too_much(plan)
    assert "501 panels" in finding.message
    assert finding.span == plan.arrays[1].placement.at


def test_features_and_lists_are_bounded(tmp_path):
    lights = "".join(f"  luminaire L{n} on ceiling centred at 100, 100, 9 across\n" for n in range(100))
    assert found(tmp_path, SMALL.replace("  door     d1", f"{lights}  door     d1")) == {"too-many"}


def test_places_and_targets_are_bounded(tmp_path):
    for line in ("listener l{} at 1000, 1000, height 1200\n", "target 0.{} s\n"):
        use = "use-of-room {{\n{}}}\n"
        assert found(tmp_path, SMALL + use.format("".join(line.format(n + 10) for n in range(12)))) == set()
        assert found(tmp_path, SMALL + use.format("".join(line.format(n + 10) for n in range(14)))) == {"too-many"}


def test_batts_of_no_size_are_refused_before_they_are_laid(tmp_path):
    assert found(tmp_path, SMALL.replace("1200 x 600 x 50", "0.001 x 0.001 x 50")) == {"too-many-parts"}


def test_members_of_no_distance_are_refused_before_they_are_set_out(tmp_path):
    text = SMALL.replace("joists 45 x 145 of spruce at 200", "joists 0.001 x 145 of spruce at 0.001")
    assert found(tmp_path, text) == {"too-many-members"}


def test_points_of_one_panel_are_bounded(tmp_path):
    assert found(tmp_path, SMALL.replace("4 of eye", "500 of eye")) == {"too-many-hang-points"}


def test_options_are_bounded_by_their_number(tmp_path):
    assert "too-many-options" not in codes(tmp_path, SMALL + options(MOST_OPTIONS, 1))
    assert "too-many-options" in codes(tmp_path, SMALL + options(MOST_OPTIONS + 1, 1))


def test_options_are_bounded_by_their_panels(tmp_path):
    count = MOST_PANELS_IN_OPTIONS // 200
    assert "too-many-options" not in found(tmp_path, SMALL + options(count - 1, 200))
    assert "too-many-options" in found(tmp_path, SMALL + options(count + 2, 200))


def test_options_are_bounded_by_how_long_the_plan_is(tmp_path):
    text = SMALL + "".join(f"hardware h{n} {{\n  mass 5 g\n}}\n" for n in range(3000))
    assert "too-many-options" not in found(tmp_path, text + options(1, 1))
    assert "too-many-options" in found(tmp_path, text + options(8, 1))


@pytest.mark.parametrize("backwards", [False, True])
def test_definitions_that_start_from_one_another_are_bounded(tmp_path, backwards):
    def chain(length):
        blocks = [f"hardware h{n} {{\n  like {f'h{n - 1}' if n else 'eye'}\n}}\n" for n in range(length)]
        return SMALL + "".join(reversed(blocks) if backwards else blocks)

    assert codes(tmp_path, chain(MOST_LIKES)) == set()
    assert codes(tmp_path, chain(MOST_LIKES + 1)) == {"like-too-much"}
    assert "like-too-much" in codes(tmp_path, chain(3000))


def test_a_definition_with_very_much_in_it_is_no_start_for_others(tmp_path):
    takes = "".join(f"  takes t{n} 5\n" for n in range(501))
    text = SMALL.replace("  absorber  framed", f"{takes}  absorber  framed") + "panel flag, mark F {\n  like cloud\n}\n"
    assert codes(tmp_path, text) == {"like-too-much"}


def test_after_a_thousand_findings_nothing_more_is_said(tmp_path):
    findings = read_text(tmp_path, SMALL + "nonsense here\n" * 5000)[1]
    assert len(findings) == MOST_FINDINGS + 1
    assert findings[-1].code == "too-many-errors"


@pytest.mark.parametrize(
    ("value", "code"),
    [
        ("9" * 61, "number-too-long"),
        ("9" * 9000, "number-too-long"),
        ("9" * 9000 + " kg", "number-too-long"),
        ("1/" + "9" * 5000, "number-too-long"),
        ("5' " + "9" * 5000 + '"', "number-too-long"),
        (" * ".join(["9" * 40] * 20), "number-too-long"),
        (" + ".join(f"1/{n}" for n in range(1009, 1400)), "value-too-long"),
        (" + ".join(f"1/{n}" for n in range(1009, 1240)), "number-too-long"),
        ("(1 + " * 1000 + "1" + ")" * 1000, "value-too-deep"),
        ("0." + "0" * 20 + "1", "out-of-range"),
        ("1 mm / 999999999999", "out-of-range"),
    ],
)
def test_values_are_bounded(tmp_path, value, code):
    line = SMALL[: SMALL.index("depth     75")].count("\n") + 1
    assert findings_after(tmp_path, ("depth     75", f"depth {value}")) == [(code, line)]


def test_a_figure_that_doubles_its_digits_is_stopped(tmp_path):
    doubling = "figure f0 3\n" + "".join(f"figure f{n + 1} f{n} * (f{n} / 1 mm)\n" for n in range(60))
    assert codes(tmp_path, doubling + SMALL) == {"number-too-long"}


@pytest.mark.parametrize("names", ["R1..R999999999", "R1..R" + "9" * 9000, "R²..R³", "R4..R1", "R1..S4", "R..R"])
def test_ranges_of_names_are_bounded(tmp_path, names):
    door = "door     d1            on east wall at 500"
    assert "count-differs" in {
        code for code, _ in findings_after(tmp_path, (door, f"door {names} on east wall at 500"))
    }


def test_deep_values_can_be_shown_in_a_message(tmp_path):
    deep = "(1 + " * 1500 + "1" + ")" * 1500
    found_codes = [code for code, _ in findings_after(tmp_path, ("absorber  framed", f"absorber {deep}"))]
    assert found_codes == ["wrong-form"]


def test_a_name_in_a_size_that_is_no_figure_is_said_so(tmp_path):
    assert [code for code, _ in findings_after(tmp_path, ("face      600", "face widht"))] == ["unknown-figure"]


@pytest.mark.parametrize("line", ["note 5", "region", "region 5", 'note "a", "b"'])
def test_a_remark_at_fault_is_one_finding(tmp_path, line):
    assert len(codes(tmp_path, f"{line}\n{SMALL}")) == 1


def test_an_empty_title_breaks_nothing(tmp_path):
    plan, findings = read_text(tmp_path, SMALL.replace('"Small room"', '""'))
    assert (plan.title, findings) == ("", ())


@pytest.mark.parametrize("names", ["R1..S4", "R4..R1", "R1..R" + "9" * 9000, "R²..R³"])
def test_tidying_leaves_a_range_that_makes_no_sense(names):
    text = f"units mm\n\nroom box {{\n  rooflight  {names} on ceiling centred at 800\n}}\n"
    tidied = tidy_text("a.plan", text, VocabularyGuide())
    assert tidied.value is not None
    assert names in tidied.value


@pytest.mark.parametrize(("gravity", "right"), [("0.05", True), ("1.5", True), ("42", False), ("0", False)])
def test_no_wood_is_heavier_than_wood_without_pores(tmp_path, gravity, right):
    codes_found = [code for code, _ in findings_after(tmp_path, ("gravity  0.42", f"gravity  {gravity}"))]
    assert codes_found == ([] if right else ["out-of-range"])


ROOM_FOR = ("as many as fit, gap 0, margin 0", "to cover 50 %, gap 1", "to cover 100 %, gap 0")


def with_rule(rule, face):
    return SMALL.replace(f"{GRID}, centred across, lowest edge at 1600", rule).replace("600 x 1200", face)


@pytest.mark.parametrize("rule", ROOM_FOR)
def test_as_many_as_there_is_room_for_are_bounded_before_they_are_placed(tmp_path, rule):
    plan, _ = read_text(tmp_path, with_rule(rule, "60 x 60"))
    finding = too_much(plan)[0]
    assert finding.code == "too-many-panels"
    assert "up to " in finding.message


@pytest.mark.parametrize("rule", ROOM_FOR)
def test_a_surface_full_of_lights_and_zones_is_filled_in_time(tmp_path, rule):
    text = with_rule(rule, "200 x 250")
    lights = ", ".join(f"{25 * number}, {20 * number}" for number in range(1, 100))
    things = f"  vent L1..L99 on ceiling centred at {lights}, 8 across, keep 1 clear\n"
    zones = "".join(
        f'  zone z{number} on ceiling from {number}, 0 to 5000, 2000, no anything, says "A"\n' for number in range(490)
    )
    assert found(tmp_path, text.replace("  door  ", f"{things}{zones}  door  "))


def test_reflections_of_many_in_many_are_bounded(tmp_path):
    people = "".join(
        f"  talker t{n} at 4000, 2000, height 1200\n  listener l{n} at 1000, 2000, height 1200\n" for n in range(1, 24)
    )
    rule = "at first reflections from t1..t23 to l1..l23"
    text = with_rule(rule, "600 x 1200") + f"use-of-room {{\n{people}}}\n"
    plan, findings = read_text(tmp_path, text)
    assert findings == ()
    (finding,) = too_much(plan)
    assert "46 listeners and talkers" in finding.message


def test_an_array_by_another_counts_as_many(tmp_path):
    array = SMALL[SMALL.index("array clouds") :]
    others = "".join(
        array.replace("clouds, mark K", f"more-{number}, mark M{number}x").replace(
            f"{GRID}, centred across, lowest edge at 1600", "one above each of clouds, gap 0"
        )
        for number in range(3)
    )
    plan, _ = read_text(tmp_path, SMALL + others)
    assert panels_of(plan) == 8


@pytest.mark.parametrize(("corners", "codes_found"), [(24, set()), (25, {"too-many"})])
def test_the_corners_of_solids_are_bounded_together(tmp_path, corners, codes_found):
    def soffit(number):
        lower = [(100 + 60 * step, 100 + 1200 * number) for step in range(corners - 1)]
        places = ", ".join(f"{east}, {north}" for east, north in [*lower, (100, 1000 + 1200 * number)])
        return f"  soffit s{number} through {places}, underside at 2000, plaster\n"

    plan, findings = read_text(tmp_path, SMALL.replace("  door     d1", f"{soffit(0)}{soffit(1)}  door     d1"))
    assert findings == ()
    assert {finding.code for finding in too_much(plan)} == codes_found


def test_a_room_of_many_corners_has_fewer_panels(tmp_path):
    beams = "".join(f"  beam B{n} on ceiling at 100, up {60 + 60 * n}, 4800 x 20, 50 deep\n" for n in range(20))
    room = SMALL.replace("  door  ", f"{beams}  door  ")
    for columns, said in ((40, []), (41, ["too-many"])):  # 4 corners of the floor, 80 of beams
        plan, _ = read_text(tmp_path, room.replace(GRID, f"grid {columns} across by 1 up, gap 0"))
        assert [finding.code for finding in too_much(plan)] == said
    assert "41 panels beside 84 corners of the room, 21 things" in too_much(plan)[0].message


def test_places_and_sheets_in_several_sizes_leave_room_for_fewer_panels(tmp_path):
    people = "".join(f"  listener l{n} at 1000, {1000 + n}, height 1200\n" for n in range(10))
    text = with_grid(450, 1).replace("sheet ply {", "sheet ply {\n  also-sold 1525 x 1525")
    for columns in (335, 336):  # 725, less 35 for each of 4 corners, 200 for the sheet, 5 for each place
        plan, findings = read_text(
            tmp_path, f"{text.replace('grid 450', f'grid {columns}')}use-of-room {{\n{people}}}\n"
        )
        assert findings == ()
        assert bool(too_much(plan)) == (columns > 335)

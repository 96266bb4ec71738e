"""The benchmarks run, and their table says what was measured. No time is asserted: the machine may be busy."""

from __future__ import annotations

import pytest

from tests.bench import acoustics, commands, front_end, placement
from tests.bench.__main__ import as_text
from tests.bench.measure import Line, compared, python


def test_commands_are_compared_with_the_first() -> None:
    quick, slow = "quick", "slow"
    lines = compared(
        {quick: python("-c", ""), slow: python("-c", "import time; time.sleep(0.3)")}, {slow: 1.01}, repetitions=1
    )
    assert [line.what for line in lines] == [quick, slow]
    assert lines[0].ratio == 1
    assert lines[1].ratio > 1.01
    assert (lines[0].holds, lines[1].holds) == (True, False)
    assert "limit 1.01: passed" in as_text("title", lines)


def test_a_command_that_fails_is_no_measurement() -> None:
    with pytest.raises(Exception, match="non-zero exit status"):
        compared({"broken": python("-c", "raise SystemExit(3)")}, {}, repetitions=1)


def test_the_commands_run() -> None:
    lines = commands.measure(repetitions=1)
    assert [line.what for line in lines][-2:] == [commands.CHECK, commands.BUILD]
    assert all(isinstance(line, Line) and 0 < line.least <= line.median for line in lines)


def test_the_front_end_is_timed_beside_bare_lark_on_plans_that_are_right() -> None:
    lines = front_end.measure(repetitions=1, sizes=(200, 400))
    assert len(lines) == 5
    assert all(line.median > 0 and line.ratio > 0 for line in lines)
    assert [line.limit for line in lines] == [
        None,
        front_end.MOST_TIMES,
        None,
        front_end.MOST_TIMES,
        front_end.STEEPEST,
    ]


def test_each_part_of_the_acoustic_engine_is_timed_against_what_it_may_take() -> None:
    lines = acoustics.measure(repetitions=1, rays=500)
    assert len(lines) == 8
    assert all(line.median > 0 and line.limit == 1.0 for line in lines)
    slow = acoustics.timed("slow", lambda: sum(range(2_000_000)), 1e-4, 1)
    assert not slow.holds


def test_a_generated_plan_has_about_the_lines_that_are_asked_for() -> None:
    for lines in (500, 5000):
        assert 0.9 * lines < front_end.generated(lines).count("\n") < 1.01 * lines


def test_the_growth_exponent_is_that_of_the_power_that_made_the_times() -> None:
    sizes = [1000, 10_000, 100_000]
    for power in (1.0, 1.5, 2.0):
        assert front_end.exponent(sizes, [0.01 * size**power for size in sizes]) == pytest.approx(power)


def test_the_checks_of_panels_are_timed_beside_all_pairs() -> None:
    lines = placement.measure(repetitions=1, sizes=((5, 4), (10, 8)))
    assert [line.limit for line in lines] == [None, None, None, placement.MOST_SECONDS, placement.STEEPEST]
    assert all(line.median > 0 for line in lines)


def test_the_checks_find_what_all_pairs_find() -> None:
    plan, room, panels = placement.hall(4, 3)
    assert placement.by_grid(plan, room, panels) == placement.by_pairs(plan, room, panels) == 0
    doubled = (*panels, panels[5])
    assert placement.by_grid(plan, room, doubled) == placement.by_pairs(plan, room, doubled) == 1


@pytest.mark.slow
def test_the_checks_grow_hardly_faster_than_the_panels() -> None:
    """Fourfold panels and lamps take all pairs sixteen times as long; the processor's time leaves a wide margin."""
    small, large = (
        min(placement.seconds(placement.by_grid, there) for _ in range(3))
        for there in (placement.hall(10, 10), placement.hall(20, 20))
    )
    assert large < 9 * small

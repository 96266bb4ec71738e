"""The benchmarks run, and their table says what was measured. No time is asserted: the machine may be busy."""

from __future__ import annotations

import json
from fractions import Fraction

import pytest

from planlang.materials.cutting import Demand
from planlang.materials.cutting.replay import Rectangle, Stock
from tests.bench import acoustics, commands, cutting, front_end, placement
from tests.bench.__main__ import as_text
from tests.bench.cutting_peers import PEERS, Peer, can_be_cut
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
        min(placement.seconds(placement.in_all, there) for _ in range(3))
        for there in (placement.hall(10, 10), placement.hall(20, 20))
    )
    assert large < 9 * small


def test_cutting_is_measured_instance_by_instance_beside_its_bound() -> None:
    lines = cutting.measure(choice=cutting.Choice(most=2), every=True)
    instances = [line for line in lines if line.least and "proven" not in line.what]
    assert len(instances) == 2 * (len(cutting.SHEET_SETS) + len(cutting.STICK_SETS))
    assert all(line.ratio >= 1 for line in instances)
    absent = [peer.absent.what for peer in PEERS if peer.absent]
    assert [line.what for line in lines[: len(absent)]] == absent


def test_every_set_of_instances_is_there_and_says_where_it_is_from() -> None:
    files = {path.stem: path.read_text(encoding="utf-8").splitlines() for path in cutting.INSTANCES.iterdir()}
    assert {name: len(lines) - 1 for name, lines in files.items()} == {
        "classes": 250,
        "workshop": 24,
        "cutting_stock": 26,
        "sticks_workshop": 30,
        "sticks_falkenauer": 36,
    }
    assert all(json.loads(lines[0])["source"] for lines in files.values())


def boxes(*placed: tuple[int, int, int, int]) -> list[Rectangle]:
    return [Rectangle(*map(Fraction, box)) for box in placed]


def test_a_peers_plan_counts_only_when_it_can_be_cut() -> None:
    """The pinwheel on 5 x 5: it fits, and no cut goes through. Then parts missing, outside, overlapping, turned."""
    pinwheel = boxes((0, 0, 3, 2), (3, 0, 2, 3), (2, 3, 3, 2), (0, 2, 2, 3), (2, 2, 1, 1))
    parts = [(3, 2, False), (3, 2, False), (2, 3, False), (2, 3, False), (1, 1, False)]
    assert not can_be_cut((5, 5), parts, [pinwheel])
    two = [(3, 2, False), (2, 3, False)]
    assert can_be_cut((5, 5), two, [boxes((0, 0, 3, 2), (3, 0, 2, 3))])
    assert not can_be_cut((5, 5), two, [boxes((0, 0, 3, 2))])
    assert not can_be_cut((5, 5), two, [boxes((0, 0, 3, 2), (4, 0, 2, 3))])
    assert not can_be_cut((5, 5), two, [boxes((0, 0, 3, 2), (2, 0, 2, 3))])
    assert not can_be_cut((5, 5), two, [boxes((0, 0, 3, 2), (0, 2, 3, 2))])
    assert can_be_cut((5, 5), [(3, 2, True), (2, 3, True)], [boxes((0, 0, 3, 2), (0, 2, 3, 2))])


@pytest.mark.parametrize("peer", PEERS, ids=lambda peer: peer.library)
def test_a_peer_lays_four_quarters_on_one_sheet(peer: Peer) -> None:
    pytest.importorskip(peer.library, reason="it is in the extra `bench`")
    stock = Stock(Fraction(10), Fraction(10), Fraction(0), Fraction(0), cutting.LEAST_OFFCUT)
    assert peer.sheets(stock, [Demand("P", Fraction(5), Fraction(5), 4, True)], 0.5) == 1

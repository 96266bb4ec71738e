"""What a search goes on with above the lower bound: corrected values, rounds, one sheet fewer as the goal, and
sheets as columns.

A dive is made only while the linear program, as far as it is known, leaves room for a plan with one sheet fewer.
"""

from collections.abc import Iterator, Sequence
from itertools import islice

from planlang.materials.cutting.columns import Columns
from planlang.materials.cutting.dive import dive
from planlang.materials.cutting.problem import Problem
from planlang.materials.cutting.relay import Relay
from planlang.materials.cutting.rounds import Rounds
from planlang.materials.cutting.values import Plan, uneven, value_passes
from planlang.materials.cutting.work import Draw, Work

FIRST_TURN = 8
ROOT_LAYS = 12
PASSES = 4
NEARLY = 1e-6


def improve(problem: Problem, plans: Sequence[Plan], least: int, work: Work) -> list[Plan]:
    """Plans found on the way to better ones, until one has `least` sheets or the work is done.

    Turns grow, but don't depend on the limit, so that more work goes the same way further and finds no worse.
    """
    draw = Draw()
    turn = (work.limit - work.done) // (FIRST_TURN * problem.budget.effort)
    found: list[Plan] = []
    for plan in islice(value_passes(problem, plans[0], draw, work), PASSES):
        found.append(plan)
        if len(plan) <= least:
            return found
    best = min([*plans, *found], key=lambda plan: uneven(problem, plan))
    columns, rounds = Columns(problem), Rounds(problem, best)
    for plan in [*plans, *found]:
        columns.learn(plan)
    while work.left and len(best) > least:
        if rounds.possible:
            rounds.start_from(best)
            rounds.run(least, draw, work.part(4 * turn))
            best = fewer(best, rounds.plan, found)
        else:
            found += value_passes(problem, plans[0], draw, work.part(4 * turn))
            best = min([best, *found], key=len)
        relay = Relay(problem, rounds.plan if len(rounds.plan) == len(best) else best, turn)
        relay.run(least, work.part(turn))
        best = fewer(best, relay.plan, found)
        if rounds.possible:
            columns.learn([*rounds.seen, *relay.seen])
            rounds.seen.clear()
            for plan in by_dives(problem, columns, len(best), least, draw, work.part(turn)):
                best = fewer(best, plan, found)
        turn *= 2
    return found


def fewer(best: Plan, plan: Plan, found: list[Plan]) -> Plan:
    """The plan to go on from: the better of two; what is new and no worse is noted as found."""
    if len(plan) > len(best):
        return best
    found.append(plan)
    return plan if len(plan) < len(best) else best


def by_dives(problem: Problem, columns: Columns, most: int, least: int, draw: Draw, work: Work) -> Iterator[Plan]:
    """Plans with ever fewer sheets than `most` by dives into the linear program."""
    while work.left and most > least:
        solved = columns.solve(problem.counts, ROOT_LAYS, draw, work)
        if solved.total > most - 1 + NEARLY:
            return
        plan = dive(problem, columns, solved, most - 1, draw, work)
        if plan:
            most = len(plan)
            yield plan

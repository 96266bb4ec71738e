"""What a search goes on with above the lower bound: corrected values, rounds, and sheets as columns.

A dive is made only while the linear program, as far as it is known, leaves room for a plan with one sheet fewer.
"""

from collections.abc import Iterator, Sequence

from planlang.materials.cutting.columns import Columns
from planlang.materials.cutting.dive import dive
from planlang.materials.cutting.problem import Problem
from planlang.materials.cutting.rounds import Rounds
from planlang.materials.cutting.values import Plan, uneven, value_passes
from planlang.materials.cutting.work import Draw, Work

FIRST_TURN = 8
ROOT_LAYS = 12
NEARLY = 1e-6


def improve(problem: Problem, plans: Sequence[Plan], least: int, work: Work) -> list[Plan]:
    """Plans found on the way to better ones, until one has `least` sheets or the work is done.

    Turns grow, but don't depend on the limit, so that more work goes the same way further and finds no worse.
    """
    draw = Draw()
    turn = (work.limit - work.done) // (FIRST_TURN * problem.budget.effort)
    found: list[Plan] = []
    for plan in value_passes(problem, plans[0], draw, work.part(2 * turn)):
        found.append(plan)
        if len(plan) <= least:
            return found
    best = min([*plans, *found], key=lambda plan: uneven(problem, plan))
    columns, rounds = Columns(problem), Rounds(problem, best)
    for plan in [*plans, *found]:
        columns.learn(plan)
    while work.left and len(rounds.plan) > least and rounds.possible:
        rounds.run(least, draw, work.part(turn))
        columns.learn(rounds.seen)
        rounds.seen.clear()
        found.append(rounds.plan)
        found += by_dives(problem, columns, rounds, least, draw, work.part(3 * turn))
        turn *= 2
    if not rounds.possible:
        found += value_passes(problem, plans[0], draw, work)
    return found


def by_dives(problem: Problem, columns: Columns, rounds: Rounds, least: int, draw: Draw, work: Work) -> Iterator[Plan]:
    """Plans with ever fewer sheets by dives into the linear program; the rounds go on from the last."""
    while work.left and len(rounds.plan) > least:
        solved = columns.solve(problem.counts, ROOT_LAYS, draw, work)
        most = len(rounds.plan) - 1
        if solved.total > most + NEARLY:
            return
        plan = dive(problem, columns, solved, most, draw, work)
        if plan:
            rounds.plan = plan
            yield plan

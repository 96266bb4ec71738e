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

ROOT_LAYS = 12
NEARLY = 1e-6


def improve(problem: Problem, plans: Sequence[Plan], least: int, work: Work) -> list[Plan]:
    """Plans found on the way to better ones, until one has `least` sheets or the work is done."""
    draw = Draw()
    total, spare = work.limit, work.limit - work.done
    work.limit = work.done + spare // (4 * problem.budget.effort)
    found: list[Plan] = []
    for plan in value_passes(problem, plans[0], draw, work):
        found.append(plan)
        if len(plan) <= least:
            return found
    work.limit = total
    best = min([*plans, *found], key=lambda plan: uneven(problem, plan))
    return [*found, *by_columns(problem, best, [*plans, *found], least, draw, work)]


def by_columns(
    problem: Problem, best: Plan, known: Sequence[Plan], least: int, draw: Draw, work: Work
) -> Iterator[Plan]:
    """Plans by rounds and by dives into the linear program, in turn."""
    turn = (work.limit - work.done) // 8
    columns, rounds = Columns(problem), Rounds(problem, best)
    for plan in known:
        columns.learn(plan)
    while work.left and len(rounds.plan) > least:
        rounds.run(least, draw, work.part(turn))
        columns.learn(rounds.seen)
        rounds.seen.clear()
        yield rounds.plan
        ends = work.part(3 * turn)
        while ends.left and len(rounds.plan) > least:
            solved = columns.solve(problem.counts, ROOT_LAYS, draw, ends)
            most = len(rounds.plan) - 1
            if solved.total > most + NEARLY:
                break
            plan = dive(problem, columns, solved, most, draw, ends)
            if plan:
                rounds.plan = plan
                yield plan

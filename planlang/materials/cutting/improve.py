"""What a search goes on with above the lower bound: corrected values, rounds, one sheet fewer as the goal, and columns.

They take turns, and each goes on from the best plan so far. Turns grow, but don't depend on the effort, so that more
work goes the same way further and finds no worse.
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

FIRST_TURN = 10
"""The first turn's share of the work of the least effort."""
PASSES = 4
MANY = 10
"""From so many parts a sheet on it is better to change sheets part by part than to lay them anew."""
ROOT_LAYS = 12
NEARLY = 1e-6


def improve(problem: Problem, plans: Sequence[Plan], least: int, work: Work) -> list[Plan]:
    """Plans found on the way to better ones, until one has `least` sheets or the work is done."""
    found: list[Plan] = []
    for plan in Search(problem, plans, least, work).run():
        found.append(plan)
        if len(plan) <= least:
            break
    return found


class Search:
    """Where the search stands: the best plan, and what goes on from it."""

    def __init__(self, problem: Problem, plans: Sequence[Plan], least: int, work: Work) -> None:
        self._problem, self._plans, self._least, self._work = problem, plans, least, work
        self._draw = Draw()
        self._turn = work.limit // (FIRST_TURN * problem.budget.effort)

    def run(self) -> Iterator[Plan]:
        """The plans found, as long as there is work left. Who takes them stops at the least."""
        passes = value_passes(self._problem, self._plans[0], self._draw, self._work)
        first = []
        for plan in islice(passes, PASSES):
            first.append(plan)
            yield plan
        best = min([*self._plans, *first], key=lambda plan: uneven(self._problem, plan))
        rounds, columns = Rounds(self._problem, best), Columns(self._problem)
        for plan in [*self._plans, *first]:
            columns.learn(plan)
        few, many = (4, 1) if sum(self._problem.counts) < MANY * len(best) else (1, 4)
        turn = self._turn
        while self._work.left and len(best) > 1:
            again = self._in_rounds(rounds, turn * few) if rounds.possible else islice(passes, PASSES)
            for plan in again:
                best = min(best, plan, key=len)
                yield plan
            start = rounds.plan if len(rounds.plan) == len(best) else best
            for plan in self._by_goal(start, columns, turn, turn * many):
                best = min(best, plan, key=len)
                yield plan
            if rounds.possible:
                columns.learn(rounds.seen)
                rounds.seen.clear()
                for plan in by_dives(self._problem, columns, len(best), self._draw, self._work.part(turn)):
                    best = min(best, plan, key=len)
                    yield plan
            rounds.start_from(best)
            turn *= 2

    def _in_rounds(self, rounds: Rounds, most: int) -> Iterator[Plan]:
        rounds.run(self._least, self._draw, self._work.part(most))
        yield list(rounds.plan)

    def _by_goal(self, start: Plan, columns: Columns, seed: int, most: int) -> Iterator[Plan]:
        relay = Relay(self._problem, start, seed)
        relay.run(self._least, self._work.part(most))
        columns.learn(relay.seen)
        if len(relay.plan) < len(start):
            yield relay.plan


def by_dives(problem: Problem, columns: Columns, most: int, draw: Draw, work: Work) -> Iterator[Plan]:
    """Plans with ever fewer sheets than `most` by dives into the linear program.

    A dive is made only while the program, as far as it is known, leaves room for a plan with one sheet fewer.
    """
    while work.left and most > 1:
        solved = columns.solve(problem.counts, ROOT_LAYS, draw, work)
        if solved.total > most - 1 + NEARLY:
            return
        plan = dive(problem, columns, solved, most - 1, draw, work)
        if plan:
            most = len(plan)
            yield plan

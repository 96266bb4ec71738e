"""A few hundred broken plans at every test run, and that the oracle sees what it is there for."""

from __future__ import annotations

import time

import pytest

from planlang import cli, compiler
from planlang.plan.vocabulary import FILE
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.span import Span
from tests.fuzz.base import BASE, MAIN, sources
from tests.fuzz.campaign import Campaign, run_generated, run_mutants
from tests.fuzz.generate import template
from tests.fuzz.mutate import mutant
from tests.fuzz.oracle import Case, is_inside, judge

BROKEN = Case({MAIN: b"nonsense\n"}, MAIN)


def nothing(campaign: Campaign) -> None:
    """No word of how far it has come."""


def test_mutants_of_the_demos_break_nothing():
    campaign = Campaign()
    run_mutants(campaign, 180, 0, nothing)
    assert campaign.failures == []
    assert campaign.done == 180


def test_plans_from_the_vocabulary_break_nothing():
    campaign = Campaign()
    run_generated(campaign, 120, 0, nothing)
    assert campaign.failures == []
    assert campaign.done == 120


def test_what_is_started_from_is_compiled_to_the_end():
    for source in sources()[2:]:
        verdict = judge(Case(source.files, source.main, "build"))
        assert (verdict.fault, verdict.status in (cli.CLEAN, cli.FAILED)) == ("", True)
        assert verdict.findings < 10


def test_every_block_of_the_vocabulary_is_in_what_is_started_from():
    blocks = {kind.word for _, kind in template()}
    assert {kind.word for kind in FILE.block or () if kind.block is not None} - blocks == set()


def test_a_mutant_is_the_same_at_every_run():
    assert [mutant(number) for number in range(30)] == [mutant(number) for number in range(30)]
    assert len({mutant(number).files[mutant(number).main] for number in range(30)}) > 25


@pytest.mark.parametrize("fault", [ValueError("x"), RecursionError("deep"), MemoryError("much"), AssertionError("odd")])
def test_the_oracle_sees_a_traceback(monkeypatch, fault):
    def breaks(*_, **__):
        raise fault

    monkeypatch.setattr(compiler, "read_project", breaks)
    assert type(fault).__name__ in judge(BROKEN).fault


def test_the_oracle_sees_a_hang(monkeypatch):
    def hangs(*_, **__):
        while True:
            pass

    monkeypatch.setattr(compiler, "read_project", hangs)
    start = time.perf_counter()
    assert "took more than 0.2 s" in judge(BROKEN, seconds=0.2).fault
    assert time.perf_counter() - start < 5


def test_the_oracle_sees_another_exit_status(monkeypatch):
    monkeypatch.setattr(cli, "main", lambda arguments: 3)
    assert judge(BROKEN).fault == "exit status 3"


def test_the_oracle_sees_an_error_that_ends_well(monkeypatch):
    monkeypatch.setattr(cli, "FAILED", cli.CLEAN)
    assert judge(BROKEN).fault == "exit status 0 in spite of an error"


@pytest.mark.parametrize(
    ("span", "inside"),
    [
        (Span(MAIN, 1, 1, 4), True), (Span(MAIN, 1, 5, 1), True), (Span(MAIN, 1, 6, 1), False),
        (Span(MAIN, 1, 4, 3), False), (Span(MAIN, 0, 1, 1), False), (Span(MAIN, 9, 1, 1), False),
        (Span("other.plan", 1, 1, 1), False), (Span("", 0, 0, 0), False), (Span(MAIN, 1, 1, 0), False),
    ],
)  # fmt: skip
def test_the_oracle_sees_a_place_that_is_not_there(tmp_path, span, inside):
    (tmp_path / MAIN).write_text("plan\n", encoding="utf-8")
    assert is_inside(span, compiler.compile_plan(tmp_path / MAIN, for_book=False)) is inside


def test_the_oracle_looks_at_every_place_of_a_finding(monkeypatch):
    there = Span(MAIN, 1, 1)
    finding = Diagnostic("made-up", "x", there, also=(("elsewhere", Span(MAIN, 9999, 1)),))
    real = compiler.type_plan

    def with_a_finding(project, option=""):
        typed = real(project, option)
        return type(typed)(typed.value, (*typed.diagnostics, finding))

    monkeypatch.setattr(compiler, "type_plan", with_a_finding)
    assert "made-up" in judge(Case({MAIN: BASE.encode()}, MAIN)).fault


def test_a_case_that_fails_is_kept(tmp_path, monkeypatch):
    monkeypatch.setattr(cli, "main", lambda arguments: 3)
    campaign = Campaign(keep=tmp_path)
    campaign.take("first", BROKEN)
    assert (tmp_path / "first" / MAIN).read_bytes() == b"nonsense\n"
    assert "exit status 3" in (tmp_path / "first" / "fault.txt").read_text(encoding="utf-8")
    assert len(campaign.failures) == 1

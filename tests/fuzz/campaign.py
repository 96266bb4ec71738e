"""Many cases in a row, with what came of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from hypothesis import HealthCheck, Phase, given, seed, settings

from tests.fuzz.generate import cases
from tests.fuzz.mutate import mutant
from tests.fuzz.oracle import BYTES, SECONDS, Case, Verdict, judge, peak_bytes, write_files

Progress = Callable[["Campaign"], None]


@dataclass
class Campaign:
    """The count of cases, their failures, and the extremes among them."""

    seconds: float = SECONDS
    keep: Path | None = None
    done: int = 0
    failures: list[tuple[Case, str]] = field(default_factory=list)
    statuses: Counter[int | None] = field(default_factory=Counter)
    slowest: tuple[float, str] = (0.0, "")
    peak: int = 0
    without_findings: int = 0

    def take(self, name: str, case: Case) -> Verdict:
        """Run one case and note what came of it."""
        verdict = judge(case, self.seconds)
        fault = verdict.fault
        if peak_bytes() > BYTES > self.peak:
            fault = fault or f"memory rose to {peak_bytes() / 2**20:.0f} MiB"
        self.peak = peak_bytes()
        self.done += 1
        self.statuses[verdict.status] += 1
        self.without_findings += verdict.findings == 0
        self.slowest = max(self.slowest, (verdict.seconds, name))
        if fault:
            self.failures.append((case, fault))
            self.save(name, case, fault)
        return verdict

    def save(self, name: str, case: Case, fault: str) -> None:
        """Write a case that failed into a folder of its own, with what was wrong."""
        if self.keep is None:
            return
        folder = self.keep / name
        folder.mkdir(parents=True, exist_ok=True)
        write_files(folder, case)
        (folder / "fault.txt").write_text(f"{case.command} {case.main} {case.option}\n{fault}\n", encoding="utf-8")


def run_mutants(campaign: Campaign, count: int, number: int, progress: Progress) -> None:
    """Plans broken byte by byte: the mutants from `number * 1 000 000` on."""
    for each in range(number * 1_000_000, number * 1_000_000 + count):
        campaign.take(f"mutant-{each}", mutant(each))
        progress(campaign)


def run_generated(campaign: Campaign, count: int, number: int, progress: Progress) -> None:
    """Plans from the vocabulary, drawn by Hypothesis after a number."""

    @seed(number)
    @settings(max_examples=count, database=None, deadline=None, phases=[Phase.generate],
              suppress_health_check=list(HealthCheck))  # fmt: skip
    @given(cases())
    def each(case: Case) -> None:
        campaign.take(f"generated-{number}-{campaign.done}", case)
        progress(campaign)

    each()

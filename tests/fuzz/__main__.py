"""`python -m tests.fuzz --cases 20000 --seed 1` compiles so many broken plans; status 1 when one breaks the compiler.

Half of the cases are demo plans changed byte by byte, half are statements drawn from the vocabulary. `--keep DIR` saves
each case that fails. A run can be repeated: the same seed gives the same cases.
"""

from __future__ import annotations

import argparse
import sys
import time
from pathlib import Path

from tests.fuzz.campaign import Campaign, run_generated, run_mutants

EVERY = 1000


def progress(campaign: Campaign) -> None:
    """Say how far it has come."""
    if campaign.done % EVERY == 0:
        print(as_text(campaign), flush=True)


def as_text(campaign: Campaign) -> str:
    """Cases, failures, slowest, memory."""
    statuses = ", ".join(f"{status}: {count}" for status, count in sorted(campaign.statuses.items(), key=str))
    return (
        f"{campaign.done} cases, {len(campaign.failures)} failures, exit status {statuses}, "
        f"{campaign.without_findings} without findings, "
        f"slowest {campaign.slowest[0]:.2f} s ({campaign.slowest[1]}), peak memory {campaign.peak / 2**20:.0f} MiB"
    )


def main() -> int:
    """Run a campaign."""
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    parser.add_argument("--cases", type=int, default=20_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--keep", type=Path, default=None, metavar="DIR")
    options = parser.parse_args()

    campaign = Campaign(keep=options.keep)
    start = time.perf_counter()
    run_mutants(campaign, options.cases // 2, options.seed, progress)
    run_generated(campaign, options.cases - options.cases // 2, options.seed, progress)
    for _, fault in campaign.failures:
        print(fault, "-" * 80, sep="\n", file=sys.stderr)
    print(f"{as_text(campaign)}, in {time.perf_counter() - start:.0f} s")
    return 1 if campaign.failures else 0


if __name__ == "__main__":
    sys.exit(main())

"""Hostile text in every field of a plan is shown as text: nothing runs, nothing is asked for, nothing is pushed out.

The plans, and all that is made of them, are invented.
"""

from __future__ import annotations

import re
import shutil
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from planlang.compiler import compile_plan
from planlang.jobbook.book import write_book
from planlang.jobbook.compiled import CompiledPlan
from planlang.syntax.bounds import LONGEST_LINE
from tests.browser.survey import WIDTHS, survey_of
from tests.browser.visit import opened
from tests.jobbook.compiled import compiled_plan, with_every_text
from tests.plans import DEMOS

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser
TRAP = (
    "<script>alert(1)</script>](javascript:alert(1)) <img src=x onerror=alert(1)></style><iframe></iframe>"
    "' onload='alert(1) \u202egnp.exe\u2066 &lt;b&gt;"
)
QUOTED = re.compile(r'(?<!use )"([^"\n]*)"')


def written(folder: Path) -> CompiledPlan:
    """A demo with the trap in every text between quotes of its plan and of the shop's files, and a title of 10 kB."""
    shutil.copytree(DEMOS, folder / "plans")
    for path in (folder / "plans").glob("*/*.plan"):
        if not path.stem.endswith("inches"):  # whose inch marks are quotes too
            text = path.read_text(encoding="utf-8")
            path.write_text(QUOTED.sub(lambda found: f'"{found[1]} {TRAP}"', text), encoding="utf-8")
    plan = folder / "plans" / "hollowbrook" / "loft.plan"
    first, rest = plan.read_text(encoding="utf-8").split(TRAP, 1)
    long = "n" * (LONGEST_LINE - len(first.splitlines()[-1]) - len(TRAP) - 2)
    plan.write_text(f"{first}{TRAP}{long}{rest}", encoding="utf-8")
    compiled = compile_plan(plan).compiled
    assert compiled is not None
    return compiled


def typed(_: Path) -> CompiledPlan:
    """A plan with the trap behind every text that there is, names and marks too, and with names of 10 kB."""
    compiled = with_every_text(compiled_plan(), TRAP)
    assert isinstance(compiled, CompiledPlan)
    job = replace(compiled.plan.job, client="n" * 10_000, site="word " * 2_000)
    return replace(compiled, plan=replace(compiled.plan, title="n" * 10_000, job=job))


@pytest.mark.parametrize("make", [written, typed], ids=lambda make: make.__name__)
def test_hostile_text_is_inert(make, browser: Browser, tmp_path: Path) -> None:
    path = tmp_path / "job-book.html"
    path.write_text(write_book(make(tmp_path)).html, encoding="utf-8")
    visit = opened(browser, path)
    found = survey_of(visit, whole=False)
    shown = visit.page.evaluate("() => document.body.innerText")
    visit.page.close()
    assert shown.count("<script>alert(1)</script>](javascript:alert(1))") > 50
    assert "\u202e" not in shown and "\u2066" not in shown
    assert found.page["active"] == found.page["dead"] == found.page["twice"] == []
    assert found.complaints == found.left_the_page == []
    assert found.too_wide == {where: [] for where in (*WIDTHS, visit.paper)}

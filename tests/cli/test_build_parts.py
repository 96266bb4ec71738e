"""`planlang build --part` and `--pdf`."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

import pytest

from planlang.cli import PARTS
from planlang.jobbook.book import part_names
from tests.cli.command import BOOK, DEMO_PLANS, DEMOS, LOFT, ROOT, files_in, planlang
from tests.tools.chromium import NoBrowser, chromium_path


def headings(book: dict[str, bytes]) -> list[str]:
    return re.findall(r"^## (.*)$", book["job-book.md"].decode(), re.MULTILINE)


def test_the_names_are_those_of_the_book_and_help_and_readme_have_them(tmp_path: Path) -> None:
    assert part_names() == PARTS
    said = planlang("build", "--help", cwd=tmp_path, COLUMNS="1000").out
    assert ", ".join(PARTS) in said
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert [name for name in PARTS if f"| `{name}` |" not in readme] == []


def test_a_part_alone_says_what_it_belongs_to(tmp_path: Path) -> None:
    done = planlang("build", DEMOS / LOFT, "--part", "order", "--out", "book", cwd=tmp_path)
    assert done.status == 0
    book = files_in(tmp_path / "book")
    assert tuple(sorted(book)) == BOOK
    assert headings(book) == ["Order"]
    text = book["job-book.md"].decode()
    assert "| Issue | C |" in text
    assert "**Parts:** order. The rest of the job book was left out of this print." in text
    assert 'content: "Issue C"' in book["job-book.html"].decode()


def test_parts_stand_in_the_order_of_the_book_and_safety_goes_with_hang(tmp_path: Path) -> None:
    words = ("--part", "hang", "shop", "--part", "shop")
    assert planlang("build", DEMOS / LOFT, *words, "--out", "book", cwd=tmp_path).status == 0
    assert headings(files_in(tmp_path / "book")) == [
        "Contents", "Safety and what must be confirmed", "Shop", "Hang schedule",
    ]  # fmt: skip


def test_all_parts_are_the_whole_book(tmp_path: Path) -> None:
    planlang("build", DEMOS / LOFT, "--out", "whole", cwd=tmp_path)
    planlang("build", DEMOS / LOFT, "--part", *PARTS, "--out", "named", cwd=tmp_path)
    assert files_in(tmp_path / "named") == files_in(tmp_path / "whole")


def test_a_part_that_there_is_none_of(tmp_path: Path) -> None:
    done = planlang("build", DEMOS / LOFT, "--part", "hnag", cwd=tmp_path)
    assert (done.status, done.out) == (2, "")
    assert done.said == "planlang: a job book has no part `hnag`; did you mean `hang`?\n"
    assert files_in(tmp_path) == {}


def test_without_a_browser_no_book_and_what_would_help(tmp_path: Path) -> None:
    done = planlang("build", DEMOS / LOFT, "--pdf", cwd=tmp_path, PATH=str(tmp_path))
    assert (done.status, done.out) == (2, "")
    assert "a PDF needs Chromium" in done.said
    assert "build without --pdf" in done.said
    assert files_in(tmp_path) == {}


@pytest.fixture(scope="module")
def browser() -> None:
    try:
        chromium_path()
    except NoBrowser as fault:
        if os.environ.get("CI") == "true":
            pytest.fail(str(fault))
        pytest.skip(str(fault))


@pytest.mark.browser
@pytest.mark.usefixtures("browser")
@pytest.mark.parametrize(("plan", "paper"), [(DEMO_PLANS[0], (595, 842)), (DEMO_PLANS[1], (612, 792))])
def test_two_prints_of_a_plan_are_equal_and_on_its_paper(plan: Path, paper: tuple[int, int], tmp_path: Path) -> None:
    for name in ("one", "other"):
        done = planlang("build", DEMOS / plan, "--part", "hang", "--pdf", "--out", name, cwd=tmp_path)
        assert done.status == 0, done.said
    one, other = files_in(tmp_path / "one"), files_in(tmp_path / "other")
    assert tuple(sorted(one)) == tuple(sorted((*BOOK, "job-book.pdf")))
    assert one == other
    sizes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]", one["job-book.pdf"])
    assert len(sizes) > 1
    assert {(round(float(wide)), round(float(high))) for wide, high in sizes} == {paper}


def test_the_schema_is_printed_and_no_library_is_loaded_for_it(tmp_path: Path) -> None:
    done = planlang("data-schema", cwd=tmp_path)
    assert (done.status, done.said) == (0, "")
    assert json.loads(done.out)["title"] == "JobBook"
    script = "import sys; from planlang.cli import main; main(['data-schema']); sys.exit('pydantic' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", script], cwd=ROOT, capture_output=True, check=False).returncode == 0


def test_dxf_is_made_with_its_library_and_refused_before_any_work_without(tmp_path: Path) -> None:
    done = planlang("build", DEMOS / LOFT, "--dxf", "--out", "book", cwd=tmp_path)
    if find_spec("ezdxf"):
        assert done.status == 0, done.said
        assert {"job-book-ceiling.dxf", "job-book-parts.dxf"} <= set(files_in(tmp_path / "book"))
        planlang("build", DEMOS / LOFT, "--out", "book", cwd=tmp_path)
        assert tuple(sorted(files_in(tmp_path / "book"))) == BOOK
    else:
        assert (done.status, "pip install 'planlang[cnc]'" in done.said) == (2, True)


def test_without_the_library_dxf_is_misuse(tmp_path: Path) -> None:
    script = (
        "import sys; sys.modules['ezdxf'] = None; from planlang.cli import main\n"
        f"sys.exit(main(['build', {str(DEMOS / LOFT)!r}, '--dxf', '--out', {str(tmp_path / 'book')!r}]))"
    )
    done = subprocess.run([sys.executable, "-c", script], cwd=ROOT, capture_output=True, encoding="utf-8", check=False)
    assert done.returncode == 2
    assert "ezdxf, which is not installed: pip install 'planlang[cnc]'" in done.stderr
    assert files_in(tmp_path) == {}

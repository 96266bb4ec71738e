"""What the commands answer: exit status, what they print, and what they leave on disk."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.cli.command import BOOK, DEMO_PLANS, DEMOS, LOFT, break_plan, copy_of_demos, files_in, planlang


@pytest.mark.parametrize("plan", DEMO_PLANS, ids=lambda path: path.stem)
def test_demo_builds_without_errors(plan: Path, tmp_path: Path) -> None:
    done = planlang("build", DEMOS / plan, "--out", tmp_path / "new" / "book", cwd=tmp_path)
    assert done.status == 0, done.said
    assert "no errors" in done.said.splitlines()[-1]
    book = files_in(tmp_path / "new" / "book")
    assert tuple(sorted(book)) == BOOK
    assert all(len(content) > 10_000 for name, content in book.items() if name.startswith("job-book."))
    assert all(content.count(b"\n") > 5 for content in book.values())


def test_check_of_a_clean_plan(tmp_path: Path) -> None:
    done = planlang("check", DEMOS / LOFT, cwd=tmp_path)
    assert (done.status, done.out) == (0, "")
    assert files_in(tmp_path) == {}


def test_book_goes_beside_by_default(tmp_path: Path) -> None:
    done = planlang("build", DEMOS / LOFT, cwd=tmp_path)
    assert (done.status, done.out) == (0, "job book: loft-book\n")
    assert tuple(sorted(files_in(tmp_path / "loft-book"))) == BOOK


def test_a_longer_search_builds_a_book_too(tmp_path: Path) -> None:
    done = planlang("build", DEMOS / LOFT, "--search", "4", cwd=tmp_path)
    assert (done.status, done.out) == (0, "job book: loft-book\n")
    assert tuple(sorted(files_in(tmp_path / "loft-book"))) == BOOK


@pytest.mark.parametrize("effort", ["0", "-1", "1001", "2.5", "much", "²"])
def test_an_effort_that_is_none(effort: str, tmp_path: Path) -> None:
    done = planlang("build", DEMOS / LOFT, f"--search={effort}", cwd=tmp_path)
    assert done.status == 2
    assert f"`{effort}` is no whole number from 1 to 1000" in done.said
    assert files_in(tmp_path) == {}


def remove_prices(shop: Path) -> None:
    removed = 0
    for stock in shop.glob("*.plan"):
        text, times = re.subn(r"(?m)^  price .*\n", "", stock.read_text(encoding="utf-8"))
        stock.write_text(text, encoding="utf-8")
        removed += times
    assert removed


@pytest.mark.parametrize("plan", DEMO_PLANS, ids=lambda path: path.stem)
@pytest.mark.parametrize("priced", [True, False])
def test_check_says_what_build_says(plan: Path, priced: bool, tmp_path: Path) -> None:
    """`check` takes short cuts and counts by area; without prices each thing to buy is named in a finding."""
    plans = copy_of_demos(tmp_path)
    if not priced:
        remove_prices(plans / "shop")
    checked = planlang("check", plans / plan, cwd=tmp_path)
    built = planlang("build", plans / plan, cwd=tmp_path)
    assert checked.status == built.status
    assert checked.said == built.said.removesuffix("no job book written\n")
    assert ("price-missing" in checked.said) is not priced


@pytest.mark.parametrize("command", ["check", "build"])
def test_broken_plan(command: str, tmp_path: Path) -> None:
    plans = copy_of_demos(tmp_path)
    break_plan(plans / LOFT)
    before = files_in(tmp_path)
    done = planlang(command, plans / LOFT, cwd=tmp_path)
    assert (done.status, done.out) == (1, "")
    lines = (plans / LOFT).read_text(encoding="utf-8").splitlines()
    line = next(number for number, text in enumerate(lines, 1) if "south-pich" in text)
    assert f"hollowbrook/loft.plan:{line}:11: error" in done.said
    assert "`south-pitch`" in done.said
    assert "^" in done.said
    assert "Traceback" not in done.said
    assert files_in(tmp_path) == before
    assert not (tmp_path / "loft-book").exists()


def test_errors_leave_the_old_book_alone(tmp_path: Path) -> None:
    plans, book = copy_of_demos(tmp_path), tmp_path / "book"
    assert planlang("build", plans / LOFT, "--out", book, cwd=tmp_path).status == 0
    before = files_in(book)
    times = {path.name: path.stat().st_mtime_ns for path in book.iterdir()}
    break_plan(plans / LOFT)
    done = planlang("build", plans / LOFT, "--out", book, cwd=tmp_path)
    assert done.status == 1
    assert "no job book written" in done.said
    assert files_in(book) == before
    assert {path.name: path.stat().st_mtime_ns for path in book.iterdir()} == times


def test_a_missed_requirement_gets_a_book_and_status_1(tmp_path: Path) -> None:
    plans = copy_of_demos(tmp_path)
    plan = plans / LOFT
    text = plan.read_text(encoding="utf-8")
    changed, times = re.subn(r"(?m)^( +weight +of every panel at most) .*$", r"\1 1 kg", text)
    assert times == 1
    plan.write_text(changed, encoding="utf-8")
    done = planlang("build", plan, "--out", "book", cwd=tmp_path)
    assert (done.status, done.out) == (1, "job book: book\n")
    assert "error requirement-fails" in done.said
    assert tuple(sorted(files_in(tmp_path / "book"))) == BOOK


def test_new_book_takes_the_place_of_the_old_one(tmp_path: Path) -> None:
    plans, book = copy_of_demos(tmp_path), tmp_path / "book"
    book.mkdir()
    (book / "job-book.md").write_text("old", encoding="utf-8")
    (book / "photo.jpg").write_bytes(b"not ours")
    assert planlang("build", plans / LOFT, "--out", book, cwd=tmp_path).status == 0
    after = files_in(book)
    assert sorted(after) == sorted((*BOOK, "photo.jpg"))
    assert after["photo.jpg"] == b"not ours"
    assert after["job-book.md"] != b"old"


@pytest.mark.parametrize(
    "arguments",
    [
        ("check", "no-such.plan"),
        ("build", "no-such.plan"),
        ("check", "."),
        ("check", str(DEMOS / LOFT), "--colour"),
        ("build", str(DEMOS / LOFT), "--out"),
        ("check",),
        ("build", str(DEMOS / LOFT), "--option", "no-such"),
        ("bild", str(DEMOS / LOFT)),
        (),
    ],
    ids=lambda arguments: " ".join(Path(word).name for word in arguments) or "nothing",
)
def test_wrong_use(arguments: tuple[str, ...], tmp_path: Path) -> None:
    done = planlang(*arguments, cwd=tmp_path)
    assert (done.status, done.out) == (2, "")
    assert done.said.strip()
    assert "Traceback" not in done.said
    assert files_in(tmp_path) == {}


def test_a_missing_plan_is_named(tmp_path: Path) -> None:
    assert "no-such.plan" in planlang("check", "no-such.plan", cwd=tmp_path).said


def test_a_file_in_the_way_of_the_folder(tmp_path: Path) -> None:
    (tmp_path / "book").write_text("mine", encoding="utf-8")
    done = planlang("build", DEMOS / LOFT, "--out", "book", cwd=tmp_path)
    assert done.status == 2
    assert "Traceback" not in done.said
    assert files_in(tmp_path) == {"book": b"mine"}


def test_version(tmp_path: Path) -> None:
    done = planlang("--version", cwd=tmp_path)
    assert done.status == 0
    assert done.out.startswith("planlang ")


def test_names_that_the_terminal_cannot_show_stop_nothing(tmp_path):
    copy_of_demos(tmp_path)
    done = planlang("build", Path("plans") / LOFT, "--out", "bücher", cwd=tmp_path, PYTHONIOENCODING="ascii")
    assert (done.status, done.out) == (0, "job book: b\\xfccher\n")
    plan = tmp_path / "plans" / "münze.plan"
    plan.write_text('plan "Größe"\nkosten 3 €\n', encoding="utf-8")
    done = planlang("check", plan, cwd=tmp_path, PYTHONIOENCODING="ascii")
    assert done.status == 1
    assert "m\\xfcnze.plan:2:10: error stray-character" in done.said

"""A page for each code and a code for each page; the examples are compiled, and give what their page says."""

from __future__ import annotations

from importlib import import_module

import pytest

from planlang.manual.collection import CHAPTERS, all_pages
from planlang.manual.example import changed, excerpts, right_text, said_of, small_plan, wrong_text
from planlang.manual.explain import explained
from tests.manual.source import PACKAGE, ROOT, codes_made, words_in

PAGES = all_pages()
SHOWN = {code: page for code, page in PAGES.items() if not page.guard}
GUARDS = {code: page for code, page in PAGES.items() if page.guard}
NOT_FOR_BUILDERS = ("token", "pars", "lexer", "syntax", "grammar", "None", "exception", "regex", "LBRACE", "RPAR")
HOW = """
Add the page to {place}:

    "{code}": Page(
        "What is wrong, in a few words",
        "What it means and how to mend it, in a builder's words.",
        wrong=(("words of planlang/manual/small.plan", "what stands there instead"),),
    ),

The wrong example must give this code and no other. The right one is the small plan as it is, or `right=` with other
changes; `given=` are changes to both. Look at it with `planlang explain-error {code}`, then write the manual anew:
`planlang manual > grammar/manual.md`.
"""


@pytest.mark.parametrize("code", codes_made())
def test_every_code_has_a_page_in_its_own_phase(code):
    phases = {module.relative_to(PACKAGE).parts[0] for module in codes_made()[code]}
    assert len(phases) == 1, f"`{code}` is made in several phases: {', '.join(sorted(phases))}"
    phase = phases.pop()
    pages = import_module(f"planlang.{phase}.pages").PAGES if (PACKAGE / phase / "pages.py").exists() else {}
    assert code in pages, f"There is no page for `{code}`." + HOW.format(code=code, place=f"planlang/{phase}/pages.py")
    assert code in PAGES, f"`{phase}` is missing in CHAPTERS of planlang/manual/collection.py"


def test_no_page_is_left_without_its_code():
    assert sorted(set(PAGES) - set(codes_made())) == []
    assert sum(len(pages) for _, pages in CHAPTERS) == len(PAGES)


@pytest.mark.parametrize("code", SHOWN)
def test_the_wrong_example_gives_its_code_and_no_other(code):
    page = SHOWN[code]
    assert {finding.code for finding in said_of(wrong_text(page), page.files)} == {code}


@pytest.mark.parametrize("code", SHOWN)
def test_the_right_example_gives_nothing(code):
    page = SHOWN[code]
    assert said_of(right_text(page), page.files) == ()


@pytest.mark.parametrize("code", SHOWN)
def test_every_message_has_a_mend_and_speaks_of_the_plan(code):
    page = SHOWN[code]
    for finding in said_of(wrong_text(page), page.files):
        assert finding.mend, finding.message
        words = f"{finding.message} {finding.mend}"
        assert not [word for word in NOT_FOR_BUILDERS if word in words], words


@pytest.mark.parametrize("code", GUARDS)
def test_a_guard_has_no_example_and_is_reached_by_hand_in_the_tests_of_its_phase(code):
    page = GUARDS[code]
    assert not (page.given or page.wrong or page.right or page.files)
    phase = codes_made()[code][0].relative_to(PACKAGE).parts[0]
    assert code in words_in(ROOT / "tests" / phase)


@pytest.mark.parametrize("code", PAGES)
def test_a_page_is_written_out(code):
    page = PAGES[code]
    assert page.title[0].isupper()
    assert not page.title.endswith(".")
    assert page.words.endswith((".", ")"))
    text = explained(code)
    assert text.startswith(f"### `{code}`\n")
    assert bool(page.guard) != ("\nWrong:\n" in text)


def test_a_change_that_fits_nowhere_or_twice_is_refused():
    with pytest.raises(ValueError, match="0 times"):
        changed(small_plan(), (("no such line", ""),))
    with pytest.raises(ValueError, match="3 times"):
        changed("a a a", (("a", "b"),))


def test_an_excerpt_shows_what_matters_within_its_blocks():
    page = PAGES["eye-in-sheet-edge"]
    wrong, right = excerpts(wrong_text(page), right_text(page), frozenset())
    assert wrong == ["panel cloud, mark C {", "  …", "  eyes 4 of lag-eye, inset 100 from the ends", "}"]
    assert right == ["panel cloud, mark C {", "  …", "  eyes 4 of eye, inset 100 from the ends", "}"]

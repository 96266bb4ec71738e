"""The page of one code as Markdown, with what the compiler says of its wrong example."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

from planlang.manual.collection import CHAPTERS, all_pages
from planlang.manual.example import FILE, LEAVE, excerpts, right_text, said_of, small_plan, wrong_text
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.pages import Page

MOST_LINES = 36
WIDEST = 110
LARGEST = 1000
MOST_FILES = 4


def explained(code: str) -> str:
    """The page of a code; empty when there is none."""
    page = all_pages().get(code)
    return "\n".join(page_lines(code, page)) + "\n" if page else ""


def nearest_code(code: str) -> str:
    """The code that was probably meant; empty when none is near."""
    return (get_close_matches(code, all_pages(), 1, 0.6) or [""])[0]


def codes_listed() -> str:
    """All codes with their titles, by chapter."""
    widest = max(map(len, all_pages()))
    lines: list[str] = []
    for title, pages in CHAPTERS:
        lines += [f"{title}:", *(f"  {code:<{widest}}  {page.title}" for code, page in pages.items()), ""]
    return "\n".join(lines[:-1]) + "\n"


def page_lines(code: str, page: Page) -> list[str]:
    """The page as lines of Markdown, without a blank line at its end."""
    lines = [f"### `{code}`", "", f"**{page.title}.** {page.words}", ""]
    if page.guard:
        return [*lines, f"A guard: {page.guard}. There is no example."]
    wrong, right = wrong_text(page), right_text(page)
    findings = said_of(wrong, page.files)
    marked = frozenset(finding.span.line for finding in findings if finding.span.file == FILE)
    shown_wrong, shown_right = excerpts(wrong, right, marked)
    lines += ["Wrong:", "", *fenced(shown_wrong), *files_named(page, shown_wrong), ""]
    lines += ["What is said:", "", *said(findings), ""]
    if not shown_right:
        return [*lines, "Right: without these lines."]
    return [*lines, "Right:", "", *fenced(shown_right), *files_named(page, shown_right)]


def fenced(lines: list[str]) -> list[str]:
    """Plan text as a Markdown block; long runs and long lines are shortened."""
    if len(lines) > MOST_LINES:
        lines = [*lines[: MOST_LINES // 2], LEAVE, *lines[-MOST_LINES // 2 + 1 :]]
    return ["```plan", *(line if len(line) <= WIDEST else f"{line[:WIDEST]} {LEAVE}" for line in lines), "```"]


def files_named(page: Page, shown: Iterable[str]) -> list[str]:
    """The further files that an example speaks of and that are short enough to be shown."""
    text = "\n".join(shown)
    lines: list[str] = []
    for name, content in page.files:
        if (
            f'"{name}"' not in text
            or isinstance(content, bytes)
            or len(content) > LARGEST
            or len(page.files) > MOST_FILES
        ):
            continue
        lines += ["", f"and in `{name}`:", "", *fenced(content.rstrip("\n").split("\n"))]
    return lines


def said(findings: Iterable[Diagnostic]) -> list[str]:
    """The messages of a wrong example, each once."""
    lines: list[str] = []
    for finding in findings:
        kind = "error" if finding.is_error else "warning"
        new = [f"> {kind} `{finding.code}`: {finding.message}" + "  ", f"> mend: {finding.mend}"]
        if new != lines[-2:]:
            lines += [">", *new] if lines else new
    return lines


def base_lines() -> list[str]:
    """The small plan that the examples change, as a Markdown block."""
    return ["```plan", *small_plan().rstrip("\n").split("\n"), "```"]

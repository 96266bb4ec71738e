"""The frame of the page: head, policy, style, and what stands in the margins of every printed sheet."""

import hashlib
from base64 import b64encode
from html import escape
from importlib.resources import files
from typing import Literal

from planlang.jobbook.blocks import NOT_FOR_HANGING
from planlang.syntax.record import record

_KEPT = (
    '<footer class="kept" hidden><p>Boxes that you tick stay ticked in this browser on this device, for this issue of '
    'the book. A box whose line changes starts empty. <button type="button">Empty all boxes</button></p></footer>\n'
)


@record
class Page:
    """What the frame needs: title, issue letter, paper, and whether the book may be hung from."""

    title: str
    issue: str
    paper: Literal["A4", "Letter"]
    hangable: bool
    language: str = "en"


def whole_page(body: str, page: Page) -> str:
    """The HTML document: one file, a policy that allows its own style and its own script and nothing else."""
    style, script = _text("book.css") + _paper(page), _text("ticks.js")
    policy = (
        f"default-src 'none'; style-src '{_digest(style)}'; script-src '{_digest(script)}'; img-src data:; "
        "base-uri 'none'; form-action 'none'"
    )
    mark = "" if page.hangable else f'<p class="page-mark" aria-hidden="true">{NOT_FOR_HANGING}</p>\n'
    name = f"{page.title}, issue {page.issue}" if page.issue else page.title
    return (
        f'<!doctype html>\n<html lang="{escape(page.language, quote=True)}" data-book="{escape(name, quote=True)}">\n'
        f'<head>\n<meta charset="utf-8">\n<meta http-equiv="Content-Security-Policy" content="{policy}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        '<meta name="color-scheme" content="light dark">\n'
        f"<title>{escape(name)}</title>\n<style>{style}</style>\n</head>\n<body>\n{mark}<main>\n{body}</main>\n{_KEPT}"
        f"<script>{script}</script>\n</body>\n</html>\n"
    )


def _text(name: str) -> str:
    return files("planlang.jobbook").joinpath(name).read_text(encoding="utf-8")


def _digest(text: str) -> str:
    return f"sha256-{b64encode(hashlib.sha256(text.encode()).digest()).decode()}"


def _paper(page: Page) -> str:
    """Page size and margin boxes. Browsers that don't know margin boxes leave them out."""
    issue = f"Issue {page.issue}" if page.issue else "No issue letter"
    mark = "" if page.hangable else f"  @top-right {{ content: {_css(NOT_FOR_HANGING)}; }}\n"
    return (
        f"\n@page {{\n  size: {page.paper};\n  margin: 16mm 14mm 18mm;\n"
        f"  @bottom-left {{ content: {_css(page.title)}; }}\n  @bottom-center {{ content: {_css(issue)}; }}\n"
        f'  @bottom-right {{ content: "Page " counter(page) " of " counter(pages); }}\n{mark}}}\n'
    )


def _css(text: str) -> str:
    """A CSS string in which every character but letters, digits and blanks is written by code point."""
    cut = text if len(text) <= 70 else text[:69] + "…"
    safe = "".join(char if char.isascii() and (char.isalnum() or char == " ") else f"\\{ord(char):x} " for char in cut)
    return f'"{safe}"'

"""The one script of a page, which keeps the ticks: taken out before a test looks for anything else that acts."""

from __future__ import annotations

from importlib.resources import files

SCRIPT = files("planlang.jobbook").joinpath("ticks.js").read_text(encoding="utf-8")


def without_own_script(html: str) -> str:
    """The page without its script, which must stand in it once, word for word, at the end."""
    own = f"<script>{SCRIPT}</script>\n</body>"
    assert html.count(own) == 1
    return html.replace(own, "</body>")

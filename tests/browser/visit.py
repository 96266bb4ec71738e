"""A page open in the browser, with all that it asked for and complained about."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Dialog, Page

HEIGHT = 900


@dataclass
class Visit:
    """A job book open in the browser, with all that it asked for and complained about since."""

    page: Page
    path: Path
    paper: str
    requests: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)

    @property
    def address(self) -> str:
        """What the browser calls it."""
        return self.path.as_uri()

    @property
    def left_the_page(self) -> list[str]:
        """What was asked for beyond the book itself."""
        return [url for url in self.requests if url != self.address and not url.startswith("data:")]

    def show(self, width: int, media: str = "screen", colours: str = "light") -> None:
        """Set the width, px, and what it is shown on."""
        self.page.emulate_media(media=media, color_scheme=colours)  # type: ignore[arg-type]
        self.page.set_viewport_size({"width": width, "height": HEIGHT})


def opened(browser: Browser, path: Path, paper: str = "A4") -> Visit:
    """Open a page on a screen 1400 px wide. A box that it opens is a complaint, and is closed."""
    page = browser.new_page(viewport={"width": 1400, "height": HEIGHT}, color_scheme="light")
    visit = Visit(page, path, paper)

    def box(dialog: Dialog) -> None:
        visit.complaints.append(f"box: {dialog.message}")
        dialog.dismiss()

    page.on("request", lambda request: visit.requests.append(request.url))
    page.on("console", lambda said: visit.complaints.append(f"{said.type}: {said.text}"))
    page.on("pageerror", lambda fault: visit.complaints.append(str(fault)))
    page.on("dialog", box)
    page.goto(visit.address)
    return visit

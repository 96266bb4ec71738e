"""Makes the picture in the README: one page of the Hollowbrook job book. `python -m tests.tools.picture`.

What it shows is invented data: nobody's room. The picture is a copy of what the compiler made, with nothing painted in.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from planlang.compiler import compile_plan
from planlang.jobbook.book import write_book
from planlang.jobbook.files import book_files
from planlang.jobbook.publish import HTML, publish
from tests.tools.chromium import NoBrowser, chromium

FOLDER = Path(__file__).parents[2] / "plans_demo" / "hollowbrook"
PICTURE = FOLDER / "job_book_page.png"
PART = "#hanging-on-south-pitch"
WIDTH, HEIGHT, MARGIN = 1000, 1240, 24
LARGEST = 250_000


def take_picture(html: Path, picture: Path) -> None:
    """Photograph the part of the book that starts at `PART`, `WIDTH` x `HEIGHT` px."""
    with chromium() as browser:
        page = browser.new_page(viewport={"width": WIDTH, "height": HEIGHT}, color_scheme="light")
        page.goto(html.as_uri())
        box = page.locator(PART).bounding_box()
        assert box is not None
        clip = {"x": 0.0, "y": box["y"] - MARGIN, "width": float(WIDTH), "height": float(HEIGHT)}
        page.screenshot(path=picture, full_page=True, clip=clip)


def main() -> int:
    """Build the book and take the picture."""
    compilation = compile_plan(FOLDER / "loft.plan")
    if compilation.compiled is None:
        print("the plan has errors: no picture", file=sys.stderr)
        return 1
    with tempfile.TemporaryDirectory() as made:
        publish(book_files(write_book(compilation.compiled), compilation.compiled), Path(made))
        try:
            take_picture(Path(made) / HTML, PICTURE)
        except NoBrowser as fault:
            print(fault, file=sys.stderr)
            return 2
    size = PICTURE.stat().st_size
    print(f"{PICTURE.name}: {size} bytes")
    return 0 if size < LARGEST else 1


if __name__ == "__main__":
    sys.exit(main())

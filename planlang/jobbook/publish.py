"""Putting a job book on disk: all of it or none of it."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from planlang.jobbook.book import Book

MARKDOWN, HTML, JSON = "job-book.md", "job-book.html", "job-book.json"


def publish(book: Book, folder: Path) -> tuple[Path, ...]:
    """Write the book's files aside in `folder`, then move them into place together; returns their paths.

    When a file can't be written or moved, the files of the book before are put back.

    Raises:
        OSError: the folder can't be made, or a file can't be written or moved.
    """
    folder.mkdir(parents=True, exist_ok=True)
    texts = {MARKDOWN: book.markdown, HTML: book.html, JSON: book.json}
    with tempfile.TemporaryDirectory(prefix=".job-book-", dir=folder) as made:
        aside = Path(made)
        for name, text in texts.items():
            (aside / name).write_text(text, encoding="utf-8", newline="\n")
        _swap(tuple(texts), aside, folder)
    return tuple(folder / name for name in texts)


def _swap(names: tuple[str, ...], aside: Path, folder: Path) -> None:
    """Copy what is there, move the new files in one by one; on failure move the copies back."""
    kept = [name for name in names if (folder / name).exists()]
    for name in kept:
        shutil.copy2(folder / name, aside / f"kept-{name}")
    moved: list[str] = []
    try:
        for name in names:
            (aside / name).replace(folder / name)
            moved.append(name)
    except OSError:
        for name in moved:
            (folder / name).unlink()
        for name in kept:
            (aside / f"kept-{name}").replace(folder / name)
        raise

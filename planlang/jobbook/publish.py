"""Putting a job book on disk: all of it or none of it."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path

MARKDOWN, HTML, JSON, PDF = "job-book.md", "job-book.html", "job-book.json", "job-book.pdf"
CUT_LIST, PURCHASES, HANG_SCHEDULE = "job-book-cut-list.csv", "job-book-purchases.csv", "job-book-hang-schedule.csv"
CEILING_DXF, PARTS_DXF = "job-book-ceiling.dxf", "job-book-parts.dxf"
NAMES = (MARKDOWN, HTML, JSON, PDF, CUT_LIST, PURCHASES, HANG_SCHEDULE, CEILING_DXF, PARTS_DXF)


def publish(files: Mapping[str, bytes], folder: Path) -> tuple[Path, ...]:
    """Write the book's files aside in `folder`, then move them into place together; returns their paths.

    A file that an earlier build made and this one doesn't is taken away, so that nothing of an older plan is left to
    be hung from. When a file can't be written or moved, the files of the book before are put back.

    Raises:
        OSError: the folder can't be made, or a file can't be written or moved.
    """
    unknown = set(files) - set(NAMES)
    assert not unknown, f"no file of a job book: {unknown}"
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix=".job-book-", dir=folder) as made:
        aside = Path(made)
        for name, content in files.items():
            (aside / name).write_bytes(content)
        _swap(tuple(files), aside, folder)
    return tuple(folder / name for name in files)


def _swap(names: Sequence[str], aside: Path, folder: Path) -> None:
    """Copy what is there, move the new files in one by one, take away the others; on failure move the copies back."""
    kept = [name for name in NAMES if (folder / name).exists()]
    for name in kept:
        shutil.copy2(folder / name, aside / f"kept-{name}")
    changed: list[str] = []
    try:
        for name in names:
            (aside / name).replace(folder / name)
            changed.append(name)
        for name in kept:
            if name not in names:
                (folder / name).unlink()
                changed.append(name)
    except OSError:
        for name in changed:
            (folder / name).unlink(missing_ok=True)
        for name in kept:
            (aside / f"kept-{name}").replace(folder / name)
        raise

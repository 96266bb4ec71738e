"""The printed book: a page -> PDF, by a Chromium that is installed already. Nothing is downloaded."""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import tempfile
from pathlib import Path

COMMANDS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
SECONDS = 120  # a book of some hundred pages takes a few
_FLAGS = (
    "--headless=new",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--disable-extensions",
    "--disable-background-networking",
    "--no-first-run",
    "--host-resolver-rules=MAP * ~NOTFOUND",
    "--font-render-hinting=none",
    "--virtual-time-budget=2000",  # the browser's own clock, without which its numbering of cells can differ
    "--run-all-compositor-stages-before-draw",
    "--no-pdf-header-footer",
)
_DATE = re.compile(rb"/(CreationDate|ModDate) \(D:[^)]*\)")
_NAME = re.compile(rb"\(node\d{8}\)")
_NAMED = re.compile(rb"/ID (\(node\d{8}\))")
_ENTRY = re.compile(rb"\(node\d{8}\) \d+ 0 R")
_INDEX = re.compile(rb"/Limits \[\(node\d{8}\) \(node\d{8}\)\]\n/Names \[((?:\(node\d{8}\) \d+ 0 R ?)+)\]")


class NoPdf(Exception):
    """The PDF can't be made; says why and what would help."""


def find_browser() -> Path:
    """The Chromium of this machine.

    Raises:
        NoPdf: there is none on the path.
    """
    found = next(filter(None, map(shutil.which, COMMANDS)), None)
    if found is None:
        names = f"{', '.join(COMMANDS[:-1])} or {COMMANDS[-1]}"
        raise NoPdf(
            f"a PDF needs Chromium or a browser made from it, and there is no {names} on the path; "
            "install one, or build without --pdf and print job-book.html from any browser"
        )
    return Path(found)


def to_pdf(html: str, browser: Path, seconds: float = SECONDS) -> bytes:
    """Print the page. The same page gives the same bytes from one and the same browser with the same fonts.

    Raises:
        NoPdf: the browser fails, or takes longer than `seconds`; it is ended then.
    """
    with tempfile.TemporaryDirectory(prefix="job-book-", ignore_cleanup_errors=True) as made:
        folder = Path(made)
        page, target = folder / "job-book.html", folder / "job-book.pdf"
        page.write_text(html, encoding="utf-8", newline="\n")
        said = _run((str(browser), *_flags(folder), f"--print-to-pdf={target}", page.as_uri()), folder, seconds)
        if not target.is_file() or not (content := target.read_bytes()).startswith(b"%PDF-"):
            raise NoPdf(f"{browser.name} made no PDF{f': {said}' if said else ''}")
    return steady(content)


def _flags(folder: Path) -> tuple[str, ...]:
    """Chromium's own sandbox doesn't start for root, as in a container."""
    root = hasattr(os, "geteuid") and os.geteuid() == 0
    return (*_FLAGS, f"--user-data-dir={folder / 'profile'}", *(("--no-sandbox",) if root else ()))


def _run(command: tuple[str, ...], folder: Path, seconds: float) -> str:
    """Run the browser in a group of its own, so that all its processes end with it; returns its last complaint."""
    log = folder / "said.txt"
    with log.open("wb") as said:
        process = subprocess.Popen(
            command, stdin=subprocess.DEVNULL, stdout=said, stderr=said, cwd=folder, start_new_session=True
        )
        try:
            process.wait(timeout=seconds)
        except subprocess.TimeoutExpired:
            raise NoPdf(f"{Path(command[0]).name} was not done after {seconds:g} s, and was ended") from None
        finally:
            if process.poll() is None:
                _end(process)
    lines = log.read_text(encoding="utf-8", errors="replace").split("\n")
    return next((line.strip()[:300] for line in reversed(lines) if line.strip()), "")


def _end(process: subprocess.Popen[bytes]) -> None:
    """End the browser that still runs, with all the processes that it started."""
    if hasattr(os, "killpg"):
        os.killpg(process.pid, signal.SIGKILL)
    else:
        process.kill()
    process.wait()


def steady(content: bytes) -> bytes:
    """Take out what differs from print to print, byte for byte, so that the places in the file's index stay right.

    The moment of printing becomes blanks. Table cells that are referred to have names that the browser counts up while
    it works; they are counted anew in the order of the file, and the index by name is sorted again.
    """
    dateless = _DATE.sub(lambda found: b" " * len(found[0]), content)
    if len(_INDEX.findall(dateless)) != 1:
        return dateless
    names = dict.fromkeys(_NAMED.findall(dateless))
    new = {old: b"(node%08d)" % n for n, old in enumerate(names, 1)}
    renamed = _NAME.sub(lambda found: new.get(found[0], found[0]), dateless)
    return _INDEX.sub(_sorted_index, renamed)


def _sorted_index(found: re.Match[bytes]) -> bytes:
    entries = sorted(_ENTRY.findall(found[1]))
    first, last = (_NAME.findall(entry)[0] for entry in (entries[0], entries[-1]))
    return b"/Limits [%s %s]\n/Names [%s]" % (first, last, b" ".join(entries))

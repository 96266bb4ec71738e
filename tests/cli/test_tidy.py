"""`planlang tidy`: what it writes, what it leaves alone, what it answers."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from tests.cli.command import ROOT, files_in, planlang

UNTIDY, TIDY, BROKEN = "units    mm\nnote 'n'\n".replace("'", '"'), 'units  mm\nnote   "n"\n', "figure a 3 mm +\n"


def plans(folder: Path, **texts: str) -> None:
    for name, text in texts.items():
        (folder / f"{name}.plan").write_bytes(text.encode())


def piped(text: bytes, *arguments: str) -> tuple[int, bytes, bytes]:
    done = subprocess.run(
        [sys.executable, "-m", "planlang", "tidy", *arguments], cwd=ROOT, input=text, capture_output=True, check=False
    )
    return done.returncode, done.stdout, done.stderr


def test_tidies_in_place_and_says_which(tmp_path: Path) -> None:
    plans(tmp_path, a=UNTIDY, b=TIDY)
    done = planlang("tidy", "a.plan", "b.plan", cwd=tmp_path)
    assert (done.status, done.out, done.said) == (0, "tidied: a.plan\n", "")
    assert files_in(tmp_path) == {"a.plan": TIDY.encode(), "b.plan": TIDY.encode()}
    assert planlang("tidy", "a.plan", "b.plan", cwd=tmp_path).out == ""


def test_a_tidy_file_is_not_written(tmp_path: Path) -> None:
    plans(tmp_path, b=TIDY)
    before = (tmp_path / "b.plan").stat()
    planlang("tidy", "b.plan", cwd=tmp_path)
    after = (tmp_path / "b.plan").stat()
    assert (after.st_mtime_ns, after.st_ino) == (before.st_mtime_ns, before.st_ino)


def test_check_writes_nothing(tmp_path: Path) -> None:
    plans(tmp_path, a=UNTIDY, b=TIDY)
    before = files_in(tmp_path)
    done = planlang("tidy", "--check", "a.plan", "b.plan", cwd=tmp_path)
    assert (done.status, done.out, done.said) == (1, "would change: a.plan\n", "")
    assert files_in(tmp_path) == before
    assert planlang("tidy", "--check", "b.plan", cwd=tmp_path).status == 0


def test_a_file_with_syntax_errors_is_left_alone_and_the_others_are_not(tmp_path: Path) -> None:
    plans(tmp_path, a=BROKEN, b=UNTIDY)
    for arguments in (("--check",), ()):
        done = planlang("tidy", *arguments, "a.plan", "b.plan", cwd=tmp_path)
        assert done.status == 1
        assert "a.plan:1:15: error broken-line" in done.said
        assert "figure a 3 mm +" in done.said
        assert "left as it is: a.plan" in done.said
    assert files_in(tmp_path) == {"a.plan": BROKEN.encode(), "b.plan": TIDY.encode()}


def test_a_file_that_is_not_there_is_misuse_and_the_others_are_tidied(tmp_path: Path) -> None:
    plans(tmp_path, a=BROKEN, b=UNTIDY)
    done = planlang("tidy", "no.plan", ".", "a.plan", "b.plan", cwd=tmp_path)
    assert done.status == 2
    assert done.said.count("planlang: ") == 2
    assert done.out == "tidied: b.plan\n"


def test_standard_input_goes_to_standard_output() -> None:
    assert piped("\ufeffunits   mm\r\n# é".encode(), "-") == (0, "units mm\n# é\n".encode(), b"")
    assert piped(UNTIDY.encode(), "--check", "-") == (1, b"would change: -\n", b"")
    assert piped(TIDY.encode(), "--check", "-") == (0, b"", b"")
    status, out, said = piped(BROKEN.encode(), "-")
    assert (status, out) == (1, b"")
    assert b"-:1:15: error broken-line" in said


def test_content_that_is_no_text_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "a.plan").write_bytes(b"\xff\xfe\x00")
    done = planlang("tidy", "a.plan", cwd=tmp_path)
    assert (done.status, "file-not-text" in done.said) == (1, True)
    assert files_in(tmp_path) == {"a.plan": b"\xff\xfe\x00"}

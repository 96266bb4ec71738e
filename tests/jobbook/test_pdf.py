"""What stands between the page and its PDF: a browser that is missing, fails or hangs. The scripts here play it."""

import os
import time
from pathlib import Path

import pytest

from planlang.jobbook import pdf
from planlang.jobbook.pdf import NoPdf, find_browser, steady, to_pdf

PRINTS = """for word in "$@"; do case "$word" in --print-to-pdf=*) out="${word#--print-to-pdf=}";; esac; done
printf '%s' '%PDF-1.4 <</CreationDate (D:20260102030405+00'"'00'"')
/ModDate (D:20991231235959Z)>> end' > "$out"
"""


def browser(folder, script, name="chromium"):
    path = folder / name
    path.write_text(f"#!/bin/sh\n{script}")
    path.chmod(0o755)
    return path


def test_the_first_browser_on_the_path_is_found(tmp_path, monkeypatch):
    found = browser(tmp_path, "", "google-chrome")
    monkeypatch.setenv("PATH", str(tmp_path))
    assert find_browser() == found


def test_none_on_the_path(tmp_path, monkeypatch):
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(NoPdf, match=r"there is no chromium, .* on the path; install one, or build without --pdf"):
        find_browser()


def test_the_moment_of_printing_is_blanked_and_nothing_moves(tmp_path):
    content = to_pdf("<p>", browser(tmp_path, PRINTS))
    assert content.startswith(b"%PDF-1.4 <<  ") and content.endswith(b">> end")
    assert b"2026" not in content and b"2099" not in content
    assert len(content) == len(
        b"%PDF-1.4 <</CreationDate (D:20260102030405+00'00')\n/ModDate (D:20991231235959Z)>> end"
    )


def numbered(*names):
    """A file as the browser writes it: two cells, what refers to them, and the index by name."""
    one, other = names
    first, last = sorted(((one, b"10 0 R"), (other, b"20 0 R")))
    return b"10 0 obj\n/ID (%s)>>\n20 0 obj\n/ID (%s)>>\n/Headers [(%s) (%s)]\n" % (
        one,
        other,
        one,
        other,
    ) + b"<</Limits [(%s) (%s)]\n/Names [(%s) %s (%s) %s]" % (first[0], last[0], *first, *last)


def test_names_that_the_browser_counts_up_are_counted_anew():
    one = numbered(b"node00000022", b"node00000025")
    other = numbered(b"node00000030", b"node00000003")
    assert one != other
    assert steady(one) == steady(other) == numbered(b"node00000001", b"node00000002")
    assert len(steady(one)) == len(one)


def test_names_in_no_index_of_one_piece_stay():
    content = b"/ID (node00000022)>>"
    assert steady(content) == content


def test_the_browser_gets_the_page_and_no_way_to_the_network(tmp_path):
    script = f'for last in "$@"; do :; done; cat "${{last#file://}}" > {tmp_path}/page; echo "$@" > {tmp_path}/words\n'
    to_pdf("<p>größer</p>", browser(tmp_path, script + PRINTS))
    assert (tmp_path / "page").read_text(encoding="utf-8") == "<p>größer</p>"
    words = (tmp_path / "words").read_text()
    assert "--host-resolver-rules=MAP * ~NOTFOUND" in words
    assert ("--no-sandbox" in words) == (os.geteuid() == 0)


def test_a_browser_that_fails_is_quoted(tmp_path):
    with pytest.raises(NoPdf, match="chromium made no PDF: cannot open display"):
        to_pdf("<p>", browser(tmp_path, "echo starting; echo cannot open display >&2; exit 1"))


def test_what_is_no_pdf_is_not_taken_for_one(tmp_path):
    with pytest.raises(NoPdf, match="made no PDF"):
        to_pdf("<p>", browser(tmp_path, PRINTS.replace("%PDF-1.4", "PDF")))


def test_a_browser_that_hangs_is_ended_with_all_that_it_started(tmp_path):
    script = f"sleep 60 & echo $! > {tmp_path}/child; wait\n"
    start = time.monotonic()
    with pytest.raises(NoPdf, match=r"chromium was not done after 0\.5 s, and was ended"):
        to_pdf("<p>", browser(tmp_path, script), seconds=0.5)
    assert time.monotonic() - start < 20
    child = Path("/proc") / (tmp_path / "child").read_text().strip()
    for _ in range(100):
        if not child.exists() or "\nState:\tZ" in (child / "status").read_text():
            return
        time.sleep(0.05)
    pytest.fail("what the browser started still runs")


def test_the_time_is_bounded():
    assert 10 <= pdf.SECONDS <= 300

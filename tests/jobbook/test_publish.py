"""A job book is on disk whole or not at all."""

from pathlib import Path

import pytest

from planlang.jobbook.publish import publish

OLD = {"job-book.md": b"old md\n", "job-book.html": b"old html\n", "job-book.json": b"old json\n"}
NEW = {"job-book.md": b"new md\n", "job-book.html": b"new html\n", "job-book.json": b"new json\n"}


def read(folder):
    return {path.name: path.read_text(encoding="utf-8") for path in sorted(folder.iterdir()) if path.is_file()}


def test_three_files_and_nothing_else(tmp_path):
    paths = publish(NEW, tmp_path / "deep" / "book")
    assert [path.name for path in paths] == ["job-book.md", "job-book.html", "job-book.json"]
    assert sorted(read(tmp_path / "deep" / "book").values()) == ["new html\n", "new json\n", "new md\n"]
    assert len(list((tmp_path / "deep" / "book").iterdir())) == 3


def test_a_second_book_replaces_the_first(tmp_path):
    publish(OLD, tmp_path)
    publish(NEW, tmp_path)
    assert set(read(tmp_path).values()) == {"new md\n", "new html\n", "new json\n"}


def test_a_book_that_cannot_be_moved_leaves_the_old_one_whole(tmp_path):
    publish(OLD, tmp_path)
    (tmp_path / "job-book.json").unlink()
    (tmp_path / "job-book.json").mkdir()
    (tmp_path / "job-book.json" / "mine.txt").write_text("keep")
    with pytest.raises(OSError):
        publish(NEW, tmp_path)
    assert read(tmp_path) == {"job-book.md": "old md\n", "job-book.html": "old html\n"}
    assert (tmp_path / "job-book.json" / "mine.txt").read_text() == "keep"
    assert len(list(tmp_path.iterdir())) == 3


def test_what_an_earlier_build_made_and_this_one_does_not_is_taken_away(tmp_path):
    publish({**OLD, "job-book.pdf": b"%PDF-old", "job-book-ceiling.dxf": b"old"}, tmp_path)
    publish(NEW, tmp_path)
    assert set(read(tmp_path)) == set(NEW)


def test_what_was_taken_away_comes_back_when_the_build_fails(tmp_path, monkeypatch):
    publish({**OLD, "job-book-ceiling.dxf": b"old", "job-book.pdf": b"%PDF-old"}, tmp_path)
    was = read(tmp_path)
    unlink = Path.unlink

    def failing(self, missing_ok=False):
        if self.name == "job-book-ceiling.dxf" and not missing_ok:
            raise OSError("not yours")
        unlink(self, missing_ok=missing_ok)

    monkeypatch.setattr(Path, "unlink", failing)
    with pytest.raises(OSError, match="not yours"):
        publish(NEW, tmp_path)
    assert read(tmp_path) == was


def test_other_files_of_the_folder_stay(tmp_path):
    (tmp_path / "notes.txt").write_text("mine")
    publish(NEW, tmp_path)
    assert (tmp_path / "notes.txt").read_text() == "mine"


@pytest.mark.parametrize("before", [None, OLD])
def test_a_move_that_fails_half_way_is_undone(tmp_path, monkeypatch, before):
    if before:
        publish(before, tmp_path)
    was = read(tmp_path)
    replace = Path.replace

    def failing(self, target):
        if self.name == "job-book.json":
            raise OSError("no space")
        return replace(self, target)

    monkeypatch.setattr(Path, "replace", failing)
    with pytest.raises(OSError, match="no space"):
        publish(NEW, tmp_path)
    assert read(tmp_path) == was
    assert len(list(tmp_path.iterdir())) == len(was)

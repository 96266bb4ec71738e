import pytest

from planlang.syntax.project import project_folder, read_project


@pytest.fixture
def folder(tmp_path):
    home = tmp_path / "home"
    (home / "jobs").mkdir(parents=True)
    (home / ".planlang").touch()
    return home


def read(folder, text, name="jobs/main.plan"):
    path = folder / name
    path.write_text(text)
    outcome = read_project(path)
    return [file.path for file in outcome.value.files], [(f.code, f.span.line) for f in outcome.diagnostics]


def test_used_files_come_before_their_user_and_once(folder):
    (folder / "a.plan").write_text('use "b.plan"\n')
    (folder / "b.plan").write_text("units mm\n")
    files, findings = read(folder, 'use "../a.plan"\nuse "../b.plan"\n')
    assert files == ["b.plan", "a.plan", "jobs/main.plan"]
    assert findings == []


def test_a_ring_of_uses_is_shown(folder):
    (folder / "a.plan").write_text('use "b.plan"\n')
    (folder / "b.plan").write_text('use "a.plan"\n')
    outcome_files, findings = read(folder, 'use "../a.plan"\n')
    assert findings == [("use-loop", 1)]
    assert outcome_files == ["b.plan", "a.plan", "jobs/main.plan"]


@pytest.mark.parametrize("path", ["../../out.plan", "/etc/passwd", "C:/x.plan", "..\\\\x", ""])
def test_nothing_outside_the_project_is_read(folder, path):
    (folder.parent / "out.plan").write_text("units mm\n")
    files, findings = read(folder, f'use "{path}"\n')
    assert findings == [("use-outside", 1)]
    assert files == ["jobs/main.plan"]


def test_a_link_that_leads_out_is_not_followed(folder):
    (folder.parent / "out.plan").write_text("units mm\n")
    (folder / "link.plan").symlink_to(folder.parent / "out.plan")
    assert read(folder, 'use "../link.plan"\n')[1] == [("use-outside", 1)]


def test_a_missing_file_and_one_that_is_no_text_are_findings(folder):
    (folder / "bytes.plan").write_bytes(b"\xff\xfe\x00")
    assert read(folder, 'use "../none.plan"\nuse "../bytes.plan"\n')[1] == [("use-missing", 1), ("file-not-text", 2)]


def test_a_plan_that_is_not_there_is_the_callers_affair(folder):
    with pytest.raises(OSError):
        read_project(folder / "none.plan")


def test_the_project_folder_is_the_nearest_with_a_marker(folder, tmp_path):
    assert project_folder(folder / "jobs" / "x.plan") == folder
    bare = tmp_path / "bare"
    bare.mkdir()
    (bare / ".git").mkdir()
    assert project_folder(bare / "x.plan") == bare

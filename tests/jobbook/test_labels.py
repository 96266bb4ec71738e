"""Labels: each panel has one, and it says when nothing may be hung."""

from planlang.jobbook.blocks import Table
from planlang.jobbook.sections.labels import labels
from tests.jobbook.compiled import compiled_plan


def rows(compiled):
    return tables(compiled)["Labels for the backs of the panels"]


def tables(compiled):
    return {block.caption: block.rows for block in labels(compiled) if isinstance(block, Table)}


def test_one_label_a_panel_with_its_weight_rounded_up():
    compiled = compiled_plan()
    assert [row[0] for row in rows(compiled)] == [panel.mark for panel in compiled.layout.panels]
    assert rows(compiled)[0][2:] == ("ceiling", "long side up", "7.91 kg", "by the hang schedule")  # 7.905 kg


def test_each_says_when_nothing_may_be_hung():
    assert {row[-1] for row in rows(compiled_plan("fails"))} == {"NOT FOR HANGING"}


def test_every_part_off_the_saw_has_a_label_with_its_mark():
    compiled = compiled_plan()
    parts = [part for build in compiled.materials.builds for part in build.parts]
    rows = tables(compiled)["Labels for the parts"]
    assert [row[0] for row in rows] == [part.mark for part in parts for _ in range(part.count)]
    assert [row[-1] for row in rows[: parts[0].count]] == [str(number + 1) for number in range(parts[0].count)]


def test_of_very_many_parts_there_is_a_label_a_mark(monkeypatch):
    monkeypatch.setattr("planlang.jobbook.sections.labels.MOST_PART_LABELS", 1)
    compiled = compiled_plan()
    parts = [part for build in compiled.materials.builds for part in build.parts]
    assert [(row[0], row[-1]) for row in tables(compiled)["Labels for the parts"]] == [
        (part.mark, f"print {part.count}") for part in parts
    ]

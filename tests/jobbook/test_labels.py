"""Labels: each panel has one, and it says when nothing may be hung."""

from planlang.jobbook.blocks import Table
from planlang.jobbook.sections.labels import labels
from tests.jobbook.compiled import compiled_plan


def rows(compiled):
    (table,) = (block for block in labels(compiled) if isinstance(block, Table))
    return table.rows


def test_one_label_a_panel_with_its_weight_rounded_up():
    compiled = compiled_plan()
    assert [row[0] for row in rows(compiled)] == [panel.mark for panel in compiled.layout.panels]
    assert rows(compiled)[0][2:] == ("ceiling", "long side up", "7.91 kg", "by the hang schedule")  # 7.905 kg


def test_each_says_when_nothing_may_be_hung():
    assert {row[-1] for row in rows(compiled_plan("fails"))} == {"NOT FOR HANGING"}

"""The client's page: plain figures that are those of the other parts, and a place to sign."""

from dataclasses import replace

from planlang.jobbook.blocks import Caution, SignOff, Table
from planlang.jobbook.sections.client import client
from tests.jobbook.compiled import compiled_plan


def tables(compiled):
    return {block.caption: block for block in client(compiled) if isinstance(block, Table)}


def test_every_panel_is_counted_once_with_its_surface():
    compiled = compiled_plan()
    rows = tables(compiled)["What you get"].rows
    assert sum(int(row[1]) for row in rows) == len(compiled.layout.panels)
    assert {row[4] for row in rows} == {"ceiling", "west wall"}


def test_a_price_that_is_not_complete_is_not_printed():
    compiled = compiled_plan()
    bare = replace(compiled, materials=replace(compiled.materials, total=None))
    assert tables(bare)["What it is expected to do and what it costs"].rows[-1][1] == "not complete"


def test_it_says_when_nothing_may_be_hung():
    assert any(isinstance(block, Caution) for block in client(compiled_plan("fails")))
    assert not any(isinstance(block, Caution) for block in client(compiled_plan()))


def test_what_only_the_client_can_confirm_is_there_to_be_signed():
    compiled = compiled_plan()
    asked = (("The roof is dry", "the client"), ("The joists carry", "an engineer"))
    (signs,) = (
        b for b in client(replace(compiled, loads=replace(compiled.loads, confirm=asked))) if isinstance(b, SignOff)
    )
    assert ("The roof is dry", "the client") in signs.questions
    assert ("The joists carry", "an engineer") not in signs.questions

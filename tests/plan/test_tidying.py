"""What the vocabulary tells the layout: names, clauses, commas."""

from __future__ import annotations

import pytest

from planlang.plan.entry import items_of
from planlang.plan.tidying import VocabularyGuide
from planlang.plan.vocabulary import FILE
from planlang.syntax.tidy.guide import Shape


def shape(text: str, *within: str) -> Shape:
    guide = VocabularyGuide()
    for word in within:
        guide = guide.within(word)
    return guide.shape_of(items_of(text))


@pytest.mark.parametrize(
    ("text", "within", "names_end"),
    [
        ("flat collar at 3000", ("room", "ceiling"), 2),
        ("lining walls plaster", ("room",), 2),
        ("lining south-pitch, north-pitch plaster", ("room",), 4),
        ("lining east wall, floor plaster over rafters 45 x 145 at 600 centres", ("room",), 5),
        ("door d1 on west wall at 700, 900 x 2050, plaster", ("room",), 2),
        ("window w1..w3, w5 on west wall at 700, 900 x 2050, sill 900, plaster", ("room",), 4),
        ("listener desk at 3600, 2700, height 1200", ("use-of-room",), 2),
        ("figure margin 150 mm", (), 2),
        ("flat collar at 2994", ("survey",), 2),
        ("door d1, at 704", ("survey",), 0),  # what follows the name is a clause
        ("issue C of 2026-11-25", ("job",), 0),  # stands once: no column to share
        ("fix lag-eye into rafters", ("array",), 0),
        ("door 12 x 14", ("room",), 0),
        ("lining walls", ("room",), 2),
        ("unheard of it", ("room",), 0),
        ("flat collar at 3000", ("unheard", "ceiling"), 0),
        ("flat collar at 3000", (), 0),
    ],
)
def test_names_at_the_start_of_a_repeated_statement_have_a_column(
    text: str, within: tuple[str, ...], names_end: int
) -> None:
    assert shape(text, *within).names_end == names_end


def test_clauses_are_found_with_and_without_their_commas() -> None:
    with_commas = shape("place row of 5, gap 600, centred across, centred up the slope", "array")
    assert (sorted(with_commas.clauses), with_commas.commas) == ([5, 8, 11], frozenset())
    without = shape("place row of 5 gap 600 centred across centred up the slope", "array")
    assert sorted(without.commas) == sorted(without.clauses) == [4, 6, 8]


def test_a_figure_may_stand_for_a_value() -> None:
    assert sorted(shape("place row of 5 gap margin centred across", "array").commas) == [4, 6]


@pytest.mark.parametrize(
    ("text", "within"),
    [
        ("braces at mid-length, 60 wide", "panel"),  # a clause that follows the word itself
        ("spare 10 % of cloth", "shop"),  # the example has no comma either
        ("luminaire L1 on ceiling centred at 100, 200 plaster", "room"),  # the comma would make it a third position
        ("place nowhere gap 500 centred across", "array"),  # not understood
        ("place row of 5 gap 600 kg centred across", "array"),
        ("place row of 5 gap 600 gap 700", "array"),  # said twice: at fault, with or without commas
    ],
)
def test_no_comma_is_put_in_where_none_belongs_or_none_is_sure(text: str, within: str) -> None:
    assert shape(text, within).commas == frozenset()


def kinds_below(guide: VocabularyGuide, kind: object) -> list[tuple[VocabularyGuide, object]]:
    found = []
    for inner in kind.block or ():
        found.append((guide, inner))
        found += kinds_below(guide.within(inner.word), inner)
    return found


@pytest.mark.parametrize(
    ("guide", "kind"), kinds_below(VocabularyGuide(), FILE), ids=lambda value: getattr(value, "word", "")
)
def test_the_examples_have_all_their_commas(guide: VocabularyGuide, kind: object) -> None:
    assert guide.shape_of(items_of(kind.example.removesuffix("{").rstrip())).commas == frozenset()

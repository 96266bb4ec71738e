"""Records behave as frozen dataclasses do, wherever the project uses them."""

import dataclasses

import pytest

from planlang.syntax.record import record, workpiece


@record
class Point:
    x: int
    y: int = 0


@record(kw_only=True)
class Stated:
    line: int = 1


@record(kw_only=True)
class Named(Stated):
    name: str


@dataclasses.dataclass(frozen=True)
class PlainPoint:
    x: int
    y: int = 0


@dataclasses.dataclass(frozen=True, kw_only=True)
class PlainStated:
    line: int = 1


@dataclasses.dataclass(frozen=True, kw_only=True)
class PlainNamed(PlainStated):
    name: str


def test_made_compared_hashed_and_printed_as_a_dataclass():
    assert Point(3) == Point(3, y=0) != Point(3, 1)
    assert Point(3) != PlainPoint(3)
    assert len({Point(3), Point(3, 0), Point(4)}) == 2
    assert repr(Point(3)) == repr(PlainPoint(3)).removeprefix("Plain")
    assert repr(Named(name="a")) == repr(PlainNamed(name="a")).removeprefix("Plain")


@pytest.mark.parametrize("made", [Point, lambda: Point(1, 2, 3), lambda: Point(1, z=2), lambda: Named("a")])
def test_wrong_arguments_are_refused(made):
    with pytest.raises(TypeError):
        made()


@pytest.mark.parametrize(("ours", "plain"), [(Named, PlainNamed), (Point, PlainPoint)])
def test_the_fields_are_those_of_a_dataclass(ours, plain):
    def told(cls):
        return [(field.name, field.default, field.kw_only) for field in dataclasses.fields(cls)]

    assert dataclasses.is_dataclass(ours)
    assert told(ours) == told(plain)


def test_replace_makes_another():
    first = Named(name="a", line=2)
    assert dataclasses.replace(first, name="b") == Named(name="b", line=2)
    assert first.name == "a"


def test_a_default_that_could_change_is_refused():
    with pytest.raises(TypeError, match="rows could change"):
        record(type("Table", (), {"__annotations__": {"rows": list}, "rows": []}))


def test_a_field_without_default_after_one_with_a_default_is_refused():
    with pytest.raises(TypeError, match="without default follows"):
        record(type("Turned", (), {"__annotations__": {"x": int, "y": int}, "x": 0}))


def test_a_record_may_look_at_what_it_was_given():
    @record
    class Share:
        of_one: float

        def __post_init__(self):
            if self.of_one > 1:
                raise ValueError("more than all")

    assert Share(1).of_one == 1
    with pytest.raises(ValueError, match="more than all"):
        Share(2)


def test_a_workpiece_changes_and_has_lists_of_its_own():
    @workpiece
    class Bench:
        name: str
        rows: list = dataclasses.field(default_factory=list)

    first, second = Bench("a"), Bench("a")
    assert first == second
    first.rows.append(1)
    assert (first.rows, second.rows) == ([1], [])
    assert first != second
    assert dataclasses.replace(first, name="b").rows == [1]
    assert Bench("c", [2]).rows == [2]


@pytest.mark.parametrize("kind", [record, record(kw_only=True)])
def test_a_record_makes_no_list_for_each(kind):
    with pytest.raises(TypeError, match="rows could change"):
        kind(type("Table", (), {"__annotations__": {"rows": list}, "rows": dataclasses.field(default_factory=list)}))

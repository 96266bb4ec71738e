"""`job-book.json` by its published schema, as an independent validator reads it."""

import copy
import json
import os

import pytest

from planlang.jobbook.data import to_json
from planlang.jobbook.data.schema import made_schema
from planlang.jobbook.data_schema import stored_schema
from tests.jobbook.compiled import compiled_plan, with_every_text
from tests.jobbook.demo_books import demo_book
from tests.plans import DEMO_PLANS

SCHEMA = json.loads(stored_schema())


@pytest.fixture(scope="module")
def validator():
    try:
        import jsonschema
    except ModuleNotFoundError:
        if os.environ.get("CI") == "true":
            raise
        pytest.skip("jsonschema is not installed (it is in the `test` extra)")
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    return jsonschema.Draft202012Validator(SCHEMA)


@pytest.fixture(scope="module")
def data():
    return json.loads(to_json(compiled_plan()))


def faults(validator, data):
    return [
        f"{'/'.join(map(str, fault.absolute_path))}: {fault.message[:200]}" for fault in validator.iter_errors(data)
    ]


def test_what_is_stored_is_what_the_model_makes():
    assert json.loads(made_schema()) == SCHEMA, "python -m planlang.jobbook.data.schema"


@pytest.mark.parametrize("plan", DEMO_PLANS, ids=lambda path: path.stem)
def test_every_demo_book_fits(validator, plan):
    assert faults(validator, json.loads(demo_book(plan).json)) == []


@pytest.mark.parametrize("status", ["holds", "fails", "not verified"])
def test_a_book_that_may_not_be_hung_from_fits(validator, status):
    assert faults(validator, json.loads(to_json(compiled_plan(status)))) == []


def test_hostile_text_fits(validator):
    assert faults(validator, json.loads(to_json(with_every_text(compiled_plan(), "</script>\u202e")))) == []


@pytest.mark.parametrize(
    ("where", "value", "said"),
    [
        (("schema_version",), 2, "schema_version"),
        (("panels", 0, "box", "left", "exact_mm"), "1/0", "panels/0/box/left/exact_mm"),
        (("panels", 0, "box", "left", "mm"), "900", "panels/0/box/left/mm"),
        (("laser_lines", 0, "fixed"), "down", "laser_lines/0/fixed"),
        (("order", 0, "cost"), 12, "order/0/cost"),
        (("job", "colour"), "red", "job"),
    ],
)
def test_what_does_not_fit_is_found(validator, data, where, value, said):
    changed = copy.deepcopy(data)
    place = changed
    for step in where[:-1]:
        place = place[step]
    place[where[-1]] = value
    assert [line.partition(":")[0] for line in faults(validator, changed)] == [said]


def test_every_field_is_required(validator, data):
    for name in data:
        assert faults(validator, {key: value for key, value in data.items() if key != name}), name


def test_the_schema_says_what_each_thing_is():
    assert SCHEMA["$id"] == "urn:planlang:job-book:1"
    assert not [name for name, each in SCHEMA["$defs"].items() if not each.get("description")]

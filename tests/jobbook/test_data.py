"""The job book as data: exact where the saw is exact, six digits elsewhere, units in the names."""

import json
import subprocess
import sys
from fractions import Fraction as F
from pathlib import Path

import pytest

from planlang.geometry.model import Box
from planlang.jobbook.data import JobBook, to_json
from planlang.jobbook.data.layout import BoxData
from planlang.jobbook.data.values import six_digits
from tests.jobbook.compiled import compiled_plan

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def data():
    return json.loads(to_json(compiled_plan()))


def test_lengths_are_exact_beside_the_millimetres(data):
    side = next(part for part in data["shop"]["builds"][0]["parts"] if part["mark"] == "C-S")
    assert side["length"] == {"mm": 1476.0, "exact_mm": "1476"}
    assert all(F(panel["box"]["left"]["exact_mm"]) >= 0 for panel in data["panels"])


def test_thirds_stay_thirds():
    box = BoxData.model_validate(Box(F(1, 3), F(0), F(2), F(2)), from_attributes=True)
    assert box.left.model_dump() == {"mm": 0.333333, "exact_mm": "1/3"}


def test_every_panel_point_and_load_is_there(data):
    assert [panel["mark"] for panel in data["panels"]] == ["SC1", "SC2", "SC3", "SC4", "BW1", "BW2"]
    assert data["panels"][0]["points"][0]["name"] == "SC1.a"
    assert [load["array"] for load in data["loads"]] == ["south-clouds", "back-wall"]
    assert data["loads"][0]["demand"]["unit"] == "N"
    assert data["loads"][0]["demand"]["lines"] == ["plans/studio.plan:12:3"]


def test_the_schema_can_be_published_and_the_data_fit_it(data):
    schema = JobBook.model_json_schema(mode="serialization")
    assert set(schema["required"]) == set(data)
    assert data["schema_version"] == 1


def test_floats_have_six_digits_at_most():
    assert six_digits(1 / 3) == 0.333333
    assert six_digits(1234567.0) == 1234570.0
    with pytest.raises(ValueError, match="can't be written"):
        six_digits(float("nan"))


def test_bytes_are_equal_for_two_calls():
    assert to_json(compiled_plan()) == to_json(compiled_plan())


def test_bytes_do_not_depend_on_the_hash_seed():
    script = (
        "import hashlib; from planlang.jobbook.book import write_book\n"
        "from tests.jobbook.compiled import compiled_plan\n"
        "b = write_book(compiled_plan()); print(hashlib.sha256((b.markdown + b.html + b.json).encode()).hexdigest())"
    )
    runs = {
        subprocess.run(
            [sys.executable, "-c", script], cwd=ROOT, env={"PYTHONHASHSEED": seed}, capture_output=True, check=True
        ).stdout
        for seed in ("1", "2")
    }
    assert len(runs) == 1

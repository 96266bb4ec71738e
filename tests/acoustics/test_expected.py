"""What a check reckons of the decay is what a job book prints."""

import subprocess
import sys

import pytest

from planlang.acoustics.estimate import estimate_acoustics
from planlang.acoustics.expected import expected_decay
from planlang.acoustics.required import required_decay
from planlang.geometry.layout import place_arrays
from planlang.geometry.room import build_room
from planlang.plan.reader import read_plan
from planlang.plan.stated import Requirement
from planlang.plan.stock import OCTAVES
from planlang.syntax.project import read_project
from planlang.syntax.span import NOWHERE
from tests import builders as make
from tests.acoustics.rooms import box, lined
from tests.plans import DEMO_PLANS, SMALL


def phases(path):
    plan = read_plan(read_project(path).value).value
    room = build_room(plan).value
    return plan, room, place_arrays(plan, room).value


@pytest.mark.parametrize("path", DEMO_PLANS, ids=lambda path: path.stem)
def test_some_octaves_alone_are_those_of_the_whole_estimate(path):
    plan, room, layout = phases(path)
    whole = estimate_acoustics(plan, room, layout).value.expected
    for chosen in ((500,), (250, 500, 1000, 2000), OCTAVES):
        places = [OCTAVES.index(octave) for octave in chosen]
        for ranged in (True, False):
            alone = expected_decay(plan, room, layout, chosen, ranged)
            assert alone.bands == chosen
            assert alone.value == pytest.approx([whole.value[n] for n in places], rel=1e-12)
            assert alone.least == pytest.approx([whole.least[n] for n in places], rel=1e-12)
            assert alone.targets == tuple(tuple(target[n] for n in places) for target in whole.targets)
            low, high = (whole.low, whole.high) if ranged else (whole.value, whole.value)
            assert alone.low == pytest.approx([low[n] for n in places], rel=1e-12)
            assert alone.high == pytest.approx([high[n] for n in places], rel=1e-12)


def requirement(**over):
    facts = {"subject": "decay", "of": "", "sense": "most", "bound": None, "low": 500, "high": 1000}
    return Requirement(at=NOWHERE, **{**facts, "currency": "", "over_range": False, **over})


def test_nothing_is_reckoned_where_nothing_is_required_of_the_decay():
    room = box(lined("board", 0.1))
    layout = place_arrays(make.plan(), room).value
    assert required_decay((), make.plan(), room, layout) is None
    assert required_decay((requirement(subject="weight"),), make.plan(), room, layout) is None
    found = required_decay((requirement(), requirement(low=4000, high=4000)), make.plan(), room, layout)
    assert found.bands == (500, 1000, 4000)


def test_a_plan_without_a_required_decay_is_checked_without_the_library_of_arrays(tmp_path):
    (tmp_path / "small.plan").write_text(SMALL, encoding="utf-8")
    program = (
        "import sys; from planlang.cli import main; status = main(['check', sys.argv[1]]);"
        "assert 'numpy' not in sys.modules, 'loaded'; sys.exit(status)"
    )
    done = subprocess.run(
        [sys.executable, "-c", program, str(tmp_path / "small.plan")], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr

"""What the book prints beside the loads: clearances, papers, lifts, licences, fixings, requirements. All invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.geometry.model import Layout, MassItem, RoomGeometry
from planlang.geometry.room import build_room
from planlang.hardware.clearances import clearances
from planlang.hardware.loads import check_loads
from planlang.hardware.papers import paper_questions, papers_of
from planlang.hardware.uses import uses, worst_use
from planlang.plan.room import Feature
from planlang.plan.safety import Evidence
from planlang.plan.usual import USUAL
from tests import builders as b
from tests.hardware.scenes import ceiling_array, check, codes, hung, members, second_support, surface, wall_array


def feature(kind, across=900, up=300, **over):
    base = {
        "kind": kind, "name": "X1", "surface": "ceiling", "across": F(across), "up": F(up), "width": F(100),
        "height": F(100), "round": True, "lining": None,
    }  # fmt: skip
    return b.make(Feature, base, over)


def near(*features):
    """A panel from 3000, 600 to 3600, 2100 under a ceiling of 6 x 4 m."""
    room = build_room(b.plan(room=b.room(features=features))).value
    array = ceiling_array()
    panel = hung(array, next(s for s in room.surfaces if s.name == "ceiling"), left=3000)
    return clearances(room, (panel,), b.job().tape)


@pytest.mark.parametrize(
    ("fitting", "gap", "is_near", "codes"),
    [("recessed", 62, True, []), ("recessed", 64, False, []), ("recessed-ic", 5, False, []),
     ("surface", 299, True, ["near-to-service"]), ("surface", 75, True, []), ("surface", 301, False, []),
     ("", 62, True, []), ("", 64, False, [])],
)  # fmt: skip
def test_lamps_by_how_they_are_built_in(fitting, gap, is_near, codes):
    """What is nearer than the plan keeps from a lamp is an error of the place, and not said again."""
    kept = USUAL["luminaire"].distance
    lamp = feature("luminaire", across=3000 - gap - 50, up=1000, fitting=fitting, keep_clear=kept)
    (line,), findings = near(lamp)
    assert line.distance == pytest.approx(gap)
    assert line.near is is_near
    assert [f.code for f in findings] == codes
    assert not any(f.is_error for f in findings)


def test_a_lamp_whose_kind_is_not_stated_is_a_question():
    (line,), _ = near(feature("luminaire", up=1000))
    assert "how it is built in is not stated" in line.found
    assert line.ask.startswith("electrician")


def test_a_head_among_spread_panels_is_an_obstruction_review():
    (line,), _ = near(feature("sprinkler", across=2900, up=1000, below=F(40)))
    assert "obstruction review, nearer than three times its size" in line.found
    assert "20 mm below the deflector" in line.found
    assert line.ask == "sprinkler contractor"
    (unknown,), _ = near(feature("sprinkler", across=2900, up=1000))
    assert "how far its deflector is below is not stated" in unknown.found


def test_a_wide_panel_far_from_a_head_is_asked_about_all_the_same():
    kept = USUAL["sprinkler"].distance
    room = build_room(
        b.plan(room=b.room(features=(feature("sprinkler", across=2300, up=1000, below=F(40), keep_clear=kept),)))
    ).value
    narrow = hung(ceiling_array(), next(s for s in room.surfaces if s.name == "ceiling"), left=3000)
    panel = replace(narrow, box=replace(narrow.box, right=F(4300)))
    _, findings = clearances(room, (panel,), b.job().tape)
    assert [f.code for f in findings] == ["near-to-service"]


@pytest.mark.parametrize(("gap", "is_near"), [(599, True), (601, False)])
def test_detectors_keep_their_room(gap, is_near):
    (line,), _ = near(feature("detector", across=3000 - gap - 50, up=1000))
    assert line.near is is_near


def test_things_on_other_surfaces_are_left_out():
    lines, _ = near(feature("detector", surface="north wall"), feature("door", surface="east wall"))
    assert lines == ()


# --- papers -------------------------------------------------------------------------------------------------


def evidence(*covers, until=""):
    base = {
        "name": "fire",
        "covers": covers,
        "paper": "report 12",
        "tested": "the cloth",
        "says": "class",
        "until": until,
    }
    return b.make(Evidence, base, {})


def test_every_material_has_its_paper_or_an_open_question():
    array, face = ceiling_array(), surface()
    layout = Layout((hung(array, face),), (), ())
    papers = papers_of(b.plan(arrays=(array,), evidence=(evidence("serge"),)), layout)
    assert {paper.what: paper.paper for paper in papers} == {
        "wool serge": "report 12", "muslin": "", "mineral wool 50": "", "birch ply 12": "", "cloud-1500": "",
    }  # fmt: skip
    questions = paper_questions("canada", papers)
    assert any("CAN/ULC-S102" in question for question, _ in questions)
    assert any("does report 12" in question for question, _ in questions)
    assert len([q for q, _ in questions if "names no paper" in q]) == 4
    assert not any("complies" in question or "safe" in question for question, _ in questions)
    assert "no region" in paper_questions(None, papers)[0][0]


@pytest.mark.parametrize(("until", "said"), [("2026-11-24", ["paper-out-of-date"]), ("2026-11-25", []), ("", [])])
def test_a_paper_that_ends_before_the_issue_is_said(until, said):
    plan = b.plan(evidence=(evidence("serge", until=until),))
    room = RoomGeometry((surface(),), (), 60.0)
    outcome = check_loads(plan, room, Layout((), (), ()), {})
    assert codes(outcome) == said
    assert outcome.ok


# --- lifts, licences, fixings, rules ------------------------------------------------------------------------


def test_a_lift_to_the_ceiling_is_outside_the_equation():
    bench, place = check(ceiling_array(), surface()).value.lifts
    assert bench.index == pytest.approx(bench.mass / bench.limit)
    assert (place.limit, place.index) == (0, None)
    assert "outside the equation" in place.who


@pytest.mark.parametrize(
    ("kilos", "who"), [(5.0, "two people, by project policy"), (16.0, "two people"), (21.0, "a panel lift or hoist")]
)
def test_who_lifts_a_wall_panel(kilos, who):
    outcome = check(
        wall_array(), surface("wall", members=members(word="studs")), masses=(MassItem("all", kilos, 40.0),)
    )
    assert outcome.value.lifts[0].who.startswith(who)


def test_the_table_of_licences_says_yes_no_or_ask():
    light = check(ceiling_array(), surface()).value.engineer
    heavy = check(ceiling_array(), surface(), masses=(MassItem("all", 60.0, 40.0),)).value.engineer
    answers = {line.case: line.answer for line in light}
    assert answers["A panel over 50 kg"] == "no"
    assert answers["Members of unknown kind"] == "ask"
    assert {line.answer for line in light} == {"no", "ask"}
    assert {line.case: line.answer for line in heavy}["A panel over 50 kg"] == "yes"
    assert len(light) == len(heavy) >= 12


def test_holes_and_distances_of_every_piece_that_goes_into_wood():
    (eye, own) = check(ceiling_array(second=second_support()), surface()).value.fixings
    assert (eye.least_thread, eye.edge, eye.end) == (24, 9, 42)
    assert (eye.lead_low, eye.lead_high) == (pytest.approx(0.7 * 0.75 * 6), pytest.approx(0.7 * 0.82 * 6))
    assert own.into == "rafter, second support"


def test_the_rules_name_where_each_figure_is_from():
    rules = {what: source for what, _, source in check(ceiling_array(), surface()).value.rules}
    assert len(rules) == 9
    assert all(rules.values())


def test_cautions_follow_the_time_between_looks():
    outcome = check(ceiling_array(), surface(), rules={"inspect_months": 6})
    assert any("every 6 months" in line for line in outcome.value.cautions)
    assert outcome.value.inspect_months == 6


# --- what is used of what is allowed ------------------------------------------------------------------------


def test_the_worst_use_is_the_weakest_step():
    loads = check(ceiling_array(), surface()).value
    (load,) = loads.panels
    assert worst_use(loads).ratio == load.worst.ratio
    assert worst_use(loads, "others") is None
    assert worst_use(replace(loads, panels=())) is None


@pytest.mark.parametrize("link", [{"rated_n": F(10**9), "rating_source": "assumed"}, {"rated_n": None}])
def test_an_assumed_or_unknown_load_is_worse_than_any_ratio(link):
    assert worst_use(check(ceiling_array(link=b.hardware(**link)), surface()).value).ratio is None


def test_what_is_used_reaches_the_second_support():
    weak = b.hardware(name="tie", words="thin tie", rated_n=F(300), stretch=(F(50), F(1000)))
    loads = check(ceiling_array(second=second_support(tie=weak)), surface()).value
    assert len(list(uses(loads))) == 10
    assert worst_use(loads).step == "second support: thin tie"


def test_no_room_no_lines():
    assert clearances(RoomGeometry((), (), 1.0), (), b.job().tape) == ((), [])


# --- what locks the connectors -------------------------------------------------------------------------------


@pytest.mark.parametrize("where", ["link", "anchor", "eye", "tie"])
def test_a_connector_that_nothing_locks_is_refused_wherever_it_hangs(where):
    hook = {"locks": "nothing", "locks_source": "invented sheet"}
    panel = b.panel_type(hung_by=b.eyes(hardware=b.hardware(name="hook", words="open hook", bolts=(2, F(5)), **hook)))
    array = {
        "link": lambda: ceiling_array(link=b.hardware(name="s-hook", words="S-hook", **hook)),
        "anchor": lambda: ceiling_array(anchor=b.screw_eye(name="open-eye", thread=F(60), **hook)),
        "eye": lambda: ceiling_array(panel),
        "tie": lambda: ceiling_array(second=second_support(tie=b.hardware(
            name="tie", words="tie", rated_n=F(20_000), stretch=(F(50), F(1000)), **hook))),
    }[where]()  # fmt: skip
    outcome = check(array, surface())
    assert codes(outcome) == ["connector-opens"]
    assert not outcome.value.hangable
    (load,) = outcome.value.panels
    assert (load.status, load.worst.status) == ("refused", "holds")
    assert load.refusals == (outcome.diagnostics[0].message,) == (load.verdict,)
    assert worst_use(outcome.value).ratio is None


@pytest.mark.parametrize(
    ("locks", "source", "words"),
    [
        ("nut", "invented sheet", "is locked by its nut (invented sheet)"),
        ("nut", "assumed", "the plan doesn't say so"),
        ("", "", "the plan doesn't say so"),
    ],
)
def test_what_locks_a_link_is_signed_for(locks, source, words):
    outcome = check(ceiling_array(link=b.hardware(locks=locks, locks_source=source)), surface())
    assert codes(outcome) == []
    assert [line for line, _ in outcome.value.confirm if words in line]

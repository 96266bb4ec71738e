"""What may stand in a room and in an array: rails, things of all kinds and their distances, members, placement."""

import pytest

from planlang.plan.usual import FEATURE_KINDS, USUAL
from tests.plans import SMALL, findings_after, read_text

DOOR = "  door     d1            on east wall at 500, 900 x 2000, plaster"
LARGE = {"beam": "ceiling", "radiator": "west wall", "trim": "west wall"}
SMALL_THINGS = ("luminaire", "vent", "sprinkler", "detector", "speaker", "socket")


def room_with(folder, *lines):
    return read_text(folder, SMALL.replace(DOOR, "\n".join("  " + line for line in lines) + "\n" + DOOR))


@pytest.mark.parametrize("kind", SMALL_THINGS)
def test_small_things_are_placed_by_their_centre(tmp_path, kind):
    plan, findings = room_with(tmp_path, f"{kind} X1, X2 on ceiling centred at 800, 500, 900, 3500, 80 across")
    assert findings == ()
    made = [feature for feature in plan.room.features if feature.kind == kind]
    assert [(one.across, one.up, one.keep_clear) for one in made] == [
        (800, 500, USUAL[kind].distance),
        (900, 3500, USUAL[kind].distance),
    ]
    listed = [each for each in plan.assumptions if each.subject == f"{kind} X1, X2"]
    assert [each.reason for each in listed] == [USUAL[kind].why]


def test_a_luminaire_may_state_its_beam(tmp_path):
    plan, findings = room_with(
        tmp_path, "luminaire X on ceiling centred at 800, 500, 80 across, beam 30 deg to each side"
    )
    assert findings == ()
    assert next(one for one in plan.room.features if one.name == "X").beam_deg == 30


@pytest.mark.parametrize("kind", LARGE)
def test_large_things_have_a_depth_and_their_own_distance(tmp_path, kind):
    plan, findings = room_with(tmp_path, f"{kind} X on {LARGE[kind]} at 100, up 50, 900 x 60, 120 deep, keep 30 clear")
    assert findings == ()
    made = next(feature for feature in plan.room.features if feature.name == "X")
    assert (made.across, made.up, made.depth, made.keep_clear, made.keep_source) == (550, 80, 120, 30, "")
    assert not [each for each in plan.assumptions if each.subject == f"{kind} X"]


@pytest.mark.parametrize("kind", FEATURE_KINDS)
def test_an_array_may_keep_clear_of_every_kind(tmp_path, kind):
    fix = "  fix     lag-eye into joists"
    plan, findings = read_text(tmp_path, SMALL.replace(fix, f"{fix}\n  keep    70 clear of {kind}s"))
    assert findings == ()
    assert [(keep.kind, keep.distance) for keep in plan.arrays[0].keeps] == [(kind, 70)]


def test_a_survey_may_find_things_of_every_kind_elsewhere(tmp_path):
    text = SMALL.replace(DOOR, f"{DOOR}\n  sprinkler S1 on ceiling centred at 800, 500, 60 across")
    text += '\nsurvey 2026-12-03 by "visit" {\n  sprinkler S1, centred at 810, 520\n}\n'
    plan, findings = read_text(tmp_path, text)
    assert findings == ()
    head = plan.room.features[1]
    assert (head.name, head.across, head.up) == ("S1", 810, 520)
    assert [(each.drawn, each.found) for each in plan.differences] == [(800, 810), (500, 520)]


def test_how_far_rails_end_past_their_last_member(tmp_path):
    text = SMALL.replace(
        "lag-eye into joists", "lag-eye into rails of spruce held by lag-eye, rails end 90 past their last member"
    )
    text = text.replace("timber spruce {", "timber spruce {\n  section 45 x 45\n  stick 3600")
    plan, findings = read_text(tmp_path, text)
    assert findings == ()
    assert plan.arrays[0].hang.rail.overhang == 90
    plan, _ = read_text(tmp_path, text.replace(", rails end 90 past their last member", ""))
    assert plan.arrays[0].hang.rail.overhang == 60  # ten shanks of 6 mm
    assumed = {each.subject: each for each in plan.assumptions}["rails"]
    assert (assumed.value, "EN 1995-1-1" in assumed.reason) == ("rails end 60 mm past their last member", True)


def test_without_rails_nothing_is_said_of_their_ends(tmp_path):
    changed = ("lag-eye into joists", "lag-eye into joists, rails end 90 past their last member")
    assert [code for code, _ in findings_after(tmp_path, changed)] == ["clauses-disagree"]


def test_how_a_door_opens(tmp_path):
    changed = SMALL.replace(DOOR, DOOR + ", opens inward, hinged right, keep 80 clear")
    plan, findings = read_text(tmp_path, changed)
    assert findings == ()
    door = plan.room.features[0]
    assert (door.opens, door.hinge, door.keep_clear) == ("inward", "right", 80)
    assert "door d1" not in {each.subject for each in plan.assumptions}


@pytest.mark.parametrize(
    ("stated", "taken"),
    [
        ("", "opens inward, hinged on either side"),
        (", hinged left", "opens inward"),
        (", opens inward", "hinged on either side"),
        (", opens outward", ""),
    ],
)
def test_what_is_taken_where_the_plan_does_not_say_how_a_door_opens(tmp_path, stated, taken):
    plan, _ = read_text(tmp_path, SMALL.replace(DOOR, f"{DOOR}{stated}, keep 80 clear"))
    assert [each.value for each in plan.assumptions if each.subject == "door d1"] == ([taken] if taken else [])


JOISTS = "over joists 45 x 145 of spruce at 200 centres, first at 100, running across"
FOUND = "over joists 45 x 145 of spruce found at 110, 305, 520, running across"


def test_members_as_they_were_found(tmp_path):
    text = SMALL.replace(JOISTS, FOUND).replace("into joists", "into joists, snap within 15")
    plan, findings = read_text(tmp_path, text)
    assert findings == ()
    joists = next(one.members for one in plan.room.linings if one.surface == "ceiling")
    assert (joists.measured, joists.centres, joists.first, joists.runs) == ((110, 305, 520), 0, 110, "across")
    assert plan.arrays[0].hang.snap == 15


def test_members_as_they_were_found_below_a_surface(tmp_path):
    plan, findings = read_text(tmp_path, SMALL.replace(JOISTS, FOUND.replace("over", "between exposed")))
    assert findings == ()
    lined = next(one for one in plan.room.linings if one.surface == "ceiling")
    assert (lined.members.measured, lined.exposed) == ((110, 305, 520), True)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (JOISTS, FOUND.replace("305, 520", "130, 520")),
        (JOISTS, FOUND.replace("305, 520", "520, 305")),
        (JOISTS, FOUND + ", first at 20"),
        ("lag-eye into joists", "lag-eye into the lining, snap within 15"),
    ],
)
def test_members_and_snapping_that_contradict_themselves(tmp_path, old, new):
    assert [code for code, _ in findings_after(tmp_path, (old, new))] == ["clauses-disagree"]


def test_a_survey_of_members_that_are_stated_one_by_one(tmp_path):
    def read(reading):
        survey = f'\nsurvey 2026-12-03 by "visit" {{\n  members of ceiling first at 112{reading}\n}}\n'
        return read_text(tmp_path, SMALL.replace(JOISTS, FOUND) + survey)

    plan, findings = read(", 205 centres")
    assert findings == ()
    joists = next(one.members for one in plan.room.linings if one.surface == "ceiling")
    assert (joists.measured, joists.first, joists.centres) == ((), 112, 205)
    assert [finding.code for finding in read("")[1]] == ["clauses-disagree"]


PLACE = "grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600"


def placed_by(folder, rule):
    text = SMALL.replace(PLACE, rule)
    second = text[text.index("array clouds") :].replace("array clouds, mark K", "array more, mark M")
    return read_text(folder, text + second.replace(rule, "one below each of clouds, gap 90"))


RULES = {
    "row of 3 along upper edge, gap 50, 80 from it": ("Grid", {"columns": 3, "rows": 1}),
    "row of 2 along the left edge, gap 50": ("Grid", {"columns": 1, "rows": 2}),
    "stack of 2, gap 30, in the right corner, lowest edge at 0": ("Grid", {"columns": 1, "rows": 2}),
    "grid 2 across by 2 up, gap 50, staggered": ("Grid", {"staggered": True}),
    "at points 600, 900, 1500, 900": ("Points", {"centres": ((600, 900), (1500, 900))}),
    "as many as fit, gap 60, margin 120": ("Fit", {"gap_across": 60, "gap_up": 60, "margin": 120}),
    "as many as fit, gap 60 across, gap 80 up": ("Fit", {"gap_across": 60, "gap_up": 80, "margin": 80}),
    "as many as fit, gap 60, staggered": ("Fit", {"margin": 60, "staggered": True}),
    "to cover 40 %, gap 100": ("Cover", {"gap": 100}),
    "at first reflections from cello to desk, desk-2, over 600 x 400 round each listener": (
        "Reflections",
        {"talkers": ("cello",), "listeners": ("desk", "desk-2"), "area": (600, 400)},
    ),
}


@pytest.mark.parametrize("rule", RULES)
def test_rules_of_placement(tmp_path, rule):
    plan, findings = placed_by(tmp_path, rule)
    assert findings == ()
    kind, fields = RULES[rule]
    placement = plan.arrays[0].placement
    assert type(placement).__name__ == kind
    assert {name: getattr(placement, name) for name in fields} == fields
    beside = plan.arrays[1].placement
    assert (beside.array, beside.side, beside.gap) == ("clouds", "below", 90)


@pytest.mark.parametrize(
    ("rule", "across", "up"),
    [
        ("row of 3 along upper edge, gap 50, 80 from it, left edge at 20", ("start", 20), ("end", 80)),
        ("row of 3 along lower edge, gap 50, right edge at 20", ("end", 20), ("start", 0)),
        ("row of 2 along the left edge, gap 50, 30 from it, centred up", ("start", 30), ("centred", 0)),
        ("stack of 2, gap 30, in the right corner, lowest edge at 7", ("end", 0), ("start", 7)),
        ("stack of 2, gap 30, left edge at 40, highest edge at 7", ("start", 40), ("end", 7)),
    ],
)
def test_where_a_row_along_an_edge_and_a_stack_lie(tmp_path, rule, across, up):
    placement = placed_by(tmp_path, rule)[0].arrays[0].placement
    assert (placement.across.alignment, placement.across.offset) == across
    assert (placement.up.alignment, placement.up.offset) == up


@pytest.mark.parametrize(
    ("rule", "taken"),
    [
        ("row of 3 along upper edge, gap 50", ["against the upper edge", "centred across"]),
        ("row of 3 along upper edge, gap 50, 0 from it, left edge at 9", []),
        ("as many as fit, gap 60", ["as far from the edges as from each other"]),
        ("row of 2, equal gaps", ["centred up"]),
    ],
)
def test_what_is_taken_where_a_rule_does_not_say_all(tmp_path, rule, taken):
    plan, _ = placed_by(tmp_path, rule)
    assert [each.value for each in plan.assumptions if each.subject == "array clouds"][: len(taken)] == taken


@pytest.mark.parametrize(
    ("rule", "code"),
    [
        ("at points 600, 900, 1500", "count-differs"),
        ("as many as fit", "clause-missing"),
        ("as many as fit, gap 60 across", "clause-missing"),
        ("to cover 140 %, gap 10", "out-of-range"),
        ("mirrored from clouds", "clauses-disagree"),
        ("mirrored from cloud", "wrong-thing"),
        ("row of 3 along upper edge, gap 50, highest edge at 20", "clauses-disagree"),
        ("row of 3 along upper edge, gap 50, centred up", "clauses-disagree"),
        ("stack of 2, gap 30, in the right corner, left edge at 4", "clauses-disagree"),
        ("stack of 2, gap 30, in the right corner, right edge at 4", "clauses-disagree"),
    ],
)
def test_rules_of_placement_that_are_wrong(tmp_path, rule, code):
    assert [found for found, _ in findings_after(tmp_path, (PLACE, rule))] == [code]


@pytest.mark.parametrize(
    "rule",
    [
        "grid 2 across by 1 up, gap 50, margin 30",
        "row of 2, gap 50, staggered",
        "row of 2, equal gaps, gap 50",
        "row of 2, equal gaps, left edge at 50",
        "at points 600, 900, gap 10",
        "as many as fit, gap 60, centred across",
        "to cover 40 %, gap 100, lowest edge at 10",
        "to cover 40 %, gap 100, over 60 x 60 round each listener",
    ],
)
def test_a_clause_that_says_nothing_in_its_rule_is_a_mistake(tmp_path, rule):
    assert [found for found, _ in findings_after(tmp_path, (PLACE, rule))] == ["clauses-disagree"]


@pytest.mark.parametrize(("word", "stated", "runs"), [
    ("purlins", "", "across"), ("purlins", ", running up", "up"), ("rafters", "", "up"), ("joists", "", "up"),
])  # fmt: skip
def test_purlins_run_across_unless_the_plan_says_otherwise(tmp_path, word, stated, runs):
    text = SMALL.replace(JOISTS, f"over {word} 45 x 145 of spruce at 200 centres, first at 100{stated}")
    plan, findings = read_text(tmp_path, text.replace("into joists", f"into {word}"))
    assert findings == ()
    made = next(one.members for one in plan.room.linings if one.surface == "ceiling")
    assert (made.word, made.runs) == (word, runs)

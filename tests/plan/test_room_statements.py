"""What may stand in a room and in an array: rails, things of all kinds and their distances, members, placement."""

from tests.plans import SMALL, findings_after, read_text


def test_how_far_rails_end_past_their_last_member(tmp_path):
    text = SMALL.replace(
        "lag-eye into joists", "lag-eye into rails of spruce on lag-eye, rails end 90 past their last member"
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

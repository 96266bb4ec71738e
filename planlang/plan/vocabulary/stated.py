"""What a plan states for the book and for those who decide: zones, permissions, phases, rules."""

from planlang.plan.vocabulary.declare import Clause
from planlang.plan.vocabulary.declare import StatementKind as S

ZONE = S(
    "zone",
    "{name:new} on {surface:surface} from {left:distance} , {lower:distance} to {right:distance} , {upper:distance}",
    "A part of a surface, or all of it, where something is forbidden, and who says so: a rectangle by two corners, any "
    "outline `through` all of its corners in turn, across and up. Where no heat may be, nothing "
    "that gets hot may stand, and no panel, for it would keep heat in.",
    'zone flue on south-pitch from 2900, 0 to 3300, 2300, no drilling, says "chimney sweep, 2026-10-02"',
    other_forms=(
        "{name:new} on all [of] {surface:surface}",
        "{name:new} on {surface:surface} through {corners:position+}",
    ),
    clauses=(
        Clause("no {what:drilling|covering|hanging|heat|anything}", "What is forbidden there.", required=True),
        Clause("says {who:text}", "Who says so.", required=True),
    ),
    many=True,
)

ALLOWS = S(
    "allows",
    "{surface:surface} {fixings:nothing|screws|eyes|plugs|clamps|glue+}",
    "Which fixings may go into a surface, and who says so.",
    'allows south-pitch screws, eyes, says "owner"',
    clauses=(Clause("says {who:text}", "Who says so."),),
    many=True,
)

MADE = S(
    "made",
    "{panels:names+} by {date:date}",
    "Panels of this array that are built: what they are may no longer change. With their size, as in `face` and "
    "`depth`, a plan that would make them otherwise is an error.",
    "made SC1, SC2 by 2026-12-01, 600 x 1500 x 80",
    clauses=(Clause("{size:size3}", "Width x length x depth, as built."),),
    many=True,
)

SIZE_RULE = S(
    "size-rule",
    "{rule:outside|whole-batts}",
    "What is held to when sizes meet: the outside size, or batts that are never cut.",
    "size-rule outside",
)

PHASE = S(
    "phase",
    "{name:new} hangs {arrays:names+}",
    "Which arrays are hung in one visit, and when.",
    "phase first hangs south-clouds, east-wall, from 2026-12-07 to 2026-12-11",
    clauses=(Clause("from {from:date} to {to:date}", "The window."),),
    many=True,
)

COUNTRIES = "great-britain|ireland|european-union|united-states|canada|australia|new-zealand|elsewhere"

REGION = S(
    "region",
    "{name:text}",
    "Where the building stands, for rules that differ, and whose questions the book asks. It decides nothing.",
    'region "England", rules of great-britain',
    clauses=(
        Clause(
            f"rules of {{country:{COUNTRIES}}}",
            "Whose authorities and usual papers the questions name.",
        ),
    ),
)

RULE = S(
    "rule",
    "{name:new} {answer:applies|does-not-apply|ask}",
    "Whether a check that depends on the region applies here; `ask` makes it a question to whoever decides.",
    'rule sprinkler-cover ask, says "fire officer"',
    clauses=(Clause("says {who:text}", "Who says so, or who is asked."),),
    many=True,
)

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

FIXINGS = "{fixings:nothing|screws|eyes|plugs|clamps|glue+}"

ALLOWS = S(
    "allows",
    f"{{surface:surface}} {FIXINGS}",
    "Which fixings may go into a surface, or into the members behind or below it, and who says so. What goes into "
    "members that are seen need not go through the surface.",
    'allows south-pitch screws, eyes, says "owner"',
    other_forms=(f"{{members:rafters|purlins|joists|studs}} of {{surface:surface}} {FIXINGS}",),
    clauses=(Clause("says {who:text}", "Who says so."),),
    many=True,
)

KEEP_FREE = S(
    "keep-free",
    "{name:new} from {west:distance} , {south:distance} to {east:distance} , {north:distance}",
    "A part of the room, east and north of its datum, that no panel may reach into: a ladder that folds down, the way "
    "to a screen, the space above a heater. Who says so is named.",
    'keep-free loft-ladder from 1200, 800 to 2000, 1600, heights 0 to 2400, for movement, says "owner"',
    clauses=(
        Clause("heights {low:distance} to {high:distance}", "Above the floor.", required=True),
        Clause("for {purpose:movement|sight|heat}", "What it is kept free for.", required=True),
        Clause("says {who:text}", "Who says so.", required=True),
    ),
    many=True,
)

MADE = S(
    "made",
    "{panels:names+} on {date:date}",
    "Panels of this array that are built: what they are may no longer change. With their size, as in `face` and "
    "`depth`, a plan that would make them otherwise is an error.",
    "made SC1, SC2 on 2026-12-01, 600 x 1500 x 80",
    clauses=(
        Clause("{size:size3}", "Width x length x depth, as built."),
        Clause(
            "sides {sides:length+}",
            "Of a top that is not level: how high it is at the left side, at each corner of the top, and at the right "
            "side, seen from the front.",
        ),
    ),
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

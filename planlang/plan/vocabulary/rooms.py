"""The room as surveyed, and what it is used for."""

from planlang.plan.vocabulary.declare import Clause
from planlang.plan.vocabulary.declare import StatementKind as S
from planlang.plan.vocabulary.stated import ALLOWS, KEEP_FREE, ZONE

MEMBERS = "{word:rafters|purlins|joists|studs} {size:size2} [of {timber:ref}]"
MEMBER_CLAUSES = (
    Clause("first at {first:distance}", "Centre line of the first, from the surface's datum."),
    Clause(
        "running {runs:up|across}",
        "Which way they run on the surface; left out, purlins run across, and rafters, joists and studs up.",
    ),
)
PLACE = "on {surface:surface} at {at:position+}"
CENTRED = "on {surface:surface} centred at {centres:position+}"
MADE_OF = Clause("{lining:ref}", "What it absorbs like.", required=True)
UP = Clause("up {up:distance}", "Its lower edge, up the surface; for a round one its centre.")
KEEP = Clause("keep {keep:distance} clear", "How far panels keep from it; without it, what is usual for its kind.")
DEEP = Clause("{deep:length} deep", "How far it stands out of the surface.")
SMALL_CLAUSES = (
    Clause("{across:length} across", "Diameter of a round one."),
    Clause("{size:size2}", "Width x height of a square one."),
    UP,
    Clause("{lining:ref}", "What it absorbs like, when it is large enough to count."),
    KEEP,
    DEEP,
)
LARGE_CLAUSES = (
    Clause("{size:size2}", "Width x height.", required=True),
    Clause("up {up:distance}", "Its lower edge, up the surface.", required=True),
    Clause("{lining:ref}", "What it absorbs like, when it is large enough to count."),
    KEEP,
    DEEP,
)


def small(word: str, words: str, example: str, *more: Clause) -> S:
    """A small thing, placed by its centre."""
    return S(word, f"{{names:names+}} {CENTRED}", words, example, clauses=(*SMALL_CLAUSES, *more), many=True)


def large(word: str, words: str, example: str) -> S:
    """A thing with a size, placed by its left and lower edge, or by its centre across."""
    by_centre = (f"{{names:names+}} {CENTRED}",)
    return S(word, f"{{names:names+}} {PLACE}", words, example, other_forms=by_centre, clauses=LARGE_CLAUSES, many=True)


OTHER_THINGS = (
    small(
        "sprinkler",
        "A sprinkler head, placed like a light.",
        "sprinkler S1 on ceiling centred at 3600, 900, 60 across, deflector 40 below",
        Clause("deflector {below:distance} below", "Its deflector, under the surface."),
    ),
    small(
        "detector",
        "A smoke or heat detector, placed like a light.",
        "detector D1 on ceiling centred at 3600, 2700, 100 across",
    ),
    small(
        "exit-sign",
        "An exit sign or emergency light, placed like a light.",
        "exit-sign E1 on north wall centred at 3600, up 2300, 350 x 180",
    ),
    small("speaker", "A loudspeaker in or on a surface.", "speaker K1 on ceiling centred at 1200, 2700, 230 across"),
    small("socket", "A socket, a switch or another box.", "socket P1 on west wall centred at 600, up 300, 86 x 86"),
    large("beam", "A beam below a ceiling or before a wall.", "beam B1 on ceiling at 0, up 1800, 6000 x 150, 200 deep"),
    large("radiator", "A radiator on a wall.", "radiator H1 on south wall at 900, up 150, 1200 x 600, 110 deep"),
    large("trim", "A cornice, a skirting, a rail, a shelf.", "trim T1 on south wall at 0, up 900, 6000 x 60, 20 deep"),
)

LEG = S(
    "leg",
    "{way:east|north|west|south|north-east|north-west|south-east|south-west} {length:length}",
    "One wall of the floor, from the corner where the last one ended: a length by compass, by a turn out of the last "
    "leg (square, or by an angle), by a bearing (from north, through east), or to a corner, east and north of the "
    "datum. Walls without a name are called by the side that they are on: `south wall`, or `east wall 1`, "
    "`east wall 2` in the order of the walk where there are several.",
    "leg east 6000, called street-front",
    other_forms=(
        "{turn:left|right} {length:length}",
        "{turn:left|right} by {angle:turn} for {length:length}",
        "bearing {bearing:bearing} for {length:length}",
        "to {east:position} , {north:position}",
    ),
    clauses=(Clause("called {name:new}", "A name for its wall."),),
    many=True,
)

FOOTPRINT = "{name:new} from {left:position} , {lower:position} to {right:position} , {upper:position}"
CORNERS = ("{name:new} through {corners:position+}",)
LINED = Clause("{lining:ref}", "What it is lined with.", required=True)
SOLIDS = (
    S(
        "column",
        FOOTPRINT,
        "A column that stands free, from floor to ceiling: east and north of two corners, or of all of them in turn. "
        "Its sides are surfaces: `P1 south face`. What stands at a wall is walked as a part of the floor's outline.",
        "column P1 from 2000, 1800 to 2300, 2100, plaster-on-brick",
        other_forms=CORNERS,
        clauses=(LINED,),
        many=True,
    ),
    S(
        "platform",
        FOOTPRINT,
        "A step in the floor's level. Its top is a surface by its name, its sides are `stage south face` and the like.",
        "platform stage from 0, 0 to 3000, 1500, 300 high, wood-floor",
        other_forms=CORNERS,
        clauses=(Clause("{level:length} high", "Over the floor.", required=True), LINED),
        many=True,
    ),
    S(
        "soffit",
        FOOTPRINT,
        "A bulkhead or a boxed beam with upright sides below the ceiling. Its underside is a surface by its name, its "
        "sides are `duct south face` and the like.",
        "soffit duct from 0, 0 to 6000, 600, underside at 2250, plasterboard-on-joists",
        other_forms=CORNERS,
        clauses=(Clause("underside at {level:length}", "Over the floor.", required=True), LINED),
        many=True,
    ),
)

CEILING = S(
    "ceiling",
    "",
    "The planes of the ceiling: at every point the lowest of them counts.",
    "ceiling {",
    required=True,
    block=(
        S(
            "flat",
            "{name:new} at {height:length}",
            "A level plane at a height over the floor.",
            "flat collar at 3000",
            many=True,
        ),
        S(
            "slope",
            "{name:new} from {foot:surface} at {height:distance}",
            "A plane that rises from a wall, where it stands at a height over the floor.",
            "slope south-pitch from south wall at 1500, pitch 40 deg",
            clauses=(Clause("pitch {pitch:angle}", "Its angle to the level: degrees, or rise:run.", required=True),),
            many=True,
        ),
    ),
)

ROOM = S(
    "room",
    "{name:new}",
    "A room over its floor. Its datum is where the westernmost and the southernmost line of the floor cross: the "
    "south-west corner, where there is one.",
    "room loft {",
    many=True,
    required=True,
    block=(
        S(
            "floor",
            "rectangle {size:size2}",
            "A rectangle, east x north: the first runs east, the second north. Any other floor is walked along its "
            "walls, leg by leg, until it is back at the start.",
            "floor rectangle 7200 x 5400",
            other_forms=("walked [from {east:position} , {north:position}]",),
            clauses=(
                Clause(
                    "closing within {within:length}",
                    "How far the walk may end from its start; that is shared out over its legs.",
                    default="closing within 0.5 mm",
                    reason="",
                ),
            ),
            required=True,
            block=(LEG,),
            block_optional=True,
        ),
        *SOLIDS,
        CEILING,
        S(
            "lining",
            "{surfaces:surface+} {lining:ref}",
            "What surfaces are lined with: a wall, all `walls`, the floor, a plane of the ceiling; and the members "
            "behind it (`over`) or below it (`between exposed`), at centres, or one by one as they were `found`.",
            "lining south-pitch, north-pitch pine-boards-20 over rafters 45 x 145 at 600 centres, first at 300",
            other_forms=(
                f"{{surfaces:surface+}} {{lining:ref}} over {MEMBERS} at {{centres:length}} centres",
                "{surfaces:surface+} {lining:ref} between {exposed:exposed} "
                f"{MEMBERS} at {{centres:length}} centres",
                f"{{surfaces:surface+}} {{lining:ref}} over {MEMBERS} found at {{lines:position+}}",
                "{surfaces:surface+} {lining:ref} between {exposed:exposed} "
                f"{MEMBERS} found at {{lines:position+}}",
            ),
            clauses=MEMBER_CLAUSES,
            many=True,
        ),
        S(
            "door",
            f"{{names:names+}} {PLACE}",
            "A door: its left edge as you face the wall, then width x height.",
            "door d1 on west wall at 700, 900 x 2050, solid-door",
            other_forms=(f"{{names:names+}} {CENTRED}",),
            clauses=(
                Clause("{size:size2}", "Width x height.", required=True),
                MADE_OF,
                Clause("opens {opens:inward|outward}", "Into the room, or out of it."),
                Clause("hinged {hinge:left|right}", "Where its hinges are, as you face the wall from inside."),
                KEEP,
            ),
            many=True,
        ),
        S(
            "window",
            f"{{names:names+}} {PLACE}",
            "A window: its left edge, size, and the height of its sill.",
            "window w1 on east wall at 1900, 1600 x 1100, sill 900, double-glazing",
            other_forms=(f"{{names:names+}} {CENTRED}",),
            clauses=(
                Clause("{size:size2}", "Width x height.", required=True),
                Clause("sill {up:distance}", "Its lower edge over the floor.", required=True),
                MADE_OF,
                KEEP,
            ),
            many=True,
        ),
        S(
            "rooflight",
            f"{{names:names+}} {CENTRED}",
            "A window in a ceiling plane: the centre across, the lower edge up the plane, width x height.",
            "rooflight R1..R4 on south-pitch centred at 1200, 2800, 4400, 6000, up 500, 550 x 780, double-glazing",
            other_forms=(f"{{names:names+}} {PLACE}",),
            clauses=(
                Clause("up {up:distance}", "Its lower edge, up the plane.", required=True),
                Clause("{size:size2}", "Width x height.", required=True),
                MADE_OF,
                KEEP,
            ),
            many=True,
        ),
        S(
            "luminaire",
            f"{{names:names+}} {CENTRED}",
            "A light: its centre across and up the surface (or several across and one `up`).",
            "luminaire L1 on collar centred at 3600, 900, 90 across",
            clauses=(
                *SMALL_CLAUSES,
                Clause(
                    "fitted {fitting:recessed|recessed-ic|surface}",
                    "How it is built in; recessed-ic is marked as fit to touch insulation.",
                ),
                Clause(
                    "beam {beam:angle} to each side",
                    "How far its light opens, half the angle on its label: no panel of any surface should be in it.",
                ),
            ),
            many=True,
        ),
        S(
            "vent",
            f"{{names:names+}} {CENTRED}",
            "An air outlet or intake, placed like a light.",
            "vent V1 on ceiling centred at 3600, 2700, 300 x 300",
            clauses=SMALL_CLAUSES,
            many=True,
        ),
        *OTHER_THINGS,
        S(
            "air",
            "{temperature:temperature}",
            "Temperature and relative humidity.",
            "air 20 C, 45 %",
            clauses=(Clause("{humidity:share}", "Relative humidity.", required=True),),
            default="air 20 C, 50 %",
            reason="ordinary indoor air",
        ),
        S(
            "furniture",
            "{name:new} {size:size3}",
            "Hard furniture, by the box that it fills: it takes from the volume, and its faces absorb a little.",
            "furniture bookcase 1800 x 400 x 2000, 2 of them",
            clauses=(Clause("{count:count} of them", "How many there are.", default="1 of them", reason=""),),
            many=True,
        ),
        S(
            "occupied-by",
            "{count:count} {seating:ref}",
            "People or seats for whom the estimate is made.",
            "occupied-by 12 seated-reader",
            many=True,
        ),
        ZONE,
        ALLOWS,
        KEEP_FREE,
    ),
)

POSITION = "{name:new} at {east:position} , {north:position}"
HEIGHT = Clause("height {height:length}", "Of the ears or the mouth over the floor.", required=True)

USE_OF_ROOM = S(
    "use-of-room",
    "",
    "What the room is for.",
    "use-of-room {",
    block=(
        S(
            "target",
            "din-18041 {group:A1|A2|A3|A4|A5|B1|B2|B3|B4|B5}",
            "The decay time to reach: by a group of DIN 18041:2016, by EBU Tech 3276, ITU-R BS.1116 or ANSI S12.60, or "
            "a time of your own. A room may have two; the first is drawn in the charts.",
            "target 0.5 s, from 250 Hz to 2000 Hz, within 20 %",
            other_forms=("{standard:ebu-3276|bs-1116|ansi-s12-60}", "{seconds:time}"),
            many=True,
            clauses=(
                Clause("from {from:frequency} to {to:frequency}", "The octaves it counts for."),
                Clause("within {within:share}", "How far off is near enough, above and below."),
            ),
        ),
        S(
            "listener",
            POSITION,
            "Where somebody listens: east, north.",
            "listener desk at 3600, 2700, height 1200",
            clauses=(HEIGHT,),
            many=True,
        ),
        S(
            "talker",
            POSITION,
            "Where somebody talks or plays: east, north.",
            "talker counter at 900, 2700, height 1500",
            clauses=(HEIGHT,),
            many=True,
        ),
    ),
)

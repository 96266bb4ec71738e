"""What changes or tests a plan: options, surveys, requirements."""

from dataclasses import replace

from planlang.plan.usual import PLURALS
from planlang.plan.vocabulary.arrays import ARRAY
from planlang.plan.vocabulary.buying import BUYING
from planlang.plan.vocabulary.declare import Clause
from planlang.plan.vocabulary.declare import StatementKind as S
from planlang.plan.vocabulary.panels import PANEL
from planlang.plan.vocabulary.rooms import USE_OF_ROOM
from planlang.plan.vocabulary.stock import SHOP, STOCK


def changed(kind: S) -> S:
    """The same block as a change of what stands elsewhere: it names what it changes, and states what is new."""
    form = "{name:ref}" if kind.form else ""
    clauses = tuple(replace(clause, required=False) for clause in kind.clauses)
    words = f"Changes the {kind.word} of that name." if kind.form else f"Changes the {kind.word} block."
    return replace(kind, form=form, clauses=clauses, help=words, required=False, default="", many=bool(kind.form))


OPTION = S(
    "option",
    "{name:new}",
    "A set of changes under a name, built with `--option NAME` and compared with the plan in the job book.",
    "option leaner {",
    many=True,
    block=(
        S("without", "{array:ref}", "Leaves an array out.", "without back-wall", many=True),
        changed(ARRAY),
        changed(PANEL),
        *(changed(kind) for kind in STOCK),
        changed(SHOP),
        changed(BUYING),
        changed(USE_OF_ROOM),
    ),
)

PLACE = (
    Clause("at {at:position}", "Its left edge."),
    Clause("centred at {centre:position+}", "Its centre across; a second figure is its centre up."),
    Clause("up {up:distance}", "Its lower edge."),
    Clause("sill {up:distance}", "Its lower edge over the floor."),
    Clause("{size:size2}", "Width x height."),
    Clause("{across:length} across", "Diameter."),
)


def reading(word: str, example: str) -> S:
    """A reading of a door, a light or the like: whatever was found to differ."""
    return S(word, "{name:ref}", f"Where a {word} was found, as far as it was read.", example, clauses=PLACE, many=True)


FOUND_FROM = "{name:ref} from {left:position} , {lower:position} to {right:position} , {upper:position}"
FOUND_THROUGH = "{name:ref} through {corners:position+}"


def found_solid(word: str, example: str, *clauses: Clause) -> S:
    """A reading of a column, a platform or a soffit: where its edges or its corners are, and its height."""
    help_words = f"Where a {word} was found: east and north of two corners, or of all of them in turn"
    if clauses:
        help_words += "; its height alone, or both"
    forms = (FOUND_THROUGH, "{name:ref}") if clauses else (FOUND_THROUGH,)
    return S(word, FOUND_FROM, f"{help_words}.", example, clauses=clauses, other_forms=forms, many=True)


SURVEY = S(
    "survey",
    "{date:date} by {by:text}",
    "Readings taken on site. They go before what is drawn, and the job book lists the differences.",
    'survey 2026-12-03 by "second visit" {',
    many=True,
    block=(
        S("floor", "{size:size2}", "East x north, as found.", "floor 7192 x 5404"),
        S(
            "leg",
            "of {wall:surface} found {length:length}",
            "The length of one leg of a floor that is walked, by its wall. With all legs as found the walk has to "
            "close within what the floor states.",
            "leg of street-front found 7192",
            many=True,
        ),
        S("flat", "{name:ref} at {height:length}", "A level plane, as found.", "flat collar at 2994", many=True),
        S(
            "slope",
            "{name:ref}",
            "A slope, as found.",
            "slope south-pitch, at 1496, pitch 39.5 deg",
            clauses=(
                Clause("at {height:distance}", "Height at its wall."),
                Clause("pitch {pitch:angle}", "Its angle to the level."),
            ),
            many=True,
        ),
        found_solid("column", "column P1 from 4004, 2497 to 4253, 2749"),
        found_solid("platform", "platform stage, 196 high", Clause("{level:length} high", "Over the floor, as found.")),
        found_solid(
            "soffit",
            "soffit duct, underside at 2591",
            Clause("underside at {level:length}", "Over the floor, as found."),
        ),
        reading("door", "door d1, at 704"),
        reading("window", "window w1, at 1897, sill 905"),
        reading("rooflight", "rooflight R3, centred at 4418"),
        reading("luminaire", "luminaire L1, centred at 3610, 905"),
        reading("vent", "vent V1, centred at 3590, 2710"),
        reading("sprinkler", "sprinkler S1, centred at 3610, 905"),
        reading("detector", "detector D1, centred at 3590, 2710"),
        reading("exit-sign", "exit-sign E1, centred at 3590, up 2310"),
        reading("speaker", "speaker K1, centred at 1210, 2695"),
        reading("socket", "socket P1, centred at 604, 310"),
        reading("beam", "beam B1, up 1812, 6000 x 146"),
        reading("radiator", "radiator H1, at 890"),
        reading("trim", "trim T1, up 897"),
        S(
            "thickness",
            "of {stock:ref} {thickness:length}",
            "What a sheet or batt measures in the stack.",
            "thickness of birch-ply-12 11.7",
            many=True,
        ),
        S(
            "members",
            "of {surface:surface} first at {first:distance}",
            "Where the first rafter, joist or stud was found, or each of them one by one.",
            "members of south-pitch first at 306",
            other_forms=("of {surface:surface} found at {lines:position+}",),
            clauses=(Clause("{centres:length} centres", "Their centres."),),
            many=True,
        ),
    ),
)

OVER_RANGE = Clause("over the whole {over:range}", "It must hold for the whole range of the estimate, not its middle.")

REQUIRE = S(
    "require",
    "",
    "What must hold. Each is checked at every build, with what was found; one that fails ends the build with status 1.",
    "require {",
    many=True,
    block=(
        S(
            "decay",
            "{low:frequency} to {high:frequency} within the {within:target}",
            "The decay time, from octave to octave.",
            "decay 250 Hz to 2000 Hz within the target",
            clauses=(OVER_RANGE,),
            other_forms=(
                "{low:frequency} to {high:frequency} at {sense:most|least} {bound:time}",
                "{low:frequency} at {sense:most|least} {bound:time}",
            ),
            many=True,
        ),
        S(
            "gap",
            "in {array:ref} at {sense:most|least} {bound:distance}",
            "The gap between neighbours of an array.",
            "gap in south-clouds at least 300",
            many=True,
        ),
        S(
            "margin",
            "at every hang point at {sense:least} {bound:number}",
            "What holds, over what is asked of it, at the weakest step of every load path, second supports too.",
            "margin at every hang point at least 1.5",
            other_forms=("at every hang point of {array:ref} at {sense:least} {bound:number}",),
            many=True,
        ),
        S(
            "second-support",
            "of every panel at {sense:least} {bound:number}",
            "What holds, over what is asked of it, at the weakest step of the second supports; a panel overhead "
            "without one fails.",
            "second-support of every panel at least 1.2",
            other_forms=("of every panel of {array:ref} at {sense:least} {bound:number}",),
            many=True,
        ),
        S(
            "weight",
            "of every panel at {sense:most} {bound:mass}",
            "The weight of the heaviest panel, or of all that hangs on a surface, tolerance and all.",
            "weight of every panel at most 10 kg",
            other_forms=("on {surface:surface} at {sense:most} {bound:mass}",),
            many=True,
        ),
        S(
            "load",
            "at every hang point at {sense:most} {bound:force}",
            "What the hang point that is asked for most is asked for, tolerance, lean and blows and all: as an "
            "engineer or an owner may limit it.",
            "load at every hang point at most 100 N",
            other_forms=("at every hang point of {array:ref} at {sense:most} {bound:force}",),
            many=True,
        ),
        S(
            "lift",
            "of every panel at {sense:most} {bound:number} times the limit",
            "The worst lift of a panel: its mass over the limit of the published lifting equation for one person, or "
            "how far out it is held. A lift outside the equation fails.",
            "lift of every panel at most 1.3 times the limit",
            other_forms=("of every panel {of:reaching} at {sense:most} {bound:length}",),
            many=True,
        ),
        S(
            "clearance",
            f"from {{of:{'|'.join(PLURALS)}}} at {{sense:least}} {{bound:distance}}",
            "From the nearest panel to a thing of that kind on its surface.",
            "clearance from sprinklers at least 610",
            many=True,
        ),
        S(
            "papers",
            "for {of:every} material",
            "That the plan names a paper for each material of its panels, and for each panel as put together; what the "
            "paper says isn't judged.",
            "papers for every material",
        ),
        S(
            "headroom",
            "at {sense:least} {bound:length}",
            "From the floor to the lowest corner of a panel under the ceiling.",
            "headroom at least 2000",
        ),
        S(
            "cost",
            "{of:materials|total} at {sense:most} {bound:money}",
            "What the materials cost, or the whole price with tax.",
            "cost materials at most 1900 GBP",
            many=True,
        ),
    ),
)

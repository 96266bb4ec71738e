"""Panel types: what is built."""

from planlang.plan.vocabulary.declare import Clause, Variant
from planlang.plan.vocabulary.declare import StatementKind as S
from planlang.plan.vocabulary.stated import SIZE_RULE
from planlang.plan.vocabulary.stock import CALLED, LIKE

BRACE_CLAUSES = (
    Clause("[and] at every batt joint", "One under each joint between batts."),
    Clause("[and] at mid-length", "One half way along."),
    Clause("[and] centred at {positions:length+} from an end", "Centre lines, from the panel's start end."),
    Clause("{width:length} wide", "Width of the strip.", required=True),
    Clause(
        "set back {setback:distance} from the front",
        "Gap between the front edge of the frame and the brace.",
        default="set back 6 mm from the front",
        reason="a brace that touches the cloth shows through it",
    ),
    Clause(
        "lying {lie:flat|on-edge}",
        "Flat: the wide face to the front. On edge: the narrow face.",
        default="lying flat",
        reason="batts pass behind a flat brace",
    ),
)

RAILROADED = Clause(
    "{way:railroaded}",
    "The panel's width lies along the roll, where its length would; only for cloth whose nap and pattern may.",
)

SEAMED = Clause(
    "{seams:seamed}",
    "Widths may be sewn together where the roll is too narrow; left out, a blank wider than its roll is an error.",
)

VARIANTS = (
    Variant(
        "absorber",
        "framed",
        "framed absorber",
        ("face", "depth", "frame", "core", "front"),
        ("braces", "outline", "facing", "back", "back-board", "shadow-gap", "eyes", "cleats"),
    ),
    Variant("absorber", "board", "board absorber", ("face", "core", "front", "back-board"), ("outline", "cleats")),
    Variant(
        "absorber",
        "membrane",
        "membrane absorber",
        ("face", "depth", "frame", "plate", "back-board"),
        ("core", "eyes", "cleats"),
    ),
    Variant("diffuser", "", "diffuser", ("face", "depth", "fins", "bottoms", "back-board"), ("eyes", "cleats")),
    Variant("corner-trap", "", "corner trap", ("corner", "boards", "filling", "front"), ("cleats",)),
    Variant("baffle", "", "baffle", ("face", "frame", "core", "front"), ("eyes",)),
)

OUTLINE = S(
    "outline",
    "{shape:circle|hexagon}",
    "What shape the front has within its face, where that is no rectangle: convex, as seen from the front. A circle "
    "fills a square face and needs a board absorber; a hexagon has two sides across, each half the face's width. A "
    "trapezoid has its lower side over the whole width and its upper one in the middle; a raking top goes from the "
    "length of the left side to that of the right one. Corners run anticlockwise, across then along.",
    "outline hexagon",
    other_forms=(
        "{shape:trapezoid} with [a] top {top:length} wide",
        "{shape:raking} top from {left:length} to {right:length}",
        "with {shape:corners} {corners:position+}",
    ),
)

PANEL = S(
    "panel",
    "{name:new}",
    "A type of panel, built as often as arrays ask for it.",
    "panel cloud-1500, mark C {",
    clauses=(Clause("mark {mark:new}", "What is written on its parts; left out, it is made from the name."),),
    many=True,
    variants=VARIANTS,
    block=(
        LIKE,
        CALLED,
        S(
            "takes",
            "{name:new} {value:quantity}",
            "A figure that an array may set for its own panels; this is its usual value.",
            "takes width 600",
            many=True,
        ),
        S(
            "absorber",
            "{build:framed|board|membrane}",
            "How it is built: a frame on edge, filled with batts, covered with cloth; or a stiff batt on a back board, "
            "wrapped in cloth, without a frame; or a thin plate glued over a closed frame, which swings on the air in "
            "it and takes low notes.",
            "absorber framed",
        ),
        S(
            "diffuser",
            "{sequence:quadratic-residue|primitive-root}",
            "Wells of equal width and unequal depth, which send sound into many directions. Depth of a well: its step "
            "of the sequence times the speed of sound over twice the prime times the lowest frequency.",
            "diffuser quadratic-residue, prime 7, wells 60 wide, from 500 Hz",
            clauses=(
                Clause("prime {prime:count}", "The prime that makes the sequence: 5, 7, 11, 13 …", required=True),
                Clause("wells {well:length} wide", "Clear width of a well.", required=True),
                Clause("from {design:frequency}", "The lowest frequency it is made for.", required=True),
                Clause("root {root:count}", "The primitive root; left out, the smallest."),
                Clause("{periods:count} time|times over", "How often the sequence is repeated.", default="1 time over"),
            ),
        ),
        S(
            "fins",
            "{sheet:ref}",
            "What a diffuser's fins and ends are cut from; fins stand between the wells and outside the outer ones.",
            "fins birch-ply-6",
        ),
        S("bottoms", "{sheet:ref}", "What the bottoms of a diffuser's wells are cut from.", "bottoms birch-ply-6"),
        S(
            "corner-trap",
            "{shape:triangular|square}",
            "Lies in the corner of two surfaces at right angles, its length along the corner: cloth across the corner, "
            "or over the two sides of a square, and pieces of batt laid on one another behind it.",
            "corner-trap triangular",
        ),
        S(
            "corner",
            "{size:size2}",
            "What a corner trap takes of each of its two surfaces x its length along the corner.",
            "corner 400 x 1200",
        ),
        S(
            "boards",
            "{sheet:ref}",
            "What a corner trap's two boards, which lie on the surfaces, and its formers are cut from.",
            "boards birch-ply-12",
        ),
        S(
            "filling",
            "{batt:ref}",
            "What fills a corner trap: pieces laid on one another along its length, halved from corner to corner for a "
            "triangular one.",
            "filling mineral-wool-60",
        ),
        S(
            "baffle",
            "{thick:length} thick",
            "Hangs upright from its top edge, clear of everything, and absorbs on both faces; its `face` is height x "
            "length. Eyes are in one line on the top edge.",
            "baffle 60 thick",
        ),
        S("face", "{size:size2}", "Width x length of the front, outside.", "face 600 x 1500"),
        SIZE_RULE,
        OUTLINE,
        S("depth", "{depth:length}", "Depth of the frame.", "depth 80"),
        S(
            "frame",
            "{sheet:ref}",
            "What the frame is cut from, and which pair of its members runs full.",
            "frame birch-ply-12, ends full, sides between",
            clauses=(
                Clause(
                    "{full:ends|sides} full",
                    "The pair that runs full: the ends over the whole width, or the sides over the whole length.",
                    default="ends full",
                    reason="the short members cover the end grain of the long ones",
                ),
                Clause("{between:sides|ends} between", "The pair that loses two thicknesses."),
                Clause(
                    "{joint:butt|rabbet|mitre} joints",
                    "Butt: the pair between loses two thicknesses. Rabbet: it reaches into the pair that runs full. "
                    "Mitre: both pairs run full, their ends sawn at 45 degrees.",
                    default="butt joints",
                ),
                Clause("rabbets {rabbet:length} deep", "How far into the thickness; left out, half of it."),
            ),
        ),
        S(
            "plate",
            "{sheet:ref}",
            "The thin plate of a membrane absorber, over the whole front, glued to the frame all round. The depth "
            "includes it.",
            "plate birch-ply-4",
        ),
        S(
            "core",
            "{batt:ref}",
            "What fills the frame; in a membrane absorber it lies on the back board, clear of the plate.",
            "core mineral-wool-60, 2 layers, cut 3 oversize",
            clauses=(
                Clause(
                    "{layers:count} layer|layers",
                    "Layers of batt.",
                    default="1 layer",
                    reason="one batt fills the frame",
                ),
                Clause(
                    "cut {fit:position} oversize",
                    "What a piece is cut larger than the inside, on length and width.",
                    default="cut 0 mm oversize",
                    reason="pieces are cut to the inside of the frame",
                ),
            ),
        ),
        S(
            "braces",
            "[of {sheet:ref}]",
            "Cross members between the sides.",
            "braces at every batt joint, 60 wide, set back 6 from the front",
            clauses=BRACE_CLAUSES,
        ),
        S(
            "front",
            "{cloth:ref}",
            "Cloth over the front, pulled round the edge and fixed on the back.",
            "front wool-serge, wrapped 50",
            clauses=(
                Clause(
                    "wrapped {wrap:distance}",
                    "What lies on the back.",
                    default="wrapped 50 mm",
                    reason="common practice, no source",
                ),
                RAILROADED,
                SEAMED,
            ),
        ),
        S(
            "back",
            "{cloth:ref}",
            "Cloth over the back.",
            "back muslin",
            clauses=(
                Clause(
                    "wrapped {wrap:distance}",
                    "What is pulled round the edge; 0 ends at the edge.",
                    default="wrapped 0 mm",
                    reason="the back cloth ends at the frame's edge",
                ),
                RAILROADED,
                SEAMED,
            ),
        ),
        S(
            "facing",
            "{sheet:ref} with {shape:holes|slots} {opening:length} at {pitch:length} centres",
            "A sheet with openings over the front, on the cloth. Holes: diameter, on a square grid; slots: width, "
            "along the panel. The depth includes it.",
            "facing birch-ply-6 with holes 8 at 24 centres",
        ),
        S(
            "back-board",
            "{sheet:ref}",
            "A sheet over the whole back, screwed to a frame or glued to a batt. The depth includes it.",
            "back-board birch-ply-4, 1 smaller on every side",
            clauses=(
                Clause(
                    "{less:distance} smaller on every side",
                    "So that it doesn't stand over the edge.",
                    default="1 mm smaller on every side",
                    reason="common practice, no source",
                ),
            ),
        ),
        S(
            "shadow-gap",
            "of {sheet:ref}",
            "Strips flat on the back, set in from the panel's edges: they hold it off its surface by their "
            "thickness, so "
            "that a shadow shows all round it. The depth includes them.",
            "shadow-gap of birch-ply-12, strips 40 wide, set in 20",
            clauses=(
                Clause("strips {width:length} wide", "Width of the strips.", required=True),
                Clause("set in {inset:distance}", "From the panel's edges to the strips.", required=True),
            ),
        ),
        S(
            "measured",
            "{alphas:absorption+}",
            "Laboratory figures of the panel (ISO 354), in the octaves 125 to 4000 Hz; they win over the model.",
            'measured 0.30, 0.85, 1.10, 1.05, 1.00, 0.95, report "LB-1207", mounting "A"',
            clauses=(
                Clause("report {report:text}", "Which report says so.", required=True),
                Clause("mounting {mounting:text}", "How it was mounted, in the standard's letters.", required=True),
            ),
        ),
        S(
            "eyes",
            "{count:count} of {hardware:ref}",
            "Eyes that the panel hangs by.",
            "eyes 4 of eye-plate, inset 100 from the ends, on the side rails",
            clauses=(
                Clause("inset {inset:length} from the ends", "From the panel's end to the outer eye.", required=True),
                Clause("on the side rails", "Where they are fixed; nothing else is possible yet."),
            ),
        ),
        S(
            "cleats",
            "{count:count} of {hardware:ref}",
            "Hooked cleats that the panel hangs by on a wall.",
            "cleats 2 of z-cleat, 60 below the top, inset 100 from the sides",
            clauses=(
                Clause("{below:length} below the top", "From the panel's top edge to the cleat line.", required=True),
                Clause(
                    "inset {inset:length} from the sides", "From the panel's side to the outer cleat.", required=True
                ),
            ),
        ),
    ),
)

"""The pages of what the workshop finds: parts, braces, cores, stock, prices."""

from planlang.materials.pages_further import FURTHER_PAGES
from planlang.syntax.pages import Page

BRACES = "braces at mid-length, 60 wide, set back 6 from the front"
LONG = (
    ("face 600 x 1200", "face 600 x 1500"),
    ("eyes 4 of eye, inset 100 from the ends", "eyes 4 of eye, inset 150 from the ends"),
    ("lowest edge at 1600", "lowest edge at 1550"),
)
RAILS = (("fix lag-eye into joists", "fix lag-eye into rails of spruce held by lag-eye"),)

PAGES = {
    "diffuser-width": Page(
        "Wells and fins that don't add up to the width",
        "A diffuser is as wide as its wells, the fins between them and the two outer fins. The message says the sum.",
        wrong=(
            ("absorber framed", "diffuser quadratic-residue, prime 5, wells 60 wide, from 1000 Hz"),
            ("face 600 x 1200", "face 360 x 600"),
            ("depth 75", "depth 180"),
            ("frame ply, ends full, sides between", "fins ply"),
            ("core wool\n", "bottoms ply\n"),
            ("braces at mid-length, 60 wide, set back 6 from the front", "back-board ply, 0 smaller on every side"),
            ("front serge, wrapped 50\n", ""),
        ),
    ),
    "diffuser-too-shallow": Page(
        "A diffuser with less depth than its deepest well",
        "The deepest well, its bottom and the back board have to go into the depth. "
        "Depths follow from the lowest frequency: half of it is twice as deep.",
        wrong=(
            ("absorber framed", "diffuser quadratic-residue, prime 5, wells 60 wide, from 1000 Hz"),
            ("face 600 x 1200", "face 372 x 600"),
            ("depth 75", "depth 150"),
            ("frame ply, ends full, sides between", "fins ply"),
            ("core wool\n", "bottoms ply\n"),
            ("braces at mid-length, 60 wide, set back 6 from the front", "back-board ply, 0 smaller on every side"),
            ("front serge, wrapped 50\n", ""),
        ),
    ),
    "back-board-gone": Page(
        "A back board with no size left",
        "A back board is a little smaller than the panel on every side, so that it doesn't stand over the edge: "
        "usually by 1 mm.",
        given=(("front serge", "back-board ply\n  front serge"), ("depth 75", "depth 90"), ("face 600", "face 400")),
        wrong=(("back-board ply", "back-board ply, 300 smaller on every side"),),
    ),
    # --- the frame ------------------------------------------------------------------------------------------
    "panel-too-small": Page(
        "A panel with nothing inside its frame",
        "Less two thicknesses of the frame's sheet, no width or length is left for the core.",
        wrong=(("face 600 x 1200", "face 20 x 1200"),),
    ),
    # --- braces and joints ----------------------------------------------------------------------------------
    "brace-outside": Page(
        "A brace that runs into an end of the frame",
        "Centred where the plan says, a part of the brace lies where the end member is. Positions run from the outside "
        "of the panel's start end.",
        wrong=((BRACES, "braces centred at 20 from an end, 60 wide"),),
        right=((BRACES, "braces centred at 400 from an end, 60 wide"),),
    ),
    "braces-overlap": Page(
        "Two braces in one place",
        "The braces overlap by their stated width and centres.",
        wrong=((BRACES, "braces centred at 400, 430 from an end, 60 wide"),),
        right=((BRACES, "braces centred at 400, 800 from an end, 60 wide"),),
    ),
    "braces-close": Page(
        "Two braces that stand very close",
        "The gap between them is less than half a brace: one of them would do. This is a warning.",
        wrong=((BRACES, "braces centred at 400, 470 from an end, 60 wide"),),
        right=((BRACES, "braces centred at 400, 800 from an end, 60 wide"),),
    ),
    "joint-no-brace": Page(
        "A joint between batts with no brace under it",
        "Where two batts meet, both ends want to rest on a brace, or they sag into the cloth. `at every batt joint` "
        "puts one there whatever the size of the batt.",
        given=LONG,
        right=((BRACES, "braces at every batt joint, and at mid-length, 60 wide, set back 6 from the front"),),
    ),
    "joint-thin-bearing": Page(
        "A joint between batts at the very edge of a brace",
        "A brace is under the joint, but one of the batts rests on less than 10 mm of it (common practice, no source). "
        "This is a warning.",
        given=LONG,
        wrong=((BRACES, "braces centred at 1235 from an end, 60 wide"),),
        right=((BRACES, "braces centred at 1212 from an end, 60 wide"),),
    ),
    # --- the core -------------------------------------------------------------------------------------------
    "core-seam": Page(
        "Batts side by side",
        "The panel is wider inside than a batt, whichever way it is laid, so a joint runs along the panel. Braces "
        "carry it only where they cross it (a warning); without braces nothing carries it (an error).",
        given=((BRACES, "braces at every batt joint, 60 wide, set back 6 from the front"),),
        wrong=(("size 1200 x 600 x 50", "size 500 x 500 x 50"),),
    ),
    "core-sliver": Page(
        "A last piece of batt too thin to stay put",
        "The rest that fills the panel is a strip thinner than the batt is thick: it will tip and fall out. This is a "
        "warning.",
        given=((BRACES, "braces at every batt joint, 60 wide, set back 6 from the front"),),
        wrong=(("size 1200 x 600 x 50", "size 1140 x 600 x 50"),),
    ),
    # --- the section ----------------------------------------------------------------------------------------
    "brace-on-edge": Page(
        "A brace on edge that the batt can't pass",
        "On edge a brace takes its whole width out of the depth of the frame, and the batt does not fit behind it.",
        wrong=((BRACES, f"{BRACES}, lying on-edge"),),
    ),
    "brace-too-thick": Page(
        "A brace too thick for the depth of the frame",
        "Set-back, brace and batt together are deeper than the frame. A brace of the frame's own sheet would leave "
        "room.",
        given=(
            (
                "batt wool {",
                "sheet board {\n  size 2440 x 1220 x 30\n  density 680 kg/m3\n  price 60 GBP per sheet\n}\n\n"
                "batt wool {",
            ),
        ),
        wrong=((BRACES, "braces of board at mid-length, 60 wide, set back 6 from the front"),),
    ),
    "batt-proud": Page(
        "A batt that stands out of the back of the frame",
        "Set-back, brace and batt together are deeper than the frame, so the batt stands proud.",
        wrong=(("depth 75", "depth 60"),),
    ),
    "brace-at-cloth": Page(
        "A brace that will show through the cloth",
        "A brace that lies against the front cloth marks it. Set it back. This is a warning.",
        wrong=((BRACES, "braces at mid-length, 60 wide, set back 0 from the front"),),
    ),
    # --- parts and stock ------------------------------------------------------------------------------------
    "part-exceeds-stock": Page(
        "A part that is larger than its sheet",
        "However it is turned, the part does not come out of the sheet that it is cut from (less the trim).",
        wrong=(("size 2440 x 1220 x 12", "size 1100 x 1000 x 12"),),
    ),
    "part-against-grain": Page(
        "A part that fits only across the grain",
        "The part is longer than the sheet is along its grain. If the grain does not matter for this sheet, say "
        "`grain none`.",
        wrong=(("size 2440 x 1220 x 12", "size 1000 x 1220 x 12"),),
        right=(("size 2440 x 1220 x 12", "size 1000 x 1220 x 12\n  grain none"),),
    ),
    "cloth-wider-than-roll": Page(
        "A panel that its cloth does not cover",
        "The blank, which is the face with the depth of the frame and the wrap on both sides, is wider than the roll.",
        wrong=(("width 1500", "width 600"),),
    ),
    "rail-longer-than-stick": Page(
        "A rail that is longer than a stick",
        "A rail is cut from one stick; it is not joined.",
        given=RAILS,
        wrong=(("timber spruce {", "timber spruce {\n  section 63 x 63\n  stick 1000\n  price 9 GBP per stick"),),
        right=(("timber spruce {", "timber spruce {\n  section 63 x 63\n  stick 4800\n  price 9 GBP per stick"),),
    ),
    "stick-length-unknown": Page(
        "A stick whose length is not stated",
        "Rails are cut from sticks, so their length must be known.",
        guard="a rail's timber without a stick length is already reported as `clauses-disagree`",
    ),
    # --- money ----------------------------------------------------------------------------------------------
    "currency-mixed": Page(
        "A price in another currency",
        "The job is priced in the currency of its `money` statement. Exchange rates change by the day and are not "
        "guessed.",
        wrong=(("price 40 GBP per sheet", "price 40 EUR per sheet"),),
    ),
    "price-unit": Page(
        "A price by a unit in which the thing is not bought",
        "The order counts packs, sticks or pieces as the shop buys them, and the price must be for one of these.",
        guard="a unit that is not among those of `price` is already reported as `wrong-form`",
    ),
    "price-missing": Page(
        "No total price, for want of a price",
        "Something that the job buys, or an hour of work, has no price. The book then lists all prices that are known, "
        "and no total. This is a warning.",
        wrong=(("price 40 GBP per sheet\n", ""),),
    ),
    **FURTHER_PAGES,
}

"""The pages of what is found of fixings in wood: threads that come out, heads that pull through, too little room."""

from planlang.syntax.pages import Page

FIX = "fix lag-eye into joists"
EYES = "eyes 4 of eye, inset 100 from the ends"
SECTION = "section 63 x 63"
RAIL_SCREW = "hardware rail-screw {\n  mass 20 g\n  shank 8\n  thread 90\n  head 20\n  price 1 GBP per each\n}\n\n"
ON_RAILS = (
    ("timber spruce {", f"timber spruce {{\n  {SECTION}\n  stick 4800\n  price 9 GBP per stick"),
    ("hardware lag-eye {", f"{RAIL_SCREW}hardware lag-eye {{"),
    (FIX, "fix lag-eye into rails of spruce held by rail-screw"),
)

WOOD_PAGES = {
    "thread-comes-out": Page(
        "A thread that comes out of the wood",
        "A thread longer than the rail or the member is deep comes out behind it. What is out holds nothing, and may "
        "meet a cable or split the wood. Under a slope an eye that is driven plumb into a purlin leans, and comes out "
        "at its side. This is a warning: what stays in the wood is what the loads count.",
        given=ON_RAILS,
        wrong=((SECTION, "section 45 x 45"),),
    ),
    "head-not-stated": Page(
        "A screw that holds a rail, and its head was not measured",
        "What hangs from a rail hangs from the heads of its screws. A small head is pulled through soft wood, so the "
        "plan states how wide it is.",
        given=ON_RAILS,
        wrong=(("  head 20\n", ""),),
    ),
    "fixings-too-close": Page(
        "Two fixings too close in one member",
        "Screws in one line along the grain split the wood where they stand too close: seven shanks along it, or five "
        "across it (EN 1995-1-1:2004 table 8.6, from memory). The thicker shank of the two counts, whatever the plan's "
        "rules for timber. Where a cleat has several screws, the distances stand in the table of holes.",
        wrong=(
            ("centred across, lowest", "left edge at 300, lowest"),
            ("gap 500", "gap 20"),
        ),
        right=(("gap 500", "gap 60"),),
    ),
    "frame-too-small": Page(
        "A frame without room for the bolts of an eye",
        "A bolt that is pulled towards an edge wants four diameters to it, one and a half to the other edge and four "
        "to the end of the sheet (NDS 2018 12.5.1, from memory); bolts stand four diameters apart.",
        wrong=(("bolts 2 of 5", "bolts 2 of 15"),),
    ),
}

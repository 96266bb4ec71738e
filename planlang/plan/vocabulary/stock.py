"""What a shop keeps and knows: sheets, batts, cloth, timber, hardware, linings, people, and its own rates."""

from planlang.plan.vocabulary.buying import ALSO_SOLD, ROLL, SHOP_MONEY
from planlang.plan.vocabulary.declare import Clause
from planlang.plan.vocabulary.declare import StatementKind as S

CALLED = S("called", "{words:text}", "What it is called on a label and an order.", 'called "birch plywood 12 mm"')
LIKE = S("like", "{base:ref}", "Starts from an earlier definition; what follows changes it.", "like birch-ply-12")
PRICE_PER = "{price:money} per {per:sheet|pack|m|each|stick}"
OCTAVES_HELP = "in the octaves 125, 250, 500, 1000, 2000 and 4000 Hz"


def price(per: str, example: str) -> S:
    """The price statement of one kind of stock."""
    return S("price", f"{{price:money}} per {{per:{per}}}", "What one costs; left out, the book lists it.", example)


SHEET = S(
    "sheet",
    "{name:new}",
    "A sheet good. The thickness is the one you measure on the stack, not the one on the label.",
    "sheet birch-ply-12 {",
    many=True,
    block=(
        LIKE,
        CALLED,
        S("size", "{size:size3}", "Length x width x thickness.", "size 2440 x 1220 x 12", required=True),
        S("density", "{density:density}", "Mass by volume.", "density 680 kg/m3", required=True),
        S(
            "grain",
            "{grain:along|none}",
            "Whether parts must lie along the sheet's length.",
            "grain along",
            default="grain along",
            reason="a strip cut across the grain is weak and shows",
        ),
        price("sheet", "price 46 GBP per sheet"),
        ALSO_SOLD,
    ),
)

BATT = S(
    "batt",
    "{name:new}",
    "A batt or board of absorbing wool.",
    "batt mineral-wool-60 {",
    many=True,
    block=(
        LIKE,
        CALLED,
        S("size", "{size:size3}", "Length x width x thickness.", "size 1200 x 600 x 60", required=True),
        S("density", "{density:density}", "Mass by volume.", "density 45 kg/m3", required=True),
        S(
            "flow-resistivity",
            "{low:flow_resistivity} [to {high:flow_resistivity}]",
            "How hard air finds it to pass: one measured figure (ISO 9053-1), or the range it may lie in.",
            "flow-resistivity 9000 Pa.s/m2 to 15000 Pa.s/m2",
            required=True,
        ),
        S(
            "pack",
            "of {pack:count}",
            "How many come in a pack.",
            "pack of 6",
            default="pack of 1",
            reason="",
        ),
        price("pack|each", "price 38 GBP per pack"),
    ),
)

CLOTH = S(
    "cloth",
    "{name:new}",
    "Cloth off a roll.",
    "cloth wool-serge {",
    many=True,
    block=(
        LIKE,
        CALLED,
        S("width", "{width:length}", "Usable width of the roll.", "width 1500", required=True),
        S("mass", "{mass:areal_mass}", "Mass by area.", "mass 300 g/m2", required=True),
        S("flow-resistance", "{resistance:flow_resistance}", "Of the single layer.", "flow-resistance 90 Pa.s/m"),
        ROLL,
        S(
            "nap",
            "{nap:along|none}",
            "Along: its pile or pattern runs one way along the roll, so that all panels that are seen together want it "
            "the same way.",
            "nap along",
        ),
        price("m|roll", "price 14 GBP per m"),
    ),
)

TIMBER = S(
    "timber",
    "{name:new}",
    "Timber: sticks for rails, or what rafters and joists are made of.",
    "timber rail-45 {",
    many=True,
    block=(
        LIKE,
        CALLED,
        S("section", "{size:size2}", "Wide x deep, as measured.", "section 45 x 45"),
        S("stick", "{length:length}", "Length of a stick as bought.", "stick 3600"),
        S(
            "specific-gravity",
            "{gravity:specific_gravity}",
            "Oven-dry specific gravity, which the withdrawal rules go by.",
            'specific-gravity 0.42, "stamp on the timber"',
            clauses=(Clause("{source:text}", "Where the figure is from."),),
            default='specific-gravity 0.36, "lowest of the common softwoods, taken for timber of unknown kind"',
            reason="the kind of timber is not stated",
        ),
        S(
            "characteristic-density",
            "{density:density}",
            "Characteristic density of its strength class, which the rules of Eurocode 5 go by.",
            'characteristic-density 350 kg/m3, "strength class C24, stamp on the timber"',
            clauses=(Clause("{source:text}", "Where the figure is from.", required=True),),
        ),
        price("stick|m", "price 9 GBP per stick"),
    ),
)

HARDWARE = S(
    "hardware",
    "{name:new}",
    "One piece of hardware: eye, link, screw, cleat, anchor.",
    "hardware quick-link-3 {",
    many=True,
    block=(
        LIKE,
        CALLED,
        S(
            "rated",
            "{load:force}",
            "The working load that its maker marks on it, and the paper that says so.",
            'rated 1000 N, "invented data sheet QL-3"',
            clauses=(Clause("{source:text}", "The paper.", required=True),),
        ),
        S(
            "breaks",
            "at {load:force}",
            "The load at which it breaks, where no working load is marked: wire, chain.",
            'breaks at 3 kN, 90 % left at its ends, "invented data sheet WR-2"',
            clauses=(
                Clause(
                    "{left:share} left at its ends",
                    "What its ends leave of it: sleeves, clips, wedges, knots, by their maker.",
                    required=True,
                ),
                Clause("{source:text}", "The paper.", required=True),
            ),
        ),
        S("mass", "{mass:mass}", "Of one.", "mass 15 g", required=True),
        S(
            "length",
            "{least:length} [to {most:length}]",
            "From bearing to bearing as it hangs; a range for what can be adjusted.",
            "length 240 to 310",
        ),
        S(
            "stretch",
            "{stretch:length} under {load:force}",
            "How much it gives under a load, by its maker or a trial: for ties that catch a panel.",
            "stretch 3 under 1000 N",
        ),
        S(
            "bolts",
            "{count:count} of {diameter:length}",
            "The through-bolts that hold it to a panel's frame, and their diameter.",
            "bolts 2 of 5",
        ),
        S(
            "made-for",
            "{base:wood|solid-walls|hollow-walls}",
            "What its maker lets it go into.",
            "made-for hollow-walls",
        ),
        S(
            "locks",
            "by {how:gate|nut|pin|wire|weld|nothing}",
            "What keeps it from opening by itself, by its maker: a screw gate, a nut, a pin, a wire, a weld. By "
            "nothing: an open hook, a spring gate, an S-hook; refused overhead.",
            'locks by nut, "invented data sheet QL-3"',
            clauses=(Clause("{source:text}", "The paper.", required=True),),
        ),
        S("engages", "{depth:length}", "How far a cleat is lifted to let go.", "engages 20"),
        S(
            "tool-room",
            "{room:distance}",
            "What must be free behind a panel for the hand and the tool that close it; left out, 50 mm is usual.",
            "tool-room 40",
        ),
        S("shank", "{shank:length}", "Diameter of the shank, for what screws into wood.", "shank 6"),
        S(
            "withdraws",
            "at {strength:stress} in wood of {density:density}",
            "The withdrawal strength that its maker declares, for `timber-rules ec5` where the shank isn't 6 to 12 mm.",
            'withdraws at 11 N/mm2 in wood of 350 kg/m3, "invented declaration of performance"',
            clauses=(Clause("{source:text}", "The paper.", required=True),),
        ),
        S("thread", "{thread:length}", "Length of the thread, with its tip.", "thread 40"),
        S(
            "head",
            "{diameter:length}",
            "Diameter of a screw's head, or of the washers of bolts: they may be pulled through what they hold.",
            "head 12",
        ),
        S(
            "pack",
            "of {pack:count}",
            "How many come in a pack.",
            "pack of 10",
            default="pack of 1",
            reason="",
        ),
        price("pack|each", "price 6.50 GBP per pack"),
    ),
)

LINING = S(
    "lining",
    "{name:new}",
    "What a surface is made of.",
    "lining plasterboard-on-studs {",
    many=True,
    block=(
        LIKE,
        CALLED,
        S(
            "absorbs",
            "{alphas:absorption+}",
            f"Absorption coefficients {OCTAVES_HELP}.",
            "absorbs 0.10, 0.08, 0.05, 0.03, 0.03, 0.03",
            required=True,
        ),
        S("source", "{source:text}", "Where the coefficients are from.", 'source "handbook table"', required=True),
        S(
            "thickness",
            "{thickness:distance}",
            "What a screw must pass before it meets the structure.",
            "thickness 12.5",
            default="thickness 0 mm",
            reason="",
        ),
        S(
            "scatters",
            "{share:share}",
            "What share of the sound it sends back in all directions, for the check by rays; left out, it follows "
            "from what the surface is.",
            "scatters 30 %",
        ),
        S(
            "carries",
            "{carries:nothing|panels}",
            "Whether panels may hang from the lining alone.",
            "carries nothing",
            default="carries nothing",
            reason="",
        ),
    ),
)

SEATING = S(
    "seating",
    "{name:new}",
    "People or seats, by the absorption of one.",
    "seating seated-reader {",
    many=True,
    block=(
        LIKE,
        CALLED,
        S(
            "absorbs",
            "{areas:absorption_area+}",
            f"Absorption area of one, {OCTAVES_HELP}.",
            "absorbs 0.12 m2, 0.25 m2, 0.45 m2, 0.6 m2, 0.7 m2, 0.75 m2",
            required=True,
        ),
        S("source", "{source:text}", "Where the areas are from.", 'source "handbook table"', required=True),
    ),
)

SHOP = S(
    "shop",
    "",
    "The shop's own figures for cutting and pricing.",
    "shop {",
    block=(
        S(
            "kerf",
            "{kerf:distance}",
            "What the blade takes.",
            "kerf 3.2",
            default="kerf 3.2 mm",
            reason="a full-width circular blade",
        ),
        S(
            "trim",
            "{trim:distance}",
            "Cut off each edge of a sheet first.",
            "trim 5",
            default="trim 0 mm",
            reason="sheets are taken as square and clean at the edge",
        ),
        S(
            "keep-offcuts",
            "from {size:size2}",
            "The least rest that goes back into the rack.",
            "keep-offcuts from 300 x 100",
            default="keep-offcuts from 300 mm x 100 mm",
            reason="smaller rests are seldom used",
        ),
        S(
            "first-cut",
            "{first:rip|either}",
            "How a sheet is divided first: along its length, or whichever way is found; never at the price of a sheet.",
            "first-cut rip",
            default="first-cut either",
            reason="",
        ),
        S(
            "aim",
            "{aim:fewest-settings|largest-offcut}",
            "What layouts aim at once no cheaper ones are found.",
            "aim largest-offcut",
            default="aim fewest-settings",
            reason="a setting of the saw takes longer than a cut",
        ),
        S(
            "spare",
            "{share:share}",
            "Bought beyond need, for mistakes and repairs.",
            "spare 10 % of cloth",
            clauses=(Clause("of {what:cloth|hardware}"),),
            many=True,
        ),
        S("labour", "{rate:money} per {per:h}", "One hour of one person.", "labour 34 GBP per h"),
        S(
            "making",
            "{hours:hours} per panel",
            "Shop time for one panel.",
            "making 1.4 h per panel",
            default="making 1.4 h per panel",
            reason="a small shop making a series",
        ),
        S(
            "hanging",
            "{hours:hours} per panel",
            "Site time for one panel, all hands together.",
            "hanging 1.2 h per panel",
            default="hanging 1.2 h per panel",
            reason="two people, a cloud or a wall panel",
        ),
        S("markup", "{share:share}", "Put on cost.", "markup 25 %", default="markup 0 %", reason="prices at cost"),
        *SHOP_MONEY,
        S("tax", "{share:share}", "Put on the price.", "tax 20 %", default="tax 0 %", reason="prices before tax"),
    ),
)

STOCK = (SHEET, BATT, CLOTH, TIMBER, HARDWARE, LINING, SEATING)

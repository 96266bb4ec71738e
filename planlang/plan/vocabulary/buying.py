"""Where goods come from and what work costs: suppliers, what is bought where, own offcuts, crews and steps of work."""

from planlang.plan.vocabulary.declare import Clause
from planlang.plan.vocabulary.declare import StatementKind as S

ALSO_SOLD = S(
    "also-sold",
    "{size:size2} [at {price:money} per {per:sheet}]",
    "Another size that the same sheet is sold in, length x width, with its own price. The cheapest mix is taken.",
    "also-sold 1525 x 1525 at 37 GBP per sheet",
    many=True,
)

ROLL = S(
    "roll",
    "of {roll:length}",
    "How much is on a whole roll, where it is sold by the roll.",
    "roll of 25000",
)

OFFCUTS = S(
    "offcuts",
    "{count:count} of {stock:ref}",
    "Pieces of a sheet that lie on the shop's own shelf, length along the grain first. They are used before a sheet is "
    "bought, and trimmed like one.",
    "offcuts 2 of birch-ply-12, 1180 x 560",
    clauses=(Clause("{size:size2}", "Length x width.", required=True),),
    many=True,
)

SELLS = S(
    "sells",
    "{stock:ref}",
    "One line of the price list. Without a price it is listed as not priced; it is never taken as free.",
    "sells birch-ply-12, at 44 GBP per sheet",
    clauses=(
        Clause("at {price:money} per {per:sheet|pack|roll|m|each|stick}", "The price, before tax."),
        Clause("{size:size2}", "Of a sheet in another size, length x width."),
        Clause("pack of {pack:count}", "How many come in this supplier's pack."),
        Clause("roll of {roll:length}", "How much is on this supplier's roll."),
        Clause("as of {date:date}", "The day of this price, where it isn't that of the list."),
    ),
    many=True,
)

SUPPLIER = S(
    "supplier",
    "{name:new}",
    "Who sells what, at which price. Where a supplier has a price for a good, the good's own price no longer counts.",
    "supplier northgate {",
    many=True,
    block=(
        S("called", "{words:text}", "What the supplier is called on an order.", 'called "Northgate Boards"'),
        S("prices", "of {date:date}", "The day of the price list.", "prices of 2026-11-02", required=True),
        S(
            "freight",
            "{amount:money} an order",
            "What the supplier takes for bringing one order.",
            "freight 45 GBP an order, free from 500 GBP",
            clauses=(Clause("free from {enough:money}", "Goods, before tax, for which nothing is taken."),),
        ),
        S(
            "tax",
            "{share:share} {how:reclaimed|borne}",
            "Tax on the supplier's bill, freight and all. Reclaimed: it is on the bill but no cost of the job; borne: "
            "it is a cost.",
            "tax 20 % reclaimed",
        ),
        SELLS,
    ),
)

BUYING = S(
    "buying",
    "",
    "What is bought from whom.",
    "buying {",
    block=(
        S(
            "from",
            "{rule:least}",
            "`least`: whatever makes goods, freight and borne tax cheapest together. A supplier's name: all that this "
            "supplier sells; what is left from whom it is cheapest.",
            "from least",
            other_forms=("{supplier:ref}",),
            default="from least",
            reason="",
        ),
        S(
            "take",
            "{stock:ref} from {supplier:ref}",
            "One good from one supplier, cheapest or not.",
            "take quick-link-4 from northgate",
            many=True,
        ),
    ),
)

SHOP_MONEY = (
    S(
        "crew",
        "{name:new} at {rate:money} per {per:h}",
        "Who works, and what one hour of one of them costs.",
        "crew fitters at 31 GBP per h, 2 hands",
        clauses=(Clause("{hands:count} hands", "How many of them work together.", default="1 hands", reason=""),),
        many=True,
    ),
    S(
        "work",
        "{what:text} {hours:hours} per {per:panel|part|sheet|hang-point|job} by {crew:ref}",
        "One step of the work and how long the crew takes for it. Steps stand in the place of `making` and `hanging`.",
        'work "frames" 0.5 h per panel by joiner',
        many=True,
    ),
    S(
        "margin",
        "{share:share}",
        "The share of the price before tax that isn't cost; in the place of `markup`, which is a share of the cost.",
        "margin 20 %",
    ),
)

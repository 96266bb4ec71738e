"""The vocabulary of a plan: every statement, declared once."""

from planlang.plan.vocabulary.arrays import ARRAY
from planlang.plan.vocabulary.buying import BUYING, OFFCUTS, SUPPLIER
from planlang.plan.vocabulary.changes import OPTION, REQUIRE, SURVEY
from planlang.plan.vocabulary.declare import Clause
from planlang.plan.vocabulary.declare import StatementKind as S
from planlang.plan.vocabulary.panels import PANEL
from planlang.plan.vocabulary.rooms import ROOM, USE_OF_ROOM
from planlang.plan.vocabulary.safety import EVIDENCE, SAFETY
from planlang.plan.vocabulary.stated import PHASE, REGION, RULE
from planlang.plan.vocabulary.stock import SHOP, STOCK

JOB = S(
    "job",
    "",
    "Who it is for, and how the book is written.",
    "job {",
    block=(
        S(
            "client",
            "{text:text}",
            "For whom.",
            'client "A. Client"',
            default='client "not stated"',
            reason="the plan names none",
        ),
        S(
            "site",
            "{text:text}",
            "Where.",
            'site "12 Example Street"',
            default='site "not stated"',
            reason="the plan names none",
        ),
        S(
            "issue",
            "{letter:new} of {date:date}",
            "The issue of this plan; it stands on every page.",
            "issue C of 2026-11-25",
            required=True,
        ),
        S("money", "{currency:currency}", "The currency of the price.", "money GBP", required=True),
        S("tape", "to {step:length}", "The finest mark that lengths are printed to.", "tape to 1 mm"),
        S("paper", "{paper:A4|Letter}", "What the book is printed on.", "paper A4"),
    ),
)

PLAN = S("plan", "{title:text}", "The title of the plan.", 'plan "Reading room, village library"')
NOTE = S("note", "{text:text}", "A remark for the cover of the job book.", 'note "All figures are invented."')
UNITS = S(
    "units",
    "{units:mm|cm|m|in|ft-in}",
    "The unit of bare lengths in this file. In the plan's own file also the unit of the job book.",
    "units mm",
)
USE = S(
    "use",
    "{path:text}",
    "Brings in another file; the path starts from this one.",
    'use "../shop/stock.plan"',
    many=True,
)
FIGURE = S("figure", "{name:new} {value:quantity}", "A figure with a name.", "figure margin 150 mm", many=True)

FILE = S(
    "a plan file",
    help="What may stand outside all blocks.",
    block=(
        *(
            PLAN,
            NOTE,
            UNITS,
            USE,
            FIGURE,
            JOB,
            SHOP,
            *STOCK,
            SUPPLIER,
            BUYING,
            OFFCUTS,
            PANEL,
            ROOM,
            USE_OF_ROOM,
            ARRAY,
        ),
        *(REQUIRE, OPTION, SURVEY, PHASE, REGION, RULE, SAFETY, EVIDENCE),
    ),
)


def homes_of(word: str) -> tuple[str, ...]:
    """Where a statement with a word may stand: 'outside all blocks', 'in `sheet`, `batt`'."""
    blocks = list(FILE.block or ())
    for kind in blocks:
        blocks += kind.block or ()
    inside = dict.fromkeys(f"`{kind.word}`" for kind in blocks if word in kind.by_word)
    found = ["outside all blocks"] if word in FILE.by_word else []
    return (*found, f"in {', '.join(inside)}") if inside else tuple(found)


__all__ = ["FILE", "Clause", "S", "homes_of"]

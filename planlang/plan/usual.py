"""What is usual where a plan says nothing, each with its source: clear distances by kind of thing, ends of rails.

A plan may set another distance for one thing (`keep 100 clear`) or for an array (`keep 100 clear of luminaires`). What
a local code, a maker's label or an authority asks for comes first.
"""

from fractions import Fraction

from planlang.syntax.record import record

PRACTICE = "common practice, no source"


@record
class Usual:
    """The usual clear distance from one kind of thing, mm; why, and from which source."""

    distance: Fraction
    why: str


USUAL: dict[str, Usual] = {
    "door": Usual(Fraction(50), f"room for the frame and the handle ({PRACTICE})"),
    "window": Usual(Fraction(50), f"room for the trim, and to open and clean it ({PRACTICE})"),
    "rooflight": Usual(Fraction(50), f"room for the trim, and to open and clean it ({PRACTICE})"),
    "luminaire": Usual(
        Fraction(75), "heat: as insulation from a recessed luminaire (NEC 410.116, 3 in, from memory); its label rules"
    ),
    "vent": Usual(Fraction(600), f"so that the air gets out and doesn't streak the cloth ({PRACTICE})"),
    "sprinkler": Usual(
        Fraction(610),
        "most that the three-times rule for obstructions asks (NFPA 13, 24 in, from memory); "
        "ask the sprinkler contractor",
    ),
    "detector": Usual(Fraction(600), f"so that smoke reaches it ({PRACTICE}); ask the alarm contractor"),
    "exit-sign": Usual(Fraction(150), f"so that it is seen from afar ({PRACTICE}); ask the fire authority"),
    "speaker": Usual(Fraction(100), f"so that it is heard and can be taken out ({PRACTICE})"),
    "socket": Usual(Fraction(50), f"so that it can be reached and is not buried ({PRACTICE})"),
    "beam": Usual(Fraction(25), f"room to lift a panel on and off beside it ({PRACTICE})"),
    "radiator": Usual(Fraction(300), f"heat, and air along the wall ({PRACTICE})"),
    "trim": Usual(Fraction(10), f"a line of shadow, and room for crooked walls ({PRACTICE})"),
}

FEATURE_KINDS = tuple(USUAL)
SOLIDS = ("column", "platform", "soffit")
PLURALS = {f"{kind}s": kind for kind in FEATURE_KINDS}
WARN_BELOW_USUAL = ("luminaire", "sprinkler", "detector")

TOOL_ROOM = Fraction(50)
"""mm between a surface and a panel's back, for fingers with a small spanner on a link. Common practice, no source."""

END_DISTANCE_IN_SHANKS = 10
END_DISTANCE_WORDS = (
    "ten shanks to the end, for a screw that is pulled along its axis (EN 1995-1-1:2004 table 8.6, from memory)"
)
OVERHANG = END_DISTANCE_IN_SHANKS * Fraction(6)  # mm, past the last member

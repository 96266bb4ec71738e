"""The pages of what the workshop engine says of membranes, corner traps and baffles."""

from planlang.geometry.checks.pages import CORNER_TRAPS, STUDS
from planlang.syntax.pages import Page

BRACES = "braces at mid-length, 60 wide, set back 6 from the front\n"
NO_CLOTH = (("front serge, wrapped 50\n", ""), (BRACES, "back-board ply\n  plate ply\n"))
MEMBRANE = (
    ("absorber framed", "absorber membrane"),
    ("face 600 x 1200\n  depth 75", "face 300 x 600\n  depth 124"),
    *NO_CLOTH,
)
BAFFLE = (
    ("absorber framed", "baffle 50 thick"),
    ("face 600 x 1200\n  depth 75", "face 300 x 1200"),
    (BRACES, ""),
    ("eyes 4 of eye", "eyes 2 of eye"),
)
TRAPS = (
    ("lining walls, floor plaster", STUDS),
    ("place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600",
     "place row of 2, gap 100, centred across, lowest edge at 2600"),
    ("", CORNER_TRAPS),
)  # fmt: skip

FURTHER_PAGES = {
    "batt-at-plate": Page(
        "A batt that keeps a plate from swinging",
        "The plate of a membrane absorber swings on the air behind it. A batt in that air takes sound up, but it may "
        "not "
        "touch the plate: 10 mm of air have to stay.",
        given=MEMBRANE,
        wrong=(("depth 124", "depth 82"),),
    ),
    "filling-too-small": Page(
        "A corner trap larger than the batts that fill it",
        "The pieces that fill a corner trap are laid whole, each as large as a former. Joined ones would fall apart.",
        given=TRAPS,
        wrong=(("corner 300 x 1200", "corner 700 x 1200"),),
    ),
    "nap-crossed": Page(
        "One cloth with its nap two ways",
        "A cloth with a nap looks darker from one side. Where arrays show it running up and running across, they "
        "look as "
        "if they were of two colours. `railroaded` lays the roll's length across a panel. This is a warning.",
        given=(*TRAPS, ("mass 300 g/m2", "mass 300 g/m2\n  nap along"), ("wrapped 40", "wrapped 40, railroaded")),
        wrong=(("wrapped 40, railroaded", "wrapped 40"),),
    ),
    "baffle-too-thin": Page(
        "A baffle thinner than its batts",
        "A baffle shows both faces: batts thicker than its frame press the cloth out on both.",
        given=BAFFLE,
        wrong=(("baffle 50 thick", "baffle 40 thick"),),
    ),
}

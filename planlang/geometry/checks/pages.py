"""The pages of what is found where panels meet what is allowed, what is forbidden, and each other."""

from planlang.syntax.pages import Page

PLACE = "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600"
DOOR = "door d1 on east wall at 500, 900 x 2000, plaster"

CHECK_PAGES = {
    "fixing-not-allowed": Page(
        "A fixing that the surface does not allow",
        "Somebody has said what may go into this surface (`allows`), and what the panels are fixed by is not among it. "
        "Where there are rails, their screws go into the surface; otherwise the eyes, screws or plugs do.",
        given=((DOOR, f'{DOOR}\n  allows ceiling screws, plugs, says "owner"'),),
        wrong=((PLACE, PLACE),),
        right=(("allows ceiling screws, plugs", "allows ceiling screws, eyes"),),
    ),
    "heat-in-zone": Page(
        "A thing that gets hot where no heat may be",
        "Somebody has said that there may be no heat in this zone, and a luminaire or a radiator stands in it.",
        given=((DOOR, f"{DOOR}\n  luminaire L1 on ceiling centred at 300, 300, 90 across"),),
        wrong=((DOOR, f'{DOOR}\n  zone flue on ceiling from 0, 0 to 400, 400, no heat, says "chimney sweep"'),),
        right=((DOOR, f'{DOOR}\n  zone flue on ceiling from 400, 0 to 800, 400, no heat, says "chimney sweep"'),),
    ),
}

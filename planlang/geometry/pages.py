"""The pages of what geometry finds: the room, where panels lie, what their hang points meet."""

from planlang.geometry.checks.pages import CHECK_PAGES
from planlang.geometry.solid_pages import SOLID_PAGES
from planlang.syntax.pages import Page

PLACE = "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600"
JOISTS = "plaster over joists 45 x 145 of spruce at 200 centres, first at 100, running across"
WALLS = "lining walls, floor plaster"
FIX = "fix lag-eye into joists"
FLAT = "flat ceiling at 2800"
DOOR = "door d1 on east wall at 500, 900 x 2000, plaster"
EYES = "eyes 4 of eye, inset 100 from the ends"
LIGHTS = (DOOR, f"{DOOR}\n  luminaire L1, L2 on ceiling centred at 1000, 4000, up 2000, 90 across")
IN_BAY = (PLACE, "place one in each bay between L1..L2, lowest edge at 1600")
RAILS = (
    ("timber spruce {", "timber spruce {\n  section 63 x 63\n  stick 4800\n  price 9 GBP per stick"),
    (FIX, "fix lag-eye into rails of spruce held by lag-eye"),
)
VOICES = (
    "",
    "use-of-room {\n  listener desk at 1000, 2000, height 1200\n  talker voice at 4000, 2000, height 1200\n}",
)


def more_clouds(place: str) -> tuple[str, str]:
    """A second array like the first one, placed in another way."""
    text = "array more-clouds, mark M {\n  panel cloud\n  on ceiling\n  PLACE\n  turned long side up\n"
    return "", text.replace("PLACE", place) + "  hang from eyes on eye, drop 100\n  fix lag-eye into joists\n}"


PAGES = {
    **CHECK_PAGES,
    **SOLID_PAGES,
    # --- the room -------------------------------------------------------------------------------------------
    "room-without-size": Page(
        "A floor without a size",
        "Both sides of the floor must be more than nothing.",
        guard="a size of nothing or less is already reported as `out-of-range`",
    ),
    "room-without-ceiling": Page(
        "A room without a ceiling",
        "A room needs a flat or a slope, or it has no volume.",
        guard="a `ceiling` without a plane is already reported as `statement-missing`",
    ),
    "slope-falls": Page(
        "A slope that falls from its foot",
        "A slope is stated from the wall at which it is lowest.",
        guard="a pitch below the level is already reported as `out-of-range`",
    ),
    "ceiling-meets-floor": Page(
        "A ceiling that comes down to the floor",
        "Where the ceiling touches the floor, or dips below it, the room has no wall to close it. State the height at "
        "which the slope meets its wall, as measured.",
        given=((WALLS, "lining walls, floor, south-slope plaster"),),
        wrong=((FLAT, f"{FLAT}\n    slope south-slope from south wall at 0, pitch 60 deg"),),
        right=((FLAT, f"{FLAT}\n    slope south-slope from south wall at 1000, pitch 60 deg"),),
    ),
    "ceiling-plane-hidden": Page(
        "A ceiling plane that nobody would see",
        "At every point of the room the lowest of the planes is the ceiling. This plane is nowhere the lowest; "
        "mostly a height or a pitch is wrong.",
        wrong=((FLAT, f"{FLAT}\n    flat attic at 3200"),),
    ),
    "surface-unknown": Page(
        "A surface that the room does not have",
        "The surfaces of a room are its floor, its walls, the planes of its ceiling, and the faces of what stands in "
        "it, as far as they are seen: where a beam or a platform meets a wall it has no face.",
        given=((DOOR, f"{DOOR}\n  beam B1 on ceiling at 0, up 3000, 5000 x 150, 200 deep"),),
        wrong=((DOOR, f"{DOOR}\n  trim T1 on B1 west face at 0, up 0, 50 x 50"),),
        right=((DOOR, f"{DOOR}\n  trim T1 on B1 south face at 0, up 0, 50 x 50"),),
    ),
    "feature-off-surface": Page(
        "A door, window or light that sticks out of its surface",
        "By its stated position and size a part of it lies beyond the edge of its wall or ceiling. Positions run from "
        "the left corner as you face a wall.",
        wrong=((DOOR, "door d1 on east wall at 3500, 900 x 2000, plaster"),),
    ),
    "features-overlap": Page(
        "Two things in one place",
        "Two doors, windows, lights or vents of one surface overlap. One position or size is wrong.",
        wrong=((DOOR, f"{DOOR}\n  window w1 on east wall at 1200, 800 x 900, sill 900, plaster"),),
        right=((DOOR, f"{DOOR}\n  window w1 on east wall at 1600, 800 x 900, sill 900, plaster"),),
    ),
    # --- placement ------------------------------------------------------------------------------------------
    "nothing-to-place": Page(
        "An array without a panel",
        "An array places at least one panel.",
        guard="a count below one is already reported as `out-of-range`",
    ),
    "row-too-wide": Page(
        "A row of panels wider than its surface",
        "With equal gaps the panels share what is left of the width; here nothing is left.",
        wrong=((PLACE, "place row of 9, equal gaps, lowest edge at 1600"),),
        right=((PLACE, "place row of 3, equal gaps, lowest edge at 1600"),),
    ),
    "bays-too-few": Page(
        "A bay with one side only",
        "A bay lies between two things, so at least two must be named.",
        guard="fewer than two names are already reported as `count-differs`",
    ),
    "bay-feature-unknown": Page(
        "A bay between things that are not there",
        "Bays are named by the doors, windows, lights or vents that they lie between.",
        guard="a thing that is not in the room is already reported as `unknown-name`",
    ),
    "bay-feature-elsewhere": Page(
        "A bay between things on another surface",
        "The things that a bay lies between must be on the surface of the array.",
        guard="a thing that is not on the array's surface is already reported as `unknown-name`",
    ),
    "bays-out-of-order": Page(
        "Bays named out of order",
        "The things that bays lie between are named as they follow one another across, from either end.",
        given=((DOOR, f"{DOOR}\n  luminaire L1..L3 on ceiling centred at 1000, 2500, 4000, up 2000, 90 across"),),
        wrong=((PLACE, "place one in each bay between L1, L3, L2, lowest edge at 1600"),),
        right=((PLACE, "place one in each bay between L1, L2, L3, lowest edge at 1600"),),
    ),
    "bay-without-width": Page(
        "Two things with no bay between them",
        "The things overlap or touch as seen across, so nothing fits between them.",
        given=(IN_BAY,),
        wrong=((DOOR, f"{DOOR}\n  vent L1, L2 on ceiling centred at 2000, 500, 2200, 3500, 300 x 300"),),
        right=((DOOR, f"{DOOR}\n  vent L1, L2 on ceiling centred at 1000, 500, 4000, 3500, 300 x 300"),),
    ),
    "bay-too-narrow": Page(
        "A bay that is too narrow for the panel",
        "The clear width between the two things is less than the panel, or the panels with their gaps, need. The "
        "message says by how much.",
        given=(LIGHTS,),
        wrong=((PLACE, "place five in each bay between L1..L2, gap 100, lowest edge at 1600"),),
        right=((PLACE, "place four in each bay between L1..L2, gap 100, lowest edge at 1600"),),
    ),
    "array-not-before": Page(
        "An array that is placed by a later one",
        "An array that lies beside the panels of another one, or mirrors them, comes after that one in the plan.",
        given=(more_clouds("place grid 1 across by 1 up, left edge at 300, lowest edge at 1600"),),
        wrong=((PLACE, "place one right-of each of more-clouds, gap 700"),),
    ),
    "array-elsewhere": Page(
        "An array beside one on another surface",
        "What lies beside the panels of another array lies on the same surface. On a surface across the room an array "
        "can be `mirrored` from another.",
        given=(
            (WALLS, f"lining walls plaster\n  lining floor {JOISTS}"),
            more_clouds("place one above each of clouds, gap 0"),
        ),
        wrong=(("on ceiling place one", "on floor\n  place one"),),
    ),
    "nothing-fits": Page(
        "A surface without room for a single panel",
        "As many panels as fit are none: the panel is too large for what the margins, the clear distances and the "
        "zones leave of the surface.",
        wrong=((PLACE, "place as many as fit, gap 200, margin 1500"),),
        right=((PLACE, "place as many as fit, gap 200, margin 1300"),),
    ),
    "cover-too-much": Page(
        "A share of a surface for which there is no room",
        "The share is that of the panels' faces in the area of the surface. With the stated gap between them and to "
        "the edges, and clear of what is there, so many do not fit.",
        wrong=((PLACE, "place to cover 90 %, gap 100"),),
        right=((PLACE, "place to cover 5 %, gap 100"),),
    ),
    "place-unknown": Page(
        "A reflection between people who are not there",
        "First reflections are those from a `talker` to a `listener` of `use-of-room`.",
        given=(VOICES,),
        wrong=((PLACE, "place at first reflections from voice to chair"),),
        right=((PLACE, "place at first reflections from voice to desk"),),
    ),
    "reflection-misses": Page(
        "A surface in which nobody is reflected",
        "The mirror image of the talker, as the listener would see it, lies outside of the surface; or one of the two "
        "is behind the face of the panel.",
        given=(VOICES, (PLACE, "place at first reflections from voice to desk")),
        wrong=(("at 4000, 2000, height 1200", "at 4000, 2000, height 2700"),),
    ),
    "reflection-not-covered": Page(
        "A panel too small for its reflection",
        "For ears anywhere in the stated area round the listener, the reflections spread over more than the panel.",
        given=(VOICES,),
        wrong=((PLACE, "place at first reflections from voice to desk, over 2000 x 400 round each listener"),),
        right=((PLACE, "place at first reflections from voice to desk, over 600 x 400 round each listener"),),
    ),
    # --- where panels lie -----------------------------------------------------------------------------------
    "panel-off-surface": Page(
        "A panel that sticks out of its surface",
        "The rule of `place` puts a part of a panel beyond the edge. The message names the worst panel, and how far "
        "the array would have to move.",
        wrong=((PLACE, "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 3000"),),
    ),
    "panel-near-edge": Page(
        "A panel too near to the edge of its surface",
        "The array says `keep … clear of edges`, and a panel comes nearer.",
        wrong=((FIX, f"{FIX}\n  keep 1500 clear of edges"),),
        right=((FIX, f"{FIX}\n  keep 1000 clear of edges"),),
    ),
    "panels-overlap": Page(
        "Two panels in one place",
        "Panels of one array, or of two arrays on one surface, overlap. State a gap, or move one of the arrays.",
        given=(
            (
                "",
                "array more-clouds, mark M {\n  panel cloud\n  on ceiling\n"
                "  place grid 1 across by 1 up, left edge at 300, lowest edge at 1600\n  turned long side up\n"
                "  hang from eyes on eye, drop 100\n  fix lag-eye into joists\n}",
            ),
        ),
        wrong=(("left edge at 300", "left edge at 1500"),),
    ),
    "panel-over-feature": Page(
        "A panel over a light, vent, door or window",
        "A panel would cover it. Move the array, or leave that place free.",
        wrong=((DOOR, f"{DOOR}\n  luminaire L1 on ceiling centred at 1800, 2000, 90 across"),),
        right=((DOOR, f"{DOOR}\n  luminaire L1 on ceiling centred at 2500, 2000, 90 across"),),
    ),
    "panel-near-feature": Page(
        "A panel too near to something",
        "The array says `keep … clear of …`, or the thing itself `keep … clear`, and a panel comes nearer. Where "
        "neither says anything, panels keep the distance that is usual for the kind of thing; the message says why, "
        "and the job book lists it among the assumptions.",
        given=((DOOR, f"{DOOR}\n  luminaire L1 on ceiling centred at 2500, 2000, 90 across"),),
        wrong=((FIX, f"{FIX}\n  keep 300 clear of luminaires"),),
        right=((FIX, f"{FIX}\n  keep 200 clear of luminaires"),),
    ),
    "point-under-feature": Page(
        "A hang point under a beam",
        "A panel may hang under a beam when its drop is more than the beam is deep. Its hang points go into what is "
        "behind the ceiling, so they lie beside the beam.",
        given=(("drop 100", "drop 300"),),
        wrong=((DOOR, f"{DOOR}\n  beam B1 on ceiling at 0, up 1650, 5000 x 100, 200 deep"),),
        right=((DOOR, f"{DOOR}\n  beam B1 on ceiling at 0, up 2100, 5000 x 100, 200 deep"),),
    ),
    "keep-below-usual": Page(
        "Less distance than is usual from a lamp, a sprinkler or a detector",
        "The plan keeps less from it than is usual for reasons of heat, water or smoke. Whoever answers for it has to "
        "agree. This is a warning.",
        given=((DOOR, f"{DOOR}\n  sprinkler S1 on ceiling centred at 1800, 3600, 60 across"),),
        wrong=((FIX, f"{FIX}\n  keep 500 clear of sprinklers"),),
        right=((FIX, f"{FIX}\n  keep 650 clear of sprinklers"),),
    ),
    "panel-in-zone": Page(
        "A panel in a zone where nothing may be covered",
        "Somebody has said that this part of the surface may not be covered, or that nothing may be done there. Ask "
        "them, or move the panels.",
        given=((DOOR, f'{DOOR}\n  zone hatch on ceiling from 1600, 1500 to 2400, 2000, no covering, says "owner"'),),
        wrong=((PLACE, PLACE.replace("lowest edge at 1600", "lowest edge at 1800")),),
        right=((PLACE, PLACE.replace("lowest edge at 1600", "lowest edge at 2000")),),
    ),
    "hole-in-zone": Page(
        "A hole or a hang point in a zone where there may be none",
        "Somebody has said that nothing may be drilled there, or that nothing may hang there. Where drilling alone is "
        "forbidden, a rail whose screws lie beside the zone may carry a panel over it.",
        given=((DOOR, f'{DOOR}\n  zone pipes on ceiling from 0, 1650 to 5000, 1750, no drilling, says "plumber"'),),
        wrong=((PLACE, PLACE),),
        right=((PLACE, PLACE.replace("lowest edge at 1600", "lowest edge at 2000")),),
    ),
    "panel-in-swing": Page(
        "A panel that a door would strike",
        "A door sweeps a quarter of a disc as it opens, and its handle needs a hand's room. Where the plan does not "
        "say how a door opens, it is taken to open into the room, hinged on either side. Say how it opens, or move "
        "the panel.",
        given=(("drop 100", "drop 800"), (FLAT, "flat ceiling at 2901"), ("centred across", "left edge at 3300")),
        wrong=((DOOR, "door d1 on east wall at 500, 900 x 2100, plaster, opens inward, hinged left"),),
        right=((DOOR, "door d1 on east wall at 500, 900 x 2100, plaster, opens outward, hinged left"),),
    ),
    "panel-through-surface": Page(
        "A panel that goes through another surface",
        "A panel has a depth, and hangs at its drop: near a slope, or near a wall that leans in, its body would meet "
        "another surface although its place on its own surface is free.",
        given=(
            (FLAT, "slope ceiling from south wall at 2310, pitch 10 deg"),
            (PLACE, "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 2800"),
        ),
        wrong=(("drop 100", "drop 700"),),
    ),
    "panel-through-members": Page(
        "A panel that would cross exposed members",
        "Joists or rafters that are seen stand out of the surface, deeper than the panel hangs below it.",
        given=(
            (JOISTS, "plaster between exposed joists 45 x 145 of spruce at 200 centres, first at 100, running across"),
        ),
        wrong=(("drop 100", "drop 120"),),
        right=(("drop 100", "drop 200"),),
    ),
    "low-headroom": Page(
        "A panel that people may hit with their heads",
        "The lowest corner of an overhead panel is less than the stated height over the floor. This is a warning: "
        "over a fixed table or a plant bed it may be wanted; then keep people from under it.",
        wrong=(("drop 100", "drop 900"),),
    ),
    # --- hanging --------------------------------------------------------------------------------------------
    "panel-without-hooks": Page(
        "A panel with nothing to hang by",
        "A panel hangs by its eyes or its cleats.",
        guard="a panel without what its array hangs it by is already reported as `clauses-disagree`",
    ),
    "eyes-not-paired": Page(
        "Eyes that are not in pairs",
        "Eyes sit in pairs, one on each side rail, two pairs at least.",
        guard="an odd count of eyes is already reported as `clauses-disagree`",
    ),
    "hooks-past-middle": Page(
        "Eyes or cleats that do not fit on the panel",
        "Measured from both ends, the two would meet or pass each other in the middle; or a line of cleats lies below "
        "the panel's lower edge.",
        wrong=((EYES, "eyes 4 of eye, inset 700 from the ends"),),
    ),
    "cleats-overhead": Page(
        "Cleats under a ceiling",
        "A cleat hooks over its partner by the panel's own weight on a wall. Overhead nothing keeps it hooked.",
        wrong=(
            (EYES, "cleats 2 of eye, 60 below the top, inset 100 from the sides"),
            ("hang from eyes on eye, drop 100", "hang on cleats"),
        ),
    ),
    "surface-without-members": Page(
        "A surface with nothing known behind it",
        "What panels are fixed into must be stated, as found on site.",
        guard="a surface without stated members is already reported as `clauses-disagree`",
    ),
    "anchor-without-shank": Page(
        "An anchor whose thickness is not stated",
        "How near to the edge of a joist an anchor may go depends on the thickness of its shank. Measure it, and state "
        "it with the hardware.",
        wrong=(("shank 6\n", ""),),
    ),
    "member-too-narrow": Page(
        "A joist, rafter or stud too narrow for the anchor",
        "An anchor needs wood on both sides: one and a half times its shank to each edge (common practice, no source).",
        wrong=(("shank 6", "shank 16"),),
    ),
    "point-misses-member": Page(
        "A hang point that misses its joist, rafter or stud",
        "Where the point is, the anchor would meet no wood, or come too near to its edge. If moving the whole array "
        "brings every point onto a member, the message says how far.",
        wrong=((PLACE, "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1650"),),
    ),
    "rail-without-span": Page(
        "A rail without a member at each end",
        "A rail runs from a member on one side of its points to a member on the other side. Beyond the last joist "
        "there is nothing to screw it to.",
        given=RAILS,
        wrong=((PLACE, "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 2800"),),
    ),
    "rail-not-stated": Page(
        "A rail that is not described",
        "A rail is cut from a timber whose section is stated.",
        guard="a rail's timber without a section is already reported as `clauses-disagree`",
    ),
    "rail-over-feature": Page(
        "A rail that would cross a light, vent or window",
        "On its way to the next member the rail would lie over it.",
        given=RAILS,
        wrong=((DOOR, f"{DOOR}\n  socket P1 on ceiling centred at 1656, 2860, 90 across, keep 10 clear"),),
        right=((DOOR, f"{DOOR}\n  socket P1 on ceiling centred at 2500, 2860, 90 across, keep 10 clear"),),
    ),
    "rail-end-short": Page(
        "A rail that ends too soon after its last screw",
        "A screw near the end of a rail may split it, and then holds nothing. Where the plan does not say how far "
        "rails end past their last member, ten shanks of the screw are taken (EN 1995-1-1:2004 table 8.6, from "
        "memory), as far as the surface goes. This is a warning: a rail that is drilled for its end screw may do.",
        given=RAILS,
        wrong=(("spruce held by lag-eye", "spruce held by lag-eye, rails end 20 past their last member"),),
        right=(("spruce held by lag-eye", "spruce held by lag-eye, rails end 80 past their last member"),),
    ),
    "rails-overlap": Page(
        "Two rails in one place",
        "Rails run to the next member beyond their points, and some way past it, so that two of them may meet. Points "
        "of one array on one line share a rail.",
        given=(
            *RAILS,
            (
                "",
                "array more-clouds, mark M {\n  panel cloud\n  on ceiling\n"
                "  place grid 1 across by 1 up, left edge at 300, lowest edge at 400\n  turned long side up\n"
                "  hang from eyes on eye, drop 100\n  fix lag-eye into rails of spruce held by lag-eye\n}",
            ),
            (PLACE, "place grid 1 across by 1 up, left edge at 300, lowest edge at 1900"),
        ),
        wrong=(("lowest edge at 1900", "lowest edge at 1640"),),
    ),
    "lining-carries": Page(
        "Panels overhead that hang from a lining alone",
        "The plan says that this lining carries panels, and nothing else holds them. That is not checked: whoever "
        "built or tested the lining has to confirm it.",
        given=(
            ("thickness 12.5", "thickness 12.5\n  carries panels"),
            ("hardware lag-eye {", "hardware anchor {\n  like eye\n  made-for solid-walls\n}\n\nhardware lag-eye {"),
        ),
        wrong=((FIX, "fix anchor into the lining"),),
    ),
    "hang-from-lining": Page(
        "Panels overhead that hang from a board alone",
        "Plasterboard and the like are not known to hold what hangs over people. Fix into the joists or rafters "
        "behind, or into a rail across them.",
        given=(("hardware lag-eye {", "hardware anchor {\n  like eye\n}\n\nhardware lag-eye {"),),
        wrong=((FIX, "fix anchor into the lining"),),
    ),
}

"""The pages of what is found where panels meet what is allowed, what is forbidden, and each other."""

from planlang.syntax.pages import Page

PLACE = "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600"
STUDS = "lining floor plaster\n  lining walls plaster over studs 45 x 95 of spruce at 400 centres, first at 300"
LAMP = "luminaire L1 on ceiling centred at 2500, 2000, 90 across, fitted recessed-ic, beam 30 deg to each side"
FIX = "fix lag-eye into joists"
HATCH = 'keep-free ladder from 1000, 1000 to 4000, 3000, heights 0 to 2600, for movement, says "owner"'
TIE = """hardware tie {
  rated 900 N, "maker's sheet T-1"
  mass 30 g
  stretch 20 mm under 500 N
  price 3 GBP per each
}"""
DOOR = "door d1 on east wall at 500, 900 x 2000, plaster"

WALL_PANELS = """hardware screw {
  mass 8 g
  shank 5
  thread 60
  price 0.20 GBP per each
}

panel board, mark B {
  absorber framed
  face 600 x 1200
  depth 75
  frame ply, ends full, sides between
  core wool
  braces at mid-length, 60 wide, set back 6 from the front
  front serge, wrapped 50
  cleats 2 of eye, 60 below the top, inset 100 from the sides
}

array boards, mark W {
  panel board
  on north wall
  place grid 1 across by 1 up, left edge at 1800, highest edge at 250
  turned long side up
  hang on cleats
  fix screw into studs, 2 each
}"""

CORNER_TRAPS = """hardware screw {
  mass 8 g
  shank 5
  thread 60
  price 0.20 GBP per each
}

panel trap, mark T {
  corner-trap triangular
  corner 300 x 1200
  boards ply
  filling wool
  front serge, wrapped 40
  cleats 2 of eye, 60 below the top, inset 400 from the sides
}

array traps, mark W {
  panel trap
  on north wall
  place grid 1 across by 1 up, left edge at 300, lowest edge at 0
  turned long side across
  hang on cleats
  fix screw into studs, 2 each
}"""

VOICES = (
    "",
    "use-of-room {\n  listener desk at 1000, 2000, height 1200\n  talker voice at 4000, 2000, height 1200\n}",
)

BATTENS = (
    ("timber spruce {", "timber spruce {\n  section 63 x 63\n  stick 4800\n  price 9 GBP per stick"),
    (FIX, "fix lag-eye into rails of spruce held by lag-eye"),
)

MIRRORED = """array west-clouds, mark M {
  panel cloud
  on ceiling
  place mirrored from clouds
  turned long side up, 10 deg anticlockwise
  hang from eyes on eye, drop 100
  fix lag-eye into rails of spruce held by lag-eye
}"""

CHECK_PAGES = {
    "no-height-under-slope": Page(
        "A panel that follows a slope with hardly a side left",
        "Where `top … below the slope` cuts panels to the edge of the surface above them, a side shorter than 50 mm "
        "can't be joined at both ends.",
        given=(
            ("flat ceiling at 2800", "slope ceiling from south wall at 1500, pitch 30 deg"),
            ("running across", "running up"),
            ("lowest edge at 1600", "lowest edge at 1400"),
            ("ends full, sides between", "mitre joints"),
            ("eyes 4 of eye, inset 100 from the ends", "cleats 2 of eye, 60 below the top, inset 100 from the sides"),
            ("from eyes on eye, drop 100", "on cleats"),
            ("on ceiling", "on west wall"),
            ("lining walls, floor plaster", STUDS.replace("first at 300", "first at 400")),
            ("place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1400", "place at points 600, 700"),
            (FIX, "fix lag-eye into studs"),
            ("panel cloud\n  on", "panel cloud, top 60 below the slope\n  on"),
        ),
        wrong=(("place at points 600, 700", "place at points 600, 2200"),),
    ),
    "mirror-turned-alike": Page(
        "A mirrored array that isn't turned the other way",
        "Seen in a mirror, what is turned clockwise is turned anticlockwise. `mirrored from` puts the middles in their "
        "places; each array says itself how its panels are turned.",
        given=(
            (PLACE, "place at points 1200, 2000"),
            ("turned long side up", "turned long side up, 10 deg clockwise"),
            *BATTENS,
            ("", MIRRORED),
        ),
        wrong=(("10 deg anticlockwise", "10 deg clockwise"),),
    ),
    "reflection-blocked": Page(
        "A reflection that something stands in the way of",
        "The mirror image of the talker would be seen in the surface, but a column, an inner corner or a beam stands "
        "between the reflection and one of the two.",
        given=(
            VOICES,
            (PLACE, "place at first reflections from voice to desk"),
            (
                "lining walls, floor plaster",
                "lining walls, floor plaster\n  column P1 from 100, 100 to 300, 300, plaster",
            ),
        ),
        wrong=(("column P1 from 100, 100 to 300, 300", "column P1 from 2900, 1900 to 3100, 2100"),),
    ),
    "drop-out-of-hand": Page(
        "A drop too small for a hand and its tool",
        "Links and eyes are closed behind the panel: a hand has to get in between its back and the surface, with a "
        "spanner. Where a piece of hardware states its `tool-room`, less is an error; else 50 mm is usual, and less "
        "is a warning.",
        wrong=(("drop 100", "drop 45"),),
    ),
    "tilt-too-steep": Page(
        "A panel that would hang too steep",
        "A panel whose links have unequal drops hangs tilted. Up to 30 deg to its surface, which is half of the "
        "spacing of its rows of eyes, what it takes and what its links carry is reckoned; beyond it nothing is "
        "(project policy). The spacing is that on the panel's back, from its first row of eyes to its last.",
        wrong=(("drop 100", "drop 100, 501 more at the upper eyes"),),
        right=(("drop 100", "drop 100, 120 more at the upper eyes"),),
    ),
    "tilt-through-ceiling": Page(
        "A tilted panel whose higher end goes through the ceiling",
        "The drop is that of the eyes. Beyond the higher row of them the panel goes on to its end, and rises further: "
        "by the distance from eye to end x what the far row hangs more / the spacing of the rows.",
        given=(("inset 100 from the ends", "inset 300 from the ends"),),
        wrong=(("drop 100", "drop 60, 150 more at the upper eyes"),),
        right=(("drop 100", "drop 80, 150 more at the upper eyes"),),
    ),
    "panel-in-light": Page(
        "A panel in the light of a luminaire",
        "Where the plan says how wide a luminaire's beam is, its light widens on the way down. A panel whose front "
        "comes down beside it may stand in that light: it throws a shadow, and it gets warm. So may a panel on another "
        "surface, a slope beside a collar, where it stands out further from its surface than the luminaire. What only "
        "falls on the front of a panel on a wall is no matter of this. This is a warning.",
        given=((DOOR, f"{DOOR}\n  {LAMP}"),),
        wrong=(("beam 30 deg", "beam 60 deg"),),
    ),
    "second-anchor-near-zone": Page(
        "An anchor of a second support that may come into a zone",
        "Where each anchor of a second support goes is found on site: no further from the panel's hang points than the "
        "plan says, or than its tie reaches. Where the plan says neither, a tie is taken to lean 45 degrees at most. "
        "Some place within that reach lies in a zone where there may be no holes. This is a warning: keep the anchors "
        "nearer, or move the panels.",
        given=(
            (DOOR, f'{DOOR}\n  zone pipes on ceiling from 0, 1400 to 5000, 1650, no drilling, says "plumber"'),
            ("hardware lag-eye {", f"{TIE}\n\nhardware lag-eye {{"),
            (FIX, f"{FIX}\n  second-support 2 of tie from eye, to lag-eye, slack 5, anchors within 40"),
            ("bolts 2 of 5", "bolts 4 of 5"),
        ),
        wrong=(("anchors within 40", "anchors within 80"),),
    ),
    "made-panel-changed": Page(
        "A panel that is built, and that the plan would now make otherwise",
        "Panels that are `made` do not change any more. Their size as built is stated with them; where the type of the "
        "panel, or the bay that it is cut to, would now give another size, something else has to give way.",
        wrong=((FIX, f"made K1 on 2026-12-01, 600 x 1200 x 80\n  {FIX}"),),
        right=((FIX, f"made K1 on 2026-12-01, 600 x 1200 x 75\n  {FIX}"),),
    ),
    "made-panel-gone": Page(
        "A panel that is built, and has no place any more",
        "The rule that places the array gives fewer panels than are built.",
        wrong=((FIX, f"made K2, K3 on 2026-12-01\n  {FIX}"),),
        right=((FIX, f"made K1, K2 on 2026-12-01\n  {FIX}"),),
    ),
    "panel-through-panel": Page(
        "Two panels in one place where surfaces meet",
        "A panel hangs at its drop and has its depth, and so may a panel on the wall beside it. Where both are near "
        "the edge that their surfaces share, one may stand in the other.",
        given=(
            ("lining walls, floor plaster", STUDS),
            (PLACE, "place row of 2, gap 100, centred across, lowest edge at 2800"),
            ("", WALL_PANELS),
        ),
        wrong=(("drop 100", "drop 200"),),
        right=(("drop 100", "drop 160"),),
    ),
    "fixing-not-allowed": Page(
        "A fixing that the surface does not allow",
        "Somebody has said what may go into this surface (`allows`), and what the panels are fixed by is not among it. "
        "Where there are rails, their screws go into the surface; otherwise the eyes, screws or plugs do.",
        given=((DOOR, f'{DOOR}\n  allows ceiling screws, plugs, says "owner"'),),
        wrong=((PLACE, PLACE),),
        right=(("allows ceiling screws, plugs", "allows ceiling screws, eyes"),),
    ),
    "trap-off-corner": Page(
        "A corner trap that is in no corner",
        "A corner trap lies on two surfaces at right angles, its length along the corner where they meet. An edge of "
        "the surface that it hangs on has to be one of its long sides.",
        given=(
            ("lining walls, floor plaster", STUDS),
            (PLACE, "place row of 2, gap 100, centred across, lowest edge at 2600"),
            ("", CORNER_TRAPS),
        ),
        wrong=(("lowest edge at 0", "lowest edge at 300"),),
    ),
    "baffle-not-level": Page(
        "A baffle on a wall or under a slope",
        "A baffle hangs upright, so that its body lies below its hang points only where the ceiling is flat.",
        given=(
            ("absorber framed", "baffle 50 thick"),
            ("face 600 x 1200\n  depth 75", "face 300 x 1200"),
            ("braces at mid-length, 60 wide, set back 6 from the front\n", ""),
            ("eyes 4 of eye", "eyes 2 of eye"),
            (PLACE, "place grid 1 across by 1 up, left edge at 2075, lowest edge at 600"),
        ),
        wrong=(("flat ceiling at 2800", "slope ceiling from south wall at 2600, pitch 5 deg"),),
    ),
    "panel-in-space": Page(
        "A panel in a part of the room that is kept free",
        "Somebody keeps a part of the room free (`keep-free`): something moves there, people look through it, or it "
        "gets hot. A panel, at its drop and with its depth, reaches into it.",
        wrong=((DOOR, f"{DOOR}\n  {HATCH.replace('2600', '2700')}"),),
        right=((DOOR, f"{DOOR}\n  {HATCH}"),),
    ),
    "heat-in-zone": Page(
        "A thing that gets hot where no heat may be",
        "Somebody has said that there may be no heat in this zone, and a luminaire or a radiator stands in it.",
        given=((DOOR, f"{DOOR}\n  luminaire L1 on ceiling centred at 300, 300, 90 across"),),
        wrong=((DOOR, f'{DOOR}\n  zone flue on ceiling from 0, 0 to 400, 400, no heat, says "chimney sweep"'),),
        right=((DOOR, f'{DOOR}\n  zone flue on ceiling from 400, 0 to 800, 400, no heat, says "chimney sweep"'),),
    ),
}

"""The pages of what the load engine finds: ratings, fixings, timber, and when somebody qualified has to look."""

from planlang.hardware.pages_wood import WOOD_PAGES
from planlang.syntax.pages import Page

EYE_RATED = 'rated 1000 N, "maker\'s sheet E-1"\n'
PLACE = "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600"
EYES = "eyes 4 of eye, inset 100 from the ends"
HANG = "hang from eyes on eye, drop 100"
FIX = "fix lag-eye into joists"
FLAT = "flat ceiling at 2800"
JOISTS = "joists 45 x 145 of spruce at 200 centres, first at 100, running across"
GRAVITY = 'specific-gravity 0.42, "grade stamp seen on site"'
WALLS = "lining walls, floor plaster"
CLOSER = "588 centres, first at 206"
STUDS = "studs 45 x 95 of spruce at 400 centres, first at 300"
ON_WALL = (
    ("on ceiling", "on south wall"),
    (PLACE, "place grid 2 across by 1 up, gap 600, left edge at 200, lowest edge at 600"),
)
ON_CLEATS = (
    *ON_WALL,
    (WALLS, f"lining walls plaster over {STUDS}\n  lining floor plaster"),
    (EYES, "cleats 2 of eye, 60 below the top, inset 100 from the sides"),
    (HANG, "hang on cleats"),
    (FIX, "fix screw into studs, 2 each"),
    (
        "hardware lag-eye {",
        "hardware screw {\n  mass 8 g\n  shank 5\n  thread 60\n  price 0.20 GBP per each\n}\n\nhardware lag-eye {",
    ),
)
BOLTS = "bolts 2 of 5"
STRETCH = "stretch 30 under 1000 N"
TIED = (
    (
        "hardware lag-eye {",
        f'hardware tie {{\n  rated 900 N, "maker\'s sheet T-1"\n  mass 30 g\n  {STRETCH}\n'
        "  price 3 GBP per each\n}\n\nhardware lag-eye {",
    ),
    (FIX, f"{FIX}\n  second-support 2 of tie from eye, to lag-eye, slack 5"),
)
IN_LINING = (
    *ON_CLEATS,
    ("lowest edge at 600", "lowest edge at 1550"),
    ("thickness 12.5", "thickness 200\n  carries panels"),
    ("fix screw into studs, 2 each", "fix eye into the lining, 2 each"),
)
WIDE_JOISTS = ("joists 45 x 145", "joists 63 x 145")
DENSE = (GRAVITY, f'{GRAVITY}\n  characteristic-density 350 kg/m3, "grade stamp seen on site"')
BY_EUROCODE = (("", "safety {\n  timber-rules ec5\n}"), WIDE_JOISTS, DENSE)
UP_SLOPE = (
    (FLAT, "slope ceiling from south wall at 2200, pitch 20 deg"),
    (JOISTS, "rafters 45 x 145 of spruce at 588 centres, first at 206, running up"),
    (PLACE, "place grid 2 across by 1 up, gap 576, left edge at 200, lowest edge at 600"),
    (FIX, "fix lag-eye into rafters\n  up-slope-tie 2 of eye from eye, to eye on 4 of screw, reaching 300"),
    (HANG, f"{HANG}, square to the slope"),
    (
        "hardware lag-eye {",
        "hardware screw {\n  mass 8 g\n  shank 5\n  thread 60\n  price 0.20 GBP per each\n}\n\nhardware lag-eye {",
    ),
)
ON_RAILS = (
    (
        GRAVITY,
        f"{GRAVITY}\n}}\n\ntimber batten {{\n  section 63 x 63\n  stick 4800\n  price 9 GBP per stick\n"
        '  specific-gravity 0.36, "lowest of the common softwoods"',
    ),
    (
        "hardware lag-eye {",
        "hardware rail-screw {\n  mass 20 g\n  shank 8\n  thread 90\n  head 20\n  price 1 GBP per each\n}\n\n"
        "hardware lag-eye {",
    ),
    (FIX, "fix lag-eye into rails of batten held by rail-screw"),
)
PAPER = (
    'evidence serge-fire {\n  covers serge\n  paper "maker\'s report 12"\n  tested "the cloth alone"\n'
    '  says "a class that the report names"\n  until 2028-03-31\n}'
)

PAGES = WOOD_PAGES | {
    "rating-missing": Page(
        "A piece of hardware without a stated working load",
        "Every piece between panel and structure needs the working load that is marked on it or stated by its maker, "
        "and where that is written. Overhead this is an error; on a low wall panel a warning.",
        wrong=((EYE_RATED, ""), ("like eye", "like eye\n  " + EYE_RATED.rstrip())),
    ),
    "rating-not-sourced": Page(
        "A working load that nobody stands for",
        "The plan states a load but no source, or a source that is itself an assumption. Overhead this is an error.",
        wrong=(("maker's sheet E-1", "assumed"),),
    ),
    "overloaded": Page(
        "A fixing that is asked for more than it is allowed",
        "The weight of the panel, with its allowance, comes to more at this step of the way into the structure than "
        "the piece or the wood may carry. The message names the step, and what would hold by this reckoning.",
        wrong=(("rated 1000 N", "rated 10 N"),),
    ),
    "panel-tips-over": Page(
        "A panel that would tip over",
        "On a slope a panel hangs plumb from its points. If its centre of gravity does not lie between them, it turns "
        "until it does.",
        given=(
            (FLAT, "slope ceiling from south wall at 2000, pitch 20 deg"),
            (PLACE, "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1700"),
            WIDE_JOISTS,
        ),
        wrong=((EYES, "eyes 4 of eye, inset 590 from the ends"),),
        right=((EYES, "eyes 4 of eye, inset 400 from the ends"),),
    ),
    "mass-unknown": Page(
        "A panel whose weight is not known",
        "Without the weight nothing that holds the panel can be checked.",
        guard="a panel that can't be built is already reported by what stands in the way",
    ),
    "hang-not-checked": Page(
        "A way of hanging that has no rule here",
        "Panels hang from eyes under a ceiling, and on cleats on a wall. For eyes on a wall there is no rule in this "
        "reckoning, so nothing could be said about what holds them.",
        given=(
            *ON_WALL[:1],
            (PLACE, "place grid 2 across by 1 up, gap 576, left edge at 200, lowest edge at 600"),
            (
                WALLS,
                f"lining walls plaster over {STUDS}\n  lining floor plaster".replace(
                    "400 centres, first at 300", CLOSER
                ),
            ),
            (FIX, "fix lag-eye into studs"),
        ),
        right=((EYES, "cleats 2 of eye, 60 below the top, inset 6 from the sides"), (HANG, "hang on cleats")),
    ),
    "no-member-behind": Page(
        "A hang point with no joist, rafter or stud behind it",
        "Nothing there is known to hold.",
        guard="a point that meets no member is already reported as `point-misses-member`",
    ),
    "edge-too-near": Page(
        "A fixing too near to the edge of its member",
        "Wood splits where a screw sits near its edge; a load across the grain asks for more distance than a straight "
        "pull.",
        given=ON_CLEATS,
        wrong=((STUDS, "studs 45 x 95 of spruce at 400 centres, first at 145, running across"),),
        right=((STUDS, "studs 45 x 95 of spruce at 400 centres, first at 140, running across"),),
    ),
    "thread-not-stated": Page(
        "A screw or threaded eye without the length of its thread",
        "What holds in wood is the thread. Measure its length with the tip, and the diameter of the shank, and state "
        "both.",
        wrong=(("thread 60\n", ""),),
    ),
    "thread-too-short": Page(
        "Too little thread in the wood",
        "Less thread is in solid wood, behind all linings, than the rule asks for at the least.",
        wrong=(("thread 60", "thread 20"),),
    ),
    "timber-not-stated": Page(
        "Joists, rafters or studs of unknown timber",
        "What a screw holds depends on the wood. Where nobody has seen a grade stamp, state a timber with a specific "
        "gravity of 0.36, the lowest of the common softwoods.",
        wrong=((JOISTS, JOISTS.replace(" of spruce", "")),),
    ),
    "gravity-not-sourced": Page(
        "A specific gravity that nobody stands for",
        "A figure above the lowest of the common softwoods makes the wood stronger in the reckoning, so it needs a "
        "source: who saw the stamp, or knows the species.",
        wrong=((GRAVITY, 'specific-gravity 0.42, "assumed"'),),
    ),
    "lining-cannot-carry": Page(
        "A fixing into a board that is not known to carry",
        "Plasterboard and the like carry nothing unless the plan says `carries panels`, which somebody who knows must "
        "stand for. On a low wall panel this is a warning.",
        given=ON_CLEATS,
        wrong=(("fix screw into studs, 2 each", "fix screw into the lining, 2 each"),),
    ),
    "screw-in-lining-overhead": Page(
        "A wood screw in a board, over people",
        "A wood screw that ends in a lining has no rule that holds it, whatever the lining is said to carry. A panel "
        "on a wall whose lower edge is above 1500 mm counts as overhead.",
        given=(
            *ON_CLEATS,
            ("lowest edge at 600", "lowest edge at 1550"),
            ("thickness 12.5", "thickness 12.5\n  carries panels"),
        ),
        wrong=(("fix screw into studs, 2 each", "fix screw into the lining, 2 each"),),
    ),
    "eye-in-sheet-edge": Page(
        "An eye screwed into the edge of a sheet",
        "Plywood and boards split there, and no rule covers it. Use an eye that is bolted through the frame, or an eye "
        "plate.",
        wrong=((EYES, "eyes 4 of lag-eye, inset 100 from the ends"),),
    ),
    "pitch-too-steep": Page(
        "A slope too steep for a plumb eye",
        "An eye that hangs plumb from a steep rafter runs nearly along the grain, where a thread holds little.",
        given=(
            (
                WALLS,
                f"{WALLS}\n  lining south-slope plaster over rafters 45 x 145 of spruce at 500 centres, first at 500",
            ),
            ("on ceiling", "on south-slope"),
            (PLACE, "place grid 1 across by 1 up, centred across, lowest edge at 880"),
            ("turned long side up", "turned long side across the slope"),
            (FIX, "fix lag-eye into rafters"),
        ),
        wrong=((FLAT, f"{FLAT}\n    slope south-slope from south wall at 1450, pitch 65 deg"),),
        right=((FLAT, f"{FLAT}\n    slope south-slope from south wall at 1450, pitch 50 deg"),),
    ),
    "rail-on-one-member": Page(
        "A rail that is screwed to fewer than two members",
        "A rail needs two members to rest on.",
        guard="a rail without a member at each end is already reported as `rail-without-span`",
    ),
    "rail-size-unknown": Page(
        "A rail whose section is not stated",
        "How much thread a rail holds depends on its section.",
        guard="a rail's timber without a section is already reported as `clauses-disagree`",
    ),
    "second-support-required": Page(
        "A panel that needs a second support",
        "A panel overhead that is heavy or hangs high needs a second support with an eye and an anchor of its own. It "
        "catches it if the first one fails: above 10 kg, or above 3000 mm, or less where the plan's `safety` says so. "
        "Local rules may ask for more.",
        wrong=((FLAT, "flat ceiling at 3400"),),
        right=((FLAT, "flat ceiling at 3400"), *TIED),
    ),
    "engineer-needed": Page(
        "A load for a structural engineer",
        "The load is beyond what this reckoning is meant for. Somebody licensed has to check the structure. This is a "
        "warning that stays in the book.",
        given=(*ON_CLEATS, ("fix screw into studs, 2 each", "fix screw into studs, 9 each")),
        wrong=(("density 45 kg/m3", "density 1500 kg/m3"),),
    ),
    "slack-too-long": Page(
        "A second support with too much slack",
        "The further a panel falls before it is caught, the harder it is caught. More than 25 mm is refused.",
        given=(*TIED, (BOLTS, "bolts 4 of 5")),
        wrong=(("slack 5", "slack 26"),),
    ),
    "stretch-not-stated": Page(
        "A tie of which nobody says how much it gives",
        "A stiff tie stops a falling panel in a short way, with a large force. How much it gives under a load, its "
        "maker or a trial says; without that the force of the catch isn't known.",
        given=TIED,
        wrong=((STRETCH, ""),),
    ),
    "hollow-anchor-overhead": Page(
        "An anchor for hollow walls over people",
        "Under a steady pull a board bends and creeps, damp weakens it, and what its anchor held in a trial it doesn't "
        "hold for years. Overhead such anchors are refused, whatever their sheet says.",
        given=IN_LINING,
        wrong=((BOLTS, f"{BOLTS}\n  made-for hollow-walls"),),
        right=((BOLTS, f"{BOLTS}\n  made-for solid-walls"),),
    ),
    "anchor-use-not-stated": Page(
        "An anchor in a wall over people, made for nobody knows what",
        "An anchor for hollow walls is refused over people, so what the maker lets an anchor go into has to be stated.",
        given=IN_LINING,
        right=((BOLTS, f"{BOLTS}\n  made-for solid-walls"),),
    ),
    "not-for-wood": Page(
        "An anchor for walls that is to go into wood",
        "The maker says what an anchor is for. A plug for masonry holds by pressing; in wood no rule covers it.",
        wrong=(("shank 6", "shank 6\n  made-for solid-walls"),),
        right=(("shank 6", "shank 6\n  made-for wood"),),
    ),
    "characteristic-density-missing": Page(
        "Timber without the density that Eurocode 5 goes by",
        "`timber-rules ec5` reckons with the characteristic density of the timber's strength class. State it with its "
        "source: the stamp, or the lowest class where there is none.",
        given=(("", "safety {\n  timber-rules ec5\n}"), WIDE_JOISTS),
        right=(DENSE,),
    ),
    "screw-outside-ec5": Page(
        "A screw for which Eurocode 5 has no formula",
        "Its formula for withdrawal is for shanks of 6 to 12 mm. Others need a value declared by their maker.",
        given=BY_EUROCODE,
        wrong=(("shank 6", "shank 5"),),
        right=(("shank 6", 'shank 5\n  withdraws at 11 N/mm2 in wood of 350 kg/m3, "maker\'s declaration 12"'),),
    ),
    "thin-for-ec5": Page(
        "A member too thin for the rules of Eurocode 5",
        "The formula for withdrawal is for members at least twelve shanks deep.",
        given=BY_EUROCODE,
        wrong=(("joists 63 x 145", "joists 63 x 70"),),
    ),
    "connector-opens": Page(
        "A connector that nothing locks",
        "An open hook, an S-hook or a spring gate lets go when the panel is lifted, knocked or swings. Overhead that "
        "is refused; take a piece with a gate, a nut or a pin that locks it, and say which paper says so.",
        given=((BOLTS, f'{BOLTS}\n  locks by nut, "maker\'s sheet E-1"'),),
        wrong=(("locks by nut", "locks by nothing"),),
    ),
    "end-grain-refused": Page(
        "A screw into the end of a timber",
        "Along the grain a thread holds little and lets go without a warning. Wood screws may not be pulled out of end "
        "grain at all by the NDS, and Eurocode 5 has no rule for it; lag screws of 1/4 in (6.35 mm) and more keep "
        "three quarters by the NDS.",
        given=((FIX, f"{FIX}, in their end grain"), WIDE_JOISTS),
        wrong=(("shank 6", "shank 6.3"),),
        right=(("shank 6", "shank 8"),),
    ),
    "eye-pulled-aside": Page(
        "A screw eye that is pulled aside",
        "An eye that screws into wood holds in the direction of its shank. Pulled aside it bends, and the wood crushes "
        "beside it; more than 5 degrees off its axis nothing is known of what it holds. A public rule on rigging has "
        "eyes without a shoulder pulled in line alone (WAC 296-155-56110).",
        given=(WIDE_JOISTS,),
        wrong=((HANG, f"{HANG}, leaning 10 deg"),),
        right=((HANG, f"{HANG}, leaning 5 deg"),),
    ),
    "eye-fixing-not-stated": Page(
        "An eye of which nobody says how it is held to the panel",
        "What the frame holds at the eye depends on the bolts that go through it: state how many, and how thick.",
        wrong=((BOLTS, ""),),
    ),
    "frame-too-thin": Page(
        "A frame too thin for a bolted eye",
        "Bolts bear on the thickness of the sheet. 12 mm sheet, as mills make it, is the least.",
        wrong=(("size 2440 x 1220 x 12", "size 2440 x 1220 x 9"),),
    ),
    "share-rule-not-valid": Page(
        "A rule of sharing that does not hold for this panel",
        "A rule that counts less than the worst case is for panels whose points lie as it wants them, and for links as "
        "it wants them: that give by a stated amount, or that can be adjusted over a stated length.",
        given=(("turned long side up", 'turned long side up\n  share by adjusted, "tension felt by hand"'),),
        right=((BOLTS, f"{BOLTS}\n  length 30 to 40"),),
    ),
    "links-lean": Page(
        "Links that lean a good deal",
        "A link that leans puts a level force into the panel's frame. Its side rails are checked for that, its joints "
        "and its twist are not. Above 15 degrees that is a "
        "warning, above 45 degrees an error.",
        guard="links that lean so much come with what is said of the eyes that they pull aside",
    ),
    "lean-into-rail": Page(
        "Links that lean and pull at a rail",
        "A rail that is pulled aside twists, and its screws are sheared; there is no rule for that here.",
        given=ON_RAILS,
        wrong=((HANG, f"{HANG}, leaning 4 deg"),),
    ),
    "slides-down-slope": Page(
        "Links square to a slope and nothing that holds the panel up it",
        "Links that hang plumb hold a panel on a slope by themselves. Links square to the slope don't: without a tie "
        "the panel slides down until they hang plumb. State the tie, or let the links hang plumb.",
        given=UP_SLOPE,
        wrong=(("up-slope-tie 2 of eye from eye, to eye on 4 of screw, reaching 300", ""),),
    ),
    "tie-lifts-panel": Page(
        "A tie up the slope that lifts the panel's edge",
        "A tie goes from the panel's back, a drop below the slope, to a plate on it. The shorter it is, the more it "
        "pulls the edge towards the slope; here more than the weight there, so that the links go slack.",
        given=UP_SLOPE,
        wrong=(("reaching 300", "reaching 60"),),
    ),
    "drop-out-of-reach": Page(
        "Eyes and links longer or shorter than the drop",
        "Where the panel's eye, the link and the ceiling eye all state their length, they have to fill the way from "
        "the ceiling to the panel's back. Under a slope plumb links are longer than the drop, which is square to it.",
        given=((BOLTS, f"{BOLTS}\n  length 20"),),
        right=((HANG, "hang from eyes on eye, drop 60"),),
    ),
    "no-room-to-lift-off": Page(
        "A panel that can't be lifted onto its cleats",
        "A hooked cleat engages from above, so the panel has to be lifted over it: what the cleat engages, and 5 mm.",
        given=ON_CLEATS,
        wrong=(("lowest edge at 600", "lowest edge at 1590"),),
        right=(("lowest edge at 600", "lowest edge at 1490"),),
    ),
    "near-to-service": Page(
        "A panel near to a light, a sprinkler or a detector",
        "The panel is nearer than the distance that this book asks about. Codes differ, and this is no verdict: who "
        "maintains the thing, or the authority, decides. It is a warning that stays in the book.",
        given=(("door d1", "luminaire L1 on ceiling centred at 600, 600, 90 across, fitted surface\n  door d1"),),
        wrong=(("at 600, 600, 90", "at 2500, 3000, 90"),),
    ),
    "paper-out-of-date": Page(
        "A paper that ended before this issue",
        "The plan names a test report or the like with the day to which it holds, and this issue is of a later day.",
        given=(("", PAPER),),
        wrong=(("until 2028-03-31", "until 2026-11-24"),),
    ),
}

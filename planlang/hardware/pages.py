"""The pages of what the load engine finds: ratings, fixings, timber, and when somebody qualified has to look."""

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

PAGES = {
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
        "Heavy or high panels get a second, independent support on its own anchors, which catches them if the first "
        "one fails: above 10 kg, or above 3000 mm. This is a warning; local rules may ask for more.",
        wrong=((FLAT, "flat ceiling at 3400"),),
    ),
    "engineer-needed": Page(
        "A load for a structural engineer",
        "The load is beyond what this reckoning is meant for. Somebody licensed has to check the structure. This is a "
        "warning that stays in the book.",
        given=(*ON_CLEATS, ("fix screw into studs, 2 each", "fix screw into studs, 9 each")),
        wrong=(("density 45 kg/m3", "density 1500 kg/m3"),),
    ),
}

"""Arrays: where panels go, what they hang from, what they keep clear of."""

from planlang.plan.vocabulary.declare import Clause
from planlang.plan.vocabulary.declare import StatementKind as S
from planlang.plan.vocabulary.stated import MADE

ACROSS_CLAUSES = (
    Clause("{centred-across:centred} across", "Centred between the sides of the surface."),
    Clause("left edge at {left:distance}", "Left edge of the group, from the surface's left."),
    Clause("right edge at {right:distance}", "Right edge of the group, from the surface's right."),
)
UP_CLAUSES = (
    Clause("{centred-up:centred} up [the slope]", "Centred between lower and upper edge of the surface."),
    Clause("lowest edge at {lowest:distance}", "Lower edge of the group, from the surface's lower edge."),
    Clause("highest edge at {highest:distance}", "Upper edge of the group, from the surface's upper edge."),
)

ARRAY = S(
    "array",
    "{name:new}",
    "Panels of one type on one surface.",
    "array south-clouds, mark SC {",
    clauses=(Clause("mark {mark:new}", "What the panels are called: SC1, SC2 …", required=True),),
    many=True,
    block=(
        S(
            "panel",
            "{panel:ref}",
            "The type of panel, with values for what the type takes.",
            "panel cloud, with width 450",
            clauses=(
                Clause("with {takes:new} {value:quantity}", "A value for one of them.", repeat="more"),
                Clause(
                    "with {takes:new} bay less {less:distance}",
                    "A size from the place: each panel is its own bay less so much, for panels one in each bay.",
                    repeat="more",
                ),
                Clause(
                    "top {below:distance} below [the] slope",
                    "An outline from the place: each panel's top follows the edge of the surface above it, square to "
                    "it so far below; the panel's length is the most. Its frame has `mitre joints`.",
                ),
            ),
            required=True,
        ),
        S("on", "{surface:surface}", "The surface.", "on south-pitch", required=True),
        S(
            "place",
            "{rule:grid} {columns:count} across by {rows:count} up",
            "The rule that places them.",
            "place grid 2 across by 3 up, gap 100, centred across, lowest edge at 900",
            other_forms=(
                "{rule:row} of {count:count}",
                "{each:counting} in each {rule:bay} between {features:names+}",
                "{rule:row} of {count:count} along [the] {edge:upper|lower|left|right} edge",
                "{rule:stack} of {count:count}",
                "at {rule:points} {points:position+}",
                "one {side:above|below|left-of|right-of} {rule:each} of {array:ref}",
                "{rule:mirrored} from {array:ref}",
                "as many as {rule:fit}",
                "to {rule:cover} {share:share} [of it]",
                "at first {rule:reflections} from {talkers:names+} to {listeners:names+}",
            ),
            clauses=(
                Clause("gap {gap:distance}", "Between neighbours, both ways."),
                Clause("gap {gap-across:distance} across", "Between neighbours, across."),
                Clause("gap {gap-up:distance} up", "Between neighbours, up."),
                Clause("{equal:equal} gaps", "A row's gaps and its two margins all alike."),
                Clause("{off:distance} from it", "How far a row or a stack stands off the edge that it goes along."),
                Clause("in [the] {corner:left|right} corner", "Where a stack stands."),
                Clause(
                    "margin {margin:distance}",
                    "To the edges of the surface: for as many as fit, or for a row whose gaps share what is left.",
                ),
                Clause("{staggered:staggered}", "Every second row half a column further."),
                Clause("over {area:size2} round each listener", "For ears anywhere in an area: east x north."),
                *ACROSS_CLAUSES,
                *UP_CLAUSES,
            ),
            required=True,
        ),
        S(
            "turned",
            "long side {way:up|across} [the slope]",
            "Which way the panel's length runs.",
            "turned long side up the slope",
            clauses=(
                Clause(
                    "{turn:angle} {clock:clockwise|anticlockwise}",
                    "How far it is turned then, as the drawing of the surface shows it.",
                ),
            ),
            default="turned long side up",
            reason="panels stand upright unless the plan turns them",
        ),
        S(
            "hang",
            "from {by:eyes} on {link:ref}",
            "What the panel hangs by.",
            "hang from eyes on quick-link-3, drop 60",
            other_forms=("on {by:cleats}",),
            clauses=(
                Clause("drop {drop:distance}", "From the surface to the panel's back."),
                Clause(
                    "{more:distance} more at [the] {row:upper|lower|left|right} eyes",
                    "The panel hangs tilted: the drop is that of the row of eyes across from these, and these hang so "
                    "much lower.",
                ),
                Clause("leaning {lean:angle}", "How far the links lean from plumb."),
                Clause("{square:square} to the slope", "Not plumb: they need an `up-slope-tie`."),
                Clause(
                    "{fixed:fixed} to the slope",
                    "Not hung: a screw through each bracket and its stand-off holds the panel up the slope.",
                ),
            ),
            required=True,
        ),
        S(
            "fix",
            "{anchor:ref} into {into:rafters|purlins|joists|studs}",
            "What goes into the building, and into which part of it.",
            "fix lag-eye-6x60 into rafters",
            other_forms=(
                "{anchor:ref} into [the] {into:lining}",
                "{anchor:ref} into {into:rails} of {timber:ref} held by {screw:ref}",
            ),
            clauses=(
                Clause("{each:count} each", "Pieces at each hang point.", default="1 each", reason=""),
                Clause(
                    "snap within {snap:length}",
                    "How far each panel may move so that its hang points land on the members.",
                ),
                Clause("in their {end:end} grain", "The fixings go into the ends of the members, along the grain."),
                Clause("rails end {overhang:distance} past their last member", "So that the end screw splits nothing."),
            ),
            required=True,
        ),
        S(
            "share",
            "by {rule:envelope|springs|adjusted|rails}",
            "The rule by which the hang points share the weight. Left out, the worst case counts: the envelope of all "
            "states in which links only pull.",
            'share by adjusted, "turnbuckles on every link, tension felt by hand"',
            clauses=(Clause("{reason:text}", "Why less than the worst case may be counted."),),
        ),
        S(
            "adds",
            "{mass:mass} of {what:text} at {across:distance} , {up:distance}",
            "What is put on each panel on site: a light, a cable. Its middle, from the panel's left and lower edge.",
            'adds 900 g of "light strip with its cable" at 300, 750',
            clauses=(
                Clause(
                    "{below:distance} below the front",
                    "How far its middle is below the panel's front.",
                    default="0 mm below the front",
                    reason="",
                ),
            ),
            many=True,
        ),
        S(
            "second-support",
            "{count:count} of {tie:ref} from {eye:ref}",
            "A second support of each panel, with an eye and an anchor of its own, into the same members.",
            "second-support 2 of wire-tie from eye-plate-m5, to lag-eye-6x80, slack 10",
            clauses=(
                Clause("to {anchor:ref}", "What goes into the building.", required=True),
                Clause("slack {slack:distance}", "How far the panel falls before it is caught.", required=True),
                Clause("anchors within {beside:distance}", "How far from the panel's hang points its anchors go."),
            ),
        ),
        S(
            "up-slope-tie",
            "{count:count} of {tie:ref} from {eye:ref}",
            "What keeps each panel from sliding down whose links hang square to the slope: ties from eyes on its back, "
            "at its upper edge, to plates further up the slope, screwed to the members.",
            "up-slope-tie 2 of wire-tie from eye-plate-m5, to tie-plate on 4 of screw-6x60, reaching 300",
            clauses=(
                Clause(
                    "to {plate:ref} on {screws:count} of {screw:ref}",
                    "The plate on a member, and the screws that hold it there.",
                    required=True,
                ),
                Clause(
                    "reaching {reach:length} [up the slope]",
                    "How far up the slope the plate is from the panel's eye.",
                    required=True,
                ),
            ),
        ),
        S(
            "keep",
            "{clear:distance} clear of {of:ref}",
            "Distance kept from a kind of thing (`rooflights`), a named one, or the `edges` of the surface.",
            "keep 150 clear of rooflights, 200 clear of luminaires",
            clauses=(Clause("[and] {clear:distance} clear of {of:ref}", "Another one.", repeat="more"),),
            many=True,
        ),
        MADE,
    ),
)

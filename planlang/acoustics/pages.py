"""The pages of what the acoustic estimate finds."""

from planlang.syntax.pages import Page

PAGES = {
    "surface-without-lining": Page(
        "A surface whose absorption is unknown",
        "Every surface of the room counts in the estimate, so each needs a lining: the floor, all four walls, and "
        "every plane of the ceiling.",
        wrong=(("lining walls, floor plaster", "lining walls plaster"),),
    ),
    "absorption-not-stated": Page(
        "A lining that is silent about an octave",
        "The estimate needs a coefficient in each octave from 125 Hz to 4000 Hz.",
        guard="a list that is not of six figures is already reported as `count-differs`",
    ),
    "unknown-target": Page(
        "A target that is not known",
        "A target is a group of DIN 18041, EBU Tech 3276, ITU-R BS.1116, ANSI S12.60, or a decay time of your own.",
        guard="a target by another name is already reported as `wrong-form`",
    ),
    "much-furniture": Page(
        "More furniture than the formula for furnished rooms is made for",
        "Hard furniture is stated by the boxes that it fills. Where these come to a fifth of the room's volume or "
        "more, the sizes are likely to be wrong, and the formula of EN 12354-6 doesn't hold. This is a warning: "
        "the estimate is made without that formula.",
        wrong=(("  door     d1", "  furniture chest 3000 x 2000 x 2000\n  door d1"),),
        right=(("  door     d1", "  furniture chest 300 x 200 x 200\n  door d1"),),
    ),
    "target-outside-volume": Page(
        "A room outside the range of the standard",
        "The standard states decay times only for rooms between a least and a largest volume. This is a warning: the "
        "estimate is made, but compared with nothing.",
        wrong=(("", "use-of-room {\n  target din-18041 A5\n}"),),
        right=(("", "use-of-room {\n  target din-18041 A3\n}"),),
    ),
}

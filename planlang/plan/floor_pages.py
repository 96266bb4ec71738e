"""The pages of what is wrong with a floor that is walked."""

from planlang.syntax.pages import Page

FLOOR = "floor rectangle 5000 x 4000"


def walked(*legs: str, start: str = "") -> str:
    """A floor of legs."""
    return f"floor walked{start} {{\n" + "".join(f"    leg {leg}\n" for leg in legs) + "  }"


RIGHT = walked("east 5000", "north 4000", "west 5000", "south 4000")

FLOOR_PAGES = {
    "floor-legs-count": Page(
        "A floor of too few legs, or too many",
        "A floor has three walls at least; one of more than forty is more than can be worked on. Each leg is one "
        "wall, from corner to corner.",
        wrong=((FLOOR, walked("east 5000", "west 5000")),),
        right=((FLOOR, RIGHT),),
    ),
    "walk-does-not-close": Page(
        "A walk that doesn't end where it began",
        "The legs of a floor go round the room and end where the first one began. Here they don't, and the "
        "message says by how much. Then it says which single leg would close the walk, with which length or "
        "turned the other way, and what a leg would be that is missing. The mend is where to measure again, not "
        "what is true. A walk round a real room never closes to the millimetre: `closing within 15` shares out "
        "what is left over the legs, so that those along the compass stay along it.",
        wrong=(
            (
                FLOOR,
                walked(
                    "east 5000", "north 2500", "west 600", "north 1500, called upper-east", "west 4400", "south 3800"
                ),
            ),
        ),
        right=(
            (
                FLOOR,
                walked(
                    "east 5000", "north 2500", "west 600", "north 1500, called upper-east", "west 4400", "south 4000"
                ),
            ),
        ),
    ),
    "floor-crosses-itself": Page(
        "A floor whose walls cross",
        "Two walls meet where one leg ends and the next begins, and nowhere else. Here the walk comes back over "
        "itself: a length or a turn is wrong, or two legs have changed places.",
        wrong=((FLOOR, walked("east 5000", "north 4000", "west 4000", "south 4500", "west 1000", "north 500")),),
        right=((FLOOR, walked("east 5000", "north 4000", "west 4000", "south 500", "west 1000", "south 3500")),),
    ),
    "floor-off-datum": Page(
        "A floor that isn't measured from its datum",
        "All places in the room are measured east and north from where its westernmost and its southernmost line "
        "cross. A walk that begins at another corner says where that is.",
        wrong=((FLOOR, walked("west 5000", "south 4000", "east 5000", "north 4000")),),
        right=((FLOOR, walked("west 5000", "south 4000", "east 5000", "north 4000", start=" from 5000, 4000")),),
    ),
}

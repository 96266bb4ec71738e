"""The pages of columns, platforms and soffits."""

from planlang.syntax.pages import Page

FLOOR = "floor rectangle 5000 x 4000"


def beside(line: str) -> tuple[tuple[str, str], ...]:
    """The small plan with one more line about the room."""
    return ((FLOOR, f"{FLOOR}\n  {line}"),)


SOLID_PAGES = {
    "column-at-wall": Page(
        "A column that doesn't stand free",
        "A column stands inside the walls and touches none, so that one can walk round it. What stands at a wall, "
        "such as a chimney breast or a pilaster, is a part of the floor's outline: walk its legs.",
        wrong=beside("column P1 from 0, 1000 to 300, 1300, plaster"),
        right=beside("column P1 from 400, 1000 to 700, 1300, plaster"),
    ),
    "columns-overlap": Page(
        "Two columns in one place",
        "Columns stand apart. Two that make one body are one column with more corners: `through 400, 1000, 700, …`.",
        given=beside("column P1 from 400, 1000 to 700, 1300, plaster"),
        wrong=(("column P1", "column P2 from 600, 1200 to 900, 1500, plaster\n  column P1"),),
        right=(("column P1", "column P2 from 900, 1200 to 1200, 1500, plaster\n  column P1"),),
    ),
    "outside-the-floor": Page(
        "A platform or a soffit that isn't in the room",
        "The places of platforms and soffits are east and north of the room's datum. None of this one is over the "
        "floor. One that reaches past a wall is cut off there.",
        wrong=beside("soffit duct from 5000, 0 to 5600, 4000, underside at 2400, plaster"),
        right=beside("soffit duct from 4400, 0 to 5000, 4000, underside at 2400, plaster"),
    ),
    "nowhere-seen": Page(
        "A soffit above the ceiling, or a platform under another",
        "At every place the lowest of ceiling and soffits is seen, and the highest of floor and platforms. Of "
        "this one nothing is.",
        wrong=beside("soffit duct from 4400, 0 to 5000, 4000, underside at 2900, plaster"),
        right=beside("soffit duct from 4400, 0 to 5000, 4000, underside at 2400, plaster"),
    ),
    "platform-meets-ceiling": Page(
        "A platform that reaches what is above it",
        "Between a platform and the ceiling or the soffit over it there has to be room. What goes from floor to "
        "ceiling is a column, or a part of the floor's outline.",
        wrong=beside("platform stage from 0, 0 to 1000, 4000, 2800 high, plaster"),
        right=beside("platform stage from 0, 0 to 1000, 4000, 280 high, plaster"),
    ),
}

"""What a drawing is, for the pages that show it."""

from planlang.syntax.record import record


@record
class Drawing:
    """An SVG drawing: stable `name` (anchor and id prefix), title, and a description for those who can't see it."""

    name: str
    title: str
    description: str
    svg: str

"""What became of each requirement."""

from planlang.plan.stated import Requirement
from planlang.syntax.record import record


@record
class Held:
    """One requirement: in words, whether it holds, what was found, and by how much it holds or fails.

    `holds` is None where nothing was found to hold it against.
    """

    requirement: Requirement
    words: str
    holds: bool | None
    found: str
    margin: str

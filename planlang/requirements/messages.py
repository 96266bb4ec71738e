"""The words for requirements that fail, or that nothing was found for."""

from planlang.requirements.model import Held
from planlang.syntax.diagnostics import Diagnostic


def finding(held: Held) -> Diagnostic:
    """The finding for a requirement that does not hold."""
    if held.holds is None:
        message = f"`{held.words}` can't be checked: {held.found}"
        return Diagnostic(
            "requirement-open", message, held.requirement.at, "state what is missing, or take it out", stops_book=False
        )
    message = f"`{held.words}` does not hold: found {held.found}, {held.margin}"
    return Diagnostic(
        "requirement-fails", message, held.requirement.at, "change the plan, or what is asked of it", stops_book=False
    )

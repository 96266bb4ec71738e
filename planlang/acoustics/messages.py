"""What the acoustic engine has to say about a plan, one function a code."""

from planlang.acoustics.constants import MOST_FURNITURE
from planlang.acoustics.targets import KNOWN_RULES, din_curve
from planlang.plan.figure import significant
from planlang.plan.room import Furniture, Room, Target
from planlang.plan.stock import OCTAVES, Lining, Seating
from planlang.syntax.diagnostics import Diagnostic, Severity


def surface_without_lining(room: Room, surface: str) -> Diagnostic:
    """A surface whose absorption is unknown."""
    return Diagnostic(
        code="surface-without-lining",
        message=f"{surface} of {room.name} has no lining, so what it absorbs is unknown",
        span=room.at,
        mend=f"add `lining {surface} NAME` with a lining from the stock",
    )


def absorption_not_stated(stock: Lining | Seating, missing: tuple[int, ...]) -> Diagnostic:
    """A lining or seat that is silent about an octave."""
    bands = ", ".join(f"{band} Hz" for band in missing)
    return Diagnostic(
        code="absorption-not-stated",
        message=f"{stock.name} states no absorption at {bands}",
        span=stock.at,
        mend=f"state all of {', '.join(str(band) for band in OCTAVES)} Hz",
    )


def unknown_target(target: Target) -> Diagnostic:
    """A target by a rule that is not known."""
    return Diagnostic(
        code="unknown-target",
        message=f"no target is known by the name '{target.rule}'",
        span=target.at,
        mend=f"use one of {', '.join(KNOWN_RULES)}, or a time of your own",
    )


def much_furniture(piece: Furniture, share: float) -> Diagnostic:
    """Furniture that fills more of the room than the formula for furnished rooms is made for."""
    return Diagnostic(
        code="much-furniture",
        message=(
            f"the furniture fills {significant(100 * share)} % of the room; the formula of EN 12354-6 is for less than "
            f"{100 * MOST_FURNITURE.value:.0f} %, so it is left out"
        ),
        span=piece.at,
        mend="see that the sizes are right",
        severity=Severity.WARNING,
    )


def target_outside_volume(target: Target, use: str, volume: float) -> Diagnostic:
    """A room outside the range for which the standard states a target."""
    curve = din_curve(use)
    return Diagnostic(
        code="target-outside-volume",
        message=(
            f"DIN 18041 states {use} for {significant(curve.least, 3)} to {significant(curve.most, 4)} m3; "
            f"this room has {significant(volume, 3)} m3, so there is no target to compare with"
        ),
        span=target.at,
        mend="state a decay time of your own",
        severity=Severity.WARNING,
    )

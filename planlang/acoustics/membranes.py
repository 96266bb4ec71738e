"""Closed sheets in front of a panel, which let sound in by their own swinging."""

from planlang.acoustics.constants import MEMBRANE_SPREAD
from planlang.syntax.record import record


@record
class Membrane:
    """A closed sheet held at its edges, kg/m2.

    It is reckoned as mass alone: its stiffness and its own losses are not known, so that all that it absorbs is lost in
    what lies behind it. Source: Kuttruff, Room Acoustics, ch. 2.
    """

    mass: float


def variants(membrane: Membrane | None) -> tuple[Membrane, ...]:
    """Sheets whose resonance lies as far off as stiff sheets' do, either way: it goes with the inverse root of mass."""
    if membrane is None:
        return ()
    return tuple(Membrane(membrane.mass * (1 + side * MEMBRANE_SPREAD.value) ** 2) for side in (-1, 1))


def membrane_words(membrane: Membrane) -> str:
    """How it was reckoned, with its source, and what to be wary of."""
    return (
        f"membrane as a mass of {membrane.mass:g} kg/m2 (Kuttruff, Room Acoustics, ch. 2); its resonance may lie "
        f"{100 * MEMBRANE_SPREAD.value:.0f} % off (from memory), and what the sheet itself loses is not counted"
    )

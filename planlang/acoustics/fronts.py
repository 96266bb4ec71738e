"""Fronts that are no cloth: perforated and slotted boards, and membranes, as sheets of a stack. Lengths in m."""

from collections.abc import Sequence

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import MEMBRANE_SPREAD
from planlang.acoustics.layers import Facing, film_facing
from planlang.acoustics.resonators import hole_end_correction, open_share, perforated_facing, slot_end_correction
from planlang.syntax.record import record

MOST_OPEN = 0.2  # share up to which the end corrections are made; Cox and D'Antonio, ch. 7


@record
class Perforated:
    """A board with round holes of a diameter on a square grid."""

    hole: float
    pitch: float
    thickness: float

    @property
    def share(self) -> float:
        """Open share of the face."""
        return open_share(self.hole, self.pitch)


@record
class Slotted:
    """A board with parallel slots (or battens with gaps): width of a slot, and from one to the next."""

    width: float
    pitch: float
    thickness: float

    @property
    def share(self) -> float:
        """Open share of the face."""
        return self.width / self.pitch


@record
class Membrane:
    """A closed sheet held at its edges, kg/m2."""

    mass: float


Front = Perforated | Slotted | Membrane


def front_facing(front: Front, frequency: Floats, air: AirState) -> Facing:
    """The front as a sheet of a stack.

    Holes by Ingard; a slot loses as a hole as wide as the slot does (own simplification). A membrane is mass alone: its
    stiffness and its own losses are not known, so that all it absorbs is what lies behind it. Source: Ingard, JASA 25
    (1953) 1037; Cox and D'Antonio, Acoustic Absorbers and Diffusers, ch. 7.
    """
    if isinstance(front, Membrane):
        return film_facing(frequency, front.mass)
    if isinstance(front, Slotted):
        correction = slot_end_correction(front.width, front.share)
        return perforated_facing(frequency, front.width, front.share, front.thickness, air, correction)
    correction = hole_end_correction(front.hole, front.share)
    return perforated_facing(frequency, front.hole, front.share, front.thickness, air, correction)


def variants(front: Front | None) -> Sequence[Front]:
    """A membrane whose resonance lies as far off as stiff sheets' do, either way; nothing for other fronts.

    The resonance goes with the inverse root of the mass.
    """
    if not isinstance(front, Membrane):
        return ()
    return tuple(Membrane(front.mass * (1 + side * MEMBRANE_SPREAD.value) ** 2) for side in (-1, 1))


def front_words(front: Front) -> str:
    """How the front was reckoned, with its source, and what to be wary of."""
    if isinstance(front, Membrane):
        off = f"{100 * MEMBRANE_SPREAD.value:.0f} %"
        return (
            f"membrane as a mass of {front.mass:g} kg/m2 (Kuttruff, Room Acoustics, ch. 2); its resonance may lie "
            f"{off} off (from memory), and what the sheet itself loses is not counted"
        )
    doubt = "" if front.share < MOST_OPEN else "; so open a front is hardly one, and the correction is not made for it"
    kind = "slots" if isinstance(front, Slotted) else "holes"
    return f"{kind}, {100 * front.share:.0f} % open, by Ingard, JASA 25 (1953) 1037{doubt}"

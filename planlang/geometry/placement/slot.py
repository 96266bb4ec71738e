"""What every placement rule takes and gives."""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from planlang.geometry.model import Box, PlacedFeature, PlacedPanel, Surface
from planlang.plan.model import Array
from planlang.plan.room import Place
from planlang.plan.stated import Zone
from planlang.plan.tape import TapeStyle
from planlang.syntax.record import record

if TYPE_CHECKING:
    from planlang.geometry.pose import Pose
    from planlang.geometry.tilt import Tilt


@record
class Slot:
    """The place of one panel, and the arithmetic that led there."""

    box: Box
    how: str


@record
class Site:
    """Where an array goes: its surface, all features and zones of the room, and the tape for words.

    `placed` are the panels of the arrays before it, by name; `places` who talks and listens where; `pose` how panels
    lie that are turned or no rectangles; `in_the_way` what may stand between two places of the room; `tilt` how panels
    hang whose drops are unequal.
    """

    array: Array
    surface: Surface
    features: tuple[PlacedFeature, ...]
    zones: tuple[Zone, ...]
    tape: TapeStyle
    placed: Mapping[str, tuple[PlacedPanel, ...]]
    places: tuple[Place, ...]
    pose: "Pose | None" = None
    in_the_way: tuple[Surface, ...] = ()
    tilt: "Tilt | None" = None

    @property
    def panel_size(self) -> tuple[Fraction, Fraction]:
        """A panel's size across and up the surface, mm; of one that is turned or tilted, that round it."""
        panel = self.array.panel
        if self.tilt is not None:
            return self.tilt.size
        if self.pose is not None:
            _, _, width, height = self.pose.shape.bounds
            return width, height
        return (panel.width, panel.length) if self.array.upright else (panel.length, panel.width)

    def slot(self, left: Fraction, lower: Fraction, how: Iterable[str]) -> Slot:
        """A panel with its lower left corner there."""
        width, height = self.panel_size
        return Slot(Box(left, lower, left + width, lower + height), "; ".join(how))

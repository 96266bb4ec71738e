"""Kinds of panel that few plans have: membranes, corner traps, baffles. Loaded when the first one is met."""

from fractions import Fraction
from math import ceil
from typing import Literal

from planlang.plan.panel import BackBoard, Core, Covering, Frame, PanelType, Use, batts_at_most, fills
from planlang.plan.stock import Batt, Sheet
from planlang.syntax.record import record
from planlang.syntax.span import Span

FORMER_PITCH = Fraction(600)
"""How far apart the formers of a corner trap stand at most, mm. Common practice, no source."""


@record(kw_only=True)
class MembraneAbsorber(PanelType):
    """A thin plate glued over a closed frame, which swings on the air in it. `depth` is plate, frame and back board."""

    frame: Frame
    plate: Sheet
    plate_at: Span
    board: BackBoard
    core: Core | None

    @property
    def frame_depth(self) -> Fraction:
        """Width of the frame's strips, which is also how deep the cavity is: the depth less plate and back board."""
        return self.depth - self.plate.thickness - self.board.sheet.thickness

    @property
    def batts(self) -> Fraction:
        """Thickness of the batts on the back board, mm."""
        return self.core.layers * self.core.batt.thickness if self.core else Fraction(0)

    @property
    def kind(self) -> str:
        """What it is, in words."""
        return "membrane absorber"

    @property
    def uses(self) -> tuple[Use, ...]:
        """What it is made of."""
        core = (Use(self.core.batt, "core"),) if self.core else ()
        plate, board = Use(self.plate, "plate"), Use(self.board.sheet, "back board")
        return (Use(self.frame.sheet, "frame"), plate, board, *core)

    @property
    def rail(self) -> Sheet | None:
        """The sheet of its frame."""
        return self.frame.sheet

    @property
    def pieces_at_most(self) -> tuple[tuple[int, Span], ...]:
        """Pieces of batt."""
        return ((batts_at_most(self, self.core), self.core.at),) if self.core else ()


@record(kw_only=True)
class CornerTrap(PanelType):
    """Cloth across the corner of two surfaces at right angles, over pieces of batt laid on one another.

    `width` and `depth` are what it takes of each surface, its `length` runs along the corner. Two `boards` lie on the
    surfaces, formers stand across them.
    """

    shape: Literal["triangular", "square"]
    boards: Sheet
    filling: Batt
    filling_at: Span
    front: Covering

    @property
    def inner_leg(self) -> Fraction:
        """Length of the formers' legs, mm: between the boards and the cloth.

        Boards of thickness t lie on both surfaces; bevelled along the face of a triangular trap, they leave a triangle
        with legs of the trap's less two thicknesses. Square to the surface, a square trap keeps the leg less one.
        """
        return self.width - (2 if self.shape == "triangular" else 1) * self.boards.thickness

    @property
    def formers(self) -> int:
        """Formers, the two at the ends among them."""
        return max(ceil((self.length - self.boards.thickness) / FORMER_PITCH), 1) + 1

    @property
    def bay(self) -> Fraction:
        """What is clear between two formers, mm."""
        return (self.length - self.formers * self.boards.thickness) / (self.formers - 1)

    @property
    def layers_in_bay(self) -> int:
        """Pieces of filling laid on one another between two formers: so many that they are pressed, not loose."""
        return ceil(self.bay / self.filling.thickness)

    @property
    def kind(self) -> str:
        """What it is, in words."""
        return f"{self.shape} corner trap"

    @property
    def in_corner(self) -> bool:
        """It lies on two surfaces."""
        return True

    @property
    def uses(self) -> tuple[Use, ...]:
        """What it is made of."""
        return Use(self.boards, "boards and formers"), Use(self.filling, "core"), Use(self.front.cloth, "cloth")

    @property
    def pieces_at_most(self) -> tuple[tuple[int, Span], ...]:
        """Pieces of filling, and formers."""
        return ((fills(self.length, self.filling.thickness) + self.formers, self.filling_at), (self.formers, self.at))


@record(kw_only=True)
class Baffle(PanelType):
    """A panel that hangs upright from its top edge, clear all round, both faces under cloth.

    As it hangs: `width` is how thick it is, `length` runs along its top edge, `depth` is how far it reaches down. Under
    its top member a hanging rail stands on edge in the middle, from end to end, to which its eyes are bolted.
    """

    frame: Frame
    core: Core
    front: Covering

    @property
    def kind(self) -> str:
        """What it is, in words."""
        return "baffle"

    @property
    def eyes_in_line(self) -> bool:
        """They are on its top edge."""
        return True

    @property
    def rail(self) -> Sheet | None:
        """The sheet of its hanging rail."""
        return self.frame.sheet

    @property
    def rail_depth(self) -> Fraction:
        """How far the hanging rail reaches down under the top member, mm: as far as the baffle is thick."""
        return self.width

    @property
    def room(self) -> tuple[Fraction, Fraction]:
        """What the batts fill, along and down, mm: inside the frame, under the hanging rail."""
        loss = 2 * self.frame.sheet.thickness
        return self.length - loss, self.depth - loss - self.rail_depth

    @property
    def uses(self) -> tuple[Use, ...]:
        """What it is made of."""
        return Use(self.frame.sheet, "frame"), Use(self.core.batt, "core"), Use(self.front.cloth, "cloth")

    @property
    def pieces_at_most(self) -> tuple[tuple[int, Span], ...]:
        """Pieces of batt, whichever way they are laid."""
        batt = self.core.batt
        ways = ((batt.length, batt.width), (batt.width, batt.length))
        most = max(fills(self.length, along) * fills(self.depth, across) for along, across in ways)
        return ((self.core.layers * most, self.core.at),)

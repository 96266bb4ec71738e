"""A plan after every phase: what the job book is written from."""

from planlang.acoustics.model import Acoustics
from planlang.geometry.model import Layout, RoomGeometry
from planlang.hardware.model import Loads
from planlang.materials.model import Materials
from planlang.plan.model import Plan
from planlang.requirements.model import Held
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record


@record
class CompiledPlan:
    """The results of all phases, with the warnings and the failures that go into the book.

    A failure is an error that doesn't stop the book: a load that doesn't hold, for which every page is marked.
    `held` are the plan's requirements; `alternatives` the plan with each other option ('' for none), None where that
    option has errors. `estimated` is None where the plan is only checked. `drawn` is where all would hang as drawn:
    None where no survey found anything, or where nothing can be placed as drawn.
    """

    plan: Plan
    room: RoomGeometry
    layout: Layout
    materials: Materials
    estimated: Acoustics | None
    loads: Loads
    warnings: tuple[Diagnostic, ...]
    failures: tuple[Diagnostic, ...] = ()
    held: tuple[Held, ...] = ()
    drawn: Layout | None = None
    alternatives: tuple[tuple[str, "CompiledPlan | None"], ...] = ()

    @property
    def acoustics(self) -> Acoustics:
        """The acoustic estimate, which every plan has that a book is written from."""
        assert self.estimated is not None, "a plan that is only checked has no estimate"
        return self.estimated

"""A plan after every phase: what the job book is written from."""

from dataclasses import dataclass

from planlang.acoustics.model import Acoustics
from planlang.geometry.model import Layout, RoomGeometry
from planlang.hardware.model import Loads
from planlang.materials.model import Materials
from planlang.plan.model import Plan
from planlang.syntax.diagnostics import Diagnostic


@dataclass(frozen=True, slots=True)
class CompiledPlan:
    """The results of all phases, with the warnings and the failures that go into the book.

    A failure is an error that doesn't stop the book: a load that doesn't hold, for which every page is marked.
    """

    plan: Plan
    room: RoomGeometry
    layout: Layout
    materials: Materials
    acoustics: Acoustics
    loads: Loads
    warnings: tuple[Diagnostic, ...]
    failures: tuple[Diagnostic, ...] = ()

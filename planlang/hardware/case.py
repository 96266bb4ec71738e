"""What one array's load path is checked against: where it hangs, over whom, and how a step is judged."""

from typing import Literal

from planlang.geometry.model import HangPoint, PlacedPanel, RailRun, Surface
from planlang.geometry.words import singular
from planlang.hardware import messages, words
from planlang.hardware.factors import MARKED_FACTOR
from planlang.hardware.model import Status, Step
from planlang.plan.figure import Figure
from planlang.plan.model import Array
from planlang.plan.safety import SafetyRules
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record

Origin = Literal["code formula", "maker data", "assumed", "unknown"]


@record
class Case:
    """One array on its surface, with the rails that serve it; `neighbours` are all hang points on that surface.

    `caught` is the case of a second support: it carries only after the first support has let go.
    """

    array: Array
    surface: Surface
    panels: tuple[PlacedPanel, ...]
    rails: tuple[RailRun, ...]
    neighbours: tuple[HangPoint, ...]
    overhead: bool
    tape: TapeStyle
    rules: SafetyRules
    caught: bool = False

    @property
    def pitch(self) -> float:
        """Angle of a sloping ceiling from level, degrees; 0 for flat ceilings and walls."""
        return self.surface.pitch_deg if self.surface.kind == "ceiling" else 0.0

    @property
    def link_pitch(self) -> float:
        """Angle between the links and what is square to the surface, degrees; a second support always hangs plumb."""
        plumb = self.caught or not (self.array.hang.square or self.array.hang.fixed)
        return self.pitch if plumb else 0.0

    @property
    def eye_pitch(self) -> float:
        """Angle between the links and what is square to the panel's back, degrees."""
        tilt = self.panels[0].tilt
        return self.link_pitch if tilt is None else tilt.slant_deg

    @property
    def member_word(self) -> str:
        """What one member behind the surface is called."""
        return singular(self.surface.members.word) if self.surface.members else "member"

    @property
    def points(self) -> tuple[HangPoint, ...]:
        """All hang points of the array."""
        return tuple(point for panel in self.panels for point in panel.points)

    @property
    def lining_depth(self) -> float:
        """Thickness of the lining that a fixing passes on its way to a member, mm; 0 where members are exposed."""
        if self.surface.exposed or self.surface.lining is None:
            return 0.0
        return float(self.surface.lining.thickness)

    @property
    def design_factor(self) -> float:
        """The design factor against breaking: that over people, or that on hardware."""
        return float(self.rules.people_factor if self.overhead and not self.caught else self.rules.hardware_factor)

    @property
    def more(self) -> float:
        """The factor for tolerance and damp on every mass."""
        return 1 + float(self.rules.tolerance + self.rules.damp)

    @property
    def usable(self) -> float:
        """What may be used of a marked working load or a code value: half over people."""
        return min(MARKED_FACTOR / self.design_factor, 1.0)

    @property
    def usable_words(self) -> str:
        """How much of a capacity is used, for a step's own words; empty for all of it."""
        if self.usable == 1:
            return ""
        if self.design_factor == 2 * MARKED_FACTOR:
            return ", half of it over people"
        return f", {self.usable:.2f} of it for a design factor of {self.design_factor:g}"


@record
class Checked:
    """A step with what is to be said about it."""

    step: Step
    findings: tuple[Diagnostic, ...] = ()


UNSEEN = (
    *("assum", "guess", "presum", "suppos", "believ", "probabl", "likely", "maybe", "perhaps", "estimat", "approx"),
    *("taken as", "to be ", "typical", "usual", "unknown", "not known", "from memory", "not seen", "unseen"),
    *("rule of thumb", "hearsay", "no source", "tbc", "tbd", "?"),
)


def is_assumed(source: str) -> bool:
    """Say whether a source is none: empty, or in its own words assumed, a guess, or still to be seen."""
    said = source.lower()
    return not said.strip() or any(word in said for word in UNSEEN)


def named(case: Case, step_words: str) -> str:
    """Return the words of a step, which of a second support say that they are."""
    return f"second support: {step_words}" if case.caught else step_words


def unknown(step_words: str, demand: Figure, *findings: Diagnostic) -> Checked:
    """Return a step whose capacity nobody knows."""
    return Checked(Step(step_words, None, "unknown", demand, None, "not verified"), findings)


def judged(case: Case, step_words: str, allowed: Figure, origin: Origin, demand: Figure, mend: str) -> Checked:
    """Return a step with its ratio and status; what is assumed can fail but never holds."""
    step_words = named(case, step_words)
    ratio = float(allowed.value) / float(demand.value)
    status: Status = "fails" if ratio < 1 else "holds" if origin in ("code formula", "maker data") else "not verified"
    step = Step(step_words, allowed, origin, demand, ratio, status)
    if status != "fails":
        return Checked(step)
    asked = words.asked(float(demand.value), case.tape)
    finding = messages.overloaded(case.array, step_words, asked, words.allowed(float(allowed.value), case.tape), mend)
    return Checked(step, (finding,))

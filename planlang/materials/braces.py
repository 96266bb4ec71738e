"""Where the braces of a framed absorber stand, and whether every batt joint lands on one.

Stated braces come first. A batt joint that one of them bears needs no brace of its own; neither does the middle of the
panel when a brace stands there or nearly so (less than half a brace's width clear). Two braces in one place are one.
"""

from dataclasses import field
from fractions import Fraction

from planlang.materials import messages
from planlang.plan.panel import Braces, FramedAbsorber
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record, workpiece

LEAST_BEARING = Fraction(10)
"""Least width of brace, mm, under each of two batts that meet on it. Rule of this project, no source."""


@record
class BraceLay:
    """Centre lines from the outside of the start end, in order, and what was merged, in words."""

    centres: tuple[Fraction, ...]
    remarks: tuple[str, ...]


@workpiece
class _Bench:
    """The braces placed so far, with what was found on the way."""

    panel: FramedAbsorber
    braces: Braces
    tape: TapeStyle
    centres: list[Fraction] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    findings: list[Diagnostic] = field(default_factory=list)

    @property
    def breadth(self) -> Fraction:
        return self.braces.breadth

    def nearest(self, position: Fraction) -> Fraction | None:
        return min(self.centres, key=lambda centre: abs(centre - position), default=None)

    def add(self, centre: Fraction, mend: str) -> None:
        """Place a brace and report the neighbour it overlaps or crowds."""
        other = self.nearest(centre)
        self.centres.append(centre)
        if other is None:
            return
        gap = abs(other - centre) - self.breadth
        pair = (other, centre)
        if gap < 0:
            self.findings.append(
                messages.braces_overlap(self.panel, self.braces, pair, -gap, mend=mend, tape=self.tape)
            )
        elif gap < self.breadth / 2:
            self.findings.append(messages.braces_close(self.panel, self.braces, pair, gap, mend=mend, tape=self.tape))


def bears(centre: Fraction, joint: Fraction, braces: Braces) -> bool:
    """True when a joint lies within a brace, so that both batts rest on it."""
    return abs(centre - joint) < braces.breadth / 2


def place_braces(panel: FramedAbsorber, joints: tuple[Fraction, ...], tape: TapeStyle) -> Outcome[BraceLay]:
    """Place the braces of a panel whose batts meet at `joints` (mm from the outside of the start end).

    Errors: `brace-outside`, `braces-overlap`, `joint-no-brace`; warnings: `braces-close`, `joint-thin-bearing`.
    """
    if panel.braces is None:
        missing = tuple(messages.joint_no_brace(panel, joint, None, tape) for joint in joints)
        return Outcome(BraceLay((), ()), missing)
    bench = _Bench(panel, panel.braces, tape)
    _place_stated(bench)
    if panel.braces.at_batt_joints:
        _place_at_joints(bench, joints)
    if panel.braces.at_mid_length:
        _place_at_middle(bench)
    _check_ends(bench)
    _check_joints(bench, joints)
    return Outcome(BraceLay(tuple(sorted(bench.centres)), tuple(bench.remarks)), tuple(bench.findings))


def _place_stated(bench: _Bench) -> None:
    for centre in sorted(set(bench.braces.positions)):
        bench.add(centre, "leave one of them out, or move them apart")


def _place_at_joints(bench: _Bench, joints: tuple[Fraction, ...]) -> None:
    for joint in joints:
        near = bench.nearest(joint)
        where = on_tape(joint, bench.tape)
        if near is not None and bears(near, joint, bench.braces):
            if near != joint:
                bench.remarks.append(f"the brace at {on_tape(near, bench.tape)} bears the batt joint at {where}")
            continue
        bench.add(joint, f"leave out the one that isn't at the batt joint: one at {where} does for both")


def _place_at_middle(bench: _Bench) -> None:
    middle = bench.panel.length / 2
    near = bench.nearest(middle)
    if near is not None and 2 * abs(near - middle) < 3 * bench.breadth:
        if near != middle:
            serves = on_tape(near, bench.tape)
            bench.remarks.append(f"the brace at {serves} serves for the one at mid-length")
        return
    bench.centres.append(middle)


def _check_ends(bench: _Bench) -> None:
    first = bench.panel.frame.sheet.thickness + bench.breadth / 2
    reach = (first, bench.panel.length - first)
    for centre in bench.centres:
        if not reach[0] <= centre <= reach[1]:
            bench.findings.append(messages.brace_outside(bench.panel, bench.braces, centre, reach, bench.tape))


def _check_joints(bench: _Bench, joints: tuple[Fraction, ...]) -> None:
    for joint in joints:
        near = bench.nearest(joint)
        if near is None or not bears(near, joint, bench.braces):
            bench.findings.append(messages.joint_no_brace(bench.panel, joint, near, bench.tape))
            continue
        bearing = bench.breadth / 2 - abs(near - joint)
        if bearing < min(LEAST_BEARING, bench.breadth / 2):
            finding = messages.joint_thin_bearing(bench.panel, bench.braces, joint, near, bearing, tape=bench.tape)
            bench.findings.append(finding)

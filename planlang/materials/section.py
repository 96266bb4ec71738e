"""The section through a framed absorber, front to back, and whether it fits the depth of the frame."""

from fractions import Fraction

from planlang.materials import messages
from planlang.materials.model import StackLine
from planlang.plan.panel import Braces, FramedAbsorber
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome

LEFT = "left to the back"


def brace_depth(braces: Braces | None) -> Fraction:
    """How much of the depth a brace takes: its thickness when flat, its width on edge; 0 without braces."""
    if braces is None:
        return Fraction(0)
    return braces.sheet.thickness if braces.lie == "flat" else braces.width


def front_of_core(panel: FramedAbsorber) -> Fraction:
    """How far behind the front edge of the frame the core begins, mm."""
    return panel.braces.setback + brace_depth(panel.braces) if panel.braces else Fraction(0)


def stack_up(panel: FramedAbsorber, tape: TapeStyle) -> Outcome[tuple[StackLine, ...]]:
    """List the layers with their running depth from the front; a last line says what is left to the back.

    Errors, one at most: `brace-on-edge` (a brace on edge, and the batt doesn't pass behind it), `brace-too-thick` (a
    flat brace as thick as the frame's sheet would leave room, or this one fills the depth), `batt-proud` (otherwise).
    Warning: `brace-at-cloth`.
    """
    lines = _layers(panel)
    total = lines[-1].depth
    findings: list[Diagnostic] = []
    if panel.braces and panel.braces.setback == 0:
        findings.append(messages.brace_at_cloth(panel, panel.braces))
    room = panel.front_at + panel.frame_depth
    if total > room:
        findings.append(_too_deep(panel, lines, tape))
    elif total < room:
        lines = (*lines, StackLine(LEFT, room - total, room))
    if panel.board:
        thickness = panel.board.sheet.thickness
        lines = (*lines, StackLine(f"back board, {panel.board.sheet.words}", thickness, lines[-1].depth + thickness))
    if panel.gap:
        thickness = panel.gap.sheet.thickness
        lines = (*lines, StackLine(f"shadow gap, {panel.gap.sheet.words}", thickness, lines[-1].depth + thickness))
    return Outcome(lines, tuple(findings))


def _layers(panel: FramedAbsorber) -> tuple[StackLine, ...]:
    braces, batt = panel.braces, panel.core.batt
    layers: list[tuple[str, Fraction]] = []
    if panel.facing:
        layers.append((f"facing, {panel.facing.sheet.words}", panel.facing.sheet.thickness))
    if braces:
        if braces.setback:
            layers.append(("set back from the front", braces.setback))
        lie = "flat" if braces.lie == "flat" else "on edge"
        layers.append((f"brace, {lie}", brace_depth(braces)))
    layers += [(batt.words, batt.thickness)] * panel.core.layers
    lines: list[StackLine] = []
    depth = Fraction(0)
    for words, thickness in layers:
        depth += thickness
        lines.append(StackLine(words, thickness, depth))
    return tuple(lines)


def _too_deep(panel: FramedAbsorber, lines: tuple[StackLine, ...], tape: TapeStyle) -> Diagnostic:
    total = lines[-1].depth
    room = panel.frame_depth
    over = total - panel.front_at - room
    sums = " + ".join(f"{line.words} {on_tape(line.thickness, tape)}" for line in lines)
    stack = f"{sums} = {on_tape(total, tape)}"
    braces = panel.braces
    batts = panel.core.layers * panel.core.batt.thickness
    if braces is None or batts > room:
        return messages.batt_proud(panel, stack, over, tape)
    if braces.lie == "edge":
        return messages.brace_on_edge(panel, braces, stack, over, tape)
    as_thick_as_frame = braces.setback + panel.frame.sheet.thickness + batts
    if as_thick_as_frame <= room or front_of_core(panel) >= room:
        return messages.brace_too_thick(panel, braces, stack, over, tape)
    return messages.batt_proud(panel, stack, over, tape)

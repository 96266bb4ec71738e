"""A framed absorber, resolved: members, braces, core, cloth, section, fastenings, steps and masses."""

from dataclasses import replace

from planlang.materials import messages
from planlang.materials.braces import place_braces
from planlang.materials.cores import lay_core
from planlang.materials.covering import cloth_pieces
from planlang.materials.fastenings import fastenings, glue_metres
from planlang.materials.masses import panel_masses
from planlang.materials.model import PanelBuild, Setting
from planlang.materials.parts import brace_parts, frame_parts, inside, joint_words, opening_words
from planlang.materials.section import stack_up
from planlang.materials.steps import build_steps
from planlang.plan.panel import FramedAbsorber
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic, Outcome


def resolve_framed(panel: FramedAbsorber, marks: tuple[str, ...], tape: TapeStyle) -> Outcome[PanelBuild | None]:
    """Resolve one panel type for the panels with these marks; None when nothing is left inside its frame.

    Errors: `panel-too-small`, `back-board-gone`, `core-seam`, `joint-no-brace`, `brace-outside`, `braces-overlap`,
    `brace-on-edge`, `brace-too-thick`, `batt-proud`. Warnings: `core-seam`, `core-sliver`, `braces-close`,
    `joint-thin-bearing`, `brace-at-cloth`.
    """
    clear = inside(panel)
    if min(clear) <= 0 or min(clear) + panel.core.fit <= 0:
        return Outcome(None, (messages.panel_too_small(panel, clear, tape),))
    if panel.board and min(panel.width, panel.length) <= 2 * panel.board.less:
        return Outcome(None, (messages.back_board_gone(panel, panel.board, tape),))
    core = lay_core(panel, len(marks), tape)
    section = stack_up(panel, tape)
    braces = place_braces(_as_mended(panel, section.diagnostics), core.value.joints, tape)
    count = len(braces.value.centres)
    parts = frame_parts(panel, len(marks), tape) + brace_parts(panel, count, len(marks), tape)
    pieces = core.value.pieces + cloth_pieces(panel, len(marks), tape)
    build = PanelBuild(
        type=panel,
        panels=marks,
        parts=parts,
        pieces=pieces,
        braces=braces.value.centres,
        joints=core.value.joints,
        stack=section.value,
        hardware=((panel.hung_by.hardware.words, panel.hung_by.count),) if panel.hung_by else (),
        fastenings=fastenings(panel, count, tape),
        steps=(),
        masses=panel_masses(panel, parts, pieces, braces.value.centres),
        glue_m=glue_metres(panel, count),
        traits=_traits(panel, tape),
        settings=_settings(panel),
    )
    build = replace(build, steps=build_steps(panel, build, core.value.turned, tape))
    return Outcome(build, core.diagnostics + braces.diagnostics + section.diagnostics)


def _settings(panel: FramedAbsorber) -> tuple[Setting, ...]:
    if panel.frame.joint != "mitre":
        return ()
    from planlang.materials.settings import frame_settings  # noqa: PLC0415 - few frames are mitred

    return frame_settings(panel.mark, panel.frame)


def _traits(panel: FramedAbsorber, tape: TapeStyle) -> tuple[tuple[str, str], ...]:
    frame = ("Frame", f"{panel.frame.sheet.words}, {joint_words(panel.frame)}")
    if panel.facing is None:
        return (frame,)
    return frame, ("Facing", f"{panel.facing.sheet.words}, {opening_words(panel, panel.facing, tape)}")


def _as_mended(panel: FramedAbsorber, findings: tuple[Diagnostic, ...]) -> FramedAbsorber:
    """Braces that have to be laid flat anyway are judged flat, so that one mistake gives one message."""
    if panel.braces and any(finding.code == "brace-on-edge" for finding in findings):
        return replace(panel, braces=replace(panel.braces, lie="flat"))
    return panel

"""Where on a panel its eyes or cleats are."""

from fractions import Fraction
from string import ascii_lowercase
from typing import TYPE_CHECKING

from planlang.geometry import messages
from planlang.geometry.model import Box
from planlang.geometry.plane import evenly
from planlang.plan.model import Array
from planlang.plan.panel import Cleats, Eyes
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic

if TYPE_CHECKING:
    from planlang.geometry.pose import Pose
    from planlang.geometry.tilt import Tilt

Place = tuple[Fraction, Fraction]


def hook_faults(array: Array, overhead: bool, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """What keeps an array's panels from having hang points at all: at most one finding.

    Findings: panel-without-hooks, cleats-overhead, eyes-not-paired, hooks-past-middle.
    """
    hooks, panel = array.panel.hung_by, array.panel
    if hooks is None or isinstance(hooks, Eyes) != (array.hang.by == "eyes"):
        return (messages.panel_without_hooks(array),)
    if isinstance(hooks, Eyes):
        if not panel.eyes_in_line and (hooks.count < 4 or hooks.count % 2):
            return (messages.eyes_not_paired(array, hooks.count),)
        length = panel.length
    else:
        if overhead:
            return (messages.cleats_overhead(array),)
        length, height = (panel.width, panel.length) if array.upright else (panel.length, panel.width)
        if not 0 <= hooks.below_top <= height:
            return (messages.hooks_past_middle(array, hooks.below_top, height, hooks.at, tape),)
    if hooks.inset < 0 or 2 * hooks.inset >= length:
        return (messages.hooks_past_middle(array, hooks.inset, length, hooks.at, tape),)
    return ()


def points_on(array: Array, box: Box, pose: "Pose | None" = None, tilt: "Tilt | None" = None) -> tuple[Place, ...]:
    """The hang points of a panel whose hooks have no fault, (across, up) on the surface, in the order of their names.

    One that is turned, or is no rectangle, has its box at the rectangle round it and lies as its `pose` says; of one
    that hangs tilted they are plumb over its eyes.
    """
    if tilt is not None:
        return tilt.anchors(box, on_face(array, tilt.face))
    if pose is None:
        return on_face(array, box)
    from planlang.geometry.hanging.posed import points_of  # noqa: PLC0415 - few plans have such panels

    if array.panel.outline is None:
        return pose.turn_round(on_face(array, pose.face), box.left, box.lower)
    return pose.put(points_of(array.panel), box.left, box.lower)


def on_face(array: Array, box: Box) -> tuple[Place, ...]:
    """The hang points of a panel whose hooks have no fault, (across, up) on the surface, in the order of their names.

    Named a, b, c ... round the panel from its lower left, against the clock: for four a is lower left, b lower right,
    c upper right, d upper left. Cleats: from left to right.
    """
    hooks = array.panel.hung_by
    if isinstance(hooks, Cleats):
        level = box.upper - hooks.below_top
        return tuple((at, level) for at in evenly(box.left + hooks.inset, box.right - hooks.inset, hooks.count))
    if hooks is None:
        return ()
    rail = array.panel.rail.thickness / 2 if array.panel.rail else Fraction(0)
    if array.panel.eyes_in_line:
        return _in_line(array, box, hooks)
    pairs = hooks.count // 2
    if array.upright:
        along = evenly(box.lower + hooks.inset, box.upper - hooks.inset, pairs)
        left, right = box.left + rail, box.right - rail
        first, *middle, last = along
        rising = [(right, up) for up in along]
        falling = [(left, up) for up in (last, *reversed(middle))]
        return ((left, first), *rising, *falling)
    along = evenly(box.left + hooks.inset, box.right - hooks.inset, pairs)
    lower = [(across, box.lower + rail) for across in along]
    upper = [(across, box.upper - rail) for across in reversed(along)]
    return (*lower, *upper)


def _in_line(array: Array, box: Box, eyes: Eyes) -> tuple[Place, ...]:
    """Eyes along the middle of the box, from its lower or its left end."""
    if array.upright:
        middle = (box.left + box.right) / 2
        return tuple((middle, up) for up in evenly(box.lower + eyes.inset, box.upper - eyes.inset, eyes.count))
    middle = (box.lower + box.upper) / 2
    return tuple((across, middle) for across in evenly(box.left + eyes.inset, box.right - eyes.inset, eyes.count))


def letter(index: int) -> str:
    """a, b ... z, then aa, ab ..."""
    turn, place = divmod(index, len(ascii_lowercase))
    return (letter(turn - 1) if turn else "") + ascii_lowercase[place]

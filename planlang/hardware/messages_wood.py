"""The words of findings on fixings in wood: threads that come out, heads that pull through, fixings too close."""

from planlang.hardware import words
from planlang.plan.model import Array
from planlang.plan.stock import Hardware
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic, Severity


def _severity(overhead: bool) -> Severity:
    return Severity.ERROR if overhead else Severity.WARNING


def thread_comes_out(
    array: Array, piece: Hardware, member: str, out: float, leans: bool, tape: TapeStyle
) -> Diagnostic:
    """A thread is longer than the member that it goes into has room for."""
    where = "at its side, or nearer to it than is right" if leans else "on its far side"
    return Diagnostic(
        "thread-comes-out",
        f"'{array.name}': {words.length_up(out, tape)} of the thread of '{piece.name}', tip and all, comes out of the "
        f"{member} {where}; what is out holds nothing, and may meet a cable or split the wood",
        piece.at,
        f"take one with {words.length_up(out, tape)} less thread, or a stouter {member}",
        Severity.WARNING,
    )


def head_not_stated(screw: Hardware, overhead: bool) -> Diagnostic:
    """A screw that holds a rail by its head, and how wide that is isn't known."""
    return Diagnostic(
        "head-not-stated",
        f"'{screw.name}' ({screw.words}) holds a rail by its head, and the diameter of that is not stated; a small one "
        "is pulled through",
        screw.at,
        "measure it and state it, such as: head 12 mm",
        _severity(overhead),
    )


def fixings_too_close(
    array: Array, points: tuple[str, str], member: str, apart: float, wanted: float, more: int, tape: TapeStyle,
    overhead: bool,
) -> Diagnostic:  # fmt: skip
    """Two fixings so close in one member that they may split it."""
    others = f", and {more} more such pairs" if more else ""
    return Diagnostic(
        "fixings-too-close",
        f"'{array.name}': {points[0]} and {points[1]} are {words.length_down(apart, tape)} apart along {member}; "
        f"{words.length_up(wanted, tape)} is wanted, or the wood splits{others}",
        array.hang.at,
        f"move the panels {words.length_up(wanted - apart, tape)} further apart",
        _severity(overhead),
    )


def frame_too_small(
    array: Array, eye: Hardware, what: str, has: float, wanted: float, tape: TapeStyle, overhead: bool
) -> Diagnostic:
    """The frame has no room for the bolts of an eye."""
    return Diagnostic(
        "frame-too-small",
        f"'{array.panel.name}': the bolts of '{eye.name}' have {words.length_down(has, tape)} {what}; "
        f"{words.length_up(wanted, tape)} is the least that they need round them",
        array.panel.hung_by.at if array.panel.hung_by else array.panel.at,
        "take thinner bolts, a deeper frame, or set the eyes further in",
        _severity(overhead),
    )


def eye_on_nothing(array: Array, eye: Hardware, overhead: bool) -> Diagnostic:
    """A panel without a frame that eyes could be bolted to."""
    return Diagnostic(
        "eye-on-nothing",
        f"'{array.panel.name}' ({array.panel.kind}) has no frame that '{eye.name}' could be bolted to, so what holds "
        "it there is not known",
        array.panel.hung_by.at if array.panel.hung_by else array.panel.at,
        "take a panel with a frame, or hang it on cleats",
        _severity(overhead),
    )


def not_verified(array: Array, step: str) -> Diagnostic:
    """A step over people that nobody can verify, and that nothing else has said."""
    return Diagnostic(
        "not-verified",
        f"'{array.name}': what {step} may carry is not known; it hangs over people",
        array.hang.at,
        "hang it in a way that this compiler can check, or ask a structural engineer",
    )

"""What an array may say of its hanging beside `hang` and `fix`: sharing, what is added, a second support."""

from __future__ import annotations

from fractions import Fraction

from planlang.plan import messages
from planlang.plan.build.names import Names, Unknown, all_of, maybe_value, span_of_value, value
from planlang.plan.build.stock import build_hardware
from planlang.plan.entry import Entry
from planlang.plan.safety import Added, SecondSupport, ShareRule

STEEPEST_LEAN = 45


def build_lean(names: Names, hang: Entry, by: str) -> Fraction:
    """How far the links lean from plumb, deg; links that lean more than 45 deg are refused."""
    lean: Fraction = maybe_value(hang, "lean", Fraction(0))
    if lean and by != "eyes":
        names.sink.append(messages.disagree(hang.span, "cleats have no links that could lean", "take `leaning` out"))
        raise Unknown
    if lean > STEEPEST_LEAN:
        rule = f"links may lean {STEEPEST_LEAN} deg from plumb at most: beyond it they pull more than they carry"
        names.sink.append(messages.out_of_range(span_of_value(hang, "lean"), rule))
        raise Unknown
    return lean


def build_share(names: Names, entry: Entry | None) -> tuple[ShareRule, str]:
    """The rule by which the points share the weight; another one than the worst case needs a reason."""
    if entry is None:
        return "envelope", ""
    rule: ShareRule = value(entry, "rule")
    reason: str = maybe_value(entry, "reason", "")
    if rule != "envelope" and not reason.strip():
        names.sink.append(messages.clause_missing(entry.span, "share", '"why less than the worst case may be counted"'))
        raise Unknown
    return rule, reason


def build_added(entry: Entry) -> Added:
    """One thing that is put on each panel on site."""
    if entry.faulty:
        raise Unknown
    return Added(
        at=entry.span,
        words=value(entry, "what"),
        mass_kg=value(entry, "mass"),
        across=value(entry, "across"),
        up=value(entry, "up"),
        below_front=value(entry, "below"),
    )


def build_second_support(names: Names, entry: Entry | None) -> SecondSupport | None:
    """The second support of each panel, if the plan states one."""
    if entry is None:
        return None
    tie, eye, anchor = all_of(
        lambda: names.build(value(entry, "tie"), "hardware", build_hardware),
        lambda: names.build(value(entry, "eye"), "hardware", build_hardware),
        lambda: names.build(value(entry, "anchor"), "hardware", build_hardware),
    )
    return SecondSupport(
        at=entry.span, count=value(entry, "count"), tie=tie, eye=eye, anchor=anchor, slack=value(entry, "slack")
    )

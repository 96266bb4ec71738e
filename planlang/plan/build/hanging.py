"""What an array may say of its hanging beside `hang` and `fix`: sharing, what is added, a second support."""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from typing import Any

from planlang.plan import messages
from planlang.plan.build.names import Names, Unknown, all_of, maybe, maybe_value, one, refused, span_of_value, value
from planlang.plan.build.panels import build_panel_of
from planlang.plan.build.stock import build_hardware
from planlang.plan.entry import Entry
from planlang.plan.safety import Added, SecondSupport, ShareRule, UpSlopeTie

STEEPEST_LEAN = 45
PIECES_OF_TIE = ("tie", "eye", "plate", "screw")


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
        at=entry.span,
        count=value(entry, "count"),
        tie=tie,
        eye=eye,
        anchor=anchor,
        slack=value(entry, "slack"),
        beside=maybe_value(entry, "beside"),
    )


def build_end_grain(names: Names, fix: Entry) -> bool:
    """Whether the fixings go into the ends of the members; a rail and a lining have none that they could meet."""
    if "end" in fix.values and value(fix, "into") in ("lining", "rails"):
        message = f"`into {value(fix, 'into')}` meets no end of a member"
        raise refused(names, fix, message, "take `in their end grain` out")
    return "end" in fix.values


def build_square(names: Names, hang: Entry, entry: Entry) -> bool:
    """Whether the links hang square to the slope: those of eyes, which then neither lean nor share by a chosen rule."""
    tie, share = maybe(entry, "up-slope-tie"), maybe(entry, "share")
    if "square" not in hang.values:
        if tie is not None:
            message = "links that hang plumb hold a panel up a slope by themselves; a tie would pull it aside"
            raise refused(names, tie, message, "write `hang …, square to the slope`, or take the tie out")
        return False
    if value(hang, "by") != "eyes":
        raise refused(names, hang, "cleats have no links that could hang square", "take `square to the slope` out")
    if "lean" in hang.values:
        message = "links lean from plumb or hang square to the slope, not both"
        raise refused(names, hang, message, "take one of them out")
    if share is not None and value(share, "rule") != "envelope":
        message = f"sharing by {value(share, 'rule')} is for plumb links; these hang square to the slope"
        raise refused(names, share, message, "take `share` out")
    return True


def build_fixed(names: Names, hang: Entry, entry: Entry) -> bool:
    """Whether stand-offs hold the panel to the slope: those of eyes, screwed through into members."""
    if "fixed" not in hang.values:
        return False
    fix, share = maybe(entry, "fix"), maybe(entry, "share")
    if value(hang, "by") != "eyes":
        raise refused(
            names, hang, "cleats are for walls; nothing fixes them to a slope", "take `fixed to the slope` out"
        )
    if "square" in hang.values or "lean" in hang.values:
        message = "stand-offs are fixed to the slope; they neither lean nor hang square to it"
        raise refused(names, hang, message, "take one of them out")
    if share is not None and value(share, "rule") != "envelope":
        message = f"sharing by {value(share, 'rule')} is for links; these are stand-offs"
        raise refused(names, share, message, "take `share` out")
    if fix is not None and (value(fix, "into") in ("lining", "rails") or "end" in fix.values):
        message = "stand-offs are checked where they are screwed into the side of members alone"
        raise refused(names, fix, message, "fix into the members, or let the panel hang from links")
    return True


def build_up_slope_tie(names: Names, entry: Entry | None) -> UpSlopeTie | None:
    """What keeps each panel from sliding down, if the plan states it."""
    if entry is None:
        return None
    pieces = [partial(names.build, value(entry, word), "hardware", build_hardware) for word in PIECES_OF_TIE]
    tie, eye, plate, screw = all_of(*pieces)
    count, screws = (_at_least_one(names, entry, word) for word in ("count", "screws"))
    return UpSlopeTie(
        at=entry.span,
        count=count,
        tie=tie,
        eye=eye,
        plate=plate,
        screw=screw,
        screws=screws,
        reach=value(entry, "reach"),
    )


def _at_least_one(names: Names, entry: Entry, word: str) -> int:
    count: int = value(entry, word)
    if count < 1:
        names.sink.append(messages.out_of_range(span_of_value(entry, word), "at least one is needed"))
        raise Unknown
    return count


def build_unequal(names: Names, hang: Entry, entry: Entry) -> tuple[Fraction, Any]:
    """How much lower the far row of eyes hangs, and which row that is: of plain rectangles on plumb links alone."""
    if "more" not in hang.values:
        return Fraction(0), ""
    more: Fraction = value(hang, "more")
    if more <= 0:
        names.sink.append(
            messages.out_of_range(span_of_value(hang, "more"), "the lower row hangs lower by some length")
        )
        raise Unknown
    message, mend = _beside_unequal(hang, entry)
    if message:
        raise refused(names, hang, message, mend)
    stated = one(entry, "panel")
    panel = build_panel_of(names, stated)
    if panel.outline is not None or "below" in stated.values:
        raise refused(names, hang, "a panel with an outline of its own hangs by equal drops", OUT)
    if panel.eyes_in_line:
        message = "a baffle hangs by equal drops: its one row of eyes is not held against tilting"
        raise refused(names, hang, message, OUT)
    return more, value(hang, "row")


OUT = "take `more` out, so that all drops are equal"


def _beside_unequal(hang: Entry, entry: Entry) -> tuple[str, str]:
    """What an array says that is not reckoned for panels on unequal drops, and what to write instead; mostly none."""
    share, turned, placed, fix = (maybe(entry, word) for word in ("share", "turned", "place", "fix"))
    message, mend = "", OUT
    if value(hang, "by") != "eyes":
        message, mend = "cleats have no links whose drops could differ", "take it out"
    elif any(word in hang.values for word in ("square", "fixed", "lean")):
        message, mend = "unequal drops are for links that hang plumb", "take one of them out"
    elif maybe(entry, "second-support") is not None:
        message = "where a tilted panel would hang from its second support is not reckoned"
    elif share is not None and value(share, "rule") != "envelope":
        message, mend = f"sharing by {value(share, 'rule')} is for links that are alike", "take `share` out"
    elif turned is not None and maybe_value(turned, "turn"):
        message = "a panel that is turned by an angle hangs by equal drops"
    elif fix is not None and value(fix, "into") == "rails":
        message, mend = "rails are checked under equal drops alone", "fix into the members, or take `more` out"
    elif placed is not None and value(placed, "rule") == "reflections":
        message, mend = "a tilted panel doesn't reflect where its place was reckoned", "place it by another rule"
    return message, mend

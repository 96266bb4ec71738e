"""Arrays: hanging, fixing, clearances. How they are placed is in `placement.py`."""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from typing import Any

from planlang.plan import messages
from planlang.plan.build.hanging import (
    build_added,
    build_end_grain,
    build_fixed,
    build_lean,
    build_second_support,
    build_share,
    build_square,
    build_unequal,
    build_up_slope_tie,
)
from planlang.plan.build.names import Definition, Names, Unknown, all_of, maybe, maybe_value, nearest, one, value
from planlang.plan.build.panels import build_panel_of
from planlang.plan.build.placement import build_placement
from planlang.plan.build.sketch import Sketch
from planlang.plan.build.stated import build_made
from planlang.plan.build.stock import build_hardware, build_timber
from planlang.plan.entry import Entry
from planlang.plan.model import Array, Bays, Grid, Hang, Keep, Placement, Rail, Row
from planlang.plan.panel import Eyes, FramedAbsorber, PanelType, WrappedBoard
from planlang.plan.placement import Points
from planlang.plan.stock import Hardware
from planlang.plan.usual import END_DISTANCE_IN_SHANKS, END_DISTANCE_WORDS, OVERHANG, PLURALS
from planlang.syntax.span import Span


def build_array(names: Names, definition: Definition, room: Sketch) -> Array:
    """An array in a room."""
    entry = definition.entry
    surface, panel, placement, (upright, turn), keeps, mark, hang, made, second, tie, added = all_of(
        lambda: room.surfaces.one(value(one(entry, "on"), "surface")),
        lambda: build_panel_of(names, one(entry, "panel")),
        lambda: build_placement(names, entry, room),
        lambda: build_turned(names, one(entry, "turned"), definition),
        lambda: build_keeps(names, entry, room),
        lambda: value(entry, "mark"),
        lambda: build_hang(names, entry, room),
        lambda: build_made(names, entry),
        lambda: build_second_support(names, maybe(entry, "second-support")),
        lambda: build_up_slope_tie(names, maybe(entry, "up-slope-tie")),
        lambda: all_of(*(partial(build_added, part) for part in entry.all("adds"))),
    )
    return Array(
        at=definition.name.span,
        name=definition.name.text,
        mark=mark.text,
        panel=panel,
        surface=surface,
        placement=placement,
        upright=upright,
        turn=turn,
        top_below=build_top(names, entry, panel, placement, (upright, turn)),
        hang=hang,
        keeps=keeps[0],
        edge_clear=keeps[1],
        made=made,
        second_support=second,
        up_slope_tie=tie,
        added=tuple(added),
    )


def build_turned(names: Names, entry: Entry, definition: Definition) -> tuple[bool, Fraction]:
    """Whether the panel's length runs up the surface, and by how much it is turned then, degrees anticlockwise."""
    names.assume(entry, f"array {definition.name.text}")
    turn: Fraction = maybe_value(entry, "turn", Fraction(0))
    return value(entry, "way") == "up", turn if maybe_value(entry, "clock") == "anticlockwise" else -turn


def build_top(
    names: Names, entry: Entry, panel: PanelType, placement: Placement, lies: tuple[bool, Fraction]
) -> Fraction | None:
    """How far below a slope the tops of the panels stay that follow it; None where they don't."""
    stated = one(entry, "panel")
    below: Fraction | None = maybe_value(stated, "below")
    if below is None:
        return None
    framed = panel if isinstance(panel, FramedAbsorber) else None
    message, mend = "", "take `top` out"
    if panel.outline is not None:
        message = "a panel with an outline of its own doesn't follow a slope"
    elif not isinstance(panel, FramedAbsorber | WrappedBoard) or (framed and framed.facing):
        message = "only framed absorbers without a facing and board absorbers can be cut to a slope"
    elif framed is not None and framed.frame.joint != "mitre":
        message, mend = "corners that are not square need mitres", "write `mitre joints` in the panel's `frame`"
    elif not isinstance(placement, Grid | Row | Bays | Points):
        message, mend = "by this rule panels can't follow a slope", "place them in a row, a grid, in bays or at points"
    elif not lies[0] or lies[1]:
        message, mend = "panels follow a slope with their length up", "write `turned long side up`"
    if message:
        names.sink.append(messages.disagree(stated.span, message, mend))
        raise Unknown
    return below


# --- hanging and fixing -------------------------------------------------------------------------------------


def build_hang(names: Names, entry: Entry, room: Sketch) -> Hang:
    """How the panels hang, and what is fixed into what."""
    hang, fix = one(entry, "hang"), one(entry, "fix")
    names.assume(fix, "fixing")
    by: Any = value(hang, "by")
    _, link, anchor, (into, rail), (share, reason), (more, more_at) = all_of(
        lambda: check_hung_by(names, hang, entry, by),
        lambda: names.build(value(hang, "link"), "hardware", build_hardware) if by == "eyes" else None,
        lambda: names.build(value(fix, "anchor"), "hardware", build_hardware),
        lambda: build_into(names, fix, room, one(entry, "on")),
        lambda: build_share(names, maybe(entry, "share")),
        lambda: build_unequal(names, hang, entry),
    )
    return Hang(
        at=hang.span,
        by=by,
        link=link,
        anchor=anchor,
        into=into,
        rail=rail,
        drop=value(hang, "drop") if by == "eyes" else Fraction(0),
        screws_each=value(fix, "each"),
        lean_deg=build_lean(names, hang, by),
        share=share,
        share_reason=reason,
        snap=build_snap(names, fix),
        square=build_square(names, hang, entry),
        fixed=build_fixed(names, hang, entry),
        end_grain=build_end_grain(names, fix),
        more=more,
        more_at=more_at,
    )


def build_snap(names: Names, fix: Entry) -> Fraction:
    """How far panels may move to meet members; it makes sense only for what goes into members."""
    snap: Fraction = maybe_value(fix, "snap", Fraction(0))
    if snap and value(fix, "into") in ("lining", "rails"):
        message = f"panels snap to members; `into {value(fix, 'into')}` needs none under them"
        names.sink.append(messages.disagree(fix.span, message, "take `snap` out"))
        raise Unknown
    return snap


def check_hung_by(names: Names, hang: Entry, array: Entry, by: str) -> None:
    """The panel must have what it hangs by, and eyes need a drop.

    Raises:
        Unknown: it does not; that has been reported.
    """
    panel = build_panel_of(names, one(array, "panel"))
    has = "eyes" if isinstance(panel.hung_by, Eyes) else "cleats" if panel.hung_by else "neither eyes nor cleats"
    if has != by:
        message = f"the panel `{panel.name}` has {has}; `hang` says {by}"
        mend = f"hang it from its {has}" if panel.hung_by else f"add `{by}` to the panel"
        names.sink.append(messages.disagree(hang.span, message, mend))
        raise Unknown
    if by == "eyes" and "drop" not in hang.values:
        names.sink.append(messages.clause_missing(hang.span, "hang", "drop DISTANCE"))
        raise Unknown
    check_level(names, array, panel, by)
    if by == "cleats" and "drop" in hang.values:
        names.sink.append(messages.disagree(hang.span, "a panel on cleats has no drop", "take `drop` out"))
        raise Unknown


def check_level(names: Names, array: Entry, panel: PanelType, by: str) -> None:
    """Cleats hook on from above: their line has to be level.

    Raises:
        Unknown: it would not be; that has been reported.
    """
    turned = one(array, "turned")
    if by != "cleats" or turned.faulty:
        return
    if maybe_value(turned, "turn"):
        message, mend = "a panel on cleats hangs level: they hook on from above", "take the angle out"
    elif panel.outline is not None and value(turned, "way") != "up":
        message, mend = "the cleats of a panel with an `outline` are level when its long side runs up", "write `up`"
    else:
        return
    names.sink.append(messages.disagree(turned.span, message, mend))
    raise Unknown


def build_into(names: Names, fix: Entry, room: Sketch, on: Entry) -> tuple[Any, Rail | None]:
    """What the fixing goes into: members, a rail across them, or the lining."""
    into = value(fix, "into")
    if into != "rails" and "overhang" in fix.values:
        names.sink.append(messages.disagree(fix.span, f"`into {into}` has no rails that could end", "take it out"))
        raise Unknown
    if into == "lining":
        return "lining", None
    surface = value(on, "surface").text
    members = room.behind(surface) if surface in room.surfaces.known else None
    if into == "rails":
        if members == "":
            raise no_members(names, fix.span, surface, "rails span from member to member")
        timber = names.build(value(fix, "timber"), "timber", build_timber)
        if timber.section is None or timber.length is None:
            message = f"a rail needs the section and the stick length of `{timber.name}`"
            names.sink.append(messages.disagree(timber.at, message, "add `section 45 x 45` and `stick 3600`"))
            raise Unknown
        screw = names.build(value(fix, "screw"), "hardware", build_hardware)
        overhang = build_overhang(names, fix, screw)
        return "rail", Rail(at=fix.span, timber=timber, screw=screw, overhang=overhang)
    if members == "":
        raise no_members(names, fix.span, surface, f"`fix … into {into}` needs them")
    if members not in (into, None):
        message = f"behind `{surface}` are {members}, not {into}"
        names.sink.append(messages.disagree(fix.span, message, f"write `into {members}`"))
        raise Unknown
    return "members", None


def build_overhang(names: Names, fix: Entry, screw: Hardware) -> Fraction:
    """How far rails end past their last member: as stated, or the usual end distance of their screw."""
    stated: Fraction | None = maybe_value(fix, "overhang")
    if stated is not None:
        return stated
    if screw.shank is not None:
        taken, reason = (
            END_DISTANCE_IN_SHANKS * screw.shank,
            f"so that the end screw doesn't split them: {END_DISTANCE_WORDS}",
        )
    else:
        taken, reason = OVERHANG, f"the shank of `{screw.name}` is not stated; for 6 mm it is {END_DISTANCE_WORDS}"
    assumed = [(f"rails end {float(taken):g} mm past their last member", reason)]
    names.assume(Entry(fix.kind, fix.span, assumed=assumed), "rails")
    return taken


def no_members(names: Names, span: Span, surface: str, why: str) -> Unknown:
    """Report that nothing is known behind a surface."""
    mend = "say what is behind it: `lining … over joists 47 x 150 at 400 centres, first at 200`"
    names.sink.append(
        messages.disagree(span, f"no rafters, purlins, joists or studs are stated behind `{surface}`: {why}", mend)
    )
    return Unknown()


# --- clearances ---------------------------------------------------------------------------------------------


def build_keeps(names: Names, entry: Entry, room: Sketch) -> tuple[tuple[Keep, ...], Fraction]:
    """Clear distances from things and from the edges of the surface."""
    keeps: list[Keep] = []
    edge = Fraction(0)
    for part in entry.all("keep"):
        if part.faulty:
            raise Unknown
        for values in (part.values, *part.more):
            clear, of = values["clear"].what, values["of"].what
            if of.text == "edges":
                edge = max(edge, clear)
            elif of.text in PLURALS:
                keeps.append(Keep(at=of.span, distance=clear, kind=PLURALS[of.text], feature=""))
            elif of.text in room.things:
                keeps.append(Keep(at=of.span, distance=clear, kind="", feature=of.text))
            else:
                near = nearest(of.text, [*room.things, *PLURALS, "edges"])
                if near or room.all_things:
                    names.sink.append(messages.unknown_name(of.span, "thing in the room", of.text, near))
                raise Unknown
    return tuple(keeps), edge

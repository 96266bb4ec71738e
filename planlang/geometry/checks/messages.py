"""What the checks of placed panels say of zones, fixings and doors: one small function for each code."""

from fractions import Fraction

from planlang.geometry.model import PlacedPanel, Surface
from planlang.geometry.words import Worst, and_list, at_least, at_most
from planlang.plan.model import Array
from planlang.plan.room import Feature
from planlang.plan.stated import Allowance, Made, Space, Zone
from planlang.plan.stock import Hardware
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape
from planlang.syntax.diagnostics import Diagnostic, Severity
from planlang.syntax.span import Span


def panel_in_zone(worst: Worst, zone: Zone, array: Array, mend: str, tape: TapeStyle) -> Diagnostic:
    """Panels that cover what somebody has forbidden to cover."""
    into = f"lies in zone {zone.name}, all of {zone.surface}"
    if not zone.whole:
        into = f"reaches {at_least(worst.size, tape)} into zone {zone.name} on {zone.surface}"
    why = " and a panel keeps heat in" if zone.forbids == "heat" else ""
    message = f"{worst.name} {into}, where {zone.author} says no {zone.forbids}{why}{worst.and_others}"
    return Diagnostic("panel-in-zone", message, array.placement.at, f"{mend}, or ask {zone.author}",
                      also=((zone.name, zone.at),))  # fmt: skip


def hole_in_zone(worst: Worst, zone: Zone, array: Array, surface: Surface, tape: TapeStyle) -> Diagnostic:
    """Holes, or hang points, where somebody has forbidden them."""
    inside = f"in zone {zone.name}, all of {surface.name}"
    if not zone.whole:
        inside = f"{at_least(worst.size, tape)} inside zone {zone.name} on {surface.name}"
    message = (f"{worst.name} of '{array.name}' would be {inside}, where {zone.author} says no "
               f"{zone.forbids}{worst.and_others}")  # fmt: skip
    mend = "put it on another surface" if zone.whole else f"move '{array.name}' so that nothing is fixed there"
    return Diagnostic("hole-in-zone", message, array.hang.at, f"{mend}, or ask {zone.author}",
                      also=((zone.name, zone.at),))  # fmt: skip


def second_anchor_near_zone(
    array: Array, worst: Worst, zone: Zone, surface: Surface, aside: Fraction, tape: TapeStyle
) -> Diagnostic:
    """An anchor of a second support that may come into a zone, as the plan doesn't say where it goes."""
    where = f"{at_most(worst.size, tape)} from zone {zone.name} on {surface.name}"
    if not worst.size:
        where = f"over zone {zone.name} on {surface.name}"
    message = (f"an anchor of a second support of '{array.name}' may go up to {at_least(aside, tape)} beside a hang "
               f"point, and {worst.name} is {where}, where {zone.author} says no {zone.forbids}"
               f"{worst.and_others}")  # fmt: skip
    second = array.second_support
    mend = f"move '{array.name}' {at_least(aside - Fraction(worst.size), tape)} away from {zone.name}"
    if worst.size:
        mend += f", or keep its anchors nearer: `anchors within {at_most(worst.size, tape)}`"
    return Diagnostic("second-anchor-near-zone", message, array.at if second is None else second.at,
                      f"{mend}, or ask {zone.author}", Severity.WARNING, also=((zone.name, zone.at),))  # fmt: skip


def heat_in_zone(feature: Feature, zone: Zone) -> Diagnostic:
    """A thing that gets hot where somebody has forbidden heat."""
    message = (f"{feature.kind} {feature.name} gets hot inside zone {zone.name} on {zone.surface}, where "
               f"{zone.author} says no heat")  # fmt: skip
    return Diagnostic("heat-in-zone", message, feature.at, f"move {feature.name} out of it, or ask {zone.author}",
                      also=((zone.name, zone.at),))  # fmt: skip


def fixing_not_allowed(array: Array, sort: str, piece: Hardware, allowance: Allowance, at: Span) -> Diagnostic:
    """Something that goes into a surface whose owner, or whoever decides, doesn't allow it."""
    who = f"{allowance.author} allows" if allowance.author else "the plan allows"
    what = "nothing" if allowance.fixings == ("nothing",) else f"{and_list(allowance.fixings)} alone"
    into = f"the {allowance.members} of {allowance.surface}" if allowance.members else allowance.surface
    message = f"'{array.name}' puts {sort} ({piece.name}) into {into}, where {who} {what}"
    mend = "place it on another surface" if what == "nothing" else f"fix it by {and_list(allowance.fixings, 'or')}"
    return Diagnostic("fixing-not-allowed", message, at, f"{mend}, or ask {allowance.author or 'whoever decides'}",
                      also=((f"what {allowance.surface} allows", allowance.at),))  # fmt: skip


def panel_through_panel(panels: tuple[PlacedPanel, PlacedPanel], depth: float, tape: TapeStyle) -> Diagnostic:
    """Two panels on surfaces that meet, each of which would be where the other one is."""
    first, second = panels
    message = (f"{second.mark} on {second.surface} goes {at_least(depth, tape)} into {first.mark} on {first.surface}, "
               "each at its drop and depth")  # fmt: skip
    return Diagnostic("panel-through-panel", message, second.array.placement.at,
                      f"move '{second.array.name}' or '{first.array.name}' {at_least(depth, tape)} away from where "
                      "the surfaces meet", also=((f"{first.mark} is here", first.array.placement.at),))  # fmt: skip


def panel_in_space(worst: Worst, space: Space, array: Array, tape: TapeStyle) -> Diagnostic:
    """Panels that reach into what somebody keeps free of the room."""
    message = (f"{worst.name} of '{array.name}' reaches {at_least(worst.size, tape)} into {space.name}, which "
               f"{space.author} keeps free for {space.purpose}{worst.and_others}")  # fmt: skip
    mend = f"move it {at_least(worst.size, tape)} out of {space.name}, or hang it higher, or ask {space.author}"
    return Diagnostic("panel-in-space", message, array.placement.at, mend, also=((space.name, space.at),))


def panel_in_light(panel: PlacedPanel, lamp: Feature, distance: float, wanted: Fraction, tape: TapeStyle) -> Diagnostic:
    """A panel that takes a luminaire's light."""
    beam = f"beam of {float(lamp.beam_deg or 0):g} deg to each side"
    message = (f"{panel.mark} is {at_most(distance, tape)} from luminaire {lamp.name}, whose {beam} reaches "
               f"{at_least(wanted, tape)} aside at the depth of its front")  # fmt: skip
    mend = f"move it {at_least(wanted - Fraction(distance), tape)} away from {lamp.name}, or hang it closer"
    return Diagnostic("panel-in-light", message, panel.array.placement.at, mend, Severity.WARNING,
                      also=((lamp.name, lamp.at),))  # fmt: skip


def panel_in_light_across(
    panel: PlacedPanel, lamp: Feature, aside: tuple[float, float], mend: str, tape: TapeStyle
) -> Diagnostic:
    """A panel that takes the light of a luminaire on another surface."""
    beside, reach = aside
    where = f"comes to within {at_most(beside, tape)} of" if beside > 0 else "comes right before"
    beam = f"its beam of {float(lamp.beam_deg or 0):g} deg to each side"
    message = (f"{panel.mark} on {panel.surface} {where} the line of luminaire {lamp.name} on {lamp.surface}, "
               f"where {beam} reaches {at_least(reach, tape)} aside, "
               f"and stands out further from {panel.surface} than {lamp.name}")  # fmt: skip
    return Diagnostic("panel-in-light", message, panel.array.placement.at, mend, Severity.WARNING,
                      also=((lamp.name, lamp.at),))  # fmt: skip


def made_panel_changed(
    array: Array, marks: tuple[str, ...], made: Made, now: tuple[tuple[Fraction, ...], ...], tape: TapeStyle
) -> Diagnostic:
    """Panels that are built, and that the plan would `now` make in another size, or with other sides."""
    are = "is" if len(marks) == 1 else "are"
    built, makes = _made_words(made.size, made.sides, tape), _made_words(now[0], made.sides and now[1], tape)
    message = f"{and_list(marks)} {are} built, {built}, and '{array.name}' now makes {array.panel.name} {makes}"
    mend = f"what is left: give {array.panel.name} its size again, take another type of panel for the others"
    if array.top_below is not None:
        mend = (f"what is left: place {and_list(marks)} where the slope is as high over each end as it was, or keep "
                "another distance below it")  # fmt: skip
    if array.cut_to:
        mend = "what is left: move what their bay lies between, take as much less of the bay as makes them fit"
    return Diagnostic("made-panel-changed", message, made.at, f"{mend}, or build {and_list(marks)} anew and take "
                      "`made` out", also=((array.panel.name, array.panel.at),))  # fmt: skip


def _made_words(size: tuple[Fraction, ...] | None, sides: tuple[Fraction, ...], tape: TapeStyle) -> str:
    parts = [size_on_tape(size, tape)] if size is not None else []
    if sides:
        parts.append(f"sides {and_list(tuple(on_tape(side, tape) for side in sides))}")
    return ", ".join(parts)


def made_panel_gone(array: str, marks: tuple[str, ...], made: Made, placed: int) -> Diagnostic:
    """Panels that are built, and that the plan places no more."""
    gone = and_list(marks)
    are = "is built, and has" if len(marks) == 1 else "are built, and have"
    message = f"{gone} of '{array}' {are} no place any more: the plan places {placed} of its panels"
    mend = f"what is left: place as many as are built, in another array too, or take {gone} out of `made`"
    return Diagnostic("made-panel-gone", message, made.at, mend)


def panel_in_swing(worst: Worst, door: Feature, needs: Fraction, array: Array, tape: TapeStyle) -> Diagnostic:
    """Panels that a door strikes as it opens."""
    unsure = "" if door.hinge and door.opens else " (the plan does not say how it opens)"
    message = (f"door {door.name}{unsure} would strike {worst.name}: it is {at_most(worst.size, tape)} from the hinge, "
               f"the swing and a hand's room need {on_tape(needs, tape)}{worst.and_others}")  # fmt: skip
    mend = f"move it {at_least(needs - Fraction(worst.size), tape)} further from the hinge"
    if unsure:
        mend += f", or say how {door.name} opens: `opens outward`, `hinged left`"
    return Diagnostic("panel-in-swing", message, array.placement.at, mend, also=((door.name, door.at),))


def trap_off_corner(array: Array, surface: Surface, worst: Worst, tape: TapeStyle) -> Diagnostic:
    """A corner trap that isn't in a corner."""
    message = (f"{worst.name} of '{array.name}' is a {array.panel.kind}, but its long side is "
               f"{at_least(worst.size, tape)} from the nearest surface at right angles to {surface.name}"
               f"{worst.and_others}")  # fmt: skip
    way = "up" if array.upright else "across"
    mend = f"set it against an edge of {surface.name}, its long side ({way}) along the corner"
    return Diagnostic("trap-off-corner", message, array.placement.at, mend)


def baffle_not_level(array: Array, surface: Surface) -> Diagnostic:
    """A baffle on a wall or under a slope."""
    where = "a wall" if surface.kind == "wall" else "a slope"
    message = f"'{array.name}' hangs baffles on {surface.name}, {where}: a baffle hangs upright under a flat ceiling"
    return Diagnostic("baffle-not-level", message, array.at, "hang it from a flat ceiling")


def drop_out_of_hand(array: Array, need: Fraction, piece: Hardware | None, tape: TapeStyle) -> Diagnostic:
    """A panel so near its surface that nobody gets at what it hangs by; `piece` is what states its need."""
    who = f"{on_tape(need, tape)} is usual for fingers and a spanner (common practice, no source)"
    if piece is not None:
        who = f"{piece.name} states {on_tape(need, tape)} of tool room"
    message = (f"'{array.name}': {on_tape(array.hang.drop, tape)} from {array.surface} to the panel's back leave no "
               f"room to close what it hangs by; {who}")  # fmt: skip
    mend = f"drop {on_tape(need, tape)} or more, or cleats; or say what the hardware needs: `tool-room`"
    return Diagnostic("drop-out-of-hand", message, array.hang.at, mend,
                      Severity.WARNING if piece is None else Severity.ERROR,
                      also=() if piece is None else ((piece.name, piece.at),))  # fmt: skip


def tilt_too_steep(array: Array, most: Fraction, tape: TapeStyle) -> Diagnostic:
    """A panel one row of whose eyes hangs so much lower that it tilts by more than is reckoned."""
    message = (f"'{array.name}': the {array.hang.more_at} eyes hang {on_tape(array.hang.more, tape)} lower; beyond "
               f"{at_most(float(most), tape)} the panel tilts by more than 30 deg")  # fmt: skip
    mend = f"{at_most(float(most), tape)} more at most"
    return Diagnostic("tilt-too-steep", message, array.hang.at, mend)


def tilt_through_ceiling(array: Array, surface: Surface, rise: Fraction, tape: TapeStyle) -> Diagnostic:
    """A tilted panel whose higher end would go through the surface that it hangs from."""
    message = (f"'{array.name}': tilted, the end of the panel beyond its higher eyes is {at_least(float(rise), tape)} "
               f"higher than they are, and goes through {surface.name}")  # fmt: skip
    return Diagnostic("tilt-through-ceiling", message, array.hang.at, f"drop {at_least(float(rise), tape)} or more")

"""What geometry has to say about a plan: one small function for each code."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry.model import RailRun, Surface
from planlang.geometry.words import Worst, and_list, at_least, at_most, singular
from planlang.plan.model import Array, Bays, Hang, Rail
from planlang.plan.room import CeilingPlane, Feature, Members, Room
from planlang.plan.stock import Hardware
from planlang.plan.tape import TapeStyle, on_tape
from planlang.plan.usual import USUAL
from planlang.syntax.diagnostics import Diagnostic, Severity
from planlang.syntax.span import Span

# --- the room -----------------------------------------------------------------------------------------------


def room_without_size(room: Room, tape: TapeStyle) -> Diagnostic:
    """A side of the floor is nothing or less."""
    side, size = ("width", room.width) if room.width <= 0 else ("depth", room.depth)
    return Diagnostic("room-without-size", f"the {side} of the floor is {on_tape(size, tape)}", room.at,
                      "both sides of the floor must be more than 0")  # fmt: skip


def room_without_ceiling(room: Room) -> Diagnostic:
    """No ceiling plane at all."""
    return Diagnostic("room-without-ceiling", f"room '{room.name}' has no ceiling", room.at,
                      "give it a flat or a slope")  # fmt: skip


def slope_falls(plane: CeilingPlane) -> Diagnostic:
    """A slope whose foot is not its lowest edge."""
    return Diagnostic("slope-falls", f"'{plane.name}' falls from its foot at the {plane.foot}", plane.at,
                      "a slope rises from its foot: give it from the opposite wall")  # fmt: skip


def ceiling_meets_floor(plane: CeilingPlane, corner: str, height: Fraction, tape: TapeStyle) -> Diagnostic:
    """The ceiling is at or below the floor somewhere."""
    what = "meets the floor" if height == 0 else f"is {at_least(-height, tape)} below the floor"
    mend = "raise it" if height == 0 else f"raise it by more than {at_least(-height, tape)}"
    return Diagnostic("ceiling-meets-floor", f"'{plane.name}' {what} at {corner}: a room can't close there",
                      plane.at, mend)  # fmt: skip


def ceiling_plane_hidden(plane: CeilingPlane, hiders: tuple[str, ...], mend: str) -> Diagnostic:
    """A plane that is nowhere the lowest."""
    names = and_list(tuple(f"'{name}'" for name in hiders))
    verb = "is" if len(hiders) == 1 else "together are"
    return Diagnostic("ceiling-plane-hidden",
                      f"'{plane.name}' is no part of the ceiling: {names} {verb} below it everywhere",
                      plane.at, mend)  # fmt: skip


def surface_unknown(thing: str, surface: str, names: tuple[str, ...], at: Span) -> Diagnostic:
    """A feature or an array on a surface that the room does not have."""
    return Diagnostic("surface-unknown", f"{thing} is on '{surface}', but the room has no such surface", at,
                      f"its surfaces are {and_list(names)}")  # fmt: skip


def feature_off_surface(feature: Feature, out: float, mend: str, tape: TapeStyle) -> Diagnostic:
    """A feature that does not fit on its surface where it is."""
    message = f"{feature.kind} {feature.name} sticks out of {feature.surface} by {at_least(out, tape)}"
    return Diagnostic("feature-off-surface", message, feature.at, mend)


def features_overlap(first: Feature, second: Feature, by: float, tape: TapeStyle) -> Diagnostic:
    """Two features that share a part of a surface."""
    message = (f"{second.kind} {second.name} overlaps {first.kind} {first.name} on {first.surface} "
               f"by {at_least(by, tape)}")  # fmt: skip
    return Diagnostic("features-overlap", message, second.at, "move one of them, or mend its size",
                      also=((f"{first.name} is here", first.at),))  # fmt: skip


# --- placement ----------------------------------------------------------------------------------------------


def nothing_to_place(array: Array) -> Diagnostic:
    """A count below one."""
    return Diagnostic("nothing-to-place", f"array '{array.name}' places no panel", array.placement.at,
                      "every count must be at least 1")  # fmt: skip


def row_too_wide(array: Array, panels: Fraction, width: Fraction, tape: TapeStyle) -> Diagnostic:
    """A row with equal gaps whose panels are wider than the surface."""
    message = (f"the panels of '{array.name}' take {on_tape(panels, tape)} across, {at_least(panels - width, tape)} "
               f"more than the {on_tape(width, tape)} of {array.surface} at that height")  # fmt: skip
    return Diagnostic("row-too-wide", message, array.placement.at, "take fewer or narrower panels")


def bays_too_few(bays: Bays) -> Diagnostic:
    """A bay needs a feature on each side."""
    return Diagnostic("bays-too-few", "a bay lies between two features: fewer than two are named", bays.at,
                      "name what is on both sides")  # fmt: skip


def bay_feature_unknown(name: str, bays: Bays) -> Diagnostic:
    """A bay named by a feature that the room does not have."""
    return Diagnostic("bay-feature-unknown", f"there is no feature '{name}' in the room", bays.at,
                      "name doors, windows, lights or vents of the room")  # fmt: skip


def bay_feature_elsewhere(feature: Feature, array: Array) -> Diagnostic:
    """A bay named by a feature of another surface."""
    message = f"{feature.name} is on {feature.surface}, array '{array.name}' on {array.surface}"
    return Diagnostic("bay-feature-elsewhere", message, array.placement.at,
                      f"name features on {array.surface}", also=((feature.name, feature.at),))  # fmt: skip


def bays_out_of_order(bays: Bays, in_order: tuple[str, ...]) -> Diagnostic:
    """Features that don't follow one another across as they are named."""
    return Diagnostic("bays-out-of-order", f"{and_list(bays.features)} don't follow one another across in this order",
                      bays.at, f"they lie in the order {', '.join(in_order)}")  # fmt: skip


def bay_without_width(first: Feature, second: Feature, bays: Bays, overlap: Fraction, tape: TapeStyle) -> Diagnostic:
    """Two neighbours with nothing between them across."""
    what = f"overlap by {at_least(overlap, tape)} across" if overlap > 0 else "touch"
    return Diagnostic("bay-without-width", f"there is no bay between {first.name} and {second.name}: they {what}",
                      bays.at, "name features with a gap between them across",
                      also=((first.name, first.at), (second.name, second.at)))  # fmt: skip


def bay_too_narrow(
    between: tuple[Feature, Feature], bay: Fraction, wanted: Fraction, array: Array, tape: TapeStyle
) -> Diagnostic:
    """A bay that is narrower than what is to go into it."""
    first, second = between
    message = (f"the bay between {first.name} and {second.name} is {on_tape(bay, tape)}, "
               f"{at_least(wanted - bay, tape)} too narrow for {on_tape(wanted, tape)}")  # fmt: skip
    return Diagnostic("bay-too-narrow", message, array.placement.at, "a narrower panel, or leave that bay out",
                      also=((first.name, first.at), (second.name, second.at)))  # fmt: skip


# --- where panels lie ---------------------------------------------------------------------------------------


def panel_off_surface(array: Array, worst: Worst, mend: str, tape: TapeStyle) -> Diagnostic:
    """Panels of an array that stick out of their surface: the worst by name."""
    message = f"{worst.name} sticks out of {array.surface} by {at_least(worst.size, tape)}{worst.and_others}"
    return Diagnostic("panel-off-surface", message, array.placement.at, mend)


def panel_near_edge(array: Array, worst: Worst, mend: str, tape: TapeStyle) -> Diagnostic:
    """Panels of an array nearer to the edge of their surface than `edge_clear`."""
    message = (f"{worst.name} is {at_most(worst.size, tape)} from the edge of {array.surface}, "
               f"{on_tape(array.edge_clear, tape)} wanted{worst.and_others}")  # fmt: skip
    return Diagnostic("panel-near-edge", message, array.at, mend)


def panels_overlap(
    marks: tuple[str, str], arrays: tuple[Array, Array], by: tuple[Fraction, Fraction], mend: str, tape: TapeStyle
) -> Diagnostic:
    """Two panels that share a part of a surface."""
    message = (f"{marks[1]} overlaps {marks[0]} on {arrays[0].surface} by {at_least(by[0], tape)} across "
               f"and {at_least(by[1], tape)} up")  # fmt: skip
    also = () if arrays[0] == arrays[1] else ((f"{marks[0]} is here", arrays[0].placement.at),)
    return Diagnostic("panels-overlap", message, arrays[1].placement.at, mend, also=also)


def panel_over_feature(mark: str, feature: Feature, array: Array, mend: str) -> Diagnostic:
    """A panel that covers a part of a feature."""
    message = f"{mark} lies over {feature.kind} {feature.name} on {feature.surface}"
    return Diagnostic("panel-over-feature", message, array.placement.at, mend, also=((feature.name, feature.at),))


def point_under_feature(point: str, feature: Feature, array: Array) -> Diagnostic:
    """A panel that hangs low enough under a beam, from a point that the beam covers."""
    message = f"{point} would be fixed where {feature.kind} {feature.name} is"
    return Diagnostic("point-under-feature", message, array.hang.at,
                      f"move '{array.name}' so that its hang points are clear of {feature.name}",
                      also=((feature.name, feature.at),))  # fmt: skip


def panel_near_feature(
    found: Worst, feature: Feature, wanted: tuple[Fraction, Span, str], mend: str, tape: TapeStyle
) -> Diagnostic:
    """A panel that is nearer to a feature than the plan wants it, or than is usual where the plan says nothing."""
    distance, at, why = wanted
    message = (f"{found.name} is {at_most(found.size, tape)} from {feature.kind} {feature.name}, "
               f"{on_tape(distance, tape)} wanted{': ' + why if why else ''}")  # fmt: skip
    return Diagnostic("panel-near-feature", message, at, mend, also=((feature.name, feature.at),))


def keep_below_usual(array: Array, feature: Feature, distance: Fraction, at: Span, tape: TapeStyle) -> Diagnostic:
    """An array that keeps less from a lamp, a sprinkler or a detector than is usual."""
    message = (f"'{array.name}' keeps {on_tape(distance, tape)} clear of {feature.kind} {feature.name}, "
               f"{on_tape(USUAL[feature.kind].distance, tape)} is usual: {USUAL[feature.kind].why}")  # fmt: skip
    return Diagnostic("keep-below-usual", message, at, "keep the usual distance, or have whoever answers for it agree",
                      Severity.WARNING, also=((feature.name, feature.at),))  # fmt: skip


def panel_through_surface(array: Array, worst: Worst, surface: str, tape: TapeStyle) -> Diagnostic:
    """Panels whose body, at its drop, passes through another surface of the room."""
    message = f"{worst.name}, at its drop, goes through {surface} by {at_least(worst.size, tape)}{worst.and_others}"
    return Diagnostic("panel-through-surface", message, array.at, "move it away from there, or hang it closer")


def panel_through_members(array: Array, worst: Worst, members: Members, tape: TapeStyle) -> Diagnostic:
    """Panels that would cross members that are seen below the surface."""
    hangs, end = on_tape(members.depth - Fraction(worst.size), tape), " at its higher end" if array.hang.more else ""
    message = (f"{worst.name} hangs {hangs} from {array.surface}{end}, but its exposed "
               f"{members.word} stand {on_tape(members.depth, tape)} out of it{worst.and_others}")  # fmt: skip
    mend = f"drop it by more than {on_tape(members.depth, tape)}{end}, or place it between them"
    return Diagnostic("panel-through-members", message, array.hang.at, mend)


def low_headroom(array: Array, worst: Worst, least: Fraction, tape: TapeStyle) -> Diagnostic:
    """Overhead panels that a person may hit."""
    message = (f"the lowest corner of {worst.name} is {at_most(worst.size, tape)} above the floor, "
               f"under {on_tape(least, tape)}{worst.and_others}")  # fmt: skip
    mend = f"hang it {at_least(least - Fraction(worst.size), tape)} higher, or keep people from under it"
    return Diagnostic("low-headroom", message, array.at, mend, Severity.WARNING)


# --- hanging ------------------------------------------------------------------------------------------------


def panel_without_hooks(array: Array) -> Diagnostic:
    """A panel type that has nothing to hang by, or not what the array hangs it by."""
    panel = array.panel
    has = "nothing to hang by" if panel.hung_by is None else "cleats" if array.hang.by == "eyes" else "eyes"
    return Diagnostic("panel-without-hooks", f"'{array.name}' hangs by {array.hang.by}, but {panel.name} has {has}",
                      array.hang.at, f"give {panel.name} {array.hang.by}", also=((panel.name, panel.at),))  # fmt: skip


def eyes_not_paired(array: Array, count: int) -> Diagnostic:
    """Eyes go in pairs, one on each side rail, two pairs at least."""
    hooks = array.panel.hung_by
    return Diagnostic("eyes-not-paired",
                      f"{array.panel.name} has {count} eyes: they go in pairs, one on each side rail",
                      hooks.at if hooks else array.panel.at, "take 4, 6, 8 ...")  # fmt: skip


def hooks_past_middle(array: Array, inset: Fraction, size: Fraction, at: Span, tape: TapeStyle) -> Diagnostic:
    """Two insets that take more than the panel has, or a line of cleats off the panel."""
    message = f"hooks {on_tape(inset, tape)} in from the edge don't fit on {on_tape(size, tape)} of {array.panel.name}"
    return Diagnostic("hooks-past-middle", message, at, "bring them nearer to the edge")


def cleats_overhead(array: Array) -> Diagnostic:
    """Cleats hook over something behind a wall panel; they hold nothing overhead."""
    return Diagnostic("cleats-overhead",
                      f"'{array.name}' hangs on cleats under {array.surface}: a cleat only hooks on a "
                      "wall", array.hang.at, "hang it from eyes")  # fmt: skip


def surface_without_members(array: Array) -> Diagnostic:
    """An array that hangs from members that nobody has stated."""
    into = "members" if array.hang.into == "members" else "a rail across members"
    return Diagnostic("surface-without-members",
                      f"'{array.name}' is fixed into {into}, but {array.surface} has none "
                      "stated", array.hang.at,
                      f"say what is behind the lining of {array.surface}, as found on site")  # fmt: skip


def anchor_without_shank(hang: Hang) -> Diagnostic:
    """An anchor whose edge distance in a member can't be known."""
    return Diagnostic("anchor-without-shank", f"{hang.anchor.name} goes into a member, but its shank is not stated",
                      hang.at, "state its shank", also=((hang.anchor.name, hang.anchor.at),))  # fmt: skip


def member_too_narrow(array: Array, members: Members, anchor: Hardware, need: Fraction, tape: TapeStyle) -> Diagnostic:
    """A member too thin for the edge distances of the anchor."""
    message = (f"{members.word} {on_tape(members.width, tape)} wide are too narrow for {anchor.name}: "
               f"{on_tape(need, tape)} for its edge distances")  # fmt: skip
    return Diagnostic("member-too-narrow", message, array.hang.at, "take a thinner anchor",
                      also=((members.word, members.at),))  # fmt: skip


def point_misses_member(
    worst: Worst, member: str, allowed: Fraction, hang: Hang, mend: str, *, tape: TapeStyle
) -> Diagnostic:
    """Hang points that don't land on a member: the worst by name."""
    message = (f"{worst.name} is {at_least(worst.size, tape)} off the centre of {member}, "
               f"{at_most(allowed, tape)} allowed{worst.and_others}")  # fmt: skip
    if hang.snap:
        message += f"; no move of at most {on_tape(hang.snap, tape)} lands it"
    return Diagnostic("point-misses-member", message, hang.at, mend)


def rail_without_span(array: Array, lines: Sequence[str], members: Members) -> Diagnostic:
    """Rails of an array that have no member beyond their points at one of their ends: the points of each line."""
    member = singular(members.word)
    what = f"a rail for {lines[0]}" if len(lines) == 1 else f"rails for {'; for '.join(lines)}"
    return Diagnostic("rail-without-span",
                      f"{what} would have no {member} on both sides of the points", array.hang.at,
                      f"move the array so that a {member} stands beyond its points at each end")  # fmt: skip


def rail_not_stated(array: Array) -> Diagnostic:
    """An array that hangs from a rail that is not described, or whose timber has no section."""
    return Diagnostic("rail-not-stated",
                      f"'{array.name}' is fixed into a rail, but the section of that rail is not stated",
                      array.hang.at, "say of which timber it is, and give that timber a section")  # fmt: skip


def rail_over_feature(array: Array, rail: Rail, points: str, feature: Feature) -> Diagnostic:
    """A rail that would cross a feature on its way to the next member."""
    return Diagnostic("rail-over-feature",
                      f"the rail for {points} would lie over {feature.kind} {feature.name}", rail.at,
                      f"move the points of '{array.name}' away from {feature.name}",
                      also=((feature.name, feature.at),))  # fmt: skip


def rail_end_short(run: RailRun, past: Fraction, need: Fraction, of: tuple[Array, Rail], tape: TapeStyle) -> Diagnostic:
    """A rail whose end is so near to its last screw that the screw may split it."""
    array, rail = of
    message = (f"{run.name} of '{array.name}' ends {at_most(past, tape)} past its last screw, {on_tape(need, tape)} is "
               f"usual for {rail.screw.name}: the screw may split it")  # fmt: skip
    mend = f"let it end {at_least(need, tape)} past its last member"
    if rail.overhang >= need:
        mend = f"{run.surface} ends there: move the array, or drill for the end screw"
    return Diagnostic("rail-end-short", message, rail.at, mend, Severity.WARNING)


def rails_overlap(names: tuple[str, str], arrays: tuple[Array, Array], along: Fraction, tape: TapeStyle) -> Diagnostic:
    """Two rails that would lie in one place."""
    message = f"rails {names[0]} and {names[1]} would overlap by {at_least(along, tape)} along"
    also = () if arrays[0].name == arrays[1].name else ((f"{names[0]} is here", arrays[0].hang.at),)
    return Diagnostic("rails-overlap", message, arrays[1].hang.at,
                      "move one of the arrays, bring their points onto one line, or let the rails end sooner",
                      also=also)  # fmt: skip


def hang_from_lining(surface: Surface, array: Array) -> Diagnostic:
    """Something overhead that hangs from a lining alone."""
    lining = surface.lining
    if lining is not None and lining.carries:
        message = f"'{array.name}' hangs overhead from {lining.words} alone: only the plan says that it carries"
        return Diagnostic("lining-carries", message, array.hang.at, "have somebody qualified confirm it",
                          Severity.WARNING, also=((lining.name, lining.at),))  # fmt: skip
    what = lining.words if lining is not None else "a lining that is not stated"
    return Diagnostic("hang-from-lining", f"'{array.name}' hangs overhead from {what} alone", array.hang.at,
                      "hang it from members, or from a rail across them")  # fmt: skip

"""The words that go with the loads: cautions, what was not checked, and what must be confirmed on site by whom.

Plain sentences of this project. Figures in them are marked with a source, 'common practice, no source' or 'project
policy'.
"""

from collections.abc import Sequence

from planlang.hardware import words
from planlang.hardware.case import Case, is_assumed
from planlang.hardware.eurocode import by_eurocode, eurocode_edge
from planlang.hardware.factors import CLEAT_STANDOFF_MM, INLINE_PITCH_DEG, MM_IN_INCH, SECOND_SUPPORT_SLACK_MM
from planlang.hardware.hung import Hung
from planlang.hardware.model import PanelLoad
from planlang.hardware.setting import hardware_length, lengths_of_links
from planlang.hardware.withdrawal import edge_distance, lead_hole
from planlang.plan.stock import Hardware, Timber

Confirm = tuple[tuple[str, str], ...]

DEFERENCE = (
    "These loads are a planning aid and no structural design. Where a local code, the maker's data or a licensed "
    "engineer says otherwise, that counts"
)

FIRE_AND_SERVICES = (
    "Sprinklers: a panel can keep water from where it is meant to go. Ask the sprinkler contractor before hanging, and "
    "never hang from a sprinkler pipe",
    "Smoke and heat detectors: keep panels clear of them and out of the way of smoke towards them. Ask who maintains "
    "the alarm what distance is wanted",
    "Luminaires: cover none, keep the maker's distance from anything that burns, and keep emergency lights and exit "
    "signs free",
    "Exits: keep signs in sight, doors free to swing, and the headroom that the local code asks for",
    "Fire: whether this cloth, this core and the panel as put together may hang in this room is a question to the "
    "authority that decides. Attach the test reports that it asks for; this plan holds no verdict",
    "Electrical: bury no box, junction or cable behind a panel, and drill nowhere before the cables are found. Work on "
    "wiring is for a licensed electrician",
    "Old ceilings, textured coats, tiles and glues can hold asbestos, old paint lead. Drill nothing until a sample "
    "has been tested or the owner shows papers",
)

CARE = (
    "Use no open hook and no unmarked part. Close, tighten and secure every link, and lock what can unscrew",
    "Hang nothing else from a panel or its points: a light, banner or cable is a new load and a new plan",
)

NOT_CHECKED = (
    "The building: whether its rafters, joists, studs, boards or slab carry this load on top of what they carry now",
    "The panel's own joints, glue and staples, and its frame between the eyes",
    "The steel of screws in tension, and splitting near the end of a member, whose ends a plan doesn't show",
    "Timber that is wet, rotten, eaten, cut or repaired, and metal in damp or pool air",
    "Earthquake, wind and draughts, balls and other blows, ladders leant against a panel, people pulling at it",
    "Fire behaviour, sprinkler cover, detector cover, lighting and exits",
    "Loads added later, and whether the parts delivered are the parts planned",
    "Cables that run through several panels, and hang points that panels share: a plan has no words for them",
    "Cut-outs in a panel, for which a plan has no words, and anything put on a panel that the plan doesn't state",
)


def cautions(hung: Sequence[Hung], loads: Sequence[PanelLoad], months: int = 12) -> tuple[str, ...]:
    """Return the cautions for this job; deference is always first. `months` is the time between looks."""
    lines = [DEFERENCE]
    if any(load.overhead for load in loads):
        factor, used = max((one.case.design_factor, one.case.usable) for one in hung if one.case.overhead)
        lines.append(
            f"Panels hang over people. The design factor there is {factor:g}, so {used:.0%} of each marked working "
            "load and of each code value is used (project policy)"
        )
    doubled = [load.array for load in loads if load.second_support and not load.second_steps]
    if doubled:
        lines.append(
            f"{words.listed(doubled)}: each panel needs a second support of its own on its own anchor, with no more "
            f"than {SECOND_SUPPORT_SLACK_MM} mm of slack (project policy); the plan does not state one, so nothing of "
            "it may be hung"
        )
    lines += [_second_words(one.case) for one in hung if one.case.array.second_support]
    sloped = [one.case for one in hung if one.case.link_pitch > 0]
    if sloped:
        lines.append(
            f"{words.listed([case.array.name for case in sloped])}: links hang plumb, not square to the slope. Drive "
            "each eye plumb into the timber, seated on a flat or a wedge, so that it is pulled in line with its shank"
        )
    square = [one.case.array.name for one in hung if one.case.pitch > 0 and one.case.array.hang.square]
    if square:
        lines.append(
            f"{words.listed(square)}: links hang square to the slope. Fit and tighten the ties up the slope first: "
            "without them each panel slides down until its links hang plumb, and swings"
        )
    fixed = [one.case.array.name for one in hung if one.case.array.hang.fixed]
    if fixed:
        lines.append(
            f"{words.listed(fixed)}: fixed to the slope. Take the brackets off the panel again and screw them on "
            "first, each at its point; then lift the panel between them and prop it until all of its bolts are in and "
            "tight. Its lowest ones alone don't hold it"
        )
    walls = [one.case.array.name for one in hung if one.case.surface.kind == "wall"]
    if walls:
        lines.append(
            f"{words.listed(walls)}: fit a spacer as thick as the cleats (counted on: "
            f"{words.length(CLEAT_STANDOFF_MM, hung[0].case.tape)}) at each panel's foot, and a catch against lifting "
            "off where people can reach"
        )
    look = (
        f"Look at every point after {months} months and every {months} months from then, and after any leak, blow or "
        "earthquake (project policy)"
    )
    return (*lines, *FIRE_AND_SERVICES, *CARE, look)


def _second_words(case: Case) -> str:
    second = case.array.second_support
    count, slack = (second.count, words.length(second.slack, case.tape)) if second else (0, "")
    return (
        f"{case.array.name}: fit {count} second supports to each panel, each with an eye and an anchor of its own, "
        f"into another hole and where it can be into another member, slack by no more than {slack}"
    )


def not_checked(hung: Sequence[Hung]) -> tuple[str, ...]:
    """Return what this engine did not check, for this job."""
    lines = list(NOT_CHECKED)
    if any(one.case.array.hang.rail for one in hung):
        lines.append("Twisting of the rails, and joints in their length")
    if any(one.case.rules.timber_rules == "ec5" for one in hung):
        lines.append(
            "Whether each screw is of the kind that Eurocode 5's formula is for: its core 0.6 to 0.75 of its outer "
            "thread, with its head and its steel to match"
        )
    if any(one.case.surface.kind == "ceiling" for one in hung):
        lines.append(
            "Rods and other rigid drops that push, or that are screwed up unevenly: the share is that of links that "
            "only pull"
        )
        lines.append("What the arm of an eye, from its bolts to where the link pulls, does to the frame")
    if any(one.case.array.panel.eyes_in_line for one in hung):
        lines.append(
            "How a baffle's hanging rail holds to its frame, and what holds it when one of its eyes gives way: it "
            "swings down on the others"
        )
    if any(one.case.array.hang.lean_deg for one in hung):
        lines.append(
            "What the level pull of links that lean does to the joints of the frame, and how it twists the rails"
        )
    if any(one.case.array.second_support for one in hung):
        lines.append("Where each second support meets its member, and what a fall does to the panel")
    if any(one.case.link_pitch > INLINE_PITCH_DEG for one in hung):
        lines.append(
            "Whether the panel's eyes have a shoulder: on a slope they are pulled off their axis, and the reduction "
            "used is for shouldered eyes"
        )
    if any(load.case.surface.kind == "wall" for load in hung):
        lines.append("Steel cleats bending, and their screws into the panel")
    return tuple(lines)


def confirm(hung: Sequence[Hung], loads: Sequence[PanelLoad]) -> Confirm:
    """Return (what, who) for every line that has to be signed before hanging."""
    lines: list[tuple[str, str]] = [
        ("The structure carries the panels on top of its present load", "structural engineer or building owner"),
        ("Every part delivered carries the mark and the rating of this plan", "who receives the parts"),
        ("Fire papers of cloth, core and panel are accepted for this room", "building authority or fire officer"),
        ("Sprinklers, detectors, luminaires, exits and emergency lights stay free", "who maintains them"),
        ("No asbestos, lead paint or hidden cable where holes go", "building owner"),
    ]
    for one in hung:
        lines += _of_case(one.case)
        lines += _of_sharing(one)
    lines += [
        (f"{load.array}: a second support on its own anchor is fitted to each panel", "who hangs the panels")
        for load in loads
        if load.second_support or load.second_steps
    ]
    return tuple(dict.fromkeys(lines))


def _of_case(case: Case) -> list[tuple[str, str]]:
    hang, name, tape = case.array.hang, case.array.name, case.tape
    lines = []
    members = case.surface.members
    timber = hang.rail.timber if hang.into == "rail" and hang.rail else members.timber if members else None
    if hang.into != "lining" and timber is not None:
        lines.append((f"{name}: {_timber_words(timber)}", "who surveys the site"))
        lines += _hole(name, hang.anchor, timber, case)
    if hang.rail and members and members.timber:
        lines += _hole(name, hang.rail.screw, members.timber, case)
        lines += _screw_length(case, hang.rail.screw)
    if hang.into == "lining":
        lining = case.surface.lining
        words_of_lining = lining.words if lining else "the lining"
        lines.append((f"{name}: {words_of_lining} carries the fixings, and they are made for it", "maker or engineer"))
    if case.surface.kind == "ceiling":
        how = "bolted through its frame with washers, 4 bolt diameters or more from the edge of the sheet"
        lines.append((f"{name}: each panel's eyes are {how}", "who makes the panels"))
    lines += _locks(case)
    if hang.end_grain:
        lines.append(
            (f"{name}: each end of a timber is sound and without a split, after the holes too", "who hangs the panels")
        )
    if case.pitch > 0 and case.array.hang.square:
        lines.append((f"{name}: every tie up the slope is taut, and every link square to it", "who hangs the panels"))
    elif hang.fixed:
        long = words.length_up(float(hang.drop) + case.lining_depth + float(hang.anchor.thread or 0), tape)
        lines.append((f"{name}: {hang.anchor.words} is at least {long} long under its head, so that all of its thread "
                      "is past stand-off and lining", "who receives the parts"))  # fmt: skip
        lines.append((f"{name}: every screw is square to the slope and tight, stand-off and bracket between",
                      "who hangs the panels"))  # fmt: skip
    elif case.pitch > 0:
        lines.append((f"{name}: every ceiling eye is plumb, seated, and pulled in line", "who hangs the panels"))
    if case.surface.kind == "wall":
        lines.append((f"{name}: each panel's foot bears on a spacer", "who hangs the panels"))
    if timber is None and hang.into == "lining":
        return lines
    shank = float(hang.anchor.shank or 0)
    edge = words.length_up(eurocode_edge(shank) if by_eurocode(case) else edge_distance(shank), tape)
    lines.append(
        (f"{name}: both edges of each timber found, no fixing nearer than {edge} to one", "who hangs the panels")
    )
    return lines


def _locks(case: Case) -> list[tuple[str, str]]:
    """One line a connector: what locks it by its maker, or that the plan doesn't say."""
    array, second, tie = case.array, case.array.second_support, case.array.up_slope_tie
    link = None if array.hang.fixed else array.hang.link
    connectors = [link, second.tie if second else None, tie.tie if tie else None]
    lines = []
    for piece in dict.fromkeys(piece for piece in connectors if piece is not None):
        if piece.locks and not is_assumed(piece.locks_source):
            text = f"each {piece.words} is locked by its {piece.locks} ({piece.locks_source})"
        else:
            text = f"each {piece.words} has a gate, nut or pin that locks it; the plan doesn't say so"
        lines.append((f"{array.name}: {text}", "who hangs the panels"))
    return lines


def _of_sharing(one: Hung) -> list[tuple[str, str]]:
    """What must be so on site where the plan counts less than the worst case, or adds something."""
    array = one.case.array
    lines = [(f"{array.name}: {item.words} weighs no more than {words.kilograms(float(item.mass_kg))} and sits where "
              "the plan has it", "who fits it") for item in array.added]  # fmt: skip
    if array.hang.share != "envelope":
        why = f"{array.name}: the links share by {array.hang.share} ({array.hang.share_reason}), felt at every point"
        lines.append((why, "who hangs the panels"))
    if array.hang.more:
        text = (
            f"{array.name}: every link is cut or set to the drop of its own point, the {array.hang.more_at} row lower"
        )
        lines.append((text, "who hangs the panels"))
    if one.case.surface.kind == "ceiling" and hardware_length(array) is None:
        wanted = " and ".join(words.length(length, one.case.tape) for length in lengths_of_links(one.case))
        pieces = "each stand-off comes" if array.hang.fixed else "eye, link and ceiling eye together come"
        lines.append((f"{array.name}: {pieces} to {wanted}, from ceiling to panel", "who receives the parts"))
    return lines


def _timber_words(timber: Timber) -> str:
    gravity = f"specific gravity {float(timber.specific_gravity):g}"
    return f"the timber is {timber.words}, {gravity} ({timber.gravity_source or 'no source'}), sound and dry"


def _hole(name: str, piece: Hardware, timber: Timber, case: Case) -> list[tuple[str, str]]:
    """The lead hole, in mm to tenths as drills are sized, in imperial plans also in decimals of an inch."""
    if piece.shank is None:
        return []
    low, high = lead_hole(float(piece.shank), float(timber.specific_gravity))
    inches = f" ({low / MM_IN_INCH:.2f} to {high / MM_IN_INCH:.2f} in)" if case.tape.is_imperial else ""
    text = f"{name}: lead hole of {low:.1f} to {high:.1f} mm{inches} for {piece.words}; try one in an offcut"
    return [(text, "who hangs the panels")]


def _screw_length(case: Case, screw: Hardware) -> list[tuple[str, str]]:
    rail = case.array.hang.rail
    if rail is None or rail.timber.section is None or screw.thread is None:
        return []
    long = words.length_up(min(rail.timber.section) + screw.thread, case.tape)
    text = f"{case.array.name}: {screw.words} is at least {long} long, so that its thread is past the rail"
    return [(text, "who receives the parts")]

"""The words of findings on how panels hang: second supports, sharing, eyes in the frame, rails, room on site."""

from collections.abc import Sequence

from planlang.hardware import words
from planlang.hardware.factors import INLINE_PITCH_DEG, SECOND_SUPPORT_SLACK_MM, STEEP_LEAN_DEG, THINNEST_FRAME_MM
from planlang.hardware.model import Clearance
from planlang.plan.model import Array
from planlang.plan.safety import Evidence, UpSlopeTie
from planlang.plan.stock import Hardware
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic, Severity
from planlang.syntax.span import Span


def _severity(overhead: bool) -> Severity:
    return Severity.ERROR if overhead else Severity.WARNING


def second_support_required(array: Array, mass: float, high: bool, over_kg: float, over_mm: float) -> Diagnostic:
    """The panel is heavy or hangs high: it wants a second independent support, and the plan states none."""
    reasons = [f"weighs up to {words.kilograms(mass)}, over {over_kg:g} kg"] * (mass > over_kg)
    reasons += [f"hangs above {over_mm / 1000:g} m"] * high
    return Diagnostic(
        "second-support-required",
        f"'{array.name}': each panel {' and '.join(reasons)}; it needs a second support of its own, on its own anchor, "
        "and the plan states none",
        array.hang.at,
        "state one: `second-support 2 of TIE from EYE, to ANCHOR, slack 10 mm`",
    )


def slack_too_long(array: Array, slack: float, span: Span, tape: TapeStyle) -> Diagnostic:
    """A second support lets the panel fall further than is allowed."""
    return Diagnostic(
        "slack-too-long",
        f"'{array.name}': its second support is slack by {words.length_up(slack, tape)}; "
        f"{words.length(SECOND_SUPPORT_SLACK_MM, tape)} is the most",
        span,
        "make it shorter: the force of the catch grows with the slack",
    )


def stretch_not_stated(tie: Hardware) -> Diagnostic:
    """How much a tie gives isn't known, so the force of the catch isn't either."""
    return Diagnostic(
        "stretch-not-stated",
        f"'{tie.name}' ({tie.words}) catches a panel, and how much it gives under a load is not stated; a stiff tie "
        "is pulled harder",
        tie.at,
        "state what its maker or a trial gives, such as: stretch 3 mm under 1000 N",
    )


def hollow_anchor_overhead(array: Array, anchor: Hardware) -> Diagnostic:
    """An anchor for hollow walls above people."""
    return Diagnostic(
        "hollow-anchor-overhead",
        f"'{array.name}': '{anchor.name}' is made for hollow walls; overhead a steady pull bends and creeps the board, "
        "damp weakens it, and it lets go all at once",
        array.hang.at,
        "fix into the members behind the board, or into a rail screwed to them",
    )


def anchor_use_not_stated(array: Array, anchor: Hardware) -> Diagnostic:
    """An anchor in a lining above people, and nobody says what it is made for."""
    return Diagnostic(
        "anchor-use-not-stated",
        f"'{array.name}': what '{anchor.name}' is made for is not stated; above people that counts as made for hollow "
        "walls, which is refused",
        array.hang.at,
        "state what its maker says, such as: made-for solid-walls",
    )


def not_for_wood(piece: Hardware, member: str, overhead: bool) -> Diagnostic:
    """An anchor for walls that is meant to go into a member."""
    return Diagnostic(
        "not-for-wood",
        f"'{piece.name}' is made for {piece.made_for.replace('-', ' ')} and is to go into a {member}",
        piece.at,
        "take a screw or an eye for wood",
        _severity(overhead),
    )


def characteristic_density_missing(member: str, span: Span, overhead: bool) -> Diagnostic:
    """Eurocode 5 goes by a density that the timber doesn't state."""
    return Diagnostic(
        "characteristic-density-missing",
        f"the timber of the {member}s states no characteristic density, which the rules of Eurocode 5 go by",
        span,
        'state that of its strength class, such as: characteristic-density 290 kg/m3, "C14"',
        _severity(overhead),
    )


def screw_outside_eurocode(piece: Hardware, tape: TapeStyle, overhead: bool) -> Diagnostic:
    """A shank for which Eurocode 5 has no formula."""
    return Diagnostic(
        "screw-outside-ec5",
        f"'{piece.name}' has a shank of {words.length(piece.shank or 0, tape)}; the formula of Eurocode 5 is for 6 to "
        "12 mm, and others need the value that their maker declares",
        piece.at,
        "take one of 6 to 12 mm, or state what its maker declares, such as: withdraws at 11 N/mm2 in wood of 350 "
        'kg/m3, "declaration of performance, its number"',
        _severity(overhead),
    )


def thin_for_eurocode(
    piece: Hardware, member: str, depth: float, wanted: float, tape: TapeStyle, overhead: bool
) -> Diagnostic:
    """A member thinner than the formula of Eurocode 5 wants."""
    return Diagnostic(
        "thin-for-ec5",
        f"'{piece.name}' goes into a {member} {words.length_down(depth, tape)} deep; the rules of Eurocode 5 want "
        f"{words.length_up(wanted, tape)}, twelve shanks",
        piece.at,
        "take a thinner shank or a deeper timber, or `timber-rules nds`",
        _severity(overhead),
    )


def connector_opens(array: Array, piece: Hardware, overhead: bool) -> Diagnostic:
    """A piece in the load path that nothing keeps closed."""
    return Diagnostic(
        "connector-opens",
        f"'{array.name}': nothing locks '{piece.name}' ({piece.words}); a hook or a spring gate can let go when a "
        "panel is knocked or lifted",
        piece.at,
        "take one that locks: with a screw gate, a nut or a pin",
        _severity(overhead),
    )


def end_grain_refused(array: Array, piece: Hardware, why: str, overhead: bool) -> Diagnostic:
    """A fixing into the end of a member for which there is no rule."""
    return Diagnostic(
        "end-grain-refused",
        f"'{array.name}': '{piece.name}' goes into end grain, and {why}",
        array.hang.at,
        "fix into the side of the members, or bolt a bracket to their sides",
        _severity(overhead),
    )


def eye_pulled_aside(array: Array, piece: Hardware, angle_deg: float, overhead: bool) -> Diagnostic:
    """An eye that screws into wood is pulled off its axis."""
    return Diagnostic(
        "eye-pulled-aside",
        f"'{array.name}': '{piece.name}' screws into wood and is pulled {angle_deg:g} deg off its axis; a screw eye "
        f"holds in line, up to {INLINE_PITCH_DEG:g} deg",
        array.hang.at,
        "hang it plumb, or drive the eye in the direction of the pull and have it checked",
        _severity(overhead),
    )


def eye_fixing_not_stated(array: Array, eye: Hardware, overhead: bool) -> Diagnostic:
    """Nothing says how an eye is held to the panel."""
    return Diagnostic(
        "eye-fixing-not-stated",
        f"'{array.panel.name}': how '{eye.name}' ({eye.words}) is held to the frame is not stated, so what the frame "
        "holds there is not known",
        eye.at,
        "state its through-bolts, such as: bolts 2 of 5 mm",
        _severity(overhead),
    )


def frame_too_thin(array: Array, thickness: float, tape: TapeStyle, overhead: bool) -> Diagnostic:
    """The sheet of the frame is too thin to bolt an eye to."""
    return Diagnostic(
        "frame-too-thin",
        f"'{array.panel.name}': its frame is {words.length_down(thickness, tape)} thick at the eyes; "
        f"{words.length_up(THINNEST_FRAME_MM, tape)} is the least that an eye may be bolted to",
        array.panel.at,
        "take a thicker sheet for the frame",
        _severity(overhead),
    )


def share_rule_not_valid(array: Array, has_pieces: bool, overhead: bool) -> Diagnostic:
    """The chosen rule of sharing doesn't hold for this panel, or with these pieces."""
    why, mend = "the points or the centre of gravity aren't as that rule wants them", "take `share` out"
    if not has_pieces and array.hang.share == "springs":
        why, mend = "how much the links give isn't stated", "state it, such as: stretch 3 mm under 100 N"
    elif not has_pieces:
        why = "none of its eyes and links can be adjusted"
        mend = "take one that can, with its range: length 240 mm to 310 mm; or take `share` out"
    return Diagnostic(
        "share-rule-not-valid",
        f"'{array.name}': sharing by {array.hang.share} doesn't hold here: {why}; the worst case is counted",
        array.hang.at,
        mend,
        _severity(overhead),
    )


def links_lean(array: Array, thrust: float, tape: TapeStyle) -> Diagnostic:
    """Links that lean push or pull the panel's frame."""
    return Diagnostic(
        "links-lean",
        f"'{array.name}': its links lean {float(array.hang.lean_deg):g} deg, more than {STEEP_LEAN_DEG:g} deg, and "
        f"each puts {words.asked(thrust, tape)} level into the panel's frame",
        array.hang.at,
        "hang it plumb; the frame is checked for it only in its side rails",
        Severity.WARNING,
    )


def slides_down_slope(array: Array, force: float, tape: TapeStyle) -> Diagnostic:
    """Links square to a slope, and nothing that keeps the panel from sliding down."""
    return Diagnostic(
        "slides-down-slope",
        f"'{array.name}': its links hang square to the slope, and nothing holds the {words.asked(force, tape)} with "
        "which each panel would slide down",
        array.hang.at,
        "let the links hang plumb, or state a tie: `up-slope-tie 2 of TIE from EYE, to PLATE on 4 of SCREW, "
        "reaching 300 mm`",
    )


def tie_lifts_panel(array: Array, panels: Sequence[str], tie: UpSlopeTie) -> Diagnostic:
    """A tie so steep that it lifts the panel's edge towards the slope, and the links go slack."""
    return Diagnostic(
        "tie-lifts-panel",
        f"'{array.name}': the tie up the slope lifts the upper edge of {words.listed(panels)} more than its weight "
        "holds it down, so that links go slack",
        tie.at,
        "let it reach further up the slope, or take a shorter drop",
    )


def lean_into_rail(array: Array, overhead: bool) -> Diagnostic:
    """Leaning links on a rail: no rule here."""
    return Diagnostic(
        "lean-into-rail",
        f"'{array.name}': links that lean pull a rail aside; no rule here covers that",
        array.hang.at,
        "hang it plumb, or fix into the members",
        _severity(overhead),
    )


def rail_bends(array: Array, moment: float, allowed: float) -> Diagnostic:
    """A rail is asked for more bending than it is allowed."""
    return Diagnostic(
        "overloaded",
        f"'{array.name}': its rail in bending is asked for {moment:.0f} Nm and allowed {allowed:.0f} Nm",
        array.hang.rail.at if array.hang.rail else array.hang.at,
        "take a stouter rail, or let the panels hang nearer to the members",
    )


def drop_out_of_reach(array: Array, wanted: float, least: float, most: float, tape: TapeStyle) -> Diagnostic:
    """The hardware is longer or shorter than the drop."""
    span = words.length(least, tape) if least == most else f"{words.length(least, tape)} to {words.length(most, tape)}"
    mend = "a longer drop, or shorter pieces" if wanted < least else "a longer or adjustable link would do"
    return Diagnostic(
        "drop-out-of-reach",
        f"'{array.name}': its eye, link and ceiling eye come to {span} from bearing to bearing; from the ceiling to "
        f"the panel's back there are {words.length(wanted, tape)}",
        array.hang.at,
        mend,
    )


def no_room_to_lift_off(array: Array, panel: str, room: float, wanted: float, tape: TapeStyle) -> Diagnostic:
    """A panel on cleats that can't be lifted off them, so it can't be hooked on either."""
    return Diagnostic(
        "no-room-to-lift-off",
        f"'{array.name}': {panel} has {words.length_down(max(room, 0.0), tape)} free above it; "
        f"{words.length_up(wanted, tape)} is wanted to lift it onto its cleats and off",
        array.hang.at,
        f"hang it {words.length_up(wanted - room, tape)} lower",
    )


def too_near_to(array: Array, line: Clearance, span: Span, mend: str = "move the panel") -> Diagnostic:
    """A panel is nearer to a lamp, a head or a detector than the rule this book asks by."""
    return Diagnostic(
        "near-to-service",
        f"'{array.name}': {line.panel} stands near to {line.thing} on {line.surface}: {line.found}; "
        f"wanted: {line.wanted}",
        span,
        f"{mend}, or ask: {line.ask}",
        Severity.WARNING,
    )


def paper_out_of_date(paper: Evidence, date: str) -> Diagnostic:
    """A paper that ends before the date of the plan's issue."""
    return Diagnostic(
        "paper-out-of-date",
        f"the paper '{paper.name}' holds until {paper.until}; this issue is of {date}",
        paper.at,
        "ask for a newer one",
        Severity.WARNING,
    )

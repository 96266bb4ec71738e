"""The words of the load engine's findings: one function a code."""

from planlang.hardware import words
from planlang.hardware.factors import (
    ENGINEER_KN_PER_M2,
    ENGINEER_PANEL_KG,
    ENGINEER_POINT_N,
)
from planlang.plan.model import Array
from planlang.plan.stock import Hardware
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic, Severity
from planlang.syntax.span import Span


def _severity(overhead: bool) -> Severity:
    return Severity.ERROR if overhead else Severity.WARNING


def rating_missing(piece: Hardware, overhead: bool) -> Diagnostic:
    """A piece of a load path has no stated working load."""
    what = "it hangs panels over people" if overhead else "what holds the panel is not verified"
    return Diagnostic(
        "rating-missing",
        f"'{piece.name}' ({piece.words}) has no stated working load; {what}",
        piece.at,
        'state the load marked on the piece and where it is marked, such as: rated 500 N, "maker\'s sheet, its number"',
        _severity(overhead),
    )


def overloaded(array: Array, step: str, demand: str, allowed: str, mend: str) -> Diagnostic:
    """A step of the load path is asked for more than it is allowed."""
    return Diagnostic(
        "overloaded", f"'{array.name}': {step} is asked for {demand} and allowed {allowed}", array.hang.at, mend
    )


def panel_tips_over(array: Array, panel: str) -> Diagnostic:
    """The hang points don't hold the centre of gravity between them."""
    return Diagnostic(
        "panel-tips-over",
        f"'{array.name}': the hang points of {panel} don't hold its centre of gravity between them; it would tip over",
        array.panel.hung_by.at if array.panel.hung_by else array.at,
        "spread the hang points so that the middle of the panel lies between them, on a slope also up the slope",
    )


def mass_unknown(array: Array) -> Diagnostic:
    """No mass came from the materials, so no load can be reckoned."""
    return Diagnostic(
        "mass-unknown",
        f"'{array.name}': the mass of panel '{array.panel.name}' is not known, so its loads are not checked",
        array.panel.at,
        "mend what is wrong with the panel first",
    )


def wrong_way_to_hang(array: Array, overhead: bool) -> Diagnostic:
    """Cleats overhead, eyes on a wall, or no hang points at all."""
    if not array.panel.hung_by:
        message, mend = f"panel '{array.panel.name}' has neither eyes nor cleats", "give the panel type eyes or cleats"
    elif overhead:
        message, mend = "cleats hold by their own weight on a wall; under a ceiling they let go", "hang it from eyes"
    else:
        message, mend = "there is no rule for a panel that hangs from eyes on a wall", "hang it on cleats"
    return Diagnostic("hang-not-checked", f"'{array.name}': {message}", array.hang.at, mend)


def no_member_behind(array: Array, points: tuple[str, ...], member: str, overhead: bool) -> Diagnostic:
    """Hang points that should go into a member have none behind them."""
    verb = "has" if len(points) == 1 else "have"
    return Diagnostic(
        "no-member-behind",
        f"'{array.name}': {words.listed(points)} {verb} no {member} behind; nothing there is known to hold",
        array.hang.at,
        "move the panels so that their hang points meet the members, or fix into a rail across them",
        _severity(overhead),
    )


def edge_too_near(array: Array, point: str, edge: float, wanted: float, tape: TapeStyle, overhead: bool) -> Diagnostic:
    """A fixing is too near to the edge of its member."""
    there = words.length_down(max(edge, 0.0), tape)
    return Diagnostic(
        "edge-too-near",
        f"'{array.name}': {point} is {there} from the edge of its member; {words.length_up(wanted, tape)} is wanted",
        array.hang.at,
        f"move it {words.length_up(wanted - edge, tape)} towards the member's centre line",
        _severity(overhead),
    )


def thread_not_stated(piece: Hardware, overhead: bool) -> Diagnostic:
    """A piece that goes into wood states no shank or no thread."""
    return Diagnostic(
        "thread-not-stated",
        f"'{piece.name}' ({piece.words}) goes into wood, and its shank or the length of its thread is not stated",
        piece.at,
        "state the diameter of the shank and the length of the thread",
        _severity(overhead),
    )


def thread_too_short(
    piece: Hardware, counts: float, least: float, member: str, mend: str, tape: TapeStyle, overhead: bool
) -> Diagnostic:
    """Less thread is in solid wood than the rule asks for."""
    return Diagnostic(
        "thread-too-short",
        f"'{piece.name}': only {words.length_down(counts, tape)} of its thread counts in the {member}; "
        f"{words.length_up(least, tape)} is the least",
        piece.at,
        mend,
        _severity(overhead),
    )


def timber_not_stated(member: str, surface: str, span: Span, overhead: bool) -> Diagnostic:
    """The members behind a surface have no stated timber."""
    return Diagnostic(
        "timber-not-stated",
        f"the timber of the {member}s behind '{surface}' is not stated, so what they hold is not known",
        span,
        "name their timber with its specific gravity; 0.36 where nobody has seen a grade stamp",
        _severity(overhead),
    )


def gravity_not_sourced(name: str, gravity: float, span: Span, overhead: bool) -> Diagnostic:
    """A specific gravity above the lowest is stated without a source."""
    return Diagnostic(
        "gravity-not-sourced",
        f"timber '{name}' states specific gravity {gravity:g} without a source; it is taken as assumed",
        span,
        "state who saw the grade stamp or the species, or take 0.36",
        _severity(overhead),
    )


def lining_cannot_carry(array: Array, lining: str, overhead: bool) -> Diagnostic:
    """A fixing ends in a lining that isn't stated to carry."""
    return Diagnostic(
        "lining-cannot-carry",
        f"'{array.name}': its fixings end in the lining '{lining}', which is not stated to carry",
        array.hang.at,
        "fix into the members behind it, or into a rail screwed to them",
        _severity(overhead),
    )


def screw_in_lining_overhead(array: Array, anchor: Hardware, lining: str) -> Diagnostic:
    """A wood screw overhead that ends in a lining alone."""
    return Diagnostic(
        "screw-in-lining-overhead",
        f"'{array.name}': the thread of '{anchor.name}' ends in the lining '{lining}' overhead; "
        "a lining alone has no rule that holds it",
        array.hang.at,
        "fix into the members behind it, or into a rail screwed to them",
    )


def eye_in_sheet_edge(array: Array, eye: Hardware) -> Diagnostic:
    """The panel's eye is screwed into the edge of its frame."""
    return Diagnostic(
        "eye-in-sheet-edge",
        f"'{array.panel.name}': '{eye.name}' screws into the edge of the frame's sheet; no rule covers that",
        array.panel.hung_by.at if array.panel.hung_by else array.panel.at,
        "use an eye that is bolted through or an eye plate, with its marked load and no thread",
    )


def pitch_too_steep(array: Array, pitch: float) -> Diagnostic:
    """The timber stands too steep for a plumb eye."""
    return Diagnostic(
        "pitch-too-steep",
        f"'{array.name}': an eye driven plumb into members pitched {pitch:g} deg meets the grain at less than 30 deg; "
        "no rule covers that",
        array.hang.at,
        "fix into a rail across the members",
    )


def rail_on_one_member(array: Array, rail: str, crossings: int, overhead: bool) -> Diagnostic:
    """A rail that meets fewer than two members."""
    meets = "one member" if crossings == 1 else "no member"
    return Diagnostic(
        "rail-on-one-member",
        f"'{array.name}': {rail} is screwed to {meets}; it needs two",
        array.hang.at,
        "let the rail run on to the next member",
        _severity(overhead),
    )


def engineer_needed(what: str, span: Span) -> Diagnostic:
    """A load is beyond what this project's rules are for."""
    return Diagnostic(
        "engineer-needed",
        f"{what}; a structural engineer has to check it",
        span,
        "show this job book to one before anything is hung",
        Severity.WARNING,
    )


def surface_loaded(surface: str, kn_per_m2: float) -> str:
    """Say how heavily a surface is loaded, for `engineer_needed`."""
    return f"'{surface}' would carry {kn_per_m2:.2f} kN/m2 of panels, more than {ENGINEER_KN_PER_M2:g} kN/m2"


def rating_not_sourced(piece: Hardware, overhead: bool) -> Diagnostic:
    """A working load is stated without saying where it is marked; said once for all pieces that share the line."""
    return Diagnostic(
        "rating-not-sourced",
        "this working load is stated without a source; it is taken as assumed",
        piece.rated_at,
        "state where the load is marked: on the piece, or in which sheet of its maker",
        _severity(overhead),
    )


def rail_size_unknown(array: Array, timber: str, overhead: bool) -> Diagnostic:
    """The rail's timber has no section."""
    return Diagnostic(
        "rail-size-unknown",
        f"'{array.name}': the section of the rail's timber '{timber}' is not stated, so the thread it holds is not "
        "known",
        array.hang.rail.at if array.hang.rail else array.hang.at,
        "state the section of the timber",
        _severity(overhead),
    )


def heavy_panel(array: str, mass: float) -> str:
    """Say that a panel is heavy, for `engineer_needed`."""
    return f"'{array}': a panel weighs up to {words.kilograms(mass)}, more than {ENGINEER_PANEL_KG:g} kg"


def heavy_point(array: str, force: float, tape: TapeStyle) -> str:
    """Say that a point carries much, for `engineer_needed`."""
    return f"'{array}': one point is asked for {words.asked(force, tape)}, more than {ENGINEER_POINT_N:g} N"

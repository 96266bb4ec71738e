"""What the workshop engine has to say about a plan: one small function a code."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from planlang.materials.model import Piece
from planlang.plan.model import Array
from planlang.plan.node import Node
from planlang.plan.panel import BackBoard, Braces, Core, Covering, Diffuser, FramedAbsorber, PanelType
from planlang.plan.stock import Cloth, Price, Sheet, Timber
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape
from planlang.syntax.diagnostics import Diagnostic, Severity
from planlang.syntax.span import Span

# --- the frame ----------------------------------------------------------------------------------------------


def panel_too_small(panel: FramedAbsorber, inside: tuple[Fraction, Fraction], tape: TapeStyle) -> Diagnostic:
    """Nothing is left inside the frame."""
    thickness = on_tape(panel.frame.sheet.thickness, tape)
    face = size_on_tape((panel.width, panel.length), tape)
    width, length = inside[1], inside[0]
    left = f"{on_tape(width, tape)} across and {on_tape(length, tape)} along"
    return Diagnostic(
        "panel-too-small",
        f"panel '{panel.name}' is {face}: less two thicknesses of {thickness} that leaves {left} inside the frame",
        panel.at,
        f"make it wider than {on_tape(2 * panel.frame.sheet.thickness, tape)} both ways",
    )


def back_board_gone(panel: PanelType, board: BackBoard, tape: TapeStyle) -> Diagnostic:
    """The back board is so much smaller than the panel that nothing is left of it."""
    return Diagnostic(
        "back-board-gone",
        f"panel '{panel.name}': a back board {on_tape(board.less, tape)} smaller on every side than "
        f"{size_on_tape((panel.width, panel.length), tape)} has no size left",
        board.at,
        "write `1 mm smaller on every side`",
    )


def diffuser_width(panel: Diffuser, wells: int, wanted: Fraction, well: Fraction, tape: TapeStyle) -> Diagnostic:
    """Wells and fins add up to another width than the panel's; `well` is the width of well that would fit."""
    sums = (
        f"{wells} wells of {on_tape(panel.wells.width, tape)} and {wells + 1} fins of "
        f"{on_tape(panel.fins.thickness, tape)} are {on_tape(wanted, tape)}"
    )
    mend = f"make it {on_tape(wanted, tape)} wide"
    if well > 0 and well % tape.step == 0:
        mend += f", or the wells {on_tape(well, tape)}"
    width = on_tape(panel.width, tape)
    return Diagnostic("diffuser-width", f"panel '{panel.name}' is {width} wide, but {sums}", panel.wells.at, mend)


def diffuser_too_shallow(panel: Diffuser, least: Fraction, tape: TapeStyle) -> Diagnostic:
    """The deepest well with its bottom and the back board is deeper than the panel."""
    deepest = on_tape(max(panel.wells.depths), tape)
    return Diagnostic(
        "diffuser-too-shallow",
        f"panel '{panel.name}' is {on_tape(panel.depth, tape)} deep; its deepest well, {deepest}, with the bottom and "
        f"the back board takes {on_tape(least, tape)}",
        panel.wells.at,
        f"make it at least {on_tape(least, tape)} deep, or start from a higher frequency",
    )


def panel_too_short(panel: PanelType, ends: Fraction, tape: TapeStyle) -> Diagnostic:
    """Nothing is left between the ends."""
    return Diagnostic(
        "panel-too-small",
        f"panel '{panel.name}' is {on_tape(panel.length, tape)} long; its two ends take {on_tape(ends, tape)}",
        panel.at,
        f"make it longer than {on_tape(ends, tape)}",
    )


# --- braces and joints --------------------------------------------------------------------------------------


def brace_outside(
    panel: FramedAbsorber, braces: Braces, centre: Fraction, reach: tuple[Fraction, Fraction], tape: TapeStyle
) -> Diagnostic:
    """A brace runs into an end of the frame; `reach` is the first and the last centre that fits."""
    nearest = reach[0] if centre < reach[0] else reach[1]
    return Diagnostic(
        "brace-outside",
        f"panel '{panel.name}': a brace centred at {on_tape(centre, tape)} doesn't fit between the ends, "
        f"{on_tape(abs(nearest - centre), tape)} too far",
        braces.at,
        f"centre it from {on_tape(reach[0], tape)} to {on_tape(reach[1], tape)}",
    )


def braces_overlap(
    panel: FramedAbsorber,
    braces: Braces,
    pair: tuple[Fraction, Fraction],
    overlap: Fraction,
    *,
    mend: str,
    tape: TapeStyle,
) -> Diagnostic:
    """Two braces want the same place."""
    first, second = sorted(pair)
    return Diagnostic(
        "braces-overlap",
        f"panel '{panel.name}': the braces centred at {on_tape(first, tape)} and {on_tape(second, tape)} "
        f"overlap by {on_tape(overlap, tape)}",
        braces.at,
        mend,
    )


def braces_close(
    panel: FramedAbsorber, braces: Braces, pair: tuple[Fraction, Fraction], gap: Fraction, *, mend: str, tape: TapeStyle
) -> Diagnostic:
    """Two braces stand so close that one would do."""
    first, second = sorted(pair)
    return Diagnostic(
        "braces-close",
        f"panel '{panel.name}': the braces centred at {on_tape(first, tape)} and {on_tape(second, tape)} "
        f"stand only {on_tape(gap, tape)} apart",
        braces.at,
        mend,
        Severity.WARNING,
    )


def joint_no_brace(panel: FramedAbsorber, joint: Fraction, nearest: Fraction | None, tape: TapeStyle) -> Diagnostic:
    """A batt joint lands on no brace."""
    where = on_tape(joint, tape)
    if nearest is None:
        said, mend = "there is no brace", f"a brace centred at {where}, or braces at every batt joint"
    else:
        side = "before" if nearest < joint else "past"
        brace, off = on_tape(nearest, tape), on_tape(abs(nearest - joint), tape)
        said = f"the nearest brace is centred at {brace}, {off} {side} it"
        mend = f"a brace centred at {where}, or move the one at {brace} there"
    return Diagnostic(
        "joint-no-brace",
        f"panel '{panel.name}': the batts meet at {where} from the start end and no brace is under the joint; {said}",
        panel.braces.at if panel.braces else panel.core.at,
        mend,
    )


def joint_thin_bearing(
    panel: FramedAbsorber, braces: Braces, joint: Fraction, centre: Fraction, bearing: Fraction, *, tape: TapeStyle
) -> Diagnostic:
    """A batt joint lands so near the edge of a brace that one batt hardly rests on it."""
    return Diagnostic(
        "joint-thin-bearing",
        f"panel '{panel.name}': at the joint at {on_tape(joint, tape)} one batt rests on only {on_tape(bearing, tape)} "
        f"of the brace centred at {on_tape(centre, tape)}",
        braces.at,
        f"centre that brace at {on_tape(joint, tape)}",
        Severity.WARNING,
    )


# --- the core -----------------------------------------------------------------------------------------------


def core_seam(
    panel: FramedAbsorber, core: Core, seams: Sequence[Fraction], carried: bool, tape: TapeStyle
) -> Diagnostic:
    """Batts lie side by side; the joint along the panel has no member under it. Without braces nothing carries it."""
    at = ", ".join(on_tape(seam, tape) for seam in seams)
    carry = "carried only where it crosses a brace" if carried else "and nothing in the panel carries it"
    widest = max(core.batt.width, core.batt.length) + 2 * panel.frame.sheet.thickness - core.fit
    return Diagnostic(
        "core-seam",
        f"panel '{panel.name}' is wider inside than a batt of {core.batt.words} "
        f"({size_on_tape((core.batt.length, core.batt.width), tape)}): batts lie side by side with a joint "
        f"along the panel at {at} from its side, {carry}",
        core.at,
        f"a wider batt, or a panel at most {on_tape(widest, tape)} wide",
        Severity.WARNING if carried else Severity.ERROR,
    )


def core_sliver(panel: FramedAbsorber, core: Core, size: Fraction, tape: TapeStyle) -> Diagnostic:
    """The last piece of batt is thinner than it is high and won't stay put."""
    return Diagnostic(
        "core-sliver",
        f"panel '{panel.name}': the last piece of batt is a strip of {on_tape(size, tape)}, less than the "
        f"{on_tape(core.batt.thickness, tape)} it is thick",
        core.at,
        f"make the panel {on_tape(size, tape)} smaller that way, so that no strip is needed",
        Severity.WARNING,
    )


# --- the section --------------------------------------------------------------------------------------------


def brace_on_edge(panel: FramedAbsorber, braces: Braces, stack: str, over: Fraction, tape: TapeStyle) -> Diagnostic:
    """A brace on edge takes the depth that the batt needs."""
    flat = braces.setback + braces.sheet.thickness + panel.core.layers * panel.core.batt.thickness
    mend = f"lay it flat: it then takes {on_tape(braces.sheet.thickness, tape)} of the depth"
    if flat > panel.depth:
        mend += f", and the frame must be at least {on_tape(flat, tape)} deep"
    return Diagnostic(
        "brace-on-edge",
        f"panel '{panel.name}': with the brace on edge the batt doesn't pass behind it: {stack}, "
        f"{on_tape(over, tape)} more than the frame's depth of {on_tape(panel.depth, tape)}",
        braces.at,
        mend,
    )


def brace_too_thick(panel: FramedAbsorber, braces: Braces, stack: str, over: Fraction, tape: TapeStyle) -> Diagnostic:
    """A flat brace is too thick to leave the batt its room."""
    room = braces.sheet.thickness - over
    mend = f"a brace at most {on_tape(room, tape)} thick, or " if room > 0 else ""
    return Diagnostic(
        "brace-too-thick",
        f"panel '{panel.name}': the brace is too thick for the depth: {stack}, "
        f"{on_tape(over, tape)} more than the frame's depth of {on_tape(panel.depth, tape)}",
        braces.at,
        f"{mend}a frame at least {on_tape(panel.depth + over, tape)} deep",
    )


def batt_proud(panel: FramedAbsorber, stack: str, over: Fraction, tape: TapeStyle) -> Diagnostic:
    """The core stands out of the back of the frame."""
    room = panel.core.layers * panel.core.batt.thickness - over
    mend = f"at most {on_tape(room, tape)} of batt, or " if room > 0 else ""
    return Diagnostic(
        "batt-proud",
        f"panel '{panel.name}': the batt stands proud of the back by {on_tape(over, tape)}: {stack}, "
        f"in a frame {on_tape(panel.depth, tape)} deep",
        panel.core.at,
        f"{mend}a frame at least {on_tape(panel.depth + over, tape)} deep",
    )


def brace_at_cloth(panel: FramedAbsorber, braces: Braces) -> Diagnostic:
    """A brace that isn't set back shows through the cloth."""
    return Diagnostic(
        "brace-at-cloth",
        f"panel '{panel.name}': the braces lie against the front cloth and will show through it",
        braces.at,
        "set them back from the front",
        Severity.WARNING,
    )


# --- parts and stock ----------------------------------------------------------------------------------------


def part_exceeds_stock(what: str, at: Span, sheet: Sheet, fits: str, other: str, *, tape: TapeStyle) -> Diagnostic:
    """A part is larger than its sheet. `fits` is the largest that comes out of it, `other` a sheet that would do."""
    size = size_on_tape((sheet.length, sheet.width), tape)
    return Diagnostic(
        "part-exceeds-stock",
        f"{what} doesn't come out of {sheet.words}, {size}",
        at,
        f"{fits} fits" + (f", or take {other}" if other else ""),
        also=(("the sheet is stated here", sheet.at),),
    )


def part_against_grain(what: str, at: Span, sheet: Sheet, fits: str, other: str, *, tape: TapeStyle) -> Diagnostic:
    """A part fits its sheet only with its grain across."""
    size = size_on_tape((sheet.length, sheet.width), tape)
    return Diagnostic(
        "part-against-grain",
        f"{what} comes out of {sheet.words}, {size}, only across its grain",
        at,
        f"with the grain {fits} fits" + (f", or take {other}" if other else ""),
        also=(("the sheet is stated here", sheet.at),),
    )


def cloth_wider_than_roll(
    panel: PanelType, piece: Piece, blank: tuple[Fraction, Fraction], other: Cloth | None, tape: TapeStyle
) -> Diagnostic:
    """A blank (along, across the roll) is wider than its roll."""
    over = blank[1] - piece.stock.width
    mend = f"a roll at least {on_tape(blank[1], tape)} wide"
    across, along = (panel.length, "width") if piece.railroaded else (panel.width, "length")
    if over < across:
        mend += f", or a panel at most {on_tape(across - over, tape)} {'long' if piece.railroaded else 'wide'}"
    if other is not None:
        mend += f"; {other.words} is {on_tape(other.width, tape)} wide"
    if blank[0] <= piece.stock.width:
        other_way = "take `railroaded` out" if piece.railroaded else "add `railroaded`, if nap and pattern allow"
        mend += f"; it fits the other way round: {other_way}"
    mend += "; or add `seamed`, if a seam may show"
    return Diagnostic(
        "cloth-wider-than-roll",
        f"panel '{panel.name}' needs a blank of {size_on_tape(blank, tape)} with the panel's {along} along the roll: "
        f"{on_tape(over, tape)} wider than the roll of {piece.stock.words}, {on_tape(piece.stock.width, tape)}",
        piece.at,
        mend,
    )


def nap_crossed(array: Array, other: Array, covering: Covering, rises: bool) -> Diagnostic:
    """Two arrays show one cloth with its nap in different directions."""
    ways = ("up", "across") if rises else ("across", "up")
    way = "take `railroaded` out" if covering.railroaded else "add `railroaded`"
    return Diagnostic(
        "nap-crossed",
        f"'{array.name}' shows the nap of {covering.cloth.words} running {ways[0]}, '{other.name}' running {ways[1]}: "
        "side "
        "by side they look like two colours",
        array.at,
        f"turn the panels of one of them, or {way} at the front cloth of '{array.panel.name}'",
        Severity.WARNING,
        also=(("the other array is stated here", other.at),),
    )


def rail_longer_than_stick(lengths: Mapping[str, Fraction], timber: Timber, at: Span, tape: TapeStyle) -> Diagnostic:
    """Rails of one array that can't be cut from one stick, each with its length."""
    longest = max(lengths.values())
    what = f"rail {next(iter(lengths))} is" if len(lengths) == 1 else f"rails {', '.join(lengths)} are up to"
    stick = on_tape(timber.length or Fraction(0), tape)
    return Diagnostic(
        "rail-longer-than-stick",
        f"{what} {on_tape(longest, tape)} long, a stick of {timber.words} only {stick}",
        at,
        f"sticks of at least {on_tape(longest, tape)}, or two arrays with a rail each",
    )


def stick_length_unknown(timber: Timber, at: Span) -> Diagnostic:
    """Rails are wanted from a timber without a stick length."""
    return Diagnostic(
        "stick-length-unknown",
        f"rails are cut from {timber.words}, but how long its sticks are isn't stated",
        at,
        "state the length of a stick",
        also=(("the timber is stated here", timber.at),),
    )


# --- money --------------------------------------------------------------------------------------------------


def currency_mixed(words: str, currency: str, expected: str, at: Span) -> Diagnostic:
    """A price in another currency than the job's."""
    return Diagnostic(
        "currency-mixed",
        f"the price of {words} is in {currency}, the job is in {expected}",
        at,
        f"state it in {expected}: exchange rates aren't guessed",
    )


def price_unit(words: str, price: Price, allowed: Sequence[str]) -> Diagnostic:
    """A price by a unit in which the thing isn't sold."""
    return Diagnostic(
        "price-unit",
        f"{words} has a price per {price.per}; it is bought per {' or per '.join(allowed)}",
        price.at,
        f"state the price per {allowed[0]}",
    )


def price_missing(names: Sequence[str], nodes: Sequence[Node]) -> Diagnostic:
    """Something has no price, so there is no total."""
    return Diagnostic(
        "price-missing",
        f"no total can be stated: no price for {', '.join(names)}",
        nodes[0].at,
        "state the prices",
        Severity.WARNING,
        also=tuple(("no price here", node.at) for node in nodes[1:]),
    )

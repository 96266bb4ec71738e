"""The rules by which hang points share a panel's weight: the worst case, and those a plan may choose for a reason.

Plain numbers: positions in mm, shares of the weight. Every rule is bounded above by the envelope.
"""

from collections.abc import Sequence

from planlang.hardware.shares import Position, envelope, springs
from planlang.plan.safety import ShareRule

ADJUSTED = 1.5  # project policy: what a tension felt by hand may be off
CENTRED = 0.02  # a centre of gravity this near to the middle, by the length of a rail, counts as central

RULES: dict[ShareRule, str] = {
    "springs": (
        "chosen by the plan: equal elastic links under a rigid panel, R = W/n + W (a x + b y); holds for equal springs "
        "or long equal cables"
    ),
    "adjusted": (
        "chosen by the plan: every link is adjusted and its tension felt, so a point gets 1.5 times its elastic share "
        "(project policy)"
    ),
    "rails": (
        "chosen by the plan: each side rail is a stiff beam on level points, by the beam table for equal spans, and "
        "never less than 1.5 times the elastic share"
    ),
}

# Reactions of a uniform beam on equal spans, supported at its ends, as shares of its load (beam tables, from memory).
BEAM_TABLE: dict[int, tuple[float, ...]] = {
    2: (0.5, 0.5),
    3: (0.1875, 0.625, 0.1875),
    4: (0.4 / 3, 1.1 / 3, 1.1 / 3, 0.4 / 3),
    5: (0.0982143, 0.2857143, 0.2321429, 0.2857143, 0.0982143),
}


def share_by(rule: ShareRule, points: Sequence[Position], centre: Position) -> tuple[float, ...] | None:
    """Return the share of each point by a rule, at most its envelope; None when the rule doesn't hold here.

    None for the envelope means that the panel tips over.
    """
    most = envelope(points, centre)
    if most is None or rule == "envelope":
        return most
    elastic = _elastic(points, centre)
    if elastic is None:
        return None
    chosen: Sequence[float] | None = elastic
    if rule == "adjusted":
        chosen = [ADJUSTED * share for share in elastic]
    elif rule == "rails":
        chosen = _on_rails(points, centre, elastic)
    if chosen is None:
        return None
    return tuple(min(share, bound) for share, bound in zip(chosen, most, strict=True))


def _elastic(points: Sequence[Position], centre: Position) -> tuple[float, ...] | None:
    """Shares on equal springs; None when a point would push, or when all lie on one line."""
    try:
        shares = springs(points, centre, 1.0)
    except ZeroDivisionError:
        return None
    return shares if min(shares) >= 0 else None


def _on_rails(points: Sequence[Position], centre: Position, elastic: Sequence[float]) -> list[float] | None:
    """Lever across two rails, beam table along each; the centre of gravity must be central along them."""
    for across in (0, 1):
        levels = sorted({point[across] for point in points})
        if len(levels) != 2 or levels[0] == levels[1]:
            continue
        along = sorted({point[1 - across] for point in points})
        table = BEAM_TABLE.get(len(along))
        reach = along[-1] - along[0]
        middle = (along[0] + along[-1]) / 2
        if table is None or 2 * len(along) != len(points) or abs(centre[1 - across] - middle) > CENTRED * reach:
            continue
        upper = (centre[across] - levels[0]) / (levels[1] - levels[0])
        lever = {levels[0]: 1 - upper, levels[1]: upper}
        beam = [lever[point[across]] * table[along.index(point[1 - across])] for point in points]
        return [max(share, ADJUSTED * spring) for share, spring in zip(beam, elastic, strict=True)]
    return None

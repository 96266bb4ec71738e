"""What the links of a tilted panel carry, whose drops are unequal."""

from planlang.geometry.model import PlacedPanel
from planlang.geometry.polygon import to_grain
from planlang.geometry.tilt import Tilt
from planlang.hardware.case import Case
from planlang.hardware.shares import Position, envelope, row_share
from planlang.hardware.weigh import Shared, Weighed, centres

TILTED_RULE = (
    "links hang plumb, of unequal drops, under a rigid panel that hangs tilted: only the plan view counts. The centre "
    "of gravity hangs below the eyes, so that it lies nearer to the higher row by its depth below their plane x sin of "
    "the panel's slant. Each point is taken at the most it can get in any state in which links only pull (of four "
    "points two, corner to corner, can carry all: half the weight on one point at least), and one point of a row can "
    "carry the whole row"
)


def share_tilted(case: Case, panel: PlacedPanel, tilt: Tilt, weighed: Weighed) -> Shared | None:
    """Share the weight of a panel on plumb links of unequal drops; None when it would tip over.

    Anchors are plumb over the eyes, so that they are the plan view of the eyes, seen on the surface; the centre of
    gravity is brought there the same way. That view stretches a slope in one direction, which changes no share.
    """
    points = [(float(point.across), float(point.up)) for point in panel.points]
    seen = [_plumb_over(panel, tilt, centre, weighed.centre_off) for centre in centres(case, panel, weighed)]
    shares = [envelope(points, centre) for centre in seen]
    if any(share is None for share in shares):
        return None
    rows = [_row_share(tilt, points, centre) for centre in seen]
    part = max(*(max(share) for share in shares if share), *rows)
    pull = float(weighed.weight.value) * part * float(case.rules.dynamic)
    return Shared(part, pull, pull, 0.0, TILTED_RULE, part)


def _plumb_over(panel: PlacedPanel, tilt: Tilt, centre: Position, behind: float) -> Position:
    """Where on the surface a place of the panel is seen from plumb below, `behind` its back towards its front."""
    across, up = tilt.plumb(tilt.spot(panel.box, (to_grain(centre[0]), to_grain(centre[1])), to_grain(behind)))
    return float(across), float(up)


def _row_share(tilt: Tilt, points: list[Position], centre: Position) -> float:
    """The larger share of two outer rows, either way; a row that hangs askew under a slope is first seen straight."""
    askew = 0.0 if tilt.up else float(tilt.slip * tilt.more / tilt.run) * (1 if tilt.rising else -1)
    *rows, middle = [(across, float(to_grain(up - across * askew))) for across, up in (*points, centre)]
    aside = row_share([(up, across) for across, up in rows], (middle[1], middle[0]))
    return max(row_share(rows, middle) or 0.0, aside or 0.0)

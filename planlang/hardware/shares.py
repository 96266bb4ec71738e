"""Load shares at hang points by statics: plain numbers in, plain numbers out.

Lengths in mm, forces in N or as shares of the weight. A point that pushes is never counted on: links only pull.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations

from planlang.geometry.plane import turn

Position = tuple[float, float]

TOUCHING = 1e-9  # lengths closer than this part of the whole are taken as one


def envelope(points: Sequence[Position], centre: Position) -> tuple[float, ...] | None:
    """Return for each point the largest share of the weight that it can get in any state where no link pushes.

    The states {R >= 0, sum R = 1, moments about the centre of gravity vanish} form a polytope whose corners use at
    most three points, so the largest share is the largest barycentric weight over all triples (pairs, single points)
    that hold the centre of gravity between them. Any number of points, in any pattern. None when no triple holds the
    centre of gravity: the panel tips over. Source: statics of a rigid body on links that only pull.
    """
    largest = [0.0] * len(points)
    held = False
    for state in _states(points, centre):
        held = True
        for index, share in state.items():
            largest[index] = max(largest[index], share)
    return tuple(largest) if held else None


def _states(points: Sequence[Position], centre: Position) -> Iterator[dict[int, float]]:
    """Yield the corner states: shares by the index of the point."""
    size = max((math.dist(a, b) for a, b in combinations((*points, centre), 2)), default=0.0)
    near = TOUCHING * max(size, 1.0)
    for index, point in enumerate(points):
        if math.dist(point, centre) <= near:
            yield {index: 1.0}
    for pair in combinations(range(len(points)), 2):
        shares = _lever(points[pair[0]], points[pair[1]], centre, near)
        if shares is not None:
            yield dict(zip(pair, shares, strict=True))
    for triple in combinations(range(len(points)), 3):
        weights = _barycentric([points[index] for index in triple], centre, near)
        if weights is not None:
            yield dict(zip(triple, weights, strict=True))


def _lever(a: Position, b: Position, centre: Position, near: float) -> tuple[float, float] | None:
    """Shares of two points with the centre of gravity on the line between them, else None."""
    length = math.dist(a, b)
    if length <= near or abs(turn(a, b, centre)) / length > near:
        return None
    along = ((centre[0] - a[0]) * (b[0] - a[0]) + (centre[1] - a[1]) * (b[1] - a[1])) / length**2
    return (1 - along, along) if 0 <= along <= 1 else None


def _barycentric(corners: Sequence[Position], centre: Position, near: float) -> tuple[float, ...] | None:
    """Weights of the corners of a triangle that holds the centre of gravity, else None."""
    a, b, c = corners
    doubled_area = turn(a, b, c)
    longest = max(math.dist(a, b), math.dist(b, c), math.dist(c, a))
    if abs(doubled_area) <= near * longest:
        return None
    weights = (
        turn(b, c, centre) / doubled_area,
        turn(c, a, centre) / doubled_area,
        turn(a, b, centre) / doubled_area,
    )
    if min(weights) < -TOUCHING:
        return None
    return tuple(max(weight, 0.0) for weight in weights)


def equal_share(weight: float, points: int) -> float:
    """Return the weight over the number of points: for freight and totals only, never for a check of capacity."""
    return weight / points


def springs(points: Sequence[Position], centre: Position, weight: float) -> tuple[float, ...]:
    """Return the share of each of several equal elastic links under a rigid panel.

    R = W/n + W (a x + b y), x and y from the middle of the points. A negative share is uplift: then the rule doesn't
    hold. Valid for equal springs or long equal cables only. Source: equilibrium and compatibility of a rigid plate.

    Raises:
        ZeroDivisionError: the points lie on one line.
    """
    count = len(points)
    middle_x = sum(x for x, _ in points) / count
    middle_y = sum(y for _, y in points) / count
    offsets = [(x - middle_x, y - middle_y) for x, y in points]
    xx = sum(x * x for x, _ in offsets)
    yy = sum(y * y for _, y in offsets)
    xy = sum(x * y for x, y in offsets)
    off_x, off_y = centre[0] - middle_x, centre[1] - middle_y
    determinant = xx * yy - xy * xy
    a = (off_x * yy - off_y * xy) / determinant
    b = (off_y * xx - off_x * xy) / determinant
    return tuple(weight / count + weight * (a * x + b * y) for x, y in offsets)


def row_share(points: Sequence[Position], centre: Position) -> float | None:
    """Return the larger share of the two outer rows (lowest and highest `up`) by the lever rule.

    One point of a row may carry the whole row, so this bounds a point as well. None when all points lie in one row, or
    when the centre of gravity lies beyond the rows.
    """
    low = min(up for _, up in points)
    high = max(up for _, up in points)
    if high - low <= TOUCHING * max(abs(high), abs(low), 1.0):
        return None
    upper = (centre[1] - low) / (high - low)
    return max(upper, 1 - upper) if 0 <= upper <= 1 else None


def slope_rows(weight: float, centre_below: float, pitch_deg: float, spacing: float) -> tuple[float, float]:
    """Return the loads (up-slope row, down-slope row) of a panel parallel to a slope on plumb links.

    `centre_below` is the distance of the centre of gravity from the plane of the eyes, `spacing` the distance of the
    rows along the slope: R = W (1/2 +- h tan(pitch) / s). Plumb links are the only free equilibrium. Source: statics.
    """
    shift = centre_below * math.tan(math.radians(pitch_deg)) / spacing
    return weight * (0.5 + shift), weight * (0.5 - shift)


def fixed_on_slope(weight: float, centre_off: float, pitch_deg: float, spacing: float) -> tuple[float, float, float]:
    """Return (pull-out up-slope row, pull-out down-slope row, shear on all) of a panel fixed to a slope.

    `centre_off` is the distance of the centre of gravity from the plane of the fixings. A negative pull-out bears
    instead. Source: statics.
    """
    pitch = math.radians(pitch_deg)
    half = weight * math.cos(pitch) / 2
    turning = weight * math.sin(pitch) * centre_off / spacing
    return half + turning, half - turning, weight * math.sin(pitch)


def square_on_slope(
    pitch_deg: float, centre: Position, centre_off: float, tie_at: Position, rise: float
) -> tuple[float, Position]:
    """Return (part of the weight on links square to a slope, where it acts) of a panel that a tie keeps up the slope.

    `centre_off` is the distance of the centre of gravity from the plane of the eyes; `tie_at` where the tie is held to
    the panel, in that plane; `rise` how far the tie comes nearer to the slope on its way, as a part of its reach.
    Along the slope the tie takes W sin(pitch), square to it rise times that, which the links are spared. Moments about
    the plane of the eyes. Source: statics of a rigid body.
    """
    pitch = math.radians(pitch_deg)
    across, along = math.cos(pitch), math.sin(pitch)
    lifted = along * rise
    on_links = across - lifted
    if on_links <= 0:
        return on_links, centre
    level = (across * centre[0] - lifted * tie_at[0]) / on_links
    up = (across * centre[1] + along * centre_off - lifted * tie_at[1]) / on_links
    return on_links, (level, up)


def wall_pull_out(weight: float, centre_off: float, bearing_below: float) -> float:
    """Return the whole pull-out at the cleats of a wall panel, N: W e / z.

    `centre_off` is the distance of the centre of gravity from the wall, `bearing_below` from the cleats down to where
    the panel's foot bears on the wall; without a bearing at the foot the rule doesn't hold. Source: statics.
    """
    return weight * centre_off / bearing_below

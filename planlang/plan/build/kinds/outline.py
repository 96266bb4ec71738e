"""The outline of a panel as it is stated."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from planlang.plan import messages
from planlang.plan.build.names import Names, Unknown, maybe, one, refused, value
from planlang.plan.entry import Entry
from planlang.plan.outline import Outline, Spot

NIL = Fraction(0)
LEAST_TOP = Fraction(50)  # mm: a shorter member can't be joined at both ends; project policy


def build_outline(names: Names, entry: Entry, panel: Entry) -> Outline:
    """The outline within its face, with checks that it fits there and that its panel can be built so.

    Raises:
        Unknown: it doesn't; that has been reported.
    """
    width, length = value(one(panel, "face"), "size")
    shape = value(entry, "shape")
    corners: tuple[Spot, ...]
    check_kind(names, entry, panel, shape)
    match shape:
        case "circle":
            return _circle(names, entry, width, length)
        case "hexagon":
            half, quarter = length / 2, width / 4
            corners = ((NIL, half), (quarter, NIL), (3 * quarter, NIL),
                       (width, half), (3 * quarter, length), (quarter, length))  # fmt: skip
        case "trapezoid":
            aside = (width - _within(names, entry, "top", width)) / 2
            corners = ((NIL, NIL), (width, NIL), (width - aside, length), (aside, length))
        case "raking":
            left, right = (_within(names, entry, side, length) for side in ("left", "right"))
            if max(left, right) != length:
                raise refused(names, entry, "the longer side of a raking top is the length of the face",
                               "make one of them the same as the other")  # fmt: skip
            corners = ((NIL, NIL), (width, NIL), (width, right), (NIL, left))
        case _:
            corners = _corners(names, entry, (width, length))
    return Outline(at=entry.span, shape=shape, corners=corners)


def check_kind(names: Names, entry: Entry, panel: Entry, shape: str) -> None:
    """What a panel of another outline has to be built like.

    Raises:
        Unknown: it is not; that has been reported.
    """
    kind = maybe(panel, "absorber")
    if kind is None or value(kind, "build") != "framed":
        return
    if shape == "circle":
        raise refused(names, entry, "a frame of straight strips makes no circle",
                       "write `absorber board`, or an outline with corners")  # fmt: skip
    frame, facing = maybe(panel, "frame"), maybe(panel, "facing")
    if frame is not None and value(frame, "joint") != "mitre":
        raise refused(names, entry, f"corners that are not square can't have {value(frame, 'joint')} joints",
                       "write `mitre joints` in `frame`")  # fmt: skip
    if facing is not None:
        raise refused(names, entry, "a facing is laid out for rectangles alone", "take `facing` or `outline` out")
    if maybe(panel, "shadow-gap") is not None:
        message = "a shadow gap is laid out for rectangles alone"
        raise refused(names, entry, message, "take `shadow-gap` or `outline` out")


def _circle(names: Names, entry: Entry, width: Fraction, length: Fraction) -> Outline:
    if width != length:
        raise refused(names, entry, "the face of a circle is as long as it is wide", "make the face square")
    return Outline(at=entry.span, shape="circle", corners=((width / 2, width / 2),), radius=width / 2)


def _within(names: Names, entry: Entry, name: str, most: Fraction) -> Fraction:
    found: Fraction = value(entry, name)
    if not LEAST_TOP <= found <= most:
        message = f"the {name} of the outline is from {float(LEAST_TOP):g} mm to what the face measures"
        names.sink.append(messages.out_of_range(entry.span, message))
        raise Unknown
    return found


def _corners(names: Names, entry: Entry, face: Spot) -> tuple[Spot, ...]:
    given: tuple[Fraction, ...] = value(entry, "corners")
    if len(given) % 2 or len(given) < 6:
        message = f"corners are pairs, across then along, three or more; here are {len(given)} positions"
        names.sink.append(messages.count_differs(entry.span, message))
        raise Unknown
    corners = tuple(zip(given[::2], given[1::2], strict=True))
    ring = (*corners, *corners[:2])
    turns = [
        (bx - ax) * (cy - by) - (by - ay) * (cx - bx)
        for (ax, ay), (bx, by), (cx, cy) in zip(ring, ring[1:], ring[2:], strict=False)
    ]
    if not all(turn > 0 for turn in turns) or not _once_round(corners):
        raise refused(names, entry, "the corners run anticlockwise round a convex outline, none on a straight side",
                       "put them in order from the lower left one; hollow shapes are two panels")  # fmt: skip
    lows, highs = (tuple(pick(spot[axis] for spot in corners) for axis in (0, 1)) for pick in (min, max))
    if lows != (NIL, NIL) or highs != face:
        raise refused(names, entry, "the outline reaches all four sides of its face",
                       "make the face as wide and as long as the corners say, from 0, 0")  # fmt: skip
    return corners


def _once_round(corners: tuple[Spot, ...]) -> bool:
    """Whether the sides of an outline that only turns left go round once: they turn from down to up once."""
    ups = [by > ay or (by == ay and bx < ax) for (ax, ay), (bx, by) in pairwise((*corners, corners[0]))]
    return sum(after and not before for before, after in pairwise((*ups, ups[0]))) == 1

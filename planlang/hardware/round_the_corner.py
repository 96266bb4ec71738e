"""Things on one surface and panels on another: a radiator under a panel on the ceiling, a wall lamp beside a cloud."""

import math
from collections.abc import Sequence
from itertools import product

from planlang.geometry.features import box_of
from planlang.geometry.model import PlacedPanel, RoomGeometry, Surface, Vector
from planlang.hardware import messages_hanging, words
from planlang.hardware.clearances import THREE_TIMES_CAP
from planlang.hardware.factors import CLEAT_STANDOFF_MM
from planlang.hardware.model import Clearance
from planlang.plan.room import Feature
from planlang.plan.tape import TapeStyle
from planlang.plan.usual import USUAL
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record

WHO = {
    "radiator": "who maintains the heating, with the maker's distance from what burns",
    "luminaire": "electrician, with the label of the luminaire",
    "sprinkler": "sprinkler contractor",
    "detector": "who maintains the alarm",
}
RULE = "project policy: as far as the usual distance on one surface; measured in a straight line"
STEPS, LEAST_STEPS, STILL_MM = 400, 3, 0.001


@record
class Block:
    """A box that stands square to a surface: from low to high (across, up, into the room), mm."""

    surface: Surface
    low: Vector
    high: Vector

    @property
    def middle(self) -> Vector:
        """Its middle in the room."""
        across, up, into = ((low + high) / 2 for low, high in zip(self.low, self.high, strict=True))
        return self.surface.in_room(across, up, into)

    @property
    def corners(self) -> tuple[Vector, ...]:
        """Its corners in the room."""
        return tuple(self.surface.in_room(*at) for at in product(*zip(self.low, self.high, strict=True)))

    @property
    def radius(self) -> float:
        """The radius of the ball about its middle that holds it, mm."""
        return math.dist(self.low, self.high) / 2

    def nearest_to(self, place: Vector) -> Vector:
        """The point of the box that is nearest to a place in the room."""
        face = self.surface
        off = [p - o for p, o in zip(place, face.origin, strict=True)]
        local = [
            sum(a * b for a, b in zip(off, axis, strict=True)) for axis in (face.across_dir, face.up_dir, face.inward)
        ]
        across, up, into = (min(max(at, low), high) for at, low, high in zip(local, self.low, self.high, strict=True))
        return face.in_room(across, up, into)


def apart(first: Block, second: Block) -> float:
    """Return the distance between two boxes, mm: by projecting from one to the other until nothing changes.

    Between faces at a small angle plain steps creep, so each goes on in the direction of the last; one that turns back
    starts afresh. Source, from memory: B. O'Donoghue and E. Candes, Adaptive restart for accelerated gradient schemes,
    Found. Comput. Math. 15 (2015) 715-732.
    """
    here = ahead = first.nearest_to(second.nearest_to(first.surface.in_room(*first.low)))
    weight = 1.0
    for step in range(STEPS):
        before, here = here, first.nearest_to(second.nearest_to(ahead))
        way = [new - old for new, old in zip(here, before, strict=True)]
        back = sum((at - new) * by for at, new, by in zip(ahead, here, way, strict=True)) > 0
        after = 1.0 if back else (1 + math.sqrt(1 + 4 * weight * weight)) / 2
        push = 0.0 if back else (weight - 1) / after
        ahead, weight = (here[0] + push * way[0], here[1] + push * way[1], here[2] + push * way[2]), after
        if step > LEAST_STEPS and math.hypot(*way) < STILL_MM:
            break
    return math.dist(here, second.nearest_to(here))


def block_of_panel(panel: PlacedPanel, surface: Surface) -> Block:
    """The body of a panel: from its back to its front, as the links or cleats hold it; of one that hangs tilted the
    block along its surface that holds the whole body."""
    box, hang = panel.box, panel.array.hang
    back = float(panel.least_back) if hang.by == "eyes" else CLEAT_STANDOFF_MM
    front = float(panel.most_front) if panel.tilt is not None else back + float(panel.array.panel.depth)
    low, high = (float(box.left), float(box.lower), back), (float(box.right), float(box.upper), front)
    return Block(surface, low, high)


def block_of_thing(feature: Feature, surface: Surface) -> Block:
    """A thing on its surface, as deep as the plan has it."""
    box = box_of(feature)
    return Block(
        surface, (float(box.left), float(box.lower), 0.0), (float(box.right), float(box.upper), float(feature.depth))
    )


def round_the_corner(
    room: RoomGeometry, panels: Sequence[PlacedPanel], tape: TapeStyle
) -> tuple[tuple[Clearance, ...], list[Diagnostic]]:
    """For each heater, lamp, head and detector that is nearer than usual to a panel on another surface, a line and a
    warning; for a head first of all where a panel is in the way of its water."""
    lines: list[Clearance] = []
    findings: list[Diagnostic] = []
    bodies = _bodies(room, panels)
    for placed in room.features:
        feature, face = placed.feature, room.surface(placed.feature.surface)
        others = [body for body in bodies if body.panel.surface != feature.surface]
        if feature.kind not in WHO or face is None or not others:
            continue
        wet = _in_discharge(feature, face, others, tape) if feature.kind == "sprinkler" else None
        if wet is not None:
            lines.append(wet[1])
            findings.append(messages_hanging.too_near_to(wet[0].array, wet[1], feature.at, wet[2]))
            continue
        wanted = float(USUAL[feature.kind].distance)
        found = _nearest(block_of_thing(feature, face), others, wanted)
        if found is None:
            continue
        panel, distance = found
        line = Clearance(
            f"{feature.kind} {feature.name}", face.name, panel.mark, distance, words.length_up(wanted, tape),
            f"{words.length_down(distance, tape)} to the panel on {panel.surface}", RULE, WHO[feature.kind], True,
        )  # fmt: skip
        lines.append(line)
        findings.append(messages_hanging.too_near_to(panel.array, line, feature.at))
    return tuple(lines), findings


def _in_discharge(
    feature: Feature, face: Surface, bodies: Sequence["_Body"], tape: TapeStyle
) -> tuple[PlacedPanel, Clearance, str] | None:
    from planlang.hardware.discharge import in_discharge  # noqa: PLC0415 - few plans have sprinklers

    head = face.in_room(float(feature.across), float(feature.up), float(feature.below or 0))
    near = [body for body in bodies if math.dist(head[:2], body.middle[:2]) < THREE_TIMES_CAP + body.radius]
    return in_discharge(feature, face, [(body.panel, body.block.surface, body.corners) for body in near], tape)


@record
class _Body:
    """A panel with its body, and the ball that holds it; its corners where a room has sprinklers."""

    panel: PlacedPanel
    block: Block
    middle: Vector
    radius: float
    corners: tuple[Vector, ...]


def _bodies(room: RoomGeometry, panels: Sequence[PlacedPanel]) -> list[_Body]:
    found = []
    wet = any(placed.feature.kind == "sprinkler" for placed in room.features)
    for panel in panels:
        surface = room.surface(panel.surface)
        if surface is not None:
            block = block_of_panel(panel, surface)
            found.append(_Body(panel, block, block.middle, block.radius, block.corners if wet else ()))
    return found


def _nearest(thing: Block, bodies: Sequence[_Body], within: float) -> tuple[PlacedPanel, float] | None:
    """The nearest panel, if it is nearer than `within`; far ones are left out by the balls that they fit in."""
    found = []
    middle, reach = thing.middle, thing.radius + within
    for index, body in enumerate(bodies):
        if math.dist(middle, body.middle) < reach + body.radius:
            found.append((apart(thing, body.block), index))
    distance, index = min(found, default=(math.inf, 0))
    return (bodies[index].panel, distance) if distance < within else None

"""Panels and hang points: from which edge, by which inset."""

from fractions import Fraction
from typing import TYPE_CHECKING

from planlang.geometry.model import HangPoint, PlacedPanel
from planlang.jobbook import words
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.reasons.topic import EXACT, Topic, Topics, finer, surveyed
from planlang.plan.figure import Figure
from planlang.plan.model import Bays, Plan
from planlang.plan.panel import Cleats, Eyes
from planlang.plan.tape import TapeStyle
from planlang.syntax.record import record
from planlang.syntax.span import Span

if TYPE_CHECKING:
    from planlang.geometry.tilt import Tilt


@record
class Edge:
    """An edge of a panel that a distance is measured from, which way, and by what."""

    words: str
    at: Fraction
    sign: int


def placing_topics(compiled: CompiledPlan) -> Topics:
    """The place of each panel, then both coordinates of each hang point."""
    tape = compiled.plan.job.tape
    for panel in compiled.layout.panels:
        lines = (panel.array.placement.at, panel.array.panel.at, *_surveyed(compiled.plan, panel))
        figure = Figure(panel.box.left, "mm", panel.how, (), lines, EXACT)
        value = f"{words.length(panel.box.left, tape)} from the left, {words.length(panel.box.lower, tape)} up"
        yield Topic(f"panel {panel.mark}", value, f"Panel edges on {panel.surface}", figure)
    for panel in compiled.layout.panels:
        for point in panel.points:
            yield _coordinate(compiled.plan, panel, point, "across")
            yield _coordinate(compiled.plan, panel, point, "up")


def _surveyed(plan: Plan, panel: PlacedPanel) -> tuple[Span, ...]:
    placement = panel.array.placement
    features = placement.features if isinstance(placement, Bays) else ()
    rail = panel.array.panel.rail
    return surveyed(plan, panel.surface, *((rail.name,) if rail else ()), *features)


def _coordinate(plan: Plan, panel: PlacedPanel, point: HangPoint, which: str) -> Topic:
    tape = plan.job.tape
    across = which == "across"
    at = point.across if across else point.up
    box, mark = panel.box, panel.mark
    if across:
        edges = (Edge(f"left edge of {mark}", box.left, 1), Edge(f"right edge of {mark}", box.right, -1))
    else:
        edges = (Edge(f"lower edge of {mark}", box.lower, 1), Edge(f"upper edge of {mark}", box.upper, -1))
    how, inputs = _reckoned(panel, across, at, edges, finer(tape))
    hooks, rail = panel.array.panel.hung_by, panel.array.panel.rail
    lines: tuple[Span, ...] = (
        panel.array.placement.at,
        *((hooks.at,) if hooks else ()),
        *((rail.at,) if rail else ()),
    )
    lines += _surveyed(plan, panel)
    placed = (f"how {mark} was placed", panel.how)
    figure = Figure(at, "mm", how, (*inputs, placed), lines, EXACT)
    return Topic(f"hang {point.name} {which}", words.length(at, tape), f"Hang points on {panel.surface}", figure)


def _reckoned(
    panel: PlacedPanel, across: bool, at: Fraction, edges: tuple[Edge, Edge], tape: TapeStyle
) -> tuple[str, tuple[tuple[str, str], ...]]:
    """The formula that gives the engine's own figure; where none does, that is said instead of a guess."""
    inset, what = _inset(panel, across)
    if panel.tilt is not None and across != panel.tilt.up:
        return _tilted(panel.tilt, tape)
    for edge in edges:
        if edge.at + edge.sign * inset == at:
            sign = "+" if edge.sign > 0 else "-"
            return f"{edge.words} {sign} {what}", (
                (edge.words, words.length(edge.at, tape)),
                (what, words.length(inset, tape)),
            )
    first, last = edges[0].at + inset, edges[1].at - inset
    if first < at < last:
        share = (at - first) / (last - first)
        how = f"{share} of the way from the first to the last of the panel's points, each {what} from its edge"
        return how, (
            ("the first", words.length(first, tape)),
            ("the last", words.length(last, tape)),
            (what, words.length(inset, tape)),
        )
    return "by the rule of the panel's hooks", ()


def _tilted(tilt: "Tilt", tape: TapeStyle) -> tuple[str, tuple[tuple[str, str], ...]]:
    return (
        "plumb over the eye of the tilted panel: along its back the eyes are their spacing apart, seen square to the "
        "surface the root of (spacing x spacing - more x more)",
        (
            ("the far row hangs more", words.length(tilt.more, tape)),
            ("spacing of the rows on the back", words.length(tilt.spacing, tape)),
            ("seen square to the surface", words.length(tilt.run, tape)),
            ("up the slope for each mm of drop", f"{float(tilt.slip):.4f}"),
        ),
    )


def _inset(panel: PlacedPanel, across: bool) -> tuple[Fraction, str]:
    """How far the points of a panel lie from its edges in one direction, and what that distance is."""
    hooks, rail = panel.array.panel.hung_by, panel.array.panel.rail
    along = across != panel.array.upright
    match hooks:
        case Eyes() if along:
            return hooks.inset, "inset of the eyes from the ends"
        case Eyes() if rail:
            return rail.thickness / 2, f"half the thickness of {rail.name}"
        case Cleats() if across:
            return hooks.inset, "inset of the cleats from the sides"
        case Cleats():
            return hooks.below_top, "cleats below the upper edge"
    return Fraction(0), "nothing"

"""Which hardware the placed panels need, and what for."""

from collections import Counter

from planlang.geometry.model import Layout, PlacedPanel
from planlang.materials.model import PanelBuild
from planlang.materials.purchases import HardwareNeed
from planlang.materials.rails import rail_screws
from planlang.plan.model import Array
from planlang.plan.panel import Eyes


def hardware_needs(builds: tuple[PanelBuild, ...], layout: Layout) -> tuple[HardwareNeed, ...]:
    """Eyes and cleats on panels; links and anchors, by hang point; screws of rails."""
    needs: list[HardwareNeed] = []
    for build in builds:
        if hung := build.type.hung_by:
            word = "eyes" if isinstance(hung, Eyes) else "cleats"
            count = hung.count * len(build.panels)
            needs.append(HardwareNeed(hung.hardware, count, f"{word} on {build.type.name}"))
    points: Counter[str] = Counter()
    arrays: dict[str, Array] = {}
    for panel in layout.panels:
        arrays.setdefault(panel.array.name, panel.array)
        points[panel.array.name] += hang_points(panel)
    for name, array in arrays.items():
        if array.hang.link:
            needs.append(HardwareNeed(array.hang.link, points[name], f"links of {name}"))
        each = f", {array.hang.screws_each} a point" if array.hang.screws_each != 1 else ""
        anchors = points[name] * array.hang.screws_each
        needs.append(HardwareNeed(array.hang.anchor, anchors, f"at the hang points of {name}{each}"))
        panels = sum(panel.array.name == name for panel in layout.panels)
        needs += [*_second_supports(array, panels), *_up_slope_ties(array, panels)]
    return (*needs, *rail_screws(layout))


def _second_supports(array: Array, panels: int) -> list[HardwareNeed]:
    """Eyes, ties and anchors of the second supports of an array's panels."""
    second = array.second_support
    if second is None:
        return []
    count, purpose = panels * second.count, f"second supports of {array.name}"
    return [HardwareNeed(piece, count, purpose) for piece in (second.eye, second.tie, second.anchor)]


def _up_slope_ties(array: Array, panels: int) -> list[HardwareNeed]:
    """Eyes, ties, plates and screws of what keeps an array's panels from sliding down."""
    tie = array.up_slope_tie
    if tie is None:
        return []
    count, purpose = panels * tie.count, f"ties up the slope of {array.name}"
    needs = [HardwareNeed(piece, count, purpose) for piece in (tie.eye, tie.tie, tie.plate)]
    return [*needs, HardwareNeed(tie.screw, count * tie.screws, purpose)]


def hang_points(panel: PlacedPanel) -> int:
    """The points of a panel that geometry found; where it found none, those its type states."""
    hung = panel.array.panel.hung_by
    return len(panel.points) or (hung.count if hung else 0)

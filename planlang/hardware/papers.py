"""Fire papers as documents that the plan names, and what to ask the authority where it names none.

By region only the names of the systems that are usual there are given, from memory: what counts in a room is for the
authority to say.
"""

from collections.abc import Sequence

from planlang.geometry.model import Layout
from planlang.hardware.model import Paper
from planlang.plan.model import Plan
from planlang.plan.panel import PanelType
from planlang.plan.safety import Region

AUTHORITY: dict[Region, str] = {
    "great-britain": "building control and the fire and rescue service",
    "ireland": "building control and the fire authority",
    "european-union": "building authority and fire brigade",
    "united-states": "authority having jurisdiction",
    "canada": "authority having jurisdiction",
    "australia": "building certifier",
    "new-zealand": "building consent authority",
    "elsewhere": "building authority and fire officer",
}
USUAL: dict[Region, str] = {
    "great-britain": "a class by EN 13501-1, for walls and ceilings and for hung materials",
    "ireland": "a class by EN 13501-1",
    "european-union": "a class by EN 13501-1, with the assembly as built",
    "united-states": "ASTM E84 for finishes, NFPA 701 for hanging cloth, NFPA 286 for large textile or foam areas",
    "canada": "CAN/ULC-S102 for finishes, CAN/ULC-S109 for hanging cloth",
    "australia": "a group number by AS ISO 9705 or AS/NZS 3837, and smoke growth",
    "new-zealand": "a group number by ISO 9705, and smoke growth",
    "elsewhere": "the class or test of the local code",
}
EARTHQUAKE: dict[Region, str] = {
    "united-states": "which seismic design category counts here, and what ASCE 7 and ASTM E580 ask of hung parts",
    "canada": "what the National Building Code asks of hung parts here",
    "new-zealand": "what NZS 4219 asks of hung parts here",
    "australia": "what AS 1170.4 asks of hung parts here",
}
EARTHQUAKE_ELSEWHERE = "whether hung parts must be braced against earthquake here (in Europe EN 1998-1 4.3.5)"

FIRST_TO_BURN = {"Cloth": 0, "Batt": 1, "Sheet": 2}

Question = tuple[str, str]


def papers_of(plan: Plan, layout: Layout) -> tuple[Paper, ...]:
    """Every material of the panels that are hung, every panel type as put together, and rails, with their papers."""
    lines: list[Paper] = []
    for materials in (*map(_materials, _types(layout)), _rail_timbers(layout)):
        for name, text, kind in materials:
            found = [paper for paper in plan.evidence if name in paper.covers]
            lines += [Paper(text, kind, f.paper, f.tested, f.says, f.until) for f in found] or [
                Paper(text, kind, "", "", "", "")
            ]
    return tuple(dict.fromkeys(lines))


def _types(layout: Layout) -> list[PanelType]:
    return list({panel.array.panel.name: panel.array.panel for panel in layout.panels}.values())


def _rail_timbers(layout: Layout) -> list[tuple[str, str, str]]:
    """(name, words, kind) of the timber of every rail that panels hang from."""
    rails = [panel.array.hang.rail for panel in layout.panels]
    timbers = {rail.timber.name: rail.timber for rail in rails if rail is not None}
    return [(timber.name, timber.words, "rail") for timber in timbers.values()]


def _materials(panel: PanelType) -> list[tuple[str, str, str]]:
    """(name, words, kind) of what a panel is made of, and of the panel itself."""
    cloth_first = sorted(panel.uses, key=lambda use: FIRST_TO_BURN.get(type(use.stock).__name__, len(FIRST_TO_BURN)))
    found: dict[str, tuple[str, str, str]] = {}
    for use in cloth_first:
        found.setdefault(use.stock.name, (use.stock.name, use.stock.words, use.part))
    return [*found.values(), (panel.name, panel.words or panel.name, "panel as put together")]


def paper_questions(region: Region | None, papers: Sequence[Paper]) -> tuple[Question, ...]:
    """What to ask the authority about fire, and about earthquake. Nothing here says that a paper is enough."""
    who = AUTHORITY[region] if region else "building authority and fire officer"
    lines: list[Question] = []
    if region is None:
        lines.append(("Which country's rules count? The plan names no region", "building owner"))
    usual = f" (usual there, from memory: {USUAL[region]})" if region else ""
    for paper in papers:
        if not paper.paper:
            lines.append((f"{paper.what}, {paper.kind}: which class or test is asked for in this room{usual}? "
                          "The plan names no paper", who))  # fmt: skip
        else:
            lines.append((f"{paper.what}, {paper.kind}: does {paper.paper} ({paper.tested}: {paper.says}) cover it as "
                          "it is built and mounted here", who))  # fmt: skip
    quake = EARTHQUAKE.get(region, EARTHQUAKE_ELSEWHERE) if region else EARTHQUAKE_ELSEWHERE
    return (*lines, (f"Earthquake: {quake}", "structural engineer"))

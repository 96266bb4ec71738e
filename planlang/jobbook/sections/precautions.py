"""Before work: what to look at, find and wear, for what this plan's steps do and nothing else."""

from planlang.jobbook.compiled import CompiledPlan

# Common practice, no source.
ALWAYS = (
    "Read this part before you open the hang schedule.",
    "Look for cables, pipes and vents where you drill. Isolate what you can't see.",
    "Check that the delivered hardware carries the marking that the loads part counts on.",
    "Keep the floor under a panel that is being hung free by its own size and 1 m all round (project policy).",
    "Work from a platform or a scaffold, not from the top of a ladder.",
)
INTO_MEMBERS = "Find each member and both its edges, and prove it with a bradawl or a small pilot hole."
ON_LINKS = "Close and lock every link and every screw gate; pull each point by hand before you let go."
LIFTING = "Lift as the table of lifts says; nobody lifts a panel overhead alone."
SAW = (
    "Sawing: guard and riving knife on, push stick for the strips, dust taken off at the blade; eye and ear "
    "protection. Wood dust harms: a mask of class P2 or N95 where the extraction isn't good."
)
SHEET_DUST = "Ask for the formaldehyde class of the sheets (E1 or better, or the local mark) and keep the paper."
FIBRE = (
    "Cutting batts: a knife, never a saw; gloves, long sleeves, eye protection, a mask of class P2 or N95; vacuum, "
    "don't sweep; bag the offcuts."
)
FIBRE_WHOLE = "Laying batts: gloves and long sleeves; a mask of class P2 or N95 while you handle them."
STAPLES = (
    "Stapling: a stapler or nailer with a sequential trigger, the other hand well away, nobody in line with its nose; "
    "eye protection, and ears where it is driven by air. Unload it before you clear it."
)
GLUE = (
    "Gluing: fresh air, gloves, and what the label of the glue asks for; no flame near solvents. Keep its data sheet."
)
OVERHEAD = "Drilling overhead: eye protection and a mask; no hole into an old ceiling before its papers are seen."
BOARD = "Holes in plasterboard or plaster: catch the dust, and stop where the board isn't what the plan says."


def before_work(compiled: CompiledPlan) -> tuple[str, ...]:
    """The checklist: what always counts, and what the cuts, fixings and surfaces of this plan call for."""
    arrays = compiled.plan.arrays
    ceilings = {surface.name for surface in compiled.room.surfaces if surface.kind == "ceiling"}
    lines = list(ALWAYS[:1])
    if any(array.hang.into != "lining" for array in arrays):
        lines.append(INTO_MEMBERS)
    lines += [*ALWAYS[1:], LIFTING]
    if any(array.hang.by == "eyes" for array in arrays):
        lines.append(ON_LINKS)
    if compiled.materials.sheets or compiled.materials.sticks:
        lines += [SAW, SHEET_DUST]
    if compiled.materials.batts:
        cut = any(layout.cuts for cutting in compiled.materials.batts for layout in cutting.layouts)
        lines.append(FIBRE if cut else FIBRE_WHOLE)
    lines += _fastening(compiled)
    if any(array.surface in ceilings for array in arrays):
        lines.append(OVERHEAD)
    if any(_lined(compiled, array.surface) and array.hang.into != "lining" for array in arrays):
        lines.append(BOARD)
    return tuple(lines)


def _fastening(compiled: CompiledPlan) -> list[str]:
    """Notes on stapling and gluing, where a panel type of this plan has either."""
    builds = compiled.materials.builds
    staples = any(count and "staple" in what for build in builds for what, count, _ in build.fastenings)
    glue = any(build.glue_m or any("dhesive" in step for step in build.steps) for build in builds)
    return [STAPLES] * staples + [GLUE] * glue


def _lined(compiled: CompiledPlan, name: str) -> bool:
    surface = compiled.room.surface(name)
    return surface is not None and surface.lining is not None and not surface.exposed

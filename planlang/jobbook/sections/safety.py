"""Safety: what this book is not, and what must be confirmed by whom before anything is hung."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Bullets, Caution, Checklist, Heading, Paragraph, SignOff
from planlang.jobbook.compiled import CompiledPlan

# Common practice, no source.
BEFORE_WORK = (
    "Read this part before you open the hang schedule.",
    "Find each member and prove it with a bradawl or a small pilot hole before you fix into it.",
    "Look for cables, pipes and vents where you drill. Isolate what you can't see.",
    "Check that the delivered hardware carries the marking that the loads part counts on.",
    "Lift with two people at least. Nobody stands or walks under a panel that is being hung.",
    "Work from a platform or a scaffold, not from the top of a ladder.",
    "Close and lock every link and every screw gate; pull each point by hand before you let go.",
    "Wear eye protection and a mask when you cut batts or drill overhead.",
)

DEFERENCE = (
    "This book helps to plan and to build. It is no structural design, no fire certificate and no approval.",
    "Local codes, the hardware makers' data and a licensed engineer's word go before anything printed here.",
    "Ask before you hang anything from an old, altered, damaged or unknown structure.",
)


def safety(compiled: CompiledPlan) -> Blocks:
    """Deference, status, cautions, what to do before work, what was not checked, sign-off lines."""
    loads = compiled.loads
    blocks: list[Block] = [Heading(2, "Safety and what must be confirmed")]
    if not loads.hangable:
        blocks.append(not_for_hanging(compiled))
    blocks.append(Caution("What this book is not", DEFERENCE))
    if loads.cautions:
        blocks += [Heading(3, "Cautions for this job"), Bullets(tuple(words.sentence(line) for line in loads.cautions))]
    blocks += [Heading(3, "Before and during work"), Checklist(BEFORE_WORK)]
    if loads.not_checked:
        blocks += [
            Heading(3, "Not checked by this book"),
            Bullets(tuple(words.sentence(line) for line in loads.not_checked)),
        ]
    blocks += [
        Heading(3, "To be confirmed before hanging"),
        Paragraph(
            "Hang nothing until every line is signed. A line that can't be signed is a question to whoever decides."
        ),
        SignOff("before hanging", loads.confirm or (("Loads, structure and fixings as built", "who is responsible"),)),
        Heading(3, "After hanging"),
        SignOff(
            "after hanging",
            (
                ("Every point pulled, every link closed", "who hung it"),
                ("Looked at again after 12 months, and after any leak, blow or earthquake", "the client"),
            ),
        ),
    ]
    return tuple(blocks)


def not_for_hanging(compiled: CompiledPlan) -> Caution:
    """The box that says which arrays may not be hung, and why."""
    open_loads = [load for load in compiled.loads.panels if load.overhead and load.status != "holds"]
    reasons = tuple(
        f"{load.array} ({load.mark}): {load.steps[load.weakest].words} {_verdict(load.status)}." for load in open_loads
    )
    unknown = tuple(f"{name}: its loads could not be worked out." for name in compiled.loads.not_reckoned)
    refused = tuple(words.sentence(message) for message in compiled.loads.refused)
    first = "Nothing of this plan may be hung from this book until the points below are settled."
    lines = (first, *(refused or reasons), *unknown)
    return Caution("Not for hanging", lines)


def _verdict(status: str) -> str:
    return "fails" if status == "fails" else "is not verified"

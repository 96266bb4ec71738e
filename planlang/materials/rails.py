"""Rails that the hanging hardware goes into: which timber they are cut from, and the screws that hold them."""

from collections import Counter
from collections.abc import Sequence

from planlang.geometry.model import Layout, RailRun
from planlang.materials import messages
from planlang.materials.purchases import HardwareNeed
from planlang.plan.model import Array, Rail
from planlang.plan.stock import Hardware, Timber
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record
from planlang.syntax.span import Span


@record
class RailJob:
    """All rails cut from sticks of one timber."""

    timber: Timber
    runs: tuple[RailRun, ...]


def rail_jobs(layout: Layout, tape: TapeStyle) -> Outcome[tuple[RailJob, ...]]:
    """Group the rails by timber. Errors: `rail-longer-than-stick`, `stick-length-unknown`; those rails are left out."""
    groups: dict[str, tuple[Timber, list[RailRun]]] = {}
    findings: list[Diagnostic] = []
    unknown: set[str] = set()
    too_long: dict[Span, list[tuple[RailRun, Rail]]] = {}
    for run, array, rail in _stated(layout):
        timber, length = rail.timber, run.end - run.start
        if timber.length is None:
            if timber.name not in unknown:
                findings.append(messages.stick_length_unknown(timber, array.hang.at))
            unknown.add(timber.name)
        elif length > timber.length:
            too_long.setdefault(rail.at, []).append((run, rail))
        else:
            groups.setdefault(timber.name, (timber, []))[1].append(run)
    for at, runs in too_long.items():
        lengths = {run.name: run.end - run.start for run, _ in runs}
        findings.append(messages.rail_longer_than_stick(lengths, runs[0][1].timber, at, tape))
    jobs = tuple(RailJob(timber, tuple(cut)) for timber, cut in groups.values())
    return Outcome(jobs, tuple(findings))


def rail_screws(layout: Layout) -> tuple[HardwareNeed, ...]:
    """One screw at each crossing of a rail and a member, gathered by array."""
    crossings: Counter[str] = Counter()
    screws: dict[str, Hardware] = {}
    for run, array, rail in _stated(layout):
        screws[array.name] = rail.screw
        crossings[array.name] += len(run.crossings)
    return tuple(
        HardwareNeed(screw, crossings[name], f"where the rails of {name} cross members")
        for name, screw in screws.items()
    )


def _stated(layout: Layout) -> Sequence[tuple[RailRun, Array, Rail]]:
    """Each rail with the array whose hang points it carries, and what that array says of its rails."""
    array_of = {point.name: panel.array for panel in layout.panels for point in panel.points}
    found: list[tuple[RailRun, Array, Rail]] = []
    for run in layout.rails:
        array = next((array_of[name] for name in run.points if name in array_of), None)
        if array is not None and array.hang.rail is not None:
            found.append((run, array, array.hang.rail))
    return found

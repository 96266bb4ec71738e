"""What panels will not mend, in plain words, and how a room for monitoring takes its early reflections."""

from collections.abc import Sequence

import numpy as np

from planlang.acoustics.constants import DIRECT_REACH, MONITORING_LIMITS
from planlang.acoustics.model import Decay, Reflection
from planlang.acoustics.reflections import position
from planlang.acoustics.standards import early_reflection_limit, monitoring_time
from planlang.acoustics.targets import ANSI, MONITORING, targets_of
from planlang.plan.figure import significant
from planlang.plan.model import Plan
from planlang.plan.room import Place, Target
from planlang.plan.stock import OCTAVES

MIDDLE = (OCTAVES.index(500), OCTAVES.index(1000))
MONITORING_THIRDS = (200, 4000)
SMALL_FALL = 3.0  # dB: what is just noticed as quieter; common practice, no source


def beyond_panels(
    plan: Plan, volume: float, before: Decay, after: Decay, verdicts: Sequence[tuple[str, ...]]
) -> tuple[str, ...]:
    """Sentences on what stays as it is however many panels are hung."""
    lines = [_level(before, after), _near(plan.use.places, volume, after)]
    if any("too short" in found for found in verdicts):
        lines.append("where the decay is already below the lower limit, more panels make it worse: take some away")
    if any("too long" in found for found in verdicts):
        lines.append("where the verdict is 'too long', the panels of this plan are not enough by the estimate")
    lines.append(
        "sound that comes through walls, doors and ceilings, and the noise of machines, is not kept out by panels that "
        "absorb: that takes mass, seals and other work on the building"
    )
    return (*lines, *_on_targets(plan, volume, after))


def _level(before: Decay, after: Decay) -> str:
    """How far a steady noise falls: 10 lg of the ratio of absorption areas, far from its source."""
    then, now = (max(sum(state.absorption[n] for n in MIDDLE), 1e-9) for state in (after, before))
    fall = float(10 * np.log10(then / now))
    decibels = significant(max(fall, 0.0))
    words = f"the level of a steady noise or of many talkers falls by about {decibels} dB (500 and 1000 Hz)"
    if fall <= SMALL_FALL:
        words += ", which is hardly noticed as quieter"
    return words + "; that is all that absorption can do for it, and close to its source it falls by less"


def _near(places: tuple[Place, ...], volume: float, after: Decay) -> str:
    """The reach of direct sound, for a talker who sends alike all round. Source: Kuttruff, Room Acoustics, ch. 5."""
    time = float(np.mean([after.value[n] for n in MIDDLE]))
    reach = DIRECT_REACH.value * float(np.sqrt(volume / time))
    words = (
        f"within about {significant(reach)} m of a talker direct sound prevails (0.057 sqrt(V/T)): what is "
        f"heard there, "
        "such as a neighbour at the next desk, panels hardly change; screens, distance and quiet rules do"
    )
    near = [
        f"{listener.name} and {talker.name}"
        for talker in places
        for listener in places
        if talker.role == "talker" and listener.role == "listener"
        if float(np.linalg.norm(position(talker) - position(listener))) <= reach
    ]
    return words + (f"; so close are {', '.join(near)}" if near else "")


def _on_targets(plan: Plan, volume: float, after: Decay) -> list[str]:
    lines = []
    for target in targets_of(plan):
        if target.rule == ANSI and any(group.count for group in plan.room.occupants):
            lines.append("ANSI S12.60 asks for the furnished room without people: this plan states people, who absorb")
        if target.rule == ANSI:
            lines.append(
                "ANSI S12.60 also limits noise from outside and from machines (35 dBA in rooms up to 566 m3), which "
                "this "
                "estimate does not reckon"
            )
        if target.rule in MONITORING:
            lines += _on_monitoring(target, volume, after)
    return lines


def _on_monitoring(target: Target, volume: float, after: Decay) -> list[str]:
    least, most = MONITORING_LIMITS.value
    nominal = monitoring_time(volume)
    lines = [
        f"{MONITORING[target.rule]} sets the nominal time against the mean of the thirds from 200 Hz to 4 kHz: "
        f"{significant(nominal)} s are wanted, and with the panels there are {_mean_of_thirds(after)}"
    ]
    if target.rule == "ebu-3276" and not least <= nominal <= most:
        lines.append(
            f"the nominal time for this volume, {significant(nominal)} s, lies outside the {least} to {most} s "
            f"that EBU "
            "Tech 3276 asks for"
        )
    return lines


def _mean_of_thirds(after: Decay) -> str:
    """The mean of value and ends from 200 Hz to 4 kHz; the ends err together at worst."""
    thirds = after.thirds
    if thirds is None:
        return "no figures"
    first, last = (thirds.bands.index(band) for band in MONITORING_THIRDS)
    value, low, high = (
        significant(float(np.mean(each[first : last + 1]))) for each in (thirds.value, thirds.low, thirds.high)
    )
    return f"{value} s ({low} to {high} s)"


def reflection_words(plan: Plan, reflections: Sequence[Reflection]) -> tuple[str, ...]:
    """How the first reflections stand, and against the figure for monitoring when the plan names such a target."""
    if not reflections:
        return ()
    lines = [
        "a reflection is reckoned as from a mirror, with what the surface or panel absorbs from 1 to 4 kHz; "
        "a panel smaller "
        "than the zone that reflects (below about 500 Hz for one of 0.6 m) does less"
    ]
    monitoring = [MONITORING[target.rule] for target in targets_of(plan) if target.rule in MONITORING]
    for standard in monitoring:
        strong = [each for each in reflections if _too_strong(each)]
        verdict = f"too strong: {_named(strong)}" if strong else "all are weaker"
        doubtful = [each for each in reflections if not _too_strong(each) and _too_strong(each, each.level.high)]
        if doubtful:
            verdict += f"; by the end of its range too strong: {_named(doubtful)}"
        lines.append(
            f"{standard} asks for early reflections (up to 15 ms) of at most -10 dB to the direct sound from 1 to "
            f"8 kHz "
            f"(from memory); here to 4 kHz: {verdict}"
        )
    return tuple(lines)


def _named(reflections: Sequence[Reflection]) -> str:
    return ", ".join(f"{each.talker} to {each.listener} by {each.surface}" for each in reflections)


def _too_strong(reflection: Reflection, level: float | None = None) -> bool:
    limit = early_reflection_limit(reflection.delay)
    return limit is not None and (reflection.level.value if level is None else level) > limit

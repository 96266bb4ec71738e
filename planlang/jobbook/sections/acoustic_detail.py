"""Further parts of the acoustic estimate: other targets, reflections, rays, the low end, limits."""

from math import ceil, floor, isfinite

from planlang.acoustics.model import Acoustics, LowEnd, OtherTarget, Ranged, RayCheck, TargetBand
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Bullets, Column, Figure, Heading, Paragraph, Table
from planlang.jobbook.drawings import ray_curves
from planlang.plan.figure import significant, span


def wanted(band: TargetBand) -> str:
    """What the target asks of one band, s."""
    if band.least is not None and band.most is not None:
        return f"{significant(band.least)} to {significant(band.most)}"
    if band.most is not None:
        return f"at most {significant(band.most)}"
    if band.least is not None:
        return f"at least {significant(band.least)}"
    return significant(band.wanted) if band.wanted is not None else "not asked"


def further_targets(acoustics: Acoustics) -> Blocks:
    """The targets beside the first."""
    return tuple(block for other in acoustics.more_targets for block in _further(acoustics, other))


def _further(acoustics: Acoustics, other: OtherTarget) -> Blocks:
    columns = (Column("Octave band"), Column("Wanted", "right"), Column("Now"), Column("With the panels"))
    rows = tuple(
        (words.hertz(band), wanted(other.target[n]), other.verdict_before[n], other.verdict_after[n])
        for n, band in enumerate(acoustics.bands)
    )
    return (Paragraph(other.words, lead="Further target:"), Table(f"Against {other.words}, s", columns, rows))


def reflections(acoustics: Acoustics) -> Blocks:
    """First reflections from talkers to listeners, and flutter."""
    blocks: list[Block] = []
    if acoustics.reflections:
        columns = (
            Column("From"),
            Column("To"),
            Column("By"),
            Column("Later by, ms", "right"),
            Column("Level to direct, dB", "right"),
            Column("Treated by"),
        )
        rows = tuple(
            (
                each.talker,
                each.listener,
                each.surface,
                significant(1000 * each.delay),
                _level(1, each.level),
                each.treated_by or "nothing",
            )
            for each in acoustics.reflections
        )
        blocks += [Heading(3, "First reflections"), Table("First reflections, soonest first", columns, rows)]
        blocks.append(Bullets(tuple(words.sentence(line) for line in acoustics.reflection_words)))
    if acoustics.flutter:
        blocks.append(Heading(3, "Echoes and flutter"))
        blocks.append(Bullets(tuple(words.sentence(line) for line in acoustics.flutter)))
    return tuple(blocks)


def rays(acoustics: Acoustics) -> Blocks:
    """The check by rays."""
    found = acoustics.rays
    if found is None:
        return ()
    columns = (Column("Octave band"), Column("T20"), Column("EDT"), Column("Range by the formulas"))
    decay = acoustics.decay_after
    rows = tuple(
        (words.hertz(band), _time(found.t20[n]), _time(found.edt[n]), span(decay.low[n], decay.high[n]))
        for n, band in enumerate(acoustics.bands)
    )
    blocks: list[Block] = [
        Heading(3, "Check by rays"),
        Paragraph(
            f"{found.rays} rays from {found.source} through the room with its panels, as a check on the formulas"
            f"{_followed(found)}. It "
            "sees which faces stand bare opposite each other; it does not see waves, and says little below "
            f"{significant(acoustics.schroeder_after)} Hz. Scattering is taken as {words.listed(found.scattering)}, "
            "and decides much in a room with bare parallel walls. The ranges are from two more traces: all absorption "
            "at the low end of its range and half the scattering, and all at its high end and half more; and 5 % of "
            "chance."
        ),
        Table("Decay of all sound in the room by rays, s", columns, rows),
        Paragraph(_agreement(found) + _losses(found)),
        Figure(ray_curves(acoustics, found)),
        *_clarity(acoustics, found),
    ]
    return tuple(blocks)


def _time(found: Ranged) -> str:
    return words.with_range(found.value, found.low, found.high) if isfinite(found.value) else "not read"


def _followed(found: RayCheck) -> str:
    if found.followed >= found.rays:
        return ""
    return f"; in so hard a room {found.followed} of them go on to the end and stand for the others"


def _agreement(found: RayCheck) -> str:
    if not found.outside:
        return "In every octave in which a decay could be read, T20 by rays lies within the range of the estimate."
    bands = ", ".join(words.hertz(band) for band in found.outside)
    return (
        f"At {bands} T20 by rays lies outside the range of the estimate: the formulas do not suit this room there. Go "
        "by the less welcome of the two, and measure before and after the first panels."
    )


def _losses(found: RayCheck) -> str:
    if not found.lost:
        return ""
    return f" {found.lost} rays left the room through gaps between its faces, so that its decay comes out too short."


def _clarity(acoustics: Acoustics, found: RayCheck) -> Blocks:
    if not found.listeners:
        return ()
    columns = (
        Column("Listener"),
        Column("What"),
        *(Column(words.hertz(band), "right") for band in acoustics.bands),
    )
    rows = tuple(
        (each.listener, name, *(_level(factor, value) for value in values))
        for each in found.listeners
        for name, factor, values in (
            ("C50, dB", 1, each.clarity_50),
            ("C80, dB", 1, each.clarity_80),
            ("D50, %", 100, each.definition_50),
        )
    )
    return (Table("Clarity at the listeners, by rays", columns, rows),)


def _level(factor: int, found: Ranged) -> str:
    value, low, high = (factor * part for part in (found.value, found.low, found.high))
    return f"{round(value)} ({floor(low)} to {ceil(high)})"


def low_end(acoustics: Acoustics) -> Blocks:
    """Modes, and what follows from them."""
    found = acoustics.low_end
    if found is None:
        return ()
    blocks: list[Block] = [
        Heading(3, "The low end"),
        Paragraph(f"Modes of the room: {found.method}.", lead="How found:"),
        _modes(found),
    ]
    if found.counts:
        columns = (Column("Third octave"), *(Column(words.hertz(band), "right") for band in found.thirds))
        blocks.append(Table("Modes in each third", columns, (("Modes", *(str(count) for count in found.counts)),)))
    blocks.append(Bullets(tuple(words.sentence(line) for line in found.words)))
    return tuple(blocks)


def _modes(found: LowEnd) -> Table:
    columns = [Column("Mode"), Column("Frequency, Hz", "right")]
    rows = [(str(number), significant(mode.frequency, 3)) for number, mode in enumerate(found.modes, 1)]
    if not all(mode.orders for mode in found.modes):
        return Table("The lowest modes", tuple(columns), tuple(rows))
    columns += [Column("Order"), Column("Kind")]
    full = [
        (*row, " ".join(str(order) for order in mode.orders), mode.kind)
        for row, mode in zip(rows, found.modes, strict=True)
    ]
    return Table("The lowest modes", tuple(columns), tuple(full))


def beyond(acoustics: Acoustics) -> Blocks:
    """What panels will not mend."""
    lines = tuple(words.sentence(line) for line in acoustics.beyond)
    return (Heading(3, "What panels will not mend"), Bullets(lines)) if lines else ()

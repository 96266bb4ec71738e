"""Further parts of the acoustic estimate: what does the most, other targets, reflections, rays, the low end, limits."""

from fractions import Fraction

from planlang.acoustics.model import Acoustics, LowEnd, OtherTarget, RayCheck, TargetBand
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Bullets, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.plan.figure import significant


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


def gains(compiled: CompiledPlan) -> Blocks:
    """What each array gains, and for what materials, so that it can be seen where the next panel does most."""
    acoustics = compiled.acoustics
    if not acoustics.gains:
        return ()
    share = _cost_of_area(compiled)
    columns = [
        Column("Array"),
        Column("Face, m²", "right"),
        Column("Adds, m²", "right"),
        Column("Alone it shortens the decay by, s", "right"),
        Column("Without it the decay is longer by, s", "right"),
    ]
    if share is not None:
        columns.append(Column(f"Shortens per 100 {compiled.plan.job.currency} of materials, s", "right"))
    rows = []
    for gain in acoustics.gains:
        cells = [gain.array, *(significant(value) for value in (gain.area, gain.absorption, gain.alone, gain.missed))]
        if share is not None:
            cells.append(significant(100 * gain.alone / (share * gain.area)) if gain.area else "")
        rows.append(tuple(cells))
    bands = f"{words.hertz(min(acoustics.gains[0].bands))} to {words.hertz(max(acoustics.gains[0].bands))}"
    blocks: list[Block] = [
        Heading(3, "What does the most"),
        Paragraph(
            f"Means over {bands}. The next panel does most where an array shortens the decay most for its face or its "
            "money. Materials are shared among the arrays by the area of their faces; making and hanging are not in."
        ),
        Table("Gain of each array", tuple(columns), tuple(rows)),
    ]
    return tuple(blocks)


def _cost_of_area(compiled: CompiledPlan) -> float | None:
    """Materials for one m2 of face; None where a price is missing."""
    costs = [purchase.cost for purchase in compiled.materials.purchases if purchase.name]
    area = sum(gain.area for gain in compiled.acoustics.gains)
    if not area or not costs or any(cost is None or cost.currency != compiled.plan.job.currency for cost in costs):
        return None
    return float(sum((cost.amount for cost in costs if cost is not None), Fraction(0))) / area or None


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
                f"{each.level:.0f}",
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
    columns = (Column("Octave band"), Column("T20", "right"), Column("EDT", "right"), Column("Range by the formulas"))
    decay = acoustics.decay_after
    rows = tuple(
        (words.hertz(band), _time(found.t20[n]), _time(found.edt[n]), words.span(decay.low[n], decay.high[n]))
        for n, band in enumerate(acoustics.bands)
    )
    blocks: list[Block] = [
        Heading(3, "Check by rays"),
        Paragraph(
            f"{found.rays} rays from {found.source} through the room with its panels, as a check on the formulas. It "
            "sees which faces stand bare opposite each other; it does not see waves, and says little below "
            f"{significant(acoustics.schroeder_after)} Hz. Scattering is taken as {words.listed(found.scattering)}, "
            "and decides much in a room with bare parallel walls."
        ),
        Table("Decay of all sound in the room by rays, s", columns, rows),
        Paragraph(_agreement(found) + _losses(found)),
        *_clarity(acoustics, found),
    ]
    return tuple(blocks)


def _time(value: float) -> str:
    return significant(value) if value == value else "not read"  # noqa: PLR0124


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
        (each.listener, name, *(f"{factor * value:.0f}" for value in values))
        for each in found.listeners
        for name, factor, values in (
            ("C50, dB", 1, each.clarity_50),
            ("C80, dB", 1, each.clarity_80),
            ("D50, %", 100, each.definition_50),
        )
    )
    return (Table("Clarity at the listeners, by rays", columns, rows),)


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

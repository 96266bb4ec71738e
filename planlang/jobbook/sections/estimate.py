"""Acoustic estimate: absorption and decay before and after, with the range that is claimed, against the target."""

from planlang.acoustics.model import Absorber, Acoustics, Decay, Series
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Bullets, Column, Figure, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawings import absorption_chart, decay_chart
from planlang.jobbook.sections.acoustic_detail import (
    beyond,
    further_targets,
    low_end,
    rays,
    reflections,
    wanted,
)
from planlang.jobbook.sections.acoustic_gains import gains
from planlang.jobbook.sections.acoustic_tables import formulas, ratings, thirds
from planlang.plan.figure import significant, span


def estimate(compiled: CompiledPlan) -> Blocks:
    """Decay first (chart and table), then what absorbs, then what the estimate assumes."""
    acoustics = compiled.acoustics
    blocks: list[Block] = [
        Heading(2, "Acoustic estimate"),
        Paragraph(
            "Decay times are estimates for each octave band. The range is what the estimate claims: nine in ten of all "
            "draws of what may be off lie within it. The figures by single formulas are given so that they can be "
            "checked, and so that it can be seen how far the formulas differ, each with its own range over the "
            "same draws."
        ),
        Paragraph(acoustics.target_words or "The plan states no target.", lead="Target:"),
        Figure(decay_chart(acoustics)),
        _decay("Decay with the panels, s", acoustics, acoustics.decay_after, acoustics.verdict_after),
        _decay("Decay now, s", acoustics, acoustics.decay_before, acoustics.verdict_before),
        *further_targets(acoustics),
        *formulas(acoustics),
        Paragraph(_limits(acoustics)),
        Heading(3, "What absorbs"),
        Figure(absorption_chart(acoustics)),
        _absorption("Absorption area with the panels, m²", acoustics.bands, acoustics.after, acoustics.decay_after),
        _absorption("Absorption area now, m²", acoustics.bands, acoustics.before, acoustics.decay_before),
        _air(acoustics),
        _coefficients(acoustics),
        *ratings(acoustics, compiled.plan.job.tape),
        *gains(compiled),
        *reflections(acoustics),
        *rays(acoustics),
        *low_end(acoustics),
        *beyond(acoustics),
        *thirds(acoustics),
        Heading(3, "What the estimate assumes"),
        Bullets(tuple(words.sentence(line) for line in acoustics.assumes) or ("Nothing beyond the formulas.",)),
    ]
    if acoustics.limits:
        failing = Bullets(tuple(words.sentence(line) for line in acoustics.limits))
        blocks += [Heading(3, "Where the models are known to fail"), failing]
    if acoustics.warnings:
        blocks += [Heading(3, "What to be wary of"), Bullets(tuple(words.sentence(w) for w in acoustics.warnings))]
    return tuple(blocks)


def _decay(caption: str, acoustics: Acoustics, decay: Decay, verdicts: tuple[str, ...]) -> Table:
    columns = (
        Column("Octave band"),
        Column("Range", big=True),
        Column("Taken", "right"),
        Column("By"),
        Column("Mean absorption", "right"),
        Column("Wanted", "right"),
        Column("Verdict"),
    )
    rows = tuple(
        (
            words.hertz(band),
            span(decay.low[n], decay.high[n]),
            significant(decay.value[n]),
            decay.leads[n],
            significant(decay.mean_alpha[n]),
            wanted(acoustics.target[n]) if n < len(acoustics.target) else "not asked",
            verdicts[n] if n < len(verdicts) else "not asked",
        )
        for n, band in enumerate(acoustics.bands)
    )
    return Table(caption, columns, rows)


def _limits(acoustics: Acoustics) -> str:
    now, then = significant(acoustics.schroeder_before), significant(acoustics.schroeder_after)
    return (
        f"Below about {then} Hz with the panels ({now} Hz now) single room modes stand out and a decay time by these "
        "formulas says little."
    )


def _absorption(caption: str, bands: tuple[int, ...], absorbers: tuple[Absorber, ...], decay: Decay) -> Table:
    columns = (Column("What"), Column("Area, m²", "right"), *(Column(words.hertz(band), "right") for band in bands))
    rows = [
        (
            absorber.words,
            significant(absorber.area, 3) if absorber.alpha else "",
            *(_ranged(absorber.absorption[n], absorber.low[n], absorber.high[n]) for n in range(len(bands))),
        )
        for absorber in absorbers
    ]
    total = (
        "All of them, without air",
        significant(sum(absorber.area for absorber in absorbers if absorber.alpha), 3),
        *(
            _ranged(*values)
            for values in zip(decay.absorption, decay.absorption_low, decay.absorption_high, strict=True)
        ),
    )
    return Table(caption, columns, (*rows, total))


def _ranged(value: float, low: float, high: float) -> str:
    if low == value == high:
        return significant(value)
    return words.with_range(value, low, high)


def _air(acoustics: Acoustics) -> Table:
    columns = (Column("What"), *(Column(words.hertz(band), "right") for band in acoustics.bands))
    rows = (
        ("Attenuation m, 1/m", *(significant(m) for m in acoustics.air_m)),
        ("Absorption area 4mV, m²", *(significant(4 * m * acoustics.volume) for m in acoustics.air_m)),
    )
    return Table("Air", columns, rows)


def _coefficients(acoustics: Acoustics) -> Table:
    columns = (Column("What"), *(Column(words.hertz(band), "right") for band in acoustics.bands), Column("Source"))
    seen: dict[tuple[str, Series, str], None] = {}
    for absorber in (*acoustics.before, *acoustics.after):
        seen[absorber.words, absorber.alpha, absorber.source] = None
    rows = tuple((name, *_alphas(alpha, len(acoustics.bands)), source) for name, alpha, source in seen)
    return Table("Absorption coefficients and where they are from", columns, rows)


def _alphas(alpha: Series, bands: int) -> tuple[str, ...]:
    return tuple(significant(value) for value in alpha) if alpha else ("m² each",) * bands

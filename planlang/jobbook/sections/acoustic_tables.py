"""Tables of the acoustic estimate: formulas side by side, ratings of panel types, one-third octaves."""

from planlang.acoustics.model import Acoustics, Decay
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Column, Heading, Paragraph, Table
from planlang.plan.figure import significant
from planlang.plan.tape import TapeStyle


def formulas(acoustics: Acoustics) -> Blocks:
    """All formulas side by side, and why the leading ones lead."""
    led: dict[str, dict[str, None]] = {}
    for decay in (acoustics.decay_before, acoustics.decay_after):
        for formula in decay.formulas:
            for reason in formula.why:
                led.setdefault(reason, {})[formula.name] = None
    reasons = [f"{' or '.join(names)} where {reason}." for reason, names in led.items()]
    tables = tuple(
        _side_by_side(caption, acoustics, decay)
        for caption, decay in (
            ("The formulas side by side, with the panels, s", acoustics.decay_after),
            ("The formulas side by side, now, s", acoustics.decay_before),
        )
    )
    return (*tables, Paragraph(" ".join(reasons), lead="Which one leads:"))


def _side_by_side(caption: str, acoustics: Acoustics, decay: Decay) -> Table:
    columns = (
        Column("Octave band"),
        *(Column(formula.name) for formula in decay.formulas),
        Column("Longest over shortest", "right"),
    )
    rows = tuple(
        (
            words.hertz(band),
            *(words.with_range(formula.times[n], formula.low[n], formula.high[n]) for formula in decay.formulas),
            significant(_spread(decay, n)),
        )
        for n, band in enumerate(acoustics.bands)
    )
    return Table(caption, columns, rows)


def _spread(decay: Decay, band: int) -> float:
    times = [formula.times[band] for formula in decay.formulas]
    return max(times) / min(times)


def ratings(acoustics: Acoustics, tape: TapeStyle) -> Blocks:
    """NRC, SAA, alpha-p, alpha-w and class of each panel type, as it hangs."""
    if not acoustics.ratings:
        return ()
    columns = (
        Column("Panel type"),
        Column("Air behind"),
        Column("αw"),
        Column("Class"),
        Column("NRC", "right"),
        Column("SAA", "right"),
        *(Column(f"αp {words.hertz(band)}", "right") for band in acoustics.bands),
    )
    rows = tuple(
        (
            rating.panel,
            words.length(rating.drop, tape) if rating.drop else "none",
            rating.alpha_w,
            rating.absorption_class,
            f"{rating.nrc:.2f}",
            f"{rating.saa:.2f}",
            *(f"{value:.2f}" for value in rating.practical),
        )
        for rating in acoustics.ratings
    )
    sources = dict.fromkeys(f"{rating.panel}: {rating.source}." for rating in acoustics.ratings)
    blocks: list[Block] = [
        Heading(3, "Ratings of the panel types"),
        Paragraph(
            "As a data sheet would state them: αp, αw and class by ISO 11654, NRC and SAA by ASTM C423. What is "
            "modelled is no test report, and may not be offered as one."
        ),
        Table("Ratings", columns, rows),
        Paragraph(" ".join(sources), lead="From:"),
    ]
    return tuple(blocks)


def thirds(acoustics: Acoustics) -> Blocks:
    """Decay in one-third octaves."""
    now, then = acoustics.decay_before.thirds, acoustics.decay_after.thirds
    if now is None or then is None:
        return ()
    columns = (
        Column("Third octave"),
        Column("Now"),
        Column("With the panels"),
    )
    rows = tuple(
        (
            words.hertz(band),
            words.with_range(now.value[n], now.low[n], now.high[n]),
            words.with_range(then.value[n], then.low[n], then.high[n]),
        )
        for n, band in enumerate(then.bands)
    )
    blocks: list[Block] = [
        Heading(3, "In one-third octaves"),
        Paragraph(
            "For whoever checks the estimate. Below 125 Hz the coefficients of the room's surfaces are a guess, and "
            "single modes decide."
        ),
        Table("Decay time in one-third octaves, s", columns, rows),
    ]
    return tuple(blocks)

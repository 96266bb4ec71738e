"""What the acoustic engine hands on. One value an octave band, in the order of `bands`; areas in m2, times in s."""

from planlang.plan.figure import Figure
from planlang.syntax.record import record

Series = tuple[float, ...]


@record
class Absorber:
    """One surface, opening, panel array or group of people: area, absorption coefficients, absorption area, source.

    `low` and `high` bound the absorption area. `alpha` is empty for people.
    """

    words: str
    area: float
    alpha: Series
    absorption: Series
    low: Series
    high: Series
    source: str


@record
class Decay:
    """Decay times of one state of the room by two formulas, and the range that the estimate claims.

    `absorption` is the whole room's absorption area without air, m2; its range is narrower than the sum of the
    absorbers' ranges, since they don't all err the same way.
    """

    sabine: Series
    eyring: Series
    low: Series
    high: Series
    mean_alpha: Series
    figures: tuple[Figure, ...]
    absorption: Series = ()
    absorption_low: Series = ()
    absorption_high: Series = ()


@record
class TargetBand:
    """What the target asks of one band: wanted, least and most, s; None where it says nothing of the band."""

    wanted: float | None
    least: float | None
    most: float | None


@record
class Acoustics:
    """The estimate: absorbers before and after, air, decay before and after, target with a verdict a band.

    Verdicts: 'within', 'within by part of the range', 'too long', 'too short', 'not asked'.
    """

    bands: tuple[int, ...]
    volume: float
    surface: float
    before: tuple[Absorber, ...]
    after: tuple[Absorber, ...]
    air_m: Series
    decay_before: Decay
    decay_after: Decay
    target_words: str
    target: tuple[TargetBand, ...]
    verdict_before: tuple[str, ...]
    verdict_after: tuple[str, ...]
    schroeder_before: float
    schroeder_after: float
    assumes: tuple[str, ...]
    warnings: tuple[str, ...]

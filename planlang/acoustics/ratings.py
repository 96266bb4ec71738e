"""Single numbers for absorbers: NRC and SAA by ASTM C423, alpha-p, alpha-w, shape letters and class by ISO 11654.

Coefficients go in as one-third octaves; the arithmetic is in whole hundredths, so that no tie falls by chance.
"""

from collections.abc import Mapping, Sequence
from math import floor

from planlang.syntax.record import record

OCTAVES_RATED = (125, 250, 500, 1000, 2000, 4000)
REFERENCE = {250: 80, 500: 100, 1000: 100, 2000: 100, 4000: 90}  # ISO 11654, 4.2, hundredths
SHAPES = (("L", (250,)), ("M", (500, 1000)), ("H", (2000, 4000)))
CLASSES = ((90, "A"), (80, "B"), (60, "C"), (30, "D"), (15, "E"))
SAA_THIRDS = (200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500)
NRC_BANDS = (250, 500, 1000, 2000)
Hundredths = int


@record
class Rating:
    """alpha-w with its shape letters and class: '0.60(MH)', 'D'; the class is 'not classified' below 0.15."""

    alpha_w: float
    letters: str
    absorption_class: str

    @property
    def words(self) -> str:
        """As it is printed."""
        return f"{self.alpha_w:.2f}" + (f"({self.letters})" if self.letters else "")


def noise_reduction_coefficient(alphas: Mapping[int, float]) -> float:
    """NRC: the mean of 250, 500, 1000 and 2000 Hz (one-third octaves), to the nearest 0.05, a tie upwards.

    Source: ASTM C423 (the tie from memory).
    """
    return _to_step(sum(_hundredths(alphas[band]) for band in NRC_BANDS), len(NRC_BANDS), 5)


def sound_absorption_average(alphas: Mapping[int, float]) -> float:
    """SAA: the mean of the twelve thirds from 200 to 2500 Hz, to the nearest 0.01. Source: ASTM C423."""
    return _to_step(sum(_hundredths(alphas[band]) for band in SAA_THIRDS), len(SAA_THIRDS), 1)


def practical_absorption(thirds: Sequence[float]) -> float:
    """alpha-p: the mean of the three thirds of an octave, to two places, then to 0.05, at most 1.

    Source: ISO 11654:1997, 4.1.
    """
    mean = floor(round(sum(thirds) / 3 * 100, 6) + 0.5)
    return min(_to_step(mean, 1, 5), 1.0)


def weighted_absorption(practical: Mapping[int, float]) -> Rating:
    """alpha-w from alpha-p at 250 to 4000 Hz: the highest shift of the reference curve with deviations up to 0.10.

    A letter marks octaves where alpha-p passes the shifted curve by 0.25 or more. Source: ISO 11654:1997, 4.2, annex B.
    """
    values = {band: _hundredths(practical[band]) for band in REFERENCE}
    shift = next(shift for shift in range(0, 105, 5) if _unfavourable(values, shift) <= 10)
    rated = max(REFERENCE[500] - shift, 0)
    over = {band for band, value in values.items() if value - (REFERENCE[band] - shift) >= 25}
    letters = "".join(letter for letter, bands in SHAPES if over.intersection(bands))
    found = next((name for least, name in CLASSES if rated >= least), "not classified")
    return Rating(rated / 100, letters, found)


def _unfavourable(values: Mapping[int, Hundredths], shift: Hundredths) -> Hundredths:
    return sum(max(REFERENCE[band] - shift - value, 0) for band, value in values.items())


def _hundredths(value: float) -> Hundredths:
    return floor(round(value * 100, 6) + 0.5)


def _to_step(total: Hundredths, count: int, step: Hundredths) -> float:
    """total / count to the nearest `step` hundredths, a tie upwards."""
    return (2 * total + count * step) // (2 * count * step) * step / 100

"""What a data sheet would say of the panel types of a plan, by the model or from the laboratory figures stated."""

from collections.abc import Iterable

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats, series
from planlang.acoustics.bands import ALL_BANDS, IN_THIRDS, THIRDS, middle_frequencies
from planlang.acoustics.kinds import buildup, has_row_of_its_own, is_counted
from planlang.acoustics.model import PanelRating
from planlang.acoustics.panels import sized_absorption
from planlang.acoustics.ratings import (
    OCTAVES_RATED,
    noise_reduction_coefficient,
    practical_absorption,
    sound_absorption_average,
    weighted_absorption,
)
from planlang.plan.model import Array
from planlang.plan.panel import Measured
from planlang.plan.stock import OCTAVES

SAMPLE = (3.6, 3.0)  # m: 10.8 m2, the size of a reverberation-room sample (ISO 354 asks for 10 to 12 m2)


def panel_ratings(arrays: Iterable[Array], air: AirState) -> tuple[PanelRating, ...]:
    """One rating a panel type and drop, in the order of the plan; none of kinds that no sample could be laid out of."""
    ways = {(array.panel.name, array.hang.mean_drop): array for array in arrays if _is_rated(array)}
    return tuple(_rating(array, air) for array in ways.values())


def _is_rated(array: Array) -> bool:
    panel = array.panel
    return is_counted(panel) and (panel.measured is not None or not has_row_of_its_own(panel))


def _rating(array: Array, air: AirState) -> PanelRating:
    thirds, source = _sample(array, air)
    by_band = dict(zip(THIRDS, series(thirds), strict=True))
    practical = {octave: practical_absorption(_of_octave(thirds, octave)) for octave in OCTAVES_RATED}
    weighted = weighted_absorption(practical)
    return PanelRating(
        panel=array.panel.name,
        drop=array.hang.mean_drop,
        practical=tuple(practical.values()),
        alpha_w=weighted.words,
        absorption_class=weighted.absorption_class,
        nrc=noise_reduction_coefficient(by_band),
        saa=sound_absorption_average(by_band),
        thirds=series(thirds),
        source=source,
    )


def _sample(array: Array, air: AirState) -> tuple[Floats, str]:
    """Coefficients in thirds of a laboratory sample of the panel's layers."""
    measured = array.panel.measured
    if measured is not None:
        figures = np.array([float(measured.alphas[band]) for band in OCTAVES])
        return ALL_BANDS.from_octaves(figures)[IN_THIRDS], _measured_words(measured)
    layers = buildup(array.panel, array.hang.mean_drop)
    sample = sized_absorption(layers, middle_frequencies(), *SAMPLE, air)
    return sample, f"modelled as a closed sample of {SAMPLE[0]:g} x {SAMPLE[1]:g} m, without frames"


def _measured_words(measured: Measured) -> str:
    return (
        f"measured: {measured.report}, mounting {measured.mounting}; stated in octaves, so that NRC and SAA, which "
        "take thirds, may be off by a step"
    )


def _of_octave(thirds: Floats, octave: int) -> tuple[float, ...]:
    place = THIRDS.index(octave)
    return series(thirds[place - 1 : place + 2])

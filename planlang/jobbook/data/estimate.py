"""The acoustic estimate as data: one value an octave band, in the order of `bands_hz`."""

from pydantic import Field

from planlang.jobbook.data.values import Data, Length, Real, Reals


class AbsorberData(Data):
    """One surface, opening, array or group of people."""

    words: str
    area_m2: Real = Field(validation_alias="area")
    alpha: Reals
    absorption_m2: Reals = Field(validation_alias="absorption")
    low_m2: Reals = Field(validation_alias="low")
    high_m2: Reals = Field(validation_alias="high")
    source: str


class FormulaData(Data):
    """Decay times by one formula; `why` says when it leads, and is empty for one that doesn't."""

    name: str
    times_s: Reals = Field(validation_alias="times")
    why: str


class ThirdsData(Data):
    """Decay times in one-third octaves."""

    bands_hz: tuple[int, ...] = Field(validation_alias="bands")
    value_s: Reals = Field(validation_alias="value")
    low_s: Reals = Field(validation_alias="low")
    high_s: Reals = Field(validation_alias="high")
    leads: tuple[str, ...]
    formulas: tuple[FormulaData, ...]


class PanelRatingData(Data):
    """Ratings of a panel type by ISO 11654 and ASTM C423."""

    panel: str
    drop: Length
    alpha_p: Reals = Field(validation_alias="practical")
    alpha_w: str
    absorption_class: str
    nrc: Real
    saa: Real
    alpha_thirds: Reals = Field(validation_alias="thirds")
    source: str


class DecayData(Data):
    """Decay times; `low_s` and `high_s` are the range that is claimed."""

    sabine_s: Reals = Field(validation_alias="sabine")
    eyring_s: Reals = Field(validation_alias="eyring")
    low_s: Reals = Field(validation_alias="low")
    high_s: Reals = Field(validation_alias="high")
    mean_alpha: Reals
    absorption_m2: Reals = Field(validation_alias="absorption")
    absorption_low_m2: Reals = Field(validation_alias="absorption_low")
    absorption_high_m2: Reals = Field(validation_alias="absorption_high")
    value_s: Reals = Field(validation_alias="value")
    leads: tuple[str, ...]
    formulas: tuple[FormulaData, ...]
    thirds: ThirdsData | None


class TargetBandData(Data):
    """What is asked of one band; null where nothing is."""

    wanted_s: Real | None = Field(validation_alias="wanted")
    least_s: Real | None = Field(validation_alias="least")
    most_s: Real | None = Field(validation_alias="most")


class EstimateData(Data):
    """The whole estimate."""

    bands_hz: tuple[int, ...] = Field(validation_alias="bands")
    volume_m3: Real = Field(validation_alias="volume")
    surface_m2: Real = Field(validation_alias="surface")
    before: tuple[AbsorberData, ...]
    after: tuple[AbsorberData, ...]
    air_attenuation_per_m: Reals = Field(validation_alias="air_m")
    decay_before: DecayData
    decay_after: DecayData
    target_words: str
    target: tuple[TargetBandData, ...]
    verdict_before: tuple[str, ...]
    verdict_after: tuple[str, ...]
    schroeder_before_hz: Real = Field(validation_alias="schroeder_before")
    schroeder_after_hz: Real = Field(validation_alias="schroeder_after")
    assumes: tuple[str, ...]
    warnings: tuple[str, ...]
    ratings: tuple[PanelRatingData, ...]

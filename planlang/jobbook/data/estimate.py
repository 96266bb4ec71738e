"""The acoustic estimate as data: one value an octave band, in the order of `bands_hz`."""

from pydantic import Field

from planlang.jobbook.data.values import Data, Length, MaybeReal, Real, Reals


class RangedData(Data):
    """A value and its range; null where it could not be read."""

    value: MaybeReal
    low: MaybeReal
    high: MaybeReal


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
    """Decay times by one formula, with their range; `why` says when it leads, and is empty for one that doesn't."""

    name: str
    times_s: Reals = Field(validation_alias="times")
    low_s: Reals = Field(validation_alias="low")
    high_s: Reals = Field(validation_alias="high")
    why: tuple[str, ...]


class ThirdsData(Data):
    """Decay times in one-third octaves."""

    bands_hz: tuple[int, ...] = Field(validation_alias="bands")
    value_s: Reals = Field(validation_alias="value")
    low_s: Reals = Field(validation_alias="low")
    high_s: Reals = Field(validation_alias="high")
    leads: tuple[str, ...]


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


class OtherTargetData(Data):
    """A further target with its verdicts."""

    words: str
    target: tuple[TargetBandData, ...]
    verdict_before: tuple[str, ...]
    verdict_after: tuple[str, ...]


class ReflectionData(Data):
    """A first reflection; `across` and `up` are where it strikes, from the surface's datum."""

    talker: str
    listener: str
    surface: str
    delay_s: Real = Field(validation_alias="delay")
    extra_m: Real = Field(validation_alias="extra")
    level_db: RangedData = Field(validation_alias="level")
    treated_by: str
    across_mm: Real = Field(validation_alias="across")
    up_mm: Real = Field(validation_alias="up")


class GainData(Data):
    """What one array does, as mean decay over `bands_hz`."""

    array: str
    panels: int
    alone_s: RangedData = Field(validation_alias="alone")
    missed_s: RangedData = Field(validation_alias="missed")
    absorption_m2: Real = Field(validation_alias="absorption")
    area_m2: Real = Field(validation_alias="area")
    bands_hz: tuple[int, ...] = Field(validation_alias="bands")


class NextPanelData(Data):
    """One more panel like those of an array, on a surface; `own` where the array hangs there already."""

    array: str
    surface: str
    shortens_s: RangedData = Field(validation_alias="shortens")
    own: bool


class ModeData(Data):
    """One mode of the room."""

    frequency_hz: Real = Field(validation_alias="frequency")
    orders: tuple[int, ...]
    kind: str


class LowEndData(Data):
    """Modes of the room, and how many in each third."""

    method: str
    modes: tuple[ModeData, ...]
    thirds_hz: tuple[int, ...] = Field(validation_alias="thirds")
    counts: tuple[int, ...]
    words: tuple[str, ...]


class AtListenerData(Data):
    """Clarity at one listener, by rays."""

    listener: str
    clarity_50_db: tuple[RangedData, ...] = Field(validation_alias="clarity_50")
    clarity_80_db: tuple[RangedData, ...] = Field(validation_alias="clarity_80")
    definition_50: tuple[RangedData, ...]


class RayCheckData(Data):
    """The check by rays; null where a decay could not be read. `levels_db` are decay curves at steps of `step_s`."""

    rays: int
    followed: int
    lost: int
    source: str
    t20_s: tuple[RangedData, ...] = Field(validation_alias="t20")
    edt_s: tuple[RangedData, ...] = Field(validation_alias="edt")
    listeners: tuple[AtListenerData, ...]
    step_s: Real = Field(validation_alias="step")
    levels_db: tuple[Reals, ...] = Field(validation_alias="levels")
    outside_hz: tuple[int, ...] = Field(validation_alias="outside")
    scattering: tuple[str, ...]


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
    more_targets: tuple[OtherTargetData, ...]
    reflections: tuple[ReflectionData, ...]
    reflection_words: tuple[str, ...]
    gains: tuple[GainData, ...]
    next_panels: tuple[NextPanelData, ...]
    beyond: tuple[str, ...]
    limits: tuple[str, ...]
    flutter: tuple[str, ...]
    low_end: LowEndData | None
    rays: RayCheckData | None

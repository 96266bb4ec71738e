"""What the acoustic engine hands on. One value an octave band, in the order of `bands`; areas in m2, times in s."""

from __future__ import annotations

from fractions import Fraction

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
class Formula:
    """Decay times by one formula, s, with the range of 90 % of the draws; `why` says when it leads, empty if never."""

    name: str
    times: Series
    low: Series
    high: Series
    why: tuple[str, ...] = ()


@record
class Thirds:
    """Decay times in one-third octaves: by the leading formula, with the range."""

    bands: tuple[int, ...]
    value: Series
    low: Series
    high: Series
    leads: tuple[str, ...]


@record
class Decay:
    """Decay times of one state of the room, and the range that the estimate claims, an octave each.

    `value` is by the formula that `leads` in the octave; `formulas` are all that can be set up, side by side. `least`
    is what a lower limit is held against: `value`, but the shortest formula where an uneven room is no box.
    The range holds 90 % of the draws of all that may be off, and `value`.

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
    value: Series = ()
    least: Series = ()
    leads: tuple[str, ...] = ()
    formulas: tuple[Formula, ...] = ()
    thirds: Thirds | None = None


@record
class PanelRating:
    """Single numbers of a panel type hung with a `drop` (mm): alpha-p in octaves from 125 Hz, alpha-w, class, NRC, SAA.

    `thirds` are the coefficients behind them, 50 Hz to 5 kHz.
    """

    panel: str
    drop: Fraction
    practical: Series
    alpha_w: str
    absorption_class: str
    nrc: float
    saa: float
    thirds: Series
    source: str


@record
class Ranged:
    """A value and the range that is claimed for it."""

    value: float
    low: float
    high: float


@record
class Reflection:
    """A first reflection: on what, how much later (s) and longer (m), and its level to the direct sound (dB).

    `treated_by` is the mark of the panel that it strikes, '' for none; `across` and `up` are where it strikes, mm from
    the surface's datum.
    """

    talker: str
    listener: str
    surface: str
    delay: float
    extra: float
    level: Ranged
    treated_by: str
    across: float
    up: float


@record
class Mode:
    """One mode: frequency, Hz; its order along each side and its kind where the room is a box."""

    frequency: float
    orders: tuple[int, ...] = ()
    kind: str = ""


@record
class LowEnd:
    """What decides at low frequency: modes with how they were found, how many in each third (Hz), and plain words."""

    method: str
    modes: tuple[Mode, ...]
    thirds: tuple[int, ...]
    counts: tuple[int, ...]
    words: tuple[str, ...]


@record
class AtListener:
    """What a listener hears by rays: C50 and C80, dB, and D50, an octave each."""

    listener: str
    clarity_50: tuple[Ranged, ...]
    clarity_80: tuple[Ranged, ...]
    definition_50: tuple[Ranged, ...]


@record
class RayCheck:
    """The room with its panels by rays: T20 and EDT of all sound in it, s, an octave each, as a check on the formulas.

    `levels` are decay curves, dB, an octave each, at steps of `step` s; `falls` say for some dB when they are reached,
    s, an octave each. `outside` are the octaves (Hz) in which T20 lies outside the range of the estimate;
    `scattering` says what was taken for what. `lost` rays met no face; `followed` were followed to the end, in a hard
    room fewer than started. A time that can't be read is not a number.
    """

    rays: int
    followed: int
    lost: int
    source: str
    t20: tuple[Ranged, ...]
    edt: tuple[Ranged, ...]
    listeners: tuple[AtListener, ...]
    step: float
    levels: tuple[Series, ...]
    falls: tuple[tuple[int, tuple[Ranged, ...]], ...]
    outside: tuple[int, ...]
    scattering: tuple[str, ...]


@record
class OtherTarget:
    """A further target of the room, with its verdicts an octave."""

    words: str
    target: tuple[TargetBand, ...]
    verdict_before: tuple[str, ...]
    verdict_after: tuple[str, ...]


@record
class Gain:
    """What one array does, as mean decay over `bands`, s: `alone` in the bare room, `missed` if it were left out.

    `absorption` is what it adds on the mean, m2; `area` its panels' faces, m2. The ranges are over what its own panels
    may absorb.
    """

    array: str
    panels: int
    alone: Ranged
    missed: Ranged
    absorption: float
    area: float
    bands: tuple[int, ...]


@record
class NextPanel:
    """One more panel like those of an array, on a surface, with all others hung: mean decay that it takes away, s.

    `own` where the array hangs there already.
    """

    array: str
    surface: str
    shortens: Ranged
    own: bool


@record
class TargetBand:
    """What the target asks of one band: wanted, least and most, s; None where it says nothing of the band."""

    wanted: float | None
    least: float | None
    most: float | None


@record
class Expected:
    """The decay with the panels that requirements are held against, s, and what each target asks; an octave each.

    Upper limits are held against `value`, lower ones against `least`; over the whole range, against its ends.
    """

    bands: tuple[int, ...]
    targets: tuple[tuple[TargetBand, ...], ...]
    value: Series
    least: Series
    low: Series
    high: Series


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
    ratings: tuple[PanelRating, ...] = ()
    more_targets: tuple[OtherTarget, ...] = ()
    reflections: tuple[Reflection, ...] = ()
    reflection_words: tuple[str, ...] = ()
    gains: tuple[Gain, ...] = ()
    next_panels: tuple[NextPanel, ...] = ()
    beyond: tuple[str, ...] = ()
    limits: tuple[str, ...] = ()
    flutter: tuple[str, ...] = ()
    low_end: LowEnd | None = None
    rays: RayCheck | None = None

    @property
    def expected(self) -> Expected:
        """What requirements are held against."""
        after = self.decay_after
        targets = (self.target, *(other.target for other in self.more_targets)) if self.target_words else ()
        return Expected(self.bands, targets, after.value, after.least, after.low, after.high)

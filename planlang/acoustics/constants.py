"""Figures that the engine takes from outside, each with its source; `from_memory` marks what was not re-read."""

from typing import Generic, TypeVar

from planlang.syntax.record import record

T = TypeVar("T")


@record
class Stated(Generic[T]):
    """A figure with its source; `from_memory` is True where the source was not at hand when it was written down."""

    value: T
    source: str
    from_memory: bool = False


@record
class DinCurve:
    """T = slope lg V + offset, seconds and m3, from `least` (included) to `most` (excluded) m3."""

    use: str
    slope: float
    offset: float
    least: float
    most: float


@record
class MonitoringMask:
    """Tolerances on the nominal time, s, and the frequencies between which they hold, Hz."""

    lowest: int
    flat_from: int
    wide_from: int
    highest: int
    near: float
    most_low: float
    wide: float


# --- air ----------------------------------------------------------------------------------------------------

REFERENCE_PRESSURE = Stated(101_325.0, "ISO 9613-1:1993, Pa")
REFERENCE_TEMPERATURE = Stated(293.15, "ISO 9613-1:1993, K")
REFERENCE_SPEED = Stated(343.2, "ISO 9613-1:1993, m/s at 293.15 K")
TRIPLE_POINT = Stated(273.16, "ISO 9613-1:1993 annex B, K")
GAS_CONSTANT_AIR = Stated(287.058, "ideal gas, dry air, J/(kg K)")
GAS_CONSTANT_VAPOUR = Stated(461.495, "ideal gas, water vapour, J/(kg K)")
AIR_RANGE_C = Stated((-20.0, 50.0), "ISO 9613-1:1993, range of the stated accuracy, C", from_memory=True)

# --- porous absorbers ---------------------------------------------------------------------------------------

MIKI = Stated(
    (0.070, -0.632, 0.107, -0.632, 0.109, -0.618, 0.160, -0.618),
    "Miki, J. Acoust. Soc. Jpn (E) 11 (1990) 19",
)
MIKI_FIT = Stated((0.01, 1.0), "range of frequency over flow resistivity, m3/kg, of the fit; Miki 1990")
MOVING_FRAME = Stated(
    100.0, "density, kg/m3, above which the frame of a fibre board moves; common practice, no source", from_memory=True
)
DELANY_BAZLEY = Stated(
    (0.0571, -0.754, 0.087, -0.732, 0.0978, -0.700, 0.189, -0.595),
    "Delany and Bazley, Applied Acoustics 3 (1970) 105",
)
ALLARD_CHAMPOUX = Stated(
    (1.2, 0.0364, 0.1144, 101_320.0, 29.64, 21.17, 2.82, 24.9),
    "Allard and Champoux, J. Acoust. Soc. Am. 91 (1992) 3346",
    from_memory=True,
)
FIELD_INCIDENCE_LIMIT = Stated(
    78.0, "usual field-incidence limit of Paris' integral, degrees; common practice, no source"
)

# --- tolerances of what goes in -----------------------------------------------------------------------------

TABLE_SHARE = Stated(0.30, "spread of handbook absorption tables among themselves; own appraisal")
TABLE_STEP = Stated(0.05, "spread of handbook absorption tables among themselves; own appraisal")
LEAST_ALPHA = Stated(0.01, "glazed tile and painted concrete, the hardest rows of handbook tables")
PANEL_TOLERANCE = Stated(
    {125: 0.15, 250: 0.15, 500: 0.15, 1000: 0.10, 2000: 0.10, 4000: 0.10},
    "modelled absorption set against published reverberation-room data; own appraisal",
)
FIBRE_SPREAD = Stated(2.0, "published relations between density and flow resistivity set side by side; own appraisal")
MINERAL_FIBRES = Stated((4e-6, 10e-6), "fibre diameters of glass and stone wool, m; handbook range", from_memory=True)
SCATTERING = Stated(
    {"smooth": 0.10, "panel": 0.20, "exposed members": 0.40, "occupied floor": 0.50},
    "share of sound that a face sends back in all directions, middle frequencies; own choice after Vorlaender, "
    "Auralization, and Kuttruff, Room Acoustics, ch. 9",
)
SCATTERING_SPREAD = Stated(
    (0.5, 1.5), "how far scattering may be off either way, as a factor; own choice, as hardly any is ever measured"
)
RAY_CHANCE = Stated(0.05, "what is left to chance in a decay time by 20 000 rays, as a share; own appraisal over seeds")
FLUTTER_ALPHA = Stated(0.10, "mean coefficient from 500 Hz to 2 kHz below which a face counts as bare; own choice")
ECHO_DELAY = Stated(0.050, "delay, s, from which a strong reflection is heard as an echo; common practice, no source")
EDGE_SHARE = Stated(
    (0.5, 1.0),
    "share of the edge effect (Thomasson) that panels near corners, neighbours and in wooden frames keep; own "
    "appraisal against published reverberation-room data of two stone wools",
)
MEMBRANE_SPREAD = Stated(
    0.20, "how far the resonance of real sheets lies from that of a limp one, as a share", from_memory=True
)
CORNER_GAIN_SHARE = Stated(
    (0.0, 1.0),
    "share of the louder sound in a corner (Waterhouse, JASA 27 (1955) 247) that a trap turns into absorption; a guess",
)
DIFFUSER_SCATTERING = Stated(
    (0.20, 0.70),
    "share that a diffuser scatters outside and within its range of frequency; own guess after Cox and D'Antonio, "
    "ch. 4 and 10",
    from_memory=True,
)
MEASURED_TOLERANCE = Stated(0.10, "spread of reverberation-room measurements among laboratories; own appraisal")
SIZE_TOLERANCE = Stated(0.005, "lengths of a taped room, as a share; common practice, no source")
MOST_ALPHA = Stated(0.99, "cap for formulas with a logarithm, which fail at 1; own choice")

# --- the room -----------------------------------------------------------------------------------------------

SCHROEDER_FACTOR = Stated(2000.0, "Schroeder, Acustica 4 (1954) 594, as revised 1962; Kuttruff ch. 3", from_memory=True)
MOST_FURNITURE = Stated(0.2, "EN 12354-6, volume of hard objects over that of the room", from_memory=True)
MOST_PROPORTION = Stated(5.0, "EN 12354-6, longest side over shortest", from_memory=True)
DIRECT_REACH = Stated(
    0.057, "reach of direct sound, m, over sqrt(V/T); Kuttruff, Room Acoustics, ch. 5", from_memory=True
)
SABINE_LIMIT = Stated(0.2, "mean coefficient up to which Sabine's formula is usual; Kuttruff, Room Acoustics, ch. 5")
VERY_DEAD = Stated(0.6, "mean absorption coefficient above which a decay formula says little; own choice")
AXIS_SHARE = Stated(
    0.60, "share of the absorption in one pair of surfaces, above which ray computations leave the formulas; own choice"
)
AXIS_EXCESS = Stated(1.2, "that share over the pair's share of the area, so that even absorption passes; own choice")
PAIR_RATIO = Stated(3.0, "EN 12354-6, opposite surfaces", from_memory=True)
PAIR_LEAST = Stated(0.1, "coefficient below which a surface counts as hard whatever the ratio; own choice")
SLOPED_FACTOR = Stated(
    1.25,
    "ray computations with pyroomacoustics in six unevenly absorbing rooms under slopes, with a tenth of the sound "
    "scattered: 0.7 to 1.24 times Fitzroy's time by axes",
)

# --- targets ------------------------------------------------------------------------------------------------

DIN_18041_CURVES = Stated(
    {
        "A1": DinCurve("music", 0.45, 0.07, 30, 1000),
        "A2": DinCurve("speech, lecture", 0.37, -0.14, 50, 5000),
        "A3": DinCurve("teaching, communication", 0.32, -0.17, 30, 5000),
        "A4": DinCurve("teaching, communication, inclusive", 0.26, -0.14, 30, 500),
        "A5": DinCurve("sport", 0.75, -1.00, 200, 10_000),
    },
    "DIN 18041:2016-03, group A",
)
DIN_18041_LARGE_SPORT = Stated(2.0, "DIN 18041:2016-03, A5 from 10 000 m3, s")
DIN_18041_BAND = Stated(
    {
        63: (0.50, 1.70), 125: (0.65, 1.45), 250: (0.80, 1.20), 500: (0.80, 1.20), 1000: (0.80, 1.20),
        2000: (0.80, 1.20), 4000: (0.65, 1.20), 8000: (0.50, 1.20),
    },
    "DIN 18041:2016-03, tolerance on T for A1 to A4",
    from_memory=True,
)  # fmt: skip
DIN_18041_BAND_SPORT = Stated(
    {250: (0.80, 1.20), 500: (0.80, 1.20), 1000: (0.80, 1.20), 2000: (0.80, 1.20)},
    "DIN 18041:2016-03, tolerance on T for A5",
    from_memory=True,
)
DIN_18041_OCCUPIED = Stated(0.80, "DIN 18041:2016-03, share of seats occupied", from_memory=True)
DIN_18041_GROUP_B = Stated(
    {"B2": (0.15, 4.80), "B3": (0.20, 3.13), "B4": (0.25, 2.13), "B5": (0.30, 1.47)},
    "DIN 18041:2016-03, group B: A/V up to 2.5 m of height, and q of 1/(q + 4.69 lg h) above",
)
MONITORING_TIME = Stated((0.25, 100.0), "EBU Tech 3276 (2nd ed. 1998), ITU-R BS.1116: s, and reference volume m3")
MONITORING_LIMITS = Stated((0.2, 0.4), "EBU Tech 3276 (2nd ed. 1998): least and most nominal time, s")
MONITORING_MASK = Stated(
    MonitoringMask(63, 200, 4000, 8000, 0.05, 0.3, 0.1),
    "EBU Tech 3276, ITU-R BS.1116: tolerance of the decay time",
    from_memory=True,
)
EARLY_REFLECTIONS = Stated((0.015, -10.0), "EBU Tech 3276, ITU-R BS.1116: within s, at most dB", from_memory=True)
ANSI_S12_60 = Stated(((283.0, 0.6), (566.0, 0.7)), "ANSI/ASA S12.60-2010 part 1: up to m3, at most s")

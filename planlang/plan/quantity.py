"""Quantities with a kind: exact rationals in one base unit a kind, and the table of units."""

import math
from enum import Enum
from fractions import Fraction

from planlang.syntax.record import record


class Kind(Enum):
    """What a quantity measures. The value is the word used in messages; the base unit is in `BASE_UNIT`."""

    NUMBER = "plain number"
    LENGTH = "length"
    AREA = "area"
    ANGLE = "angle"
    MASS = "mass"
    FORCE = "force"
    DENSITY = "density"
    STRESS = "stress"
    AREAL_MASS = "mass per area"
    FLOW_RESISTIVITY = "flow resistivity"
    FLOW_RESISTANCE = "flow resistance"
    FREQUENCY = "frequency"
    TIME = "time"
    TEMPERATURE = "temperature"
    SHARE = "share"
    ABSORPTION_AREA = "absorption area"
    MONEY = "money"


BASE_UNIT = {
    Kind.NUMBER: "", Kind.LENGTH: "mm", Kind.AREA: "mm2", Kind.ANGLE: "deg", Kind.MASS: "kg",
    Kind.FORCE: "N", Kind.DENSITY: "kg/m3", Kind.STRESS: "N/mm2", Kind.AREAL_MASS: "kg/m2",
    Kind.FLOW_RESISTIVITY: "Pa.s/m2",
    Kind.FLOW_RESISTANCE: "Pa.s/m", Kind.FREQUENCY: "Hz", Kind.TIME: "s", Kind.TEMPERATURE: "C",
    Kind.SHARE: "", Kind.ABSORPTION_AREA: "m2", Kind.MONEY: "",
}  # fmt: skip

INCH = Fraction(127, 5)
FOOT = 12 * INCH
POUND = Fraction(45359237, 100_000_000)  # kg, exact by definition (international pound)
POUND_FORCE = POUND * Fraction(980665, 100_000)  # N, exact by definition (standard gravity)


@record
class Quantity:
    """An exact amount in the base unit of its kind; `currency` is set for money alone."""

    amount: Fraction
    kind: Kind
    currency: str = ""


# unit as written -> (kind, size in the base unit); temperatures have an offset and stand apart
UNITS: dict[str, tuple[Kind, Fraction]] = {
    "mm": (Kind.LENGTH, Fraction(1)),
    "cm": (Kind.LENGTH, Fraction(10)),
    "m": (Kind.LENGTH, Fraction(1000)),
    "in": (Kind.LENGTH, INCH),
    "ft": (Kind.LENGTH, FOOT),
    "mm2": (Kind.AREA, Fraction(1)),
    "m2": (Kind.AREA, Fraction(1_000_000)),
    "ft2": (Kind.AREA, FOOT**2),
    "deg": (Kind.ANGLE, Fraction(1)),
    "g": (Kind.MASS, Fraction(1, 1000)),
    "kg": (Kind.MASS, Fraction(1)),
    "lb": (Kind.MASS, POUND),
    "oz": (Kind.MASS, POUND / 16),
    "N": (Kind.FORCE, Fraction(1)),
    "kN": (Kind.FORCE, Fraction(1000)),
    "lbf": (Kind.FORCE, POUND_FORCE),
    "N/mm2": (Kind.STRESS, Fraction(1)),
    "kg/m3": (Kind.DENSITY, Fraction(1)),
    "lb/ft3": (Kind.DENSITY, POUND / (FOOT / 1000) ** 3),
    "kg/m2": (Kind.AREAL_MASS, Fraction(1)),
    "g/m2": (Kind.AREAL_MASS, Fraction(1, 1000)),
    "oz/yd2": (Kind.AREAL_MASS, POUND / 16 / (3 * FOOT / 1000) ** 2),
    "Pa.s/m2": (Kind.FLOW_RESISTIVITY, Fraction(1)),
    "kPa.s/m2": (Kind.FLOW_RESISTIVITY, Fraction(1000)),
    "Pa.s/m": (Kind.FLOW_RESISTANCE, Fraction(1)),
    "Hz": (Kind.FREQUENCY, Fraction(1)),
    "kHz": (Kind.FREQUENCY, Fraction(1000)),
    "s": (Kind.TIME, Fraction(1)),
    "ms": (Kind.TIME, Fraction(1, 1000)),
    "min": (Kind.TIME, Fraction(60)),
    "h": (Kind.TIME, Fraction(3600)),
    "C": (Kind.TEMPERATURE, Fraction(1)),
    "F": (Kind.TEMPERATURE, Fraction(5, 9)),
    "%": (Kind.SHARE, Fraction(1, 100)),
}


SIGNS_OF_UNITS = str.maketrans({"²": "2", "³": "3", "·": ".", "°": ""})


def plain_unit(unit: str) -> str:
    """A unit as the table has it: `kg/m³` is kg/m3, `°` is deg, `°C` is C."""
    return unit.translate(SIGNS_OF_UNITS) or "deg"


def rise_over_run(angle: Fraction) -> float:
    """The rise of a slope over its run, for its angle to the level in degrees."""
    return math.tan(math.radians(angle))


def in_base_unit(number: Fraction, unit: str) -> Quantity:
    """Return `number` of `unit` as a quantity. A three-capital unit is a currency.

    Raises:
        KeyError: the unit is not in the table.
    """
    if len(unit) == 3 and unit.isupper():
        return Quantity(number, Kind.MONEY, unit)
    unit = unit if unit in UNITS else plain_unit(unit)
    kind, size = UNITS[unit]
    if unit == "F":
        number -= 32
    return Quantity(number * size, kind)

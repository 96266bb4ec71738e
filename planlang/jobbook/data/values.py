"""How single values look in the data: exact lengths, rounded floats, money, figures, places in the plan."""

import math
from fractions import Fraction
from typing import Annotated

from pydantic import BaseModel, BeforeValidator, ConfigDict, WithJsonSchema

from planlang.syntax.span import NOWHERE, Span

_RATIONAL = "^-?[0-9]+(/[1-9][0-9]*)?$"


class Data(BaseModel):
    """Read from the attributes of a phase's results. Built when first used, so that no other command pays for it."""

    model_config = ConfigDict(
        frozen=True,
        from_attributes=True,
        defer_build=True,
        populate_by_name=True,
        json_schema_extra={"additionalProperties": False},
    )


def six_digits(value: float | Fraction) -> float:
    """Round to six significant digits; what isn't finite becomes an error of the caller."""
    number = float(value)
    if not math.isfinite(number):
        raise ValueError(f"{number} can't be written as data")
    return float(f"{number:.6g}")


def _finite_or_none(value: float) -> float | None:
    return six_digits(value) if math.isfinite(value) else None


def _length(value: object) -> object:
    return {"mm": value, "exact_mm": str(value)} if isinstance(value, Fraction) else value


def _amount(value: object) -> object:
    return str(value) if isinstance(value, Fraction | int) else value


def _place(value: object) -> object:
    if isinstance(value, Span):
        return f"{value.file}:{value.line}:{value.column}" if value != NOWHERE else ""
    return value


Real = Annotated[float, BeforeValidator(six_digits)]
Reals = tuple[Real, ...]
MaybeReal = Annotated[float | None, BeforeValidator(_finite_or_none)]  # null for what could not be read
Exact = Annotated[
    str,
    BeforeValidator(_amount),
    WithJsonSchema({"type": "string", "pattern": _RATIONAL, "description": "a rational: '7', '-1/3'"}),
]
Place = Annotated[
    str,
    BeforeValidator(_place),
    WithJsonSchema({"type": "string", "description": "file:line:column, empty for what no plan line states"}),
]


class LengthData(Data):
    """A length: millimetres to six significant digits, and exactly."""

    mm: Real
    exact_mm: Exact


Length = Annotated[LengthData, BeforeValidator(_length)]


class MoneyData(Data):
    """An exact amount in a currency."""

    amount: Exact
    currency: str


class FigureData(Data):
    """A value with its unit, rule, inputs, range and source."""

    value: Real
    unit: str
    low: Real | None
    high: Real | None
    how: str
    inputs: tuple[tuple[str, str], ...]
    source: str
    lines: tuple[Place, ...]


class MassData(Data):
    """One material of a panel."""

    words: str
    kg: Real
    height_mm: Real

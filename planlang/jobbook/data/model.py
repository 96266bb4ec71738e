"""The whole job book as data. Its JSON Schema is the published form."""

from typing import Literal

from pydantic import AliasPath, Field

from planlang.jobbook.data.estimate import EstimateData
from planlang.jobbook.data.layout import CheckData, LaserLineData, PanelData, RailData, RoomData
from planlang.jobbook.data.loads import (
    ClearanceData,
    EngineerData,
    FixingData,
    LiftData,
    LoadData,
    PaperData,
    SurfaceMassData,
)
from planlang.jobbook.data.shop import (
    BillData,
    BuildData,
    CuttingData,
    PriceLineData,
    PurchaseData,
    RollData,
    SheetMixData,
    StickCuttingData,
)
from planlang.jobbook.data.values import Data, Exact, MoneyData, Place


class JobData(Data):
    """Who, where, which issue."""

    title: str
    note: str
    client: str = Field(validation_alias=AliasPath("job", "client"))
    site: str = Field(validation_alias=AliasPath("job", "site"))
    issue: str = Field(validation_alias=AliasPath("job", "issue"))
    date: str = Field(validation_alias=AliasPath("job", "date"))
    currency: str = Field(validation_alias=AliasPath("job", "currency"))


class AssumptionData(Data):
    """What the plan left out, what was taken instead, why."""

    subject: str
    value: str
    reason: str
    at: Place


class WarningData(Data):
    """A finding that doesn't stop the book: a warning, or a load that fails."""

    code: str
    message: str
    mend: str
    span: Place


class HeldData(Data):
    """A requirement of the plan; `holds` is null where nothing was found to hold it against."""

    words: str
    holds: bool | None
    found: str
    margin: str
    at: Place = Field(validation_alias=AliasPath("requirement", "at"))


class DifferenceData(Data):
    """A reading of a survey beside what is drawn: mm, or degrees for an angle."""

    subject: str
    drawn: Exact
    found: Exact
    angle: bool
    survey: str
    at: Place


class StatedData(Data):
    """The option this book is built with, all that the plan has, and what it states of the place."""

    option: str
    options: tuple[str, ...]
    region: str
    rules_of: str | None
    differences: tuple[DifferenceData, ...]


class ShopData(Data):
    """What the workshop makes and cuts."""

    builds: tuple[BuildData, ...]
    sheets: tuple[CuttingData, ...]
    batts: tuple[CuttingData, ...]
    sticks: tuple[StickCuttingData, ...]
    rolls: tuple[RollData, ...]
    mixes: tuple[SheetMixData, ...]
    effort: int


class PriceData(Data):
    """The price; `total` is null when it isn't complete."""

    lines: tuple[PriceLineData, ...] = Field(validation_alias="price")
    total: MoneyData | None
    missing_prices: tuple[str, ...]
    bills: tuple[BillData, ...]


class ConfirmData(Data):
    """What must be confirmed, and by whom."""

    what: str
    who: str


class SafetyData(Data):
    """May anything be hung from this book, and what must be known and confirmed first."""

    hangable: bool
    not_reckoned: tuple[str, ...]
    cautions: tuple[str, ...]
    not_checked: tuple[str, ...]
    confirm: tuple[ConfirmData, ...]
    refused: tuple[str, ...]
    checked: tuple[str, ...]
    rules: tuple[tuple[str, str, str], ...]
    lifts: tuple[LiftData, ...]
    fixings: tuple[FixingData, ...]
    clearances: tuple[ClearanceData, ...]
    papers: tuple[PaperData, ...]
    engineer: tuple[EngineerData, ...]
    questions: tuple[ConfirmData, ...]
    inspect_months: int


class JobBook(Data):
    """A job book: every figure of the printed one, with units in the field names or beside the value."""

    schema_version: Literal[1]
    planlang: str
    job: JobData
    safety: SafetyData
    room: RoomData
    estimate: EstimateData
    panels: tuple[PanelData, ...]
    laser_lines: tuple[LaserLineData, ...]
    checks: tuple[CheckData, ...]
    rails: tuple[RailData, ...]
    shop: ShopData
    order: tuple[PurchaseData, ...]
    loads: tuple[LoadData, ...]
    surface_mass: tuple[SurfaceMassData, ...]
    price: PriceData
    assumptions: tuple[AssumptionData, ...]
    warnings: tuple[WarningData, ...]
    failures: tuple[WarningData, ...]
    stated: StatedData
    requirements: tuple[HeldData, ...]

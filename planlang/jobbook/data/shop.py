"""Parts, cutting layouts, cloth, purchases and price as data."""

from typing import Literal

from pydantic import AliasPath, Field

from planlang.jobbook.data.values import Data, Exact, Length, MassData, MoneyData, Real


class PartData(Data):
    """A part cut from a sheet."""

    mark: str
    role: str
    stock: str = Field(validation_alias=AliasPath("sheet", "name"))
    length: Length
    width: Length
    thickness: Length = Field(validation_alias=AliasPath("sheet", "thickness"))
    per_panel: int
    panels: int
    count: int
    how: str


class PieceData(Data):
    """A piece of batt or cloth."""

    mark: str
    role: str
    stock: str = Field(validation_alias=AliasPath("stock", "name"))
    length: Length
    width: Length
    per_panel: int
    panels: int
    count: int
    how: str


class StackLineData(Data):
    """A layer of the section, front to back."""

    words: str
    thickness: Length
    depth: Length


class SettingData(Data):
    """How the saw is set for a cut that isn't square: degrees from square, the strip flat on the saw."""

    mark: str
    where: str
    mitre_deg: Real
    bevel_deg: Real
    how: str


class BuildData(Data):
    """One panel type."""

    type: str = Field(validation_alias=AliasPath("type", "name"))
    mark: str = Field(validation_alias=AliasPath("type", "mark"))
    width: Length = Field(validation_alias=AliasPath("type", "width"))
    length: Length = Field(validation_alias=AliasPath("type", "length"))
    depth: Length = Field(validation_alias=AliasPath("type", "depth"))
    panels: tuple[str, ...]
    parts: tuple[PartData, ...]
    pieces: tuple[PieceData, ...]
    braces: tuple[Length, ...]
    joints: tuple[Length, ...]
    stack: tuple[StackLineData, ...]
    hardware: tuple[tuple[str, int], ...]
    fastenings: tuple[tuple[str, int, str], ...]
    steps: tuple[str, ...]
    masses: tuple[MassData, ...]
    settings: tuple[SettingData, ...]


class CutData(Data):
    """One guillotine cut."""

    number: int
    piece: str
    direction: Literal["rip", "cross"]
    fence: Length
    gives: tuple[str, ...]


class PlacedPartData(Data):
    """A part on its stock."""

    mark: str
    x: Length
    y: Length
    length: Length
    width: Length
    turned: bool


class SheetLayoutData(Data):
    """How one sheet is cut; an offcut is x, y, length, width."""

    sheets: int
    parts: tuple[PlacedPartData, ...]
    cuts: tuple[CutData, ...]
    offcuts: tuple[tuple[Length, Length, Length, Length], ...]


class CuttingData(Data):
    """All layouts on one stock. `waste` is an exact share.

    Of one size of several, or of offcuts, the bounds are 0: see the mix.
    """

    stock: str = Field(validation_alias=AliasPath("stock", "name"))
    length: Length = Field(validation_alias=AliasPath("stock", "length"))
    width: Length = Field(validation_alias=AliasPath("stock", "width"))
    shelf: bool
    used: int
    area_bound: int
    least: int
    least_rule: str
    proven_least: bool
    waste: Exact
    layouts: tuple[SheetLayoutData, ...]


class PlacedStickData(Data):
    """One length on a stick."""

    mark: str
    x: Length
    length: Length


class StickLayoutData(Data):
    """How one stick is cut."""

    sticks: int
    parts: tuple[PlacedStickData, ...]
    cuts: tuple[CutData, ...]
    rest: Length


class StickCuttingData(Data):
    """All layouts on sticks of one timber."""

    stock: str = Field(validation_alias=AliasPath("stock", "name"))
    used: int
    least: int
    layouts: tuple[StickLayoutData, ...]


class RollData(Data):
    """Cloth off a roll."""

    stock: str = Field(validation_alias=AliasPath("stock", "name"))
    length: Length
    waste: Exact
    parts: tuple[PlacedPartData, ...]


class PurchaseData(Data):
    """One line of the order."""

    name: str
    words: str
    need: str
    buy: Exact
    unit: str
    unit_price: MoneyData | None
    cost: MoneyData | None
    how: str
    supplier: str
    dated: str
    left: str


class BillData(Data):
    """What one supplier asks; tax that isn't borne is no cost. Null where a price is missing or no freight stated."""

    supplier: str
    dated: str
    goods: MoneyData | None
    freight: MoneyData | None
    tax: MoneyData | None
    tax_share: Exact
    borne: bool
    total: MoneyData | None


class SizeUseData(Data):
    """One size of a sheet, or offcuts of one size: price of a sheet, how many are used, and are there as offcuts."""

    length: Length
    width: Length
    price: MoneyData | None
    used: int
    there: int


class SheetMixData(Data):
    """A sheet bought in several sizes or taken off the shelf: its price, and the least that any mix costs."""

    name: str
    sizes: tuple[SizeUseData, ...]
    shelf: tuple[SizeUseData, ...]
    price: MoneyData | None
    least: MoneyData | None
    proven_least: bool


class PriceLineData(Data):
    """One line of the price; a subtotal is the sum of lines above."""

    words: str
    money: MoneyData | None
    how: str
    subtotal: bool

"""Load paths as data."""

from planlang.jobbook.data.values import Data, FigureData, MassData, Real


class StepData(Data):
    """One step from panel to structure."""

    words: str
    allowed: FigureData | None
    origin: str
    demand: FigureData
    ratio: Real | None
    status: str


class LoadData(Data):
    """The load path of the panels of one array. `weakest` is an index into `steps`."""

    array: str
    mark: str
    panels: tuple[str, ...]
    masses: tuple[MassData, ...]
    mass: FigureData
    weight: FigureData
    points: int
    share: FigureData
    rule: str
    demand: FigureData
    steps: tuple[StepData, ...]
    weakest: int
    status: str
    overhead: bool
    second_support: bool
    lift_words: str


class SurfaceMassData(Data):
    """All that hangs on one surface."""

    surface: str
    mass: FigureData

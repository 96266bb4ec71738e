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
    """The load path of the panels of one array. `weakest` is an index into `steps`.

    `status` is `refused` where all steps hold and an error stands against the array; `refusals` are all its errors.
    """

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
    second_steps: tuple[StepData, ...]
    worst_share: FigureData | None
    slope_words: str
    refusals: tuple[str, ...]


class SurfaceMassData(Data):
    """All that hangs on one surface."""

    surface: str
    mass: FigureData


class LiftData(Data):
    """One lift of a panel by one person: kg and cm. `index` is mass / limit, null outside the equation."""

    array: str
    words: str
    mass: Real
    reach: Real
    start: Real
    end: Real
    limit: Real
    index: Real | None
    who: str


class FixingData(Data):
    """How one piece goes into wood, mm."""

    array: str
    piece: str
    into: str
    lead_low: Real
    lead_high: Real
    least_thread: Real
    edge: Real
    end: Real
    apart: Real
    comes_out: Real


class ClearanceData(Data):
    """A thing that panels keep away from, and the nearest panel; `distance` in mm."""

    thing: str
    surface: str
    panel: str
    distance: Real
    wanted: str
    found: str
    rule: str
    ask: str
    near: bool


class PaperData(Data):
    """A material or panel type, and the paper that the plan names for it."""

    what: str
    kind: str
    paper: str
    tested: str
    says: str
    until: str


class EngineerData(Data):
    """A case in which a licence is needed, and whether it is this job's: yes, no, ask."""

    case: str
    answer: str
    why: str

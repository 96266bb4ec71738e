"""An array whose weight and share are known."""

from dataclasses import dataclass

from planlang.hardware.case import Case
from planlang.hardware.weigh import Shared, Weighed


@dataclass(frozen=True, slots=True)
class Hung:
    """An array that can be reckoned: its case, the weight of one panel, the worst share of one point."""

    case: Case
    weighed: Weighed
    shared: Shared

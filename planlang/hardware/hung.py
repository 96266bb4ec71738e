"""An array whose weight and share are known."""

from planlang.hardware.case import Case
from planlang.hardware.weigh import Shared, Weighed
from planlang.syntax.record import record


@record
class Hung:
    """An array that can be reckoned: its case, the weight of one panel, the worst share of one point."""

    case: Case
    weighed: Weighed
    shared: Shared

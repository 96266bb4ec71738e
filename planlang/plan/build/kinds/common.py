"""What several kinds of panel have: coverings, a core, what they hang by, laboratory figures."""

from __future__ import annotations

from planlang.plan import messages
from planlang.plan.build.names import Names, Unknown, maybe, value
from planlang.plan.build.stock import bands_of, build_batt, build_cloth, build_hardware, build_sheet
from planlang.plan.entry import Entry
from planlang.plan.panel import BackBoard, Cleats, Core, Covering, Eyes, Measured


def build_core(names: Names, entry: Entry) -> Core:
    """What fills the frame."""
    batt = names.build(value(entry, "batt"), "batt", build_batt)
    return Core(at=entry.span, batt=batt, layers=value(entry, "layers"), fit=value(entry, "fit"))


def build_covering(names: Names, entry: Entry) -> Covering:
    """Front or back cloth."""
    cloth = names.build(value(entry, "cloth"), "cloth", build_cloth)
    return Covering(
        at=entry.span,
        cloth=cloth,
        wrap=value(entry, "wrap"),
        railroaded="way" in entry.values,
        seamed="seams" in entry.values,
    )


def build_board(names: Names, entry: Entry) -> BackBoard:
    """A back board."""
    sheet = names.build(value(entry, "sheet"), "sheet", build_sheet)
    return BackBoard(at=entry.span, sheet=sheet, less=value(entry, "less"))


def build_measured(names: Names, entry: Entry | None) -> Measured | None:
    """Laboratory figures of the panel."""
    if entry is None:
        return None
    alphas = bands_of(names, entry, "alphas")
    return Measured(at=entry.span, alphas=alphas, report=value(entry, "report"), mounting=value(entry, "mounting"))


def build_hung_by(names: Names, entry: Entry) -> Eyes | Cleats | None:
    """Eyes or cleats, not both."""
    eyes, cleats = maybe(entry, "eyes"), maybe(entry, "cleats")
    if eyes and cleats:
        names.sink.append(
            messages.disagree(cleats.span, "a panel hangs by eyes or by cleats, not by both", "take one out")
        )
        raise Unknown
    if eyes:
        count = value(eyes, "count")
        if maybe(entry, "baffle"):
            if count < 2:
                names.sink.append(messages.disagree(eyes.span, "a baffle on one eye turns round", "write 2"))
                raise Unknown
        elif count < 4 or count % 2:
            names.sink.append(
                messages.disagree(eyes.span, "eyes come in pairs on the two side rails: 4, 6, 8", "write 4")
            )
            raise Unknown
        hardware = names.build(value(eyes, "hardware"), "hardware", build_hardware)
        return Eyes(at=eyes.span, hardware=hardware, count=count, inset=value(eyes, "inset"))
    if cleats:
        hardware = names.build(value(cleats, "hardware"), "hardware", build_hardware)
        below, inset = value(cleats, "below"), value(cleats, "inset")
        count = value(cleats, "count")
        return Cleats(at=cleats.span, hardware=hardware, count=count, below_top=below, inset=inset)
    return None

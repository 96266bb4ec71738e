"""Typed plans built by hand, for tests of one phase without the phases before it. All figures are invented."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F
from typing import Any

from planlang.plan.build.floor import rectangle
from planlang.plan.model import Along, Array, Grid, Hang, Job, Plan
from planlang.plan.panel import Braces, Cleats, Core, Covering, Eyes, Frame, FramedAbsorber
from planlang.plan.quantity import INCH
from planlang.plan.room import Air, CeilingPlane, Room, SurfaceLining, Use
from planlang.plan.stock import OCTAVES, Batt, Cloth, Hardware, Lining, Money, Price, Rates, Sheet, Timber
from planlang.plan.tape import METRIC, TapeStyle
from planlang.syntax.span import NOWHERE

IN = INCH


def inches(whole: int, numerator: int = 0, denominator: int = 1) -> F:
    return (whole + F(numerator, denominator)) * INCH


def price(amount: str | int, per: str, currency: str = "GBP") -> Price:
    return Price(at=NOWHERE, money=Money(amount=F(amount), currency=currency), per=per)


def make(kind: Any, base: dict[str, Any], over: dict[str, Any]) -> Any:
    return kind(**{"at": NOWHERE, **base, **over})


def sheet(**over: Any) -> Sheet:
    base = {
        "name": "ply-12", "words": "birch ply 12", "length": F(2440), "width": F(1220), "thickness": F(12),
        "density_kg_m3": F(680), "grain": True, "price": price(46, "sheet"),
    }  # fmt: skip
    return make(Sheet, base, over)


def batt(**over: Any) -> Batt:
    base = {
        "name": "wool-50", "words": "mineral wool 50", "length": F(1200), "width": F(600), "thickness": F(50),
        "density_kg_m3": F(45), "flow_low": F(8000), "flow_high": F(15000), "pack": 6, "price": price(38, "pack"),
    }  # fmt: skip
    return make(Batt, base, over)


def cloth(**over: Any) -> Cloth:
    base = {
        "name": "serge", "words": "wool serge", "width": F(1500), "mass_kg_m2": F(3, 10), "resistance": F(120),
        "price": price(14, "m"),
    }  # fmt: skip
    return make(Cloth, base, over)


def timber(**over: Any) -> Timber:
    base = {
        "name": "spruce", "words": "spruce, ungraded", "section": (F(45), F(45)), "length": F(3600),
        "specific_gravity": F(36, 100), "gravity_source": "unknown framing, assumed", "price": price(9, "stick"),
    }  # fmt: skip
    return make(Timber, base, over)


def hardware(**over: Any) -> Hardware:
    base = {
        "name": "link", "words": "quick link 3.5", "rated_n": F(1000), "rating_source": "invented data sheet",
        "mass_kg": F(15, 1000), "shank": None, "thread": None, "pack": 10, "price": price(12, "pack"),
    }  # fmt: skip
    return make(Hardware, base, over)


def screw_eye(**over: Any) -> Hardware:
    base = {
        "name": "eye-screw", "words": "forged lag eye 6 x 60", "rated_n": F(800), "shank": F(6), "thread": F(40),
        "mass_kg": F(3, 100),
    }  # fmt: skip
    return hardware(**{**base, **over})


def lining(**over: Any) -> Lining:
    alphas = dict(zip(OCTAVES, (F(10, 100), F(8, 100), F(5, 100), F(3, 100), F(3, 100), F(3, 100)), strict=True))
    base = {
        "name": "plasterboard", "words": "plasterboard on studs", "absorption": alphas, "source": "invented",
        "thickness": F(13), "carries": False,
    }  # fmt: skip
    return make(Lining, base, over)


def rates(**over: Any) -> Rates:
    base = {
        "kerf": F(3), "trim": F(0), "least_offcut": (F(300), F(100)), "spare_cloth": F(1, 10),
        "spare_hardware": F(1, 20), "hour": Money(amount=F(34), currency="GBP"), "make_hours": F(14, 10),
        "hang_hours": F(1, 2), "markup": F(25, 100), "tax": F(20, 100),
    }  # fmt: skip
    return make(Rates, base, over)


def braces(**over: Any) -> Braces:
    base = {
        "sheet": sheet(), "positions": (), "at_batt_joints": True, "at_mid_length": True, "width": F(60),
        "lie": "flat", "setback": F(6),
    }  # fmt: skip
    return make(Braces, base, over)


def panel_type(**over: Any) -> FramedAbsorber:
    base = {
        "name": "cloud-1500", "words": "", "mark": "C", "width": F(600), "length": F(1500), "depth": F(80),
        "frame": Frame(at=NOWHERE, sheet=sheet(), full="ends"),
        "core": Core(at=NOWHERE, batt=batt(), layers=1, fit=F(0)), "braces": braces(),
        "front": Covering(at=NOWHERE, cloth=cloth(), wrap=F(50)),
        "back": Covering(at=NOWHERE, cloth=cloth(name="muslin", words="muslin", mass_kg_m2=F(13, 100)), wrap=F(0)),
        "hung_by": eyes(),
    }  # fmt: skip
    return make(FramedAbsorber, base, over)


def tape_panel(**over: Any) -> FramedAbsorber:
    """A 24 by 72 inch panel of 5/8 inch sheet, 4 inches deep, 3 inch batts, three flat braces."""
    ply = sheet(
        name="ply-5/8", words="5/8 ply", length=inches(96), width=inches(48), thickness=inches(0, 5, 8), grain=False
    )
    wool = batt(name="wool-3", words="3 in batt", length=inches(48), width=inches(24), thickness=inches(3))
    base = {
        "name": "cloud-24x72", "width": inches(24), "length": inches(72), "depth": inches(4),
        "frame": Frame(at=NOWHERE, sheet=ply, full="ends"),
        "core": Core(at=NOWHERE, batt=wool, layers=1, fit=F(0)),
        "braces": braces(
            sheet=ply, positions=(inches(24), inches(36), inches(48)), at_batt_joints=False, at_mid_length=False,
            width=inches(3), setback=inches(0, 1, 4),
        ),
        "front": Covering(at=NOWHERE, cloth=cloth(), wrap=inches(2)),
        "hung_by": eyes(inset=inches(4)),
    }  # fmt: skip
    return panel_type(**{**base, **over})


def eyes(**over: Any) -> Eyes:
    plate = hardware(name="eye-plate", words="bolted eye plate", bolts=(2, F(5)))
    base = {"hardware": plate, "count": 4, "inset": F(100)}
    return make(Eyes, base, over)


def cleats(**over: Any) -> Cleats:
    base = {
        "hardware": hardware(name="cleat", words="steel cleat 100"), "count": 2, "below_top": F(60), "inset": F(100),
    }  # fmt: skip
    return make(Cleats, base, over)


def along(alignment: str = "centred", offset: F | int = 0) -> Along:
    return Along(at=NOWHERE, alignment=alignment, offset=F(offset))  # type: ignore[arg-type]


def grid(columns: int, rows: int, gap: F | int = 100, **over: Any) -> Grid:
    base = {
        "columns": columns, "rows": rows, "gap_across": F(gap), "gap_up": F(gap), "across": along(), "up": along(),
    }  # fmt: skip
    return make(Grid, base, over)


def hang(**over: Any) -> Hang:
    base = {
        "by": "eyes", "link": hardware(), "anchor": screw_eye(), "into": "members", "rail": None, "drop": F(60),
        "screws_each": 1,
    }  # fmt: skip
    return make(Hang, base, over)


def array(**over: Any) -> Array:
    base = {
        "name": "clouds", "mark": "SC", "panel": panel_type(), "surface": "ceiling", "placement": grid(2, 2),
        "upright": True, "hang": hang(), "keeps": (), "edge_clear": F(0),
    }  # fmt: skip
    return make(Array, base, over)


def flat(name: str = "ceiling", height: F | int = 2500) -> CeilingPlane:
    return CeilingPlane(at=NOWHERE, name=name, foot=None, height=F(height), pitch_deg=F(0), rise_over_run=0.0)


def room(**over: Any) -> Room:
    surfaces = ("floor", "south wall", "east wall", "north wall", "west wall", "ceiling")
    base = {
        "name": "room", "floor": rectangle(NOWHERE, F(over.pop("width", 6000)), F(over.pop("depth", 4000))),
        "ceiling": (flat(),),
        "linings": tuple(
            SurfaceLining(at=NOWHERE, surface=name, lining=lining(), members=None, exposed=False) for name in surfaces
        ),
        "features": (), "air": Air(at=NOWHERE, temperature_c=F(20), humidity=F(1, 2)), "occupants": (),
    }  # fmt: skip
    return make(Room, base, over)


def job(**over: Any) -> Job:
    base = {
        "client": "A client", "site": "A site", "issue": "A", "date": "2026-11-25", "tape": METRIC, "currency": "GBP",
        "paper": "A4",
    }  # fmt: skip
    return make(Job, base, over)


def plan(**over: Any) -> Plan:
    base = {
        "title": "A plan", "note": "", "job": job(), "rates": rates(), "room": room(),
        "use": Use(at=NOWHERE, target=None, places=()), "arrays": (array(),), "assumptions": (),
    }  # fmt: skip
    return make(Plan, base, over)


def style(units: str, step: F | int) -> TapeStyle:
    return TapeStyle(units, F(step))


def changed(node: Any, **over: Any) -> Any:
    return replace(node, **over)

"""Where the models are known to fail, in plain words: at all times, and what of it this plan comes near to."""

from planlang.acoustics.constants import MIKI_FIT, MOVING_FRAME
from planlang.acoustics.evenness import Evenness
from planlang.geometry.model import Layout
from planlang.plan.figure import significant
from planlang.plan.stock import OCTAVES, Batt

ALWAYS = (
    "where absorption lies on one or two faces and the others are smooth, parallel and bare, the decay bends and can "
    "be two to three times as long as any formula of energy says",
    "below Schroeder's frequency single modes decide: there a decay time is an index, and level and decay differ from "
    "place to place",
    "two spaces joined by an opening, an alcove or a deep wing have decays of their own, which no formula here tells "
    "apart; vaults and domes gather sound in places",
    "the rays are no waves: they see nothing bend round the edge of a panel, nothing weaken over rows of seats, and no "
    "resonance; a panel smaller than the wavelength, such as one of 0.6 m below about 500 Hz, reflects less and "
    "absorbs more than its face",
    "the models of batts are fits to fibres in a frame that stays still: foams of unusual structure and heavy boards "
    "do not follow them",
    "scattering is hardly ever measured: what is taken for it here is a guess for every face, and the same in all "
    "octaves but for diffusers",
    "people, furniture and open doors on the day are other than those stated",
)


def known_limits(layout: Layout, even: Evenness) -> tuple[str, ...]:
    """A sentence each, the general ones first."""
    shape = () if even.box else (
        "this room is no box: the formulas by axes are published for boxes, and sharing slopes and slanted walls among "
        "the axes is an extension of our own",
    )  # fmt: skip
    return (*ALWAYS, *shape, *(line for batt in _batts(layout) for line in _on_batt(batt)))


def _batts(layout: Layout) -> list[Batt]:
    uses = [use.stock for panel in layout.panels for use in panel.array.panel.uses if isinstance(use.stock, Batt)]
    return list({batt.name: batt for batt in uses}.values())


def _on_batt(batt: Batt) -> list[str]:
    lines = []
    least, most = MIKI_FIT.value
    lowest, highest = least * float(batt.flow_high), most * float(batt.flow_low)
    if lowest > OCTAVES[0]:
        lines.append(
            f"{batt.name}: below {significant(lowest)} Hz Miki's model goes on beyond the measurements that it was "
            f"fitted to (frequency over flow resistivity under {least})"
        )
    if highest < OCTAVES[-1]:
        lines.append(
            f"{batt.name}: above {significant(highest)} Hz Miki's model goes on beyond the measurements that it was "
            f"fitted to (frequency over flow resistivity over {most:.0f})"
        )
    if batt.density_kg_m3 > MOVING_FRAME.value:
        lines.append(
            f"{batt.name} of {significant(batt.density_kg_m3)} kg/m3: boards over about {MOVING_FRAME.value:.0f} kg/m3 "
            "move as a whole, which the models leave out; figures of a laboratory win over them"
        )
    return lines

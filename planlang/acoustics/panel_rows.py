"""The panels of one array as an absorber of the room, with everything about them that may be off."""

from collections.abc import Sequence
from fractions import Fraction

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats
from planlang.acoustics.bands import ALL_BANDS, Spectrum, middle_frequencies
from planlang.acoustics.constants import ALLARD_CHAMPOUX, EDGE_SHARE, MEASURED_TOLERANCE, MIKI, MOST_ALPHA
from planlang.acoustics.kinds import buildup, has_row_of_its_own, open_face
from planlang.acoustics.panels import RESISTIVITIES, Buildup, endless_absorption
from planlang.acoustics.patches import patch_absorption, patch_of
from planlang.geometry.model import PlacedPanel
from planlang.plan.model import Array
from planlang.plan.panel import Measured
from planlang.plan.stock import OCTAVES
from planlang.syntax.record import record

THOMASSON = "edges: Thomasson, Acustica 44 (1980) 265"


@record
class PanelRow:
    """Absorption of an array's open faces, a value a column.

    `endless` are coefficients of the layers without edges (models, flow resistivities, columns), at most 1; `edge` is
    what the finite size adds to a coefficient, of which panels in a room keep a `share` from least to most; `back` (m2)
    is the most that gets in behind hung panels; `tolerance` is how far a coefficient may be off beside all that.
    """

    area: float
    endless: Floats
    edge: Floats
    share: tuple[float, float]
    back: Floats
    tolerance: Floats
    source: str

    @property
    def plain(self) -> Floats:
        """Coefficient without edges, by the leading model in the middle of the flow's range."""
        return np.asarray(self.endless[0, self.endless.shape[1] // 2], dtype=np.float64)

    @property
    def taken(self) -> Floats:
        """Absorption area for Sabine, m2: with the middle share of the edges, and half of what may get in behind."""
        edge = sum(self.share) / 2 * self.edge
        return np.asarray(self.area * (self.plain + edge) + self.back / 2, dtype=np.float64)

    @property
    def capped(self) -> Floats:
        """Absorption area for formulas with a logarithm, m2: without edges, coefficients at most 0.99."""
        return np.asarray(self.area * np.minimum(self.plain, MOST_ALPHA.value) + self.back / 2, dtype=np.float64)

    @property
    def low(self) -> Floats:
        """The least that is thought possible, m2."""
        least = self.endless.min(axis=(0, 1)) + self.share[0] * self.edge - self.tolerance
        return np.asarray(self.area * np.maximum(least, 0.0), dtype=np.float64)

    @property
    def high(self) -> Floats:
        """The most that is thought possible, m2."""
        most = self.endless.max(axis=(0, 1)) + self.share[1] * self.edge + self.tolerance
        return np.asarray(self.area * most + self.back, dtype=np.float64)


def panel_row(
    array: Array, panels: Sequence[PlacedPanel], air: AirState, spectrum: Spectrum = ALL_BANDS, ranged: bool = True
) -> PanelRow:
    """Reckon an array: laboratory figures of the panel type where the plan has them, else the model.

    Not `ranged`: by the leading model and the middle of the flow's range alone, which is quicker.
    """
    area = len(panels) * open_face(array.panel)
    if array.panel.measured is not None:
        return _measured_row(array.panel.measured, area, spectrum)
    if has_row_of_its_own(array.panel):
        from planlang.acoustics.further_kinds import own_row  # noqa: PLC0415 - few plans have one

        return own_row(panels, air, spectrum, ranged)
    layers = buildup(array.panel, array.hang.mean_drop)
    frequency = middle_frequencies(spectrum)
    reach = endless_absorption(layers, frequency, air, ranged)
    sized = reach.taken
    if area:
        sized = patch_absorption(layers, patch_of(panels), frequency, air)
    back = _back_absorption(layers, array, len(panels), frequency, air)
    edge = np.maximum(sized - reach.taken, 0.0)
    if layers.membrane is not None:  # taken as a limp mass it is reckoned too good as it is
        edge = np.zeros(len(frequency))
    edges = "edges left out" if layers.membrane is not None else THOMASSON
    source = f"modelled: {MIKI.source}; {edges}; range with {ALLARD_CHAMPOUX.source}"
    columns = spectrum.from_thirds
    return PanelRow(
        area, columns(reach.grid), columns(edge), EDGE_SHARE.value, columns(back), columns(reach.tolerance), source
    )


def _measured_row(measured: Measured, area: float, spectrum: Spectrum) -> PanelRow:
    """Laboratory figures hold edges and all; what passes 1 is the edges' part, which only Sabine may see."""
    figures = spectrum.from_octaves(np.array([float(measured.alphas[band]) for band in OCTAVES]))
    plain = np.minimum(figures, 1.0)
    endless = np.broadcast_to(plain, (2, RESISTIVITIES, len(plain)))
    tolerance = np.full(len(plain), MEASURED_TOLERANCE.value)
    source = f"measured: {measured.report}, mounting {measured.mounting}"
    return PanelRow(area, endless, figures - plain, (1.0, 1.0), np.zeros(len(plain)), tolerance, source)


def _back_absorption(layers: Buildup, array: Array, count: int, frequency: Floats, air: AirState) -> Floats:
    """The most that gets in behind panels hung clear of their surface, m2 a third.

    Sound enters through the gap all round, so that no more than its area (at most the panel's) times the coefficient of
    the layers from behind can be lost there. Own appraisal; a laboratory would count the panel as an object (ISO 354).
    """
    if array.hang.mean_drop <= 0 or layers.closed:
        return np.zeros(len(frequency))
    panel = array.panel
    edge = panel.outline.perimeter if panel.outline else float(2 * (panel.width + panel.length))
    opening = edge * float(array.hang.mean_drop)
    entered = count * min(opening, float(panel.face)) / 1e6
    turned = Buildup(
        front_resistance=layers.back_resistance,
        front_air=layers.back_air,
        batt=layers.batt,
        back_air=layers.front_air,
        back_resistance=layers.front_resistance,
        drop=Fraction(0),
        flow_low=layers.flow_middle,
        flow_high=layers.flow_middle,
    )
    reach = endless_absorption(turned, frequency, air, ranged=False)
    return np.asarray(entered * reach.taken, dtype=np.float64)

"""The drawings of the job book, as SVG."""

from planlang.jobbook.drawings.absorption import absorption_chart
from planlang.jobbook.drawings.ceiling import ceiling_plan
from planlang.jobbook.drawings.decay import decay_chart
from planlang.jobbook.drawings.load_path import load_path
from planlang.jobbook.drawings.panel import panel_drawing
from planlang.jobbook.drawings.ray_curves import ray_curves
from planlang.jobbook.drawings.roll import roll_drawing
from planlang.jobbook.drawings.sheet import sheet_drawing
from planlang.jobbook.drawings.slope import profiles, slope_section
from planlang.jobbook.drawings.surface import surface_drawing

__all__ = [
    "absorption_chart",
    "ceiling_plan",
    "decay_chart",
    "load_path",
    "panel_drawing",
    "profiles",
    "ray_curves",
    "roll_drawing",
    "sheet_drawing",
    "slope_section",
    "surface_drawing",
]

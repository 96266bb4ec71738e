"""The table of saw settings of a build card: the cuts of a panel's parts that aren't square."""

from planlang.materials.model import Setting
from planlang.materials.outlined import ends_words, members_of
from planlang.materials.saw import SawSettings, saw_settings
from planlang.plan.outline import Outline
from planlang.plan.panel import Frame

CORNER = 90.0
FORMULA = (
    "standing strips, h half of what the corner turns: tan(mitre) = sin(0) tan(h), sin(bevel) = cos(0) sin(h), by the "
    "geometry of two planes"
)


def frame_settings(mark: str, frame: Frame) -> tuple[Setting, ...]:
    """The settings for the members of a rectangular frame; none where all ends are square."""
    if frame.joint != "mitre":
        return ()
    found = saw_settings(CORNER)
    return tuple(
        _setting(f"{mark}-{letter}", f"both ends of the {role}, long points outside", found)
        for letter, role in (("S", "side"), ("E", "end"))
    )


def outline_settings(mark: str, outline: Outline) -> tuple[Setting, ...]:
    """The settings for the sides of a frame of another outline, alike ones once, as they are marked."""
    alike = list({(member.length, ends_words(member.ends)): member for member in members_of(outline)}.values())
    found: list[Setting] = []
    for number, member in enumerate(alike, 1):
        part = f"{mark}-S{number if len(alike) > 1 else ''}"
        first, second = member.ends
        if ends_words((first, first)) == ends_words((second, second)):
            found.append(_setting(part, "both ends, long points outside", first))
        else:
            found += (_setting(part, f"{end} end, long points outside", each)
                      for end, each in (("one", first), ("the other", second)))  # fmt: skip
    return tuple(found)


def _setting(part: str, where: str, found: SawSettings) -> Setting:
    return Setting(part, where, found.mitre, found.bevel, FORMULA)

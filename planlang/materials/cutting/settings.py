"""The order of the cuts of one sheet: all rips at one fence, then the next, then the crosscuts stop by stop.

A cut can be made as soon as its piece lies on the saw. Of those that can be made, the one goes first that needs no new
setting, then one in the direction of the cut before, the largest setting first: strips are cut from their largest part
down, so that each size of a level is set once.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.materials.cutting.tree import Direction
from planlang.materials.model import Cut

Setting = tuple[Direction, Fraction]


def setting_of(cut: Cut) -> Setting:
    """What the saw is set to for a cut."""
    return cut.direction, cut.fence


def settings(cuts: Sequence[Cut]) -> int:
    """How often the saw is set: a cut in the direction and at the fence of the one before needs no new setting."""
    return sum(1 for at, cut in enumerate(cuts) if at == 0 or setting_of(cut) != setting_of(cuts[at - 1]))


def by_setting(cuts: Sequence[Cut], first: int) -> list[Cut]:
    """The cuts in the order of their settings, numbered anew. The `first` ones, which trim the sheet, stay in front."""
    made, waiting = list(cuts[:first]), list(cuts[first:])
    ahead = {name for cut in waiting for name in cut.gives}
    ready = [cut for cut in waiting if cut.piece not in ahead]
    later: dict[str, Cut] = {cut.piece: cut for cut in waiting if cut.piece in ahead}
    while ready:
        now = setting_of(made[-1]) if made else ("rip", Fraction(0))
        cut = min(ready, key=lambda cut: (setting_of(cut) != now, cut.direction != now[0], -cut.fence, cut.number))
        ready.remove(cut)
        made.append(cut)
        ready += [later.pop(name) for name in cut.gives if name in later]
    return _numbered_anew(made)


def _numbered_anew(cuts: Sequence[Cut]) -> list[Cut]:
    """The cuts with numbers in their order, and strips, blocks and rests called by theirs."""
    names: dict[str, str] = {}
    counts = {"strip": 0, "block": 0, "rest": 0}
    found = []
    for number, cut in enumerate(cuts, start=1):
        for name in cut.gives:
            word, _, own = name.partition(" ")
            if word in counts and own.isdigit():
                counts[word] += 1
                names[name] = f"{word} {counts[word]}"
        gives = tuple(names.get(name, name) for name in cut.gives)
        found.append(replace(cut, number=number, piece=names.get(cut.piece, cut.piece), gives=gives))
    return found

"""All figures that can be asked about, and finding those that are meant."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import get_close_matches

from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.reasons.engines import decay_topics, load_topics
from planlang.jobbook.reasons.placing import placing_topics
from planlang.jobbook.reasons.topic import Topic
from planlang.jobbook.reasons.workshop import workshop_topics

NEAR = 3


def all_topics(compiled: CompiledPlan) -> tuple[Topic, ...]:
    """Every figure with its reasons, in the order of the book's parts."""
    makers = (decay_topics, placing_topics, workshop_topics, load_topics)
    return tuple(topic for maker in makers for topic in maker(compiled))


def meant(topics: Sequence[Topic], what: str) -> tuple[Topic, ...]:
    """The topic of that name, else all whose names start with these words; case and blanks don't matter."""
    asked = _plain(what)
    exact = tuple(topic for topic in topics if _plain(topic.name) == asked)
    return exact or tuple(topic for topic in topics if _plain(topic.name).startswith(f"{asked} "))


def nearest(topics: Sequence[Topic], what: str) -> tuple[str, ...]:
    """Names that may have been meant by what is none."""
    names = {_plain(topic.name): topic.name for topic in topics}
    return tuple(names[near] for near in get_close_matches(_plain(what), names, NEAR, 0.5))


def _plain(words: str) -> str:
    return " ".join(words.casefold().split())

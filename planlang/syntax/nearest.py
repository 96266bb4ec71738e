"""Words that are spelt nearly alike."""

from collections.abc import Iterable


def nearest(word: str, known: Iterable[str], most: int, alike: float) -> list[str]:
    """At most so many of the known words, the most alike first; `alike`, 0 to 1, is the least that counts."""
    from difflib import get_close_matches  # noqa: PLC0415 - only what is misspelt asks for it

    return get_close_matches(word, list(known), most, alike)

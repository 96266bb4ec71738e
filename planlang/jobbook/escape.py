"""Plan text is data: cleaned of what can't be seen, and escaped so that Markdown takes none of it for a mark."""

import re
import unicodedata

_JOINERS = "\u200c\u200d"  # parts of words in several scripts
_ANYWHERE = re.compile(r"[\\`*_\[\]<>|~$]|&(?=[#A-Za-z])|!(?=\[)")
_AT_START = re.compile(r"^(#{1,6}(?=\s|$)|[-+](?=\s|$)|[-=]{2,}|\d{1,9}(?=[.)](?:\s|$)))")
_AT_END = re.compile(r"#+$")


def visible(text: str) -> str:
    """One line of text in which nothing is hidden.

    Runs of white space become one blank; control, bidi and other format characters are written out by code point
    (`‹U+202E›`), so that the reader sees that they were there.
    """
    return unhidden(" ".join(text.split()))


def unhidden(text: str) -> str:
    """The text with its blanks as they are, and every control, bidi and other format character by its code point."""
    return text if text.isprintable() else "".join(map(_shown, text))


def markdown_text(text: str) -> str:
    """Escape a line of text for Markdown: a paragraph, a heading, a list item or a table cell."""
    line = _ANYWHERE.sub(lambda found: "\\" + found[0], visible(text))
    line = _AT_END.sub(lambda found: found[0].replace("#", "\\#"), line)
    return _AT_START.sub(_guarded_start, line)


def slug(text: str) -> str:
    """The anchor of a heading, by the rule that git hosts use: lower case, hyphens for blanks, letters and digits."""
    kept = re.sub(r"[^\w\- ]", "", visible(text).lower())
    return kept.replace(" ", "-")


def unique_slugs(texts: tuple[str, ...]) -> tuple[str, ...]:
    """Anchors for headings in order; a repeat gets `-1`, `-2`, …"""
    taken: set[str] = set()
    found = []
    for text in texts:
        base = slug(text) or "part"
        name, number = base, 0
        while name in taken:
            number += 1
            name = f"{base}-{number}"
        taken.add(name)
        found.append(name)
    return tuple(found)


def _shown(char: str) -> str:
    hidden = unicodedata.category(char) in ("Cc", "Cf", "Cs", "Co", "Zl", "Zp") and char not in _JOINERS
    return f"‹U+{ord(char):04X}›" if hidden else char


def _guarded_start(found: re.Match[str]) -> str:
    start = found[0]
    return start + "\\" if start[0].isdigit() else "\\" + start

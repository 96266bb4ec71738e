"""Characters that a plan has no use for, and what was probably meant by each."""

from __future__ import annotations

import re
import unicodedata

CURLY = "“”„‟«»"
PRIMES = "‘’‚`´"
MONEY = {"£": "GBP", "€": "EUR", "$": "USD", "¥": "JPY"}
AMOUNT_AFTER = re.compile(r"\s*(\d[\d.]*)")
AMOUNT_BEFORE = re.compile(r"(\d[\d.]*)\s*$")
DATE_WITH_POINTS = re.compile(r"(\d\d?)\.(\d\d?)\.(\d{4})")
SAYS = {
    **dict.fromkeys("–—−‐‑‒", "write a plain `-`"),
    **dict.fromkeys(PRIMES, 'write text in double quotes: `"…"`'),
    ";": "write a comma instead: `,`",
    "=": "take it out: a statement is its word, then its value",
    ":": "take it out: a statement is its word, then its value (a pitch is written `5:12`)",
    "&": "write `and`, or a comma",
    "[": "write round brackets, `(` and `)`",
    "]": "write round brackets, `(` and `)`",
    "!": "take it out; a note for people stands after `#`",
    "?": "take it out; a note for people stands after `#`",
    "_": "join the parts of a name with `-`",
    "…": "write `..` for a range of names, such as `R1..R4`",
    "@": "write `at`",
    "°": "write `deg` after the number",
    "'": 'write text in double quotes: `"…"` (a foot mark stands after its number)',
}


def mend_of(character: str, before: str, after: str) -> str:
    """What would mend a character that can't be read, from the text of its line on both sides."""
    if character == '"':
        return lone_quote(before)
    if character in CURLY:
        return straight_quotes(before, after)
    if character in MONEY:
        return in_capitals(MONEY[character], before, after)
    if character in PRIMES + "'" and (mark := as_tape_mark(character, before)):
        return mark
    if character == ".":
        return instead_of_point(before, after)
    at_end = "take it out: the end of the line ends a statement" if character == ";" and not after.strip() else ""
    return at_end or SAYS.get(character) or as_fraction(character, before) or "take it out"


def lone_quote(before: str) -> str:
    """What was meant by a double quote without its partner: an inch mark that stands off its number, or a text."""
    number = number_at_end(before)
    return f'put an inch mark straight after its number: `{number}"`' if number else 'end the text with a second "'


def as_tape_mark(character: str, before: str) -> str:
    """A foot mark that is not straight, or two for an inch mark; empty where the character is neither."""
    if before[-1:] in (*PRIMES, "'") and before[-2:-1].isdigit():
        return f'write a double quote for inches: `{number_at_end(before[:-1])}"`'
    return "write a straight foot mark: `'`" if character in PRIMES and before[-1:].isdigit() else ""


def instead_of_point(before: str, after: str) -> str:
    """What was meant by a point that stands in no number: a date, a range of names, the end of a sentence."""
    date = DATE_WITH_POINTS.search(f"{before[-5:]}.{after}")
    if date:
        return f"write `{date[3]}-{date[2]:0>2}-{date[1]:0>2}`: year, month, day"
    if after.startswith(".."):
        return "write two points for a range of names, such as `R1..R4`"
    return "a point stands between digits, as in `0.5`; a statement needs none at its end"


def as_fraction(character: str, before: str) -> str:
    """A fraction that is one character, such as the sign for a half, written out; empty for other characters."""
    fraction = unicodedata.normalize("NFKC", character).replace("\u2044", "/")
    joined = " " if before[-1:].isdigit() else ""
    return f"write `{number_at_end(before)}{joined}{fraction}`" if "/" in fraction and character != "/" else ""


def straight_quotes(before: str, after: str) -> str:
    """Text between curly quotes, with straight ones; an inch mark after a digit."""
    if before[-1:].isdigit():
        return f'write a straight inch mark: `{number_at_end(before)}"`'
    end = next((index for index, each in enumerate(after) if each in CURLY + '"'), len(after))
    return f'write straight quotes: `"{after[:end].strip()}"`'


def in_capitals(currency: str, before: str, after: str) -> str:
    """An amount with the capitals of its currency."""
    found = AMOUNT_AFTER.match(after) or AMOUNT_BEFORE.search(before)
    return f"write `{found[1] if found else '46'} {currency}`: a currency is its three capitals, after the number"


def number_at_end(text: str) -> str:
    """The number that a text ends in."""
    found = AMOUNT_BEFORE.search(text)
    return found[1] if found else ""

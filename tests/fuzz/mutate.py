"""Plans broken byte by byte, word by word and line by line."""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Sequence

from tests.fuzz.base import sources
from tests.fuzz.oracle import Case

NASTY = (
    *("{", "}", "(", ")", '"', ",", "#", "..", "x", " x ", "*", "/", "-", "+", "'", "\\", "\0", "\t", "\u00a0"),
    *("0", "-1", "1/0", "0:0", "5:0", "1e300", "9" * 400, "0." + "0" * 300 + "1", "R1..R500", "R1..R99999999999"),
    *("1 mm", "1000000 mm", "89 deg", "89.999 deg", "0 %", "50 C", "-20 C", "999999999 kg", "1 GBP", "1 EUR", "A..A"),
    *("like", "use", "option", "survey", "without", "figure a a", "least of (", "most of (1, 2 mm)", "(((((1)))))"),
    *("south wall", "walls", "2026-02-31", "9999-99-99", "\u0301", "\U0001f600", "\ud7ff", "é", "٣", "²", "R²..R³"),
)  # fmt: skip
ODD_NUMBERS = (b"0", b"1", b"2", b"7", b"89", b"499", b"500", b"0.001", b"1000000", b"9" * 40)
NUMBER = re.compile(rb"\d+(?:\.\d+)?")
WORD = re.compile(rb"[A-Za-z][\w.-]*")
Change = Callable[[bytes, random.Random], bytes]


def place(data: bytes, rng: random.Random) -> int:
    return rng.randrange(len(data) + 1)


def flip(data: bytes, rng: random.Random) -> bytes:
    at = place(data, rng)
    return data[:at] + bytes([rng.randrange(256)]) + data[at + 1 :]


def drop(data: bytes, rng: random.Random) -> bytes:
    at = place(data, rng)
    return data[:at] + data[at + rng.choice((1, 1, 2, 5, 20, 200)) :]


def insert(data: bytes, rng: random.Random) -> bytes:
    at = place(data, rng)
    return data[:at] + rng.choice(NASTY).encode("utf-8", "surrogatepass") + data[at:]


def repeat(data: bytes, rng: random.Random) -> bytes:
    at = place(data, rng)
    piece = data[at : at + rng.choice((1, 3, 10, 60))]
    return data[:at] + piece * rng.choice((2, 2, 3, 50)) + data[at:]


def cut_off(data: bytes, rng: random.Random) -> bytes:
    return data[: place(data, rng)]


def other_number(data: bytes, rng: random.Random) -> bytes:
    """Another number in the place of one: of the plan, or an unusual one."""
    return replace_one(NUMBER, data, rng, ODD_NUMBERS)


def other_word(data: bytes, rng: random.Random) -> bytes:
    """Another word of the plan in the place of one."""
    return replace_one(WORD, data, rng, (b"nothing", b"x", b"mm", b"a.b"))


def replace_one(pattern: re.Pattern[bytes], data: bytes, rng: random.Random, others: Sequence[bytes]) -> bytes:
    found = list(pattern.finditer(data))
    if not found:
        return data
    old = rng.choice(found)
    new = rng.choice(others) if rng.random() < 0.5 else rng.choice(found)[0]
    return data[: old.start()] + new + data[old.end() :]


def on_lines(change: Callable[[list[bytes], random.Random], None]) -> Change:
    """A change of the list of lines."""

    def changed(data: bytes, rng: random.Random) -> bytes:
        lines = data.split(b"\n")
        change(lines, rng)
        return b"\n".join(lines)

    return changed


def drop_line(lines: list[bytes], rng: random.Random) -> None:
    del lines[rng.randrange(len(lines))]


def move_line(lines: list[bytes], rng: random.Random) -> None:
    lines.insert(rng.randrange(len(lines)), lines.pop(rng.randrange(len(lines))))


def copy_line(lines: list[bytes], rng: random.Random) -> None:
    lines.insert(rng.randrange(len(lines)), rng.choice(lines))


CHANGES: tuple[Change, ...] = (
    *(flip, drop, insert, repeat, cut_off, other_word, other_word, *[other_number] * 5),
    *(on_lines(drop_line), on_lines(move_line), on_lines(copy_line)),
)


def mutant(number: int) -> Case:
    """The mutant of a number: the same at every run."""
    rng = random.Random(number)
    source = rng.choice(sources())
    files = dict(source.files)
    for _ in range(rng.choice((1, 1, 1, 2, 3, 5))):
        path = source.main if rng.random() < 0.8 else rng.choice(sorted(files))
        files[path] = rng.choice(CHANGES)(files[path], rng)
    command = "build" if rng.random() < 0.06 else "check"
    option = "leaner" if command == "build" and rng.random() < 0.3 else ""
    return Case(files, source.main, command, option)

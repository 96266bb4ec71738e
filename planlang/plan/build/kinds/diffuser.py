"""A diffuser as it is stated."""

from __future__ import annotations

from typing import Any

from planlang.plan import messages
from planlang.plan.build.kinds.common import build_board
from planlang.plan.build.names import Names, Unknown, all_of, maybe_value, one, span_of_value, value
from planlang.plan.build.stock import build_sheet
from planlang.plan.entry import Entry
from planlang.plan.panel import Wells
from planlang.plan.sequences import is_odd_prime, primitive_roots

LARGEST_PRIME = 61
MOST_PERIODS = 20


def diffuser_fields(names: Names, entry: Entry) -> dict[str, Any]:
    """What a diffuser has beside what all panels have."""
    depth, wells, fins, bottoms, board = all_of(
        lambda: value(one(entry, "depth"), "depth"),
        lambda: build_wells(names, one(entry, "diffuser")),
        lambda: names.build(value(one(entry, "fins"), "sheet"), "sheet", build_sheet),
        lambda: names.build(value(one(entry, "bottoms"), "sheet"), "sheet", build_sheet),
        lambda: build_board(names, one(entry, "back-board")),
    )
    return {"depth": depth, "wells": wells, "fins": fins, "bottoms": bottoms, "board": board}


def build_wells(names: Names, entry: Entry) -> Wells:
    """The wells, with a check that there is such a sequence."""
    prime, periods, sequence = value(entry, "prime"), value(entry, "periods"), value(entry, "sequence")
    if not is_odd_prime(prime) or prime > LARGEST_PRIME:
        refuse(names, entry, "prime", f"this has to be a prime from 3 to {LARGEST_PRIME}", "usual are 5, 7, 11 and 13")
    if not 1 <= periods <= MOST_PERIODS:
        refuse(names, entry, "periods", f"a sequence may stand 1 to {MOST_PERIODS} times in a panel")
    return Wells(
        at=entry.span,
        sequence=sequence,
        prime=prime,
        root=build_root(names, entry, prime) if sequence == "primitive-root" else no_root(names, entry),
        width=value(entry, "well"),
        design=value(entry, "design"),
        periods=periods,
    )


def build_root(names: Names, entry: Entry, prime: int) -> int:
    """The primitive root: as stated, else the smallest."""
    known = primitive_roots(prime)
    root: int = maybe_value(entry, "root", known[0])
    if root not in known:
        few = ", ".join(str(each) for each in known[:6])
        refuse(names, entry, "root", f"{root} is no primitive root of {prime}", f"take one of {few}")
    return root


def no_root(names: Names, entry: Entry) -> int:
    """No root, and none stated."""
    if "root" in entry.values:
        message = "quadratic residues have no root"
        names.sink.append(messages.disagree(entry.span, message, "take it out, or write `primitive-root`"))
        raise Unknown
    return 0


def refuse(names: Names, entry: Entry, what: str, rule: str, mend: str = "write another number") -> None:
    """Report a number that makes no sequence.

    Raises:
        Unknown: always.
    """
    names.sink.append(messages.out_of_range(span_of_value(entry, what), rule, mend))
    raise Unknown

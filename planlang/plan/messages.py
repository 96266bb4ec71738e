"""The words for what is wrong with a plan's statements, values and names."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from planlang.plan.quantity import Kind, Quantity
from planlang.plan.tape import TapeStyle, exact_words
from planlang.plan.vocabulary.declare import Variant
from planlang.syntax.diagnostics import Diagnostic, Severity
from planlang.syntax.messages import in_groups
from planlang.syntax.span import Span

MOST_LISTED = 8


def did_you_mean(near: str) -> str:
    """A mend by the nearest name."""
    return f"did you mean `{near}`?" if near else ""


def a_thing(word: str) -> str:
    """'a sheet', 'a piece of hardware'."""
    return "a piece of hardware" if word == "hardware" else f"a {word}"


def kind_words(value: Quantity) -> str:
    """'a length', 'money in GBP'."""
    if value.currency:
        return f"money in {value.currency}"
    name = value.kind.value
    return f"{'an' if name[0] in 'aeiou' else 'a'} {name}"


# --- values -------------------------------------------------------------------------------------------------


def too_deep(span: Span) -> Diagnostic:
    """Brackets within brackets, too many."""
    return Diagnostic("value-too-deep", "this value has too many brackets within brackets", span, "name parts of it")


def number_too_long(span: Span, limit: int) -> Diagnostic:
    """A number with more digits than anything can be measured to."""
    message = f"this number has more than {limit} digits"
    return Diagnostic("number-too-long", message, span, "write it with the digits that can be measured")


def value_too_long(span: Span, limit: int) -> Diagnostic:
    """A sum or product of too many parts."""
    message = f"this value is put together from more than {limit} parts"
    return Diagnostic("value-too-long", message, span, "name parts of it: `figure …`")


def list_too_long(span: Span, limit: int) -> Diagnostic:
    """A list over the limit."""
    message = f"this list has more than {limit} entries"
    return Diagnostic("list-too-long", message, span, "write several statements")


def division_by_zero(span: Span) -> Diagnostic:
    """A division by nothing."""
    return Diagnostic("division-by-zero", "this divides by zero", span, "look at what stands after the `/`")


def unknown_figure(span: Span, name: str, near: str) -> Diagnostic:
    """A name in a value that no figure has."""
    mend = did_you_mean(near) or f"state it first: `figure {name} …`"
    return Diagnostic("unknown-figure", f"there is no figure `{name}`", span, mend)


def kinds_differ(span: Span, left: Quantity, right: Quantity) -> Diagnostic:
    """A sum or choice of things of two kinds."""
    message = f"{kind_words(left)} and {kind_words(right)} do not add up"
    return Diagnostic("kinds-differ", message, span, "give both a unit of the same kind")


def no_product(span: Span, left: Quantity, right: Quantity) -> Diagnostic:
    """A product without meaning here."""
    message = f"{kind_words(left)} times {kind_words(right)} means nothing here"
    return Diagnostic("kinds-differ", message, span, "multiply by a plain number, or a length by a length")


def no_quotient(span: Span, left: Quantity, right: Quantity) -> Diagnostic:
    """A quotient without meaning here."""
    message = f"{kind_words(left)} divided by {kind_words(right)} means nothing here"
    return Diagnostic("kinds-differ", message, span, "divide by a plain number, or by something of the same kind")


def unit_not_stated(span: Span) -> Diagnostic:
    """A bare number as a length in a file without a unit."""
    return Diagnostic(
        "unit-not-stated",
        "this length has no unit, and the file states none",
        span,
        "state it at the top of the file: `units mm` or `units in`, or write the unit here",
    )


def unknown_unit(span: Span, text: str, meant: str) -> Diagnostic:
    """A word after a number that was probably meant as a unit; `meant` is the number with the unit."""
    return Diagnostic("unknown-unit", f"`{text}` is no unit", span, f"write `{meant}`")


def numbers_run_together(span: Span, text: str, meant: tuple[str, str]) -> Diagnostic:
    """Two numbers side by side; `meant` are both readings, as one value ('' where they can't be one) and as two."""
    one, two = meant
    mend = f"write `{one}` for one value, or `{two}` for two" if one else f"write `{two}`"
    return Diagnostic("numbers-run-together", f"`{text}` are two numbers with nothing between them", span, mend)


def decimal_comma(span: Span, text: str, one: str, two: str) -> Diagnostic:
    """A comma inside what may be one number."""
    message = f"in `{text}` the comma parts two values: the decimal sign is a point, and thousands have none"
    return Diagnostic("decimal-comma", message, span, f"write `{one}` for one value, or `{two}` for two")


def not_a_size(span: Span, text: str, size: str) -> Diagnostic:
    """A size with a word in the place of its sign."""
    return Diagnostic("size-sign", f"`{text}` is no size: its sign is `x`", span, f"write `{size}`")


def unit_of_size(span: Span, unit: str, meant: str) -> Diagnostic:
    """A size with a unit after its last side alone, which is not the file's own."""
    message = f"`{unit}` stands after the last side of this size alone, and the file's own unit is another one"
    return Diagnostic("size-unit", message, span, f"write the unit after each side: `{meant}`")


def loose_inch_mark(span: Span, number: str) -> Diagnostic:
    """An inch mark that begins a text, as a blank stands before it."""
    message = f"the double quote after `{number}` begins a text, for a blank stands before it"
    return Diagnostic("loose-inch-mark", message, span, f'write an inch mark straight after its number: `{number}"`')


def wrong_kind(span: Span, wanted: str, found: Quantity) -> Diagnostic:
    """A value of another kind than the statement takes; `wanted` as in 'a length, such as `600 mm`'."""
    what, _, example = wanted.partition(", such as ")
    seen = "this number has no unit" if found.kind is Kind.NUMBER else f"this is {kind_words(found)}"
    mend = f"write it like {example}" if example else f"write {what} here"
    return Diagnostic("wrong-kind", f"{what} is wanted here; {seen}", span, mend)


def out_of_range(span: Span, rule: str, mend: str = "look at the decimal point and the unit") -> Diagnostic:
    """A value outside what makes sense."""
    return Diagnostic("out-of-range", rule, span, mend)


# --- statements ---------------------------------------------------------------------------------------------


def unknown_statement(
    span: Span, word: str, where: str, near: str, *, known: list[str], homes: tuple[str, ...] = ()
) -> Diagnostic:
    """A statement that the block does not take; `homes` are the places that do take it."""
    mend = did_you_mean(near) or f"it takes: {', '.join(known)}"
    if homes:
        mend = f"`{word}` belongs {' or '.join(homes)}"
    return Diagnostic("unknown-statement", f"{where} takes no `{word}`", span, mend)


def wrong_form(span: Span, word: str, wanted: str, found: str, example: str) -> Diagnostic:
    """A statement whose words do not follow its form."""
    seen = f"found `{found}`" if found else "the line ends"
    return Diagnostic("wrong-form", f"`{word}` wants {wanted} here; {seen}", span, f"for instance: `{example}`")


def unknown_clause(span: Span, word: str, found: str, near: str, known: list[str]) -> Diagnostic:
    """Words after a statement that are none of its clauses."""
    mend = did_you_mean(near) or (f"it may take: {'; '.join(known)}" if known else "take them out")
    return Diagnostic("unknown-clause", f"`{word}` takes no `{found}`", span, mend)


def clause_twice(span: Span, clause: str) -> Diagnostic:
    """A clause that is stated twice on one statement."""
    return Diagnostic("stated-twice", f"`{clause}` is stated twice on this line", span, "take one out")


def clause_missing(span: Span, word: str, clause: str, what: str = "") -> Diagnostic:
    """A clause that a statement needs; `what` it says."""
    more = f" ({what.rstrip('.')})" if what else ""
    return Diagnostic("clause-missing", f"`{word}` needs `{clause}`", span, f"add: `, {clause}`{more}")


def statement_swallowed(span: Span, word: str) -> Diagnostic:
    """A comma at the end of a line that makes the next statement a part of this one."""
    message = f"the comma at the end of this line goes on with `{word}`, which begins a statement of its own"
    return Diagnostic("comma-goes-on", message, span, "take the comma out")


def statement_twice(span: Span, word: str, before: Span) -> Diagnostic:
    """A statement that may stand once in its block."""
    return Diagnostic(
        "stated-twice",
        f"`{word}` is stated twice",
        span,
        "take one out",
        also=(("it was first stated here", before),),
    )


def statement_missing(span: Span, where: str, word: str, example: str) -> Diagnostic:
    """A statement that a block needs."""
    return Diagnostic("statement-missing", f"{where} needs `{word}`", span, f"for instance: `{example}`")


def not_in_variant(span: Span, where: str, word: str, variant: Variant) -> Diagnostic:
    """A statement that other sorts of the block take, and this one doesn't."""
    takes = ", ".join(f"`{each}`" for each in (*variant.needs, *variant.takes))
    message = f"{where} is a {variant.name}, which has no `{word}`"
    return Diagnostic("statement-of-another-kind", message, span, f"take it out; a {variant.name} takes {takes}")


def block_missing(span: Span, word: str) -> Diagnostic:
    """A statement that should open a block."""
    return Diagnostic("block-missing", f"`{word}` needs a block", span, "end its line with `{`, and close it with `}`")


def block_unwanted(span: Span, word: str) -> Diagnostic:
    """A block on a statement that takes none."""
    return Diagnostic("block-unwanted", f"`{word}` takes no block", span, "take out `{` and its `}`")


# --- names --------------------------------------------------------------------------------------------------


def unknown_name(span: Span, what: str, name: str, near: str, known: Sequence[str] = ()) -> Diagnostic:
    """A reference to something that is not defined; `known` are the names that would do."""
    mend = did_you_mean(near) or "define it, or `use` the file that does"
    if not near and 0 < len(known) <= MOST_LISTED:
        mend = f"known here: {', '.join(f'`{each}`' for each in known)}"
    return Diagnostic("unknown-name", f"there is no {what} `{name}`", span, mend)


def wrong_thing(span: Span, name: str, wanted: str, found: str, defined: Span) -> Diagnostic:
    """A reference to something of another sort."""
    return Diagnostic(
        "wrong-thing",
        f"`{name}` is {a_thing(found)}; {a_thing(wanted)} is wanted here",
        span,
        f"name {a_thing(wanted)}",
        also=((f"`{name}` is defined here", defined),),
    )


def name_twice(span: Span, name: str, before: Span) -> Diagnostic:
    """A name defined twice."""
    return Diagnostic(
        "name-twice",
        f"the name `{name}` is taken",
        span,
        "choose another name",
        also=(("it was first used here", before),),
    )


def like_too_much(span: Span, message: str) -> Diagnostic:
    """A definition that takes over too much, or by way of too many others."""
    return Diagnostic("like-too-much", message, span, "state what it needs itself")


def like_loop(span: Span, name: str) -> Diagnostic:
    """Definitions that start from one another in a ring."""
    message = f"`{name}` starts, by way of others, from itself"
    return Diagnostic("like-loop", message, span, "state one of them in full, without `like`")


def mark_twice(span: Span, mark: str, before: Span) -> Diagnostic:
    """A mark used by two arrays or two panel types."""
    return Diagnostic(
        "mark-twice", f"the mark `{mark}` is taken", span, "choose another", also=(("it was first used here", before),)
    )


def disagree(span: Span, message: str, mend: str = "change one of them") -> Diagnostic:
    """Clauses of one statement that contradict one another."""
    return Diagnostic("clauses-disagree", message, span, mend)


def count_differs(span: Span, message: str, mend: str = "add what is missing, or take out the rest") -> Diagnostic:
    """Lists that should be equally long, or ranges that run backwards."""
    return Diagnostic("count-differs", message, span, mend)


def one_only(span: Span, what: str, before: Span) -> Diagnostic:
    """A second one of something a plan has once."""
    return Diagnostic(
        "one-only", f"a plan has one {what}", span, "give the other its own plan", also=(("the first", before),)
    )


def unused_statement(span: Span, message: str, mend: str = "") -> Diagnostic:
    """Something stated that has no effect."""
    return Diagnostic("no-effect", message, span, mend, Severity.WARNING)


def bay_too_small(
    span: Span, first: str, second: str, lengths: tuple[Fraction, Fraction], tape: TapeStyle
) -> Diagnostic:
    """A bay that is no wider than what is to be taken off it; `lengths` are how wide it is, and how much less."""
    width, less = (exact_words(length, tape) for length in lengths)
    message = f"the bay between {first} and {second} is {width} wide, and {less} come off it"
    return Diagnostic("bay-too-small", message, span, "take less off, or leave that bay out")


# --- how much -----------------------------------------------------------------------------------------------


def too_many_panels(span: Span, count: int, limit: int, up_to: bool) -> Diagnostic:
    """More panels than a plan may have; `up_to`: as a bound of how many there is room for."""
    words = f"{'up to ' if up_to else ''}{in_groups(count)} panels"
    message = f"the plan comes to {words} here; {in_groups(limit)} are the most"
    return Diagnostic("too-many-panels", message, span, "look at the counts, or give parts of the room their own plans")


def too_many(span: Span, what: str, count: int, limit: int) -> Diagnostic:
    """More of something than a plan may have."""
    message = f"the plan has {in_groups(count)} {what}; {in_groups(limit)} are the most"
    return Diagnostic("too-many", message, span, "leave out what the panels don't depend on, or split the plan")


def too_many_members(span: Span, word: str, limit: int) -> Diagnostic:
    """Members at centres too close for the size of the room."""
    message = f"at these centres the room would have more than {limit} {word} in a row"
    return Diagnostic("too-many-members", message, span, "look at the centres, and at the size of the room")


def too_many_points(span: Span, count: int, limit: int) -> Diagnostic:
    """A panel with more hang points than can be reckoned with."""
    message = f"this panel hangs from {count} points; the loads of more than {limit} can't be shared out"
    return Diagnostic("too-many-hang-points", message, span, "use fewer, or make two panels of it")


def too_many_parts(span: Span, count: int, limit: int) -> Diagnostic:
    """More pieces and hang points than a plan may have."""
    message = f"the panels come to {in_groups(count)} pieces and hang points; {in_groups(limit)} are the most"
    return Diagnostic("too-many-parts", message, span, "look at the sizes of panel and batt, and at the counts")


def too_many_options(span: Span, message: str) -> Diagnostic:
    """More options than are compiled beside the plan."""
    return Diagnostic("too-many-options", message, span, "keep those that are still asked about")


def too_many_errors(span: Span, limit: int) -> Diagnostic:
    """The end of what is said of a plan."""
    message = f"more than {in_groups(limit)} things are wrong; from here on nothing more is said"
    return Diagnostic("too-many-errors", message, span, "mend the first of them, then look again")

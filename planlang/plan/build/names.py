"""Names and what they stand for; each definition is completed once, and built when something uses it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import field
from typing import Any, TypeVar

from planlang.plan import messages
from planlang.plan.entries import MOST_FINDINGS, entry_of_default, is_unknown
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name
from planlang.plan.model import Assumption
from planlang.plan.stock import Offer
from planlang.plan.tape import METRIC, TapeStyle
from planlang.plan.values import nearest_name
from planlang.plan.vocabulary.declare import Variant
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import workpiece
from planlang.syntax.span import Span

T = TypeVar("T")
MOST_LIKES = 20
MOST_TAKEN_OVER = 500


class Unknown(Exception):
    """Something needed is missing or at fault, and has been reported; what needs it can't be built."""


@workpiece
class Definition:
    """A named block: by way of how many others it starts from its first `like`; `unsound` where that could not be."""

    name: Name
    entry: Entry
    completed: bool = False
    likes: int = 0
    unsound: bool = False


@workpiece
class Names:
    """All definitions of a project, and what has been made of them.

    `tape` is how lengths are printed in messages. `offers` are what suppliers ask, by the name of the good.
    Not `sure`: a file that the plan uses could not be found, so that a name which isn't known may be defined there.
    """

    sink: list[Diagnostic]
    sure: bool = True
    tape: TapeStyle = METRIC
    definitions: dict[str, Definition] = field(default_factory=dict)
    built: dict[str, Any] = field(default_factory=dict)
    assumptions: list[Assumption] = field(default_factory=list)
    offers: dict[str, list[Offer]] = field(default_factory=dict)

    def define(self, entry: Entry) -> None:
        """Take a named block into the list; a name can be taken once."""
        name = entry.values["name"].what if "name" in entry.values else Name(entry.guess, entry.span)
        before = self.definitions.get(name.text)
        if before is not None:
            self.sink.append(messages.name_twice(name.span, name.text, before.name.span))
            return
        self.definitions[name.text] = Definition(name, entry)

    def complete_all(self) -> None:
        """Complete every definition, used or not, so that all that is missing is said at once."""
        for definition in list(self.definitions.values()):
            self.complete_definition(definition, ())

    def complete_definition(self, definition: Definition, chain: tuple[str, ...]) -> None:
        """Take over what `like` brings, then see that nothing required is missing."""
        if definition.completed:
            return
        definition.completed = True
        entry = definition.entry
        for like in entry.all("like"):
            base = self._base(like, entry, (*chain, definition.name.text))
            if base is None or base.unsound:
                definition.unsound = entry.faulty = True
                continue
            definition.likes = base.likes + 1
            if not self._bounded(like, definition, base):
                continue
            stated = {part.kind.word for part in entry.body}
            stated.add("like")
            entry.body += [part for part in base.entry.body if part.kind.word not in stated]
        self.complete(entry, f"`{entry.kind.word} {definition.name.text}`")

    def _bounded(self, like: Entry, definition: Definition, base: Definition) -> bool:
        """Whether what `like` brings is within bounds; where not, that is reported."""
        message = ""
        if definition.likes > MOST_LIKES:
            message = f"`{definition.name.text}` starts from more than {MOST_LIKES} others, one by way of the next"
        elif len(base.entry.body) > MOST_TAKEN_OVER:
            message = f"`{base.name.text}` has more than {MOST_TAKEN_OVER} statements to take over"
        if message:
            self.sink.append(messages.like_too_much(like.values["base"].span, message))
            definition.unsound = definition.entry.faulty = True
        return not message

    def _base(self, like: Entry, entry: Entry, chain: tuple[str, ...]) -> Definition | None:
        if like.faulty:
            return None
        name: Name = like.values["base"].what
        if name.text in chain:
            self.sink.append(messages.like_loop(name.span, chain[-1]))
            return None
        try:
            base = self.find(name, (entry.kind.word,))
        except Unknown:
            return None
        if len(chain) > MOST_LIKES:
            message = f"`{chain[0]}` starts from more than {MOST_LIKES} others, one by way of the next"
            self.sink.append(messages.like_too_much(name.span, message))
            return None
        self.complete_definition(base, chain)
        return base

    def complete(self, entry: Entry, where: str) -> None:
        """Report required statements that a block lacks, and take the defaults of others."""
        variant = self.variant(entry, where)
        needed = variant.needs if variant else ()
        stated = {part.kind.word for part in entry.body}
        unknown = sum(is_unknown(part, entry.kind) for part in entry.body)  # each may be one that seems to be missing
        for kind in entry.kind.block or ():
            if kind.word in stated:
                continue
            if (kind.required or kind.word in needed) and not entry.faulty:
                if unknown:
                    unknown -= 1
                else:
                    self.sink.append(messages.statement_missing(entry.span, where, kind.word, kind.example))
                entry.body.append(Entry(kind, entry.span, faulty=True))
            elif kind.default:
                entry.body.append(entry_of_default(kind, entry.span))

    def variant(self, entry: Entry, where: str) -> Variant | None:
        """The variant that a block's statements choose; what doesn't go with it, and that none is chosen, is reported.

        None where the block has no variants, or none could be read.
        """
        variants = entry.kind.variants
        choosing = [part for part in entry.body if part.kind.word in {variant.word for variant in variants}]
        if not variants or any(part.faulty for part in choosing):
            return None
        if not choosing:
            if not entry.faulty and not any(is_unknown(part, entry.kind) for part in entry.body):
                kind = entry.kind.by_word[variants[0].word]
                self.sink.append(messages.statement_missing(entry.span, where, kind.word, kind.example))
            entry.faulty = True
            return None
        if len(choosing) > 1:
            first, second = choosing[:2]
            message = f"{where} can't be both `{first.kind.word}` and `{second.kind.word}`"
            self.sink.append(messages.disagree(second.span, message, "take one of them out"))
            entry.faulty = True
            return None
        chosen = next(variant for variant in variants if _is_chosen(variant, choosing[0]))
        for part in entry.body:
            if part.kind.word in entry.kind.of_variants - {*chosen.needs, *chosen.takes}:
                self.sink.append(messages.not_in_variant(part.span, where, part.kind.word, chosen))
                entry.faulty = True
        return chosen

    def find(self, name: Name, wanted: tuple[str, ...]) -> Definition:
        """The definition of a name of one of the wanted sorts.

        Raises:
            Unknown: there is none; it has been reported.
        """
        found = self.definitions.get(name.text)
        what = " or ".join(wanted)
        if found is None:
            known = [each for each, definition in self.definitions.items() if definition.entry.kind.word in wanted]
            near = nearest_name(name.text, known) if len(self.sink) < MOST_FINDINGS else ""
            if self.sure:
                self.sink.append(messages.unknown_name(name.span, what, name.text, near, known))
            raise Unknown
        if found.entry.kind.word not in wanted:
            sort = found.entry.kind.word
            self.sink.append(messages.wrong_thing(name.span, name.text, what, sort, found.name.span))
            raise Unknown
        return found

    def build(self, name: Name, wanted: str, make: Callable[[Names, Definition], T]) -> T:
        """What a name stands for, made once.

        Raises:
            Unknown: it can't be made, and that has been reported.
        """
        definition = self.find(name, (wanted,))
        if name.text not in self.built:
            try:
                self.built[name.text] = make(self, definition)
            except Unknown:
                self.built[name.text] = None
        if definition.entry.faulty:
            raise Unknown
        made: T | None = self.built[name.text]
        if made is None:
            raise Unknown
        return made

    def assume(self, entry: Entry, where: str) -> None:
        """Note what was taken for what an entry left out."""
        for text, reason in entry.assumed:
            if not reason:
                continue
            self.assumptions.append(Assumption(at=entry.span, subject=where, value=text, reason=reason))


def _is_chosen(variant: Variant, entry: Entry) -> bool:
    if variant.word != entry.kind.word:
        return False
    return not variant.value or variant.value in {value.what for value in entry.values.values()}


def all_of(*makes: Callable[[], Any]) -> list[Any]:
    """Make several things, so that what is wrong with each is said at once.

    Raises:
        Unknown: one of them can't be made.
    """
    made = [attempt(make) for make in makes]
    if any(failed for _, failed in made):
        raise Unknown
    return [thing for thing, _ in made]


def attempt(make: Callable[[], T]) -> tuple[T | None, bool]:
    """What can be made, and whether that failed."""
    try:
        return make(), False
    except Unknown:
        return None, True


def one(entry: Entry, word: str) -> Entry:
    """The statement of a block with a word.

    Raises:
        Unknown: it is missing or at fault.
    """
    found = maybe(entry, word)
    if found is None:
        raise Unknown
    return found


def maybe(entry: Entry, word: str) -> Entry | None:
    """The statement of a block with a word, or None.

    Raises:
        Unknown: it is at fault.
    """
    for part in entry.body:
        if part.kind.word == word:
            if part.faulty:
                raise Unknown
            return part
    return None


def value(entry: Entry, name: str) -> Any:
    """A parameter of a statement.

    Raises:
        Unknown: it is at fault.
    """
    if name not in entry.values or entry.values[name].what is None:
        raise Unknown
    return entry.values[name].what


def maybe_value(entry: Entry, name: str, otherwise: Any = None) -> Any:
    """A parameter that may have been left out.

    Raises:
        Unknown: it is at fault.
    """
    return value(entry, name) if name in entry.values else otherwise


def span_of_value(entry: Entry, name: str) -> Span:
    """Where a parameter stands."""
    return entry.values[name].span


def flat(groups: Iterable[Iterable[T]]) -> list[T]:
    """One list of several."""
    return [each for group in groups for each in group]


def nearest(text: str, known: list[str]) -> str:
    """The known name that was probably meant; empty when none is near."""
    return nearest_name(text, known)


def refused(names: Names, entry: Entry, message: str, mend: str) -> Unknown:
    """Report what doesn't go together in a statement, to be raised."""
    names.sink.append(messages.disagree(entry.span, message, mend))
    return Unknown()

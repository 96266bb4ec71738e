"""Options: a set of changes laid over the plan before anything is built from it."""

from __future__ import annotations

from planlang.plan import messages
from planlang.plan.build.names import Names, Unknown, value
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name

MOST_OPTIONS = 20
UNNAMED = ("shop", "buying", "use-of-room")


def option_names(files: list[Entry]) -> list[str]:
    """The names of all options, in the order of the files."""
    return [entry.guess for file in files for entry in file.all("option") if entry.guess]


def apply_option(names: Names, files: list[Entry], option: str) -> None:
    """Lay the changes of an option over the definitions; without a name nothing changes."""
    for entry in (entry for file in files for entry in file.all("option") if entry.guess == option):
        for change in entry.body:
            if not change.faulty:
                apply_change(names, files, change)


def apply_change(names: Names, files: list[Entry], change: Entry) -> None:
    """Lay one change over what it names."""
    try:
        if change.kind.word == "without":
            leave_out(names, value(change, "array"))
        elif change.kind.word in UNNAMED:
            blocks = [block for file in files for block in file.all(change.kind.word)]
            if not blocks:
                blocks = [Entry(files[-1].kind.by_word[change.kind.word], change.span)]
                files[-1].body += blocks
            for block in blocks:
                lay_over(block, change)
        else:
            definition = names.find(value(change, "name"), (change.kind.word,))
            lay_over(definition.entry, change)
    except Unknown:
        return


def leave_out(names: Names, name: Name) -> None:
    """Take an array out of the plan."""
    names.find(name, ("array",))
    del names.definitions[name.text]


def lay_over(entry: Entry, change: Entry) -> None:
    """Statements of the change stand in for those of the same word."""
    stated = {part.kind.word for part in change.body}
    entry.body = [part for part in entry.body if part.kind.word not in stated] + change.body
    entry.values.update({key: found for key, found in change.values.items() if key != "name"})
    entry.origin = None


def check_options(names: Names, files: list[Entry]) -> None:
    """Options are named once, and name what there is, whether or not one is built."""
    first: dict[str, Entry] = {}
    options = [entry for file in files for entry in file.all("option")]
    if len(options) > MOST_OPTIONS:
        message = f"the plan has {len(options)} options; {MOST_OPTIONS} are the most"
        names.sink.append(messages.too_many_options(options[MOST_OPTIONS].span, message))
    for entry in options:
        if entry.guess in first:
            names.sink.append(messages.name_twice(entry.span, entry.guess, first[entry.guess].span))
        first.setdefault(entry.guess, entry)
        for change in entry.body:
            check_change(names, change)


def check_change(names: Names, change: Entry) -> None:
    """What a change names must exist."""
    if change.faulty or change.kind.word in UNNAMED:
        return
    word, parameter = ("array", "array") if change.kind.word == "without" else (change.kind.word, "name")
    try:
        names.find(value(change, parameter), (word,))
    except Unknown:
        return

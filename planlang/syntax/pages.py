"""The page of a diagnostic code, and the pages of what is wrong with a plan as a text."""

from __future__ import annotations

from planlang.syntax.record import record

Change = tuple[str, str]


@record
class Page:
    """What the manual says of one diagnostic code.

    Its examples are changes to the manual's small plan, (what stands there, what stands there instead); how many spaces
    lie between words does not matter, and a change of nothing adds its text at the end. `given` changes are made in
    both examples, then `wrong` or `right`; where `right` is empty, the right example is the plan as given.
    `files` are further files of both examples, by name. The wrong example must give this code and no other, the right
    one must give nothing at all, unless `right_gives` names other findings that belong to it.

    `guard` tells why no text can lead to the code; such a page has no examples.
    """

    title: str
    words: str
    wrong: tuple[Change, ...] = ()
    right: tuple[Change, ...] = ()
    given: tuple[Change, ...] = ()
    files: tuple[tuple[str, str | bytes], ...] = ()
    guard: str = ""


LARGE = "# a note that goes on and on\n" * 280_000
MANY = tuple((f"part-{number}.plan", "# nothing yet\n") for number in range(1, 201))
CHAIN = (
    *((f"part-{each}.plan", f'use "part-{each + 1}.plan"\n') for each in range(1, 21)),
    ("part-21.plan", "# end\n"),
)

PAGES = {
    "open-quote": Page(
        "A double quote without its partner",
        "Text stands between two double quotes on one line. Here one of them is missing. (A double quote straight "
        'after a digit is an inch mark and needs no partner: `5/8"`.)',
        wrong=(('plan "Small room"', 'plan "Small room'),),
    ),
    "stray-character": Page(
        "A character that means nothing in a plan",
        "Outside text in quotes and notes after `#`, a plan is made of words, figures, units, commas, brackets and "
        "braces. Other characters, such as `;` or `=`, are taken for slips: curly quotes that a word processor made, a "
        "sign of money where the three capitals of the currency are wanted.",
        wrong=(("depth 75", "depth = 75"),),
    ),
    "broken-line": Page(
        "A line that breaks off or does not hang together",
        "A sum lacks one of its values, a bracket is left open or closes nothing, or something stands where no value "
        "can. The rest of the plan is read all the same.",
        wrong=(("depth 75", "depth 60 +"),),
        right=(("depth 75", "depth 60 + 15"),),
    ),
    "open-block": Page(
        "A block that is never closed",
        "A block begins with `{` at the end of a line and ends with `}` on a line of its own. Where one `}` is "
        "missing, the indents are taken as a hint to where it belongs.",
        wrong=(("flat ceiling at 2800\n }", "flat ceiling at 2800"),),
    ),
    "stray-brace": Page(
        "A brace in the wrong place",
        "`{` ends the line of the statement whose block it opens; `}` stands on a line of its own. One brace too many, "
        "or one with something after it, is reported here.",
        wrong=(("eyes 4 of eye, inset 100 from the ends\n}", "eyes 4 of eye, inset 100 from the ends\n}\n}"),),
    ),
    "brace-missing": Page(
        "A block that is not opened",
        "The line of a statement that has a block ends with `{`. Here it doesn't, though deeper lines and a `}` "
        "follow.",
        wrong=(("lining plaster {", "lining plaster"),),
    ),
    "stray-comma": Page(
        "A comma that nothing follows",
        "A line that ends with a comma goes on in the next line. Here it is the end of a block or of the file that "
        "comes next, or another statement; or two commas stand side by side.",
        wrong=(("eyes 4 of eye, inset 100 from the ends", "eyes 4 of eye, inset 100 from the ends,"),),
    ),
    "use-missing": Page(
        "A file that is not there",
        "`use` names a file by the way that leads to it from the file in which the `use` stands; `..` goes up a "
        "folder.",
        files=(("stock.plan", "# the shop's stock\n"),),
        wrong=(("units mm", 'units mm\nuse "stok.plan"'),),
        right=(("units mm", 'units mm\nuse "stock.plan"'),),
    ),
    "use-outside": Page(
        "A file outside the project",
        "What a plan uses must lie in its project: the folder above it that holds `.planlang` (or else `.git`), or its "
        "own folder. So the whole project can be moved or sent, and no plan can reach into other folders. A path that "
        "starts with `/` or a drive letter, or a link that leads out, is refused for the same reason.",
        files=(("stock.plan", "# the shop's stock\n"),),
        wrong=(("units mm", 'units mm\nuse "../stock.plan"'),),
        right=(("units mm", 'units mm\nuse "stock.plan"'),),
    ),
    "use-loop": Page(
        "Files that use one another in a ring",
        "A file uses a second one, which, perhaps by way of others, uses the first. The message shows the ring. Put "
        "what both need into a file of its own.",
        files=(("stock.plan", 'use "small.plan"\n'), ("cloth.plan", "# cloth of the shop\n")),
        wrong=(("units mm", 'units mm\nuse "stock.plan"'),),
        right=(("units mm", 'units mm\nuse "cloth.plan"'),),
    ),
    "file-too-large": Page(
        "A file that is too large",
        "A plan is written by hand and stays far below the limit. What is larger is mostly a wrong file.",
        files=(("export.plan", LARGE), ("stock.plan", "# the shop's stock\n")),
        wrong=(("units mm", 'units mm\nuse "export.plan"'),),
        right=(("units mm", 'units mm\nuse "stock.plan"'),),
    ),
    "project-too-large": Page(
        "More text than can be worked on",
        "A plan and all that it uses may come to 60 000 words, figures and signs: some 9 000 lines, without notes. "
        "The book of one room needs a small part of that; a file that lists a whole warehouse can be parted, so that a "
        "plan uses only what it needs.",
        files=(("export.plan", "figure a 5 mm\n" * 12_001), ("stock.plan", "# the shop's stock\n")),
        wrong=(("units mm", 'units mm\nuse "export.plan"'),),
        right=(("units mm", 'units mm\nuse "stock.plan"'),),
    ),
    "line-too-long": Page(
        "A line that is too long",
        "A line may have 10 000 characters. A statement that needs more is better broken after a comma, or written as "
        "several statements.",
        wrong=(('plan "Small room"', f'plan "{"long " * 2001}"'),),
    ),
    "use-too-deep": Page(
        "A file that is used by way of too many others",
        "A plan uses a file, which uses another, and so on. More than twenty one after the other can't be followed by "
        "any reader either: let the plan itself use what it needs.",
        files=CHAIN,
        wrong=(("units mm", 'units mm\nuse "part-1.plan"'),),
        right=(("units mm", 'units mm\nuse "part-21.plan"'),),
    ),
    "file-not-text": Page(
        "A file that is not plain text",
        "A plan is plain text in UTF-8, which every editor can save. An office document, or text in an older encoding, "
        "is refused rather than misread.",
        files=(("stock.plan", "# Stück\n".encode("latin-1")), ("cloth.plan", "# Stück\n")),
        wrong=(("units mm", 'units mm\nuse "stock.plan"'),),
        right=(("units mm", 'units mm\nuse "cloth.plan"'),),
    ),
    "too-many-files": Page(
        "More files than a plan may use",
        "A plan and all that it uses may be 200 files. Put several of them into one.",
        files=MANY,
        wrong=(("units mm", "units mm\n" + "\n".join(f'use "{name}"' for name, _ in MANY)),),
        right=(("units mm", 'units mm\nuse "part-1.plan"'),),
    ),
    "tidy-loses": Page(
        "A file that tidying would have changed in what it says",
        "Before it writes, the formatter reads its own work and compares each statement and comment with the first. "
        "Where one differs it leaves the file alone. Please report it with the plan.",
        guard="the formatter keeps every statement and comment, as far as anybody knows",
    ),
    "tidy-unsteady": Page(
        "A file that tidying twice would have changed twice",
        "Before it writes, the formatter lays out its own work once more. Where that differs it leaves the file alone. "
        "Please report it with the plan.",
        guard="the formatter's own work is laid out as it was, as far as anybody knows",
    ),
}

"""The words for what is wrong with a plan as a text."""

from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.span import Span

OPERATORS = ("PLUS", "MINUS", "STAR", "SLASH")
MISPLACED = {
    "LBRACE": ("`{` opens a block and ends its line", "start a new line after `{`"),
    "RBRACE": ("`}` stands on a line of its own", "put it on the next line"),
    "_RPAR": ("this bracket closes nothing, or nothing stands in it", "take it out"),
    "TIMES_SIGN": ("`x` stands between two lengths, and one is missing here", "write both, such as `600 x 1500`"),
}


def in_groups(number: int) -> str:
    """A whole number with a space between thousands: 100 000."""
    return f"{number:,}".replace(",", " ")


def unreadable(span: Span, character: str, mend: str) -> Diagnostic:
    """A character that starts nothing the language knows."""
    if character == '"':
        return Diagnostic("open-quote", "this double quote is not closed on its line", span, mend)
    shown = character if character.isprintable() and character.strip() else f"U+{ord(character or ' '):04X}"
    return Diagnostic("stray-character", f"a plan has no use for `{shown}` here", span, mend)


def line_breaks_off(span: Span, text: str, kind: str, at_end: bool) -> Diagnostic:
    """A line whose values do not make sense together."""
    message, mend = MISPLACED.get(kind, (f"`{text}` cannot stand here", "close the bracket before it"))
    if kind in OPERATORS:
        message, mend = f"`{text}` needs a value on both sides", f"add the missing value, or take `{text}` out"
    elif at_end:
        message, mend = f"the line breaks off after `{text}`", "close the bracket that is left open"
    return Diagnostic("broken-line", message, span, mend)


def inch_mark_apart(span: Span) -> Diagnostic:
    """A double quote after a blank, meant as an inch mark, which made a text of what follows."""
    message = "this double quote begins a text, for a blank stands before it"
    return Diagnostic("broken-line", message, span, 'write an inch mark straight after its number: `24" x 48"`')


def block_left_open(span: Span, word: str) -> Diagnostic:
    """A block that the file ends in."""
    return Diagnostic(
        "open-block", f"the block of `{word}` is never closed", span, "add `}` on a line of its own after its last line"
    )


def block_not_closed_before(span: Span, word: str, opener: Span) -> Diagnostic:
    """A block that, by the look of the lines, should have been closed before this one."""
    return Diagnostic(
        "open-block",
        f"the block of `{word}`, opened on line {opener.line}, is not closed before this line",
        span,
        "add `}` on a line of its own before this one",
        also=((f"`{word}` opens its block here", opener),),
    )


def brace_missing(span: Span, word: str) -> Diagnostic:
    """A statement whose block follows, by the look of the lines and a `}`, without a `{`."""
    message = f"the block of `{word}` follows, and its line doesn't end with `{{`"
    return Diagnostic("brace-missing", message, span, "put `{` at the end of this line")


def comma_before_nothing(span: Span) -> Diagnostic:
    """A comma at the end of a line, after which nothing comes that could belong to its statement."""
    message = "a comma at the end of a line says that the statement goes on, and nothing follows"
    return Diagnostic("stray-comma", message, span, "take the comma out, or write what is missing after it")


def brace_closes_nothing(span: Span) -> Diagnostic:
    """A closing brace too many."""
    return Diagnostic("stray-brace", "this `}` closes nothing", span, "take it out")


def brace_has_company(span: Span) -> Diagnostic:
    """Something after a closing brace."""
    return Diagnostic("stray-brace", "nothing may follow `}` on its line", span, "put this on the next line")


def brace_alone(span: Span) -> Diagnostic:
    """An opening brace on a line without a statement."""
    mend = "put it at the end of the line above, after the statement whose block it opens"
    return Diagnostic("stray-brace", "this `{` stands on a line of its own", span, mend)


def file_missing(span: Span, path: str) -> Diagnostic:
    """A used file that is not there."""
    return Diagnostic(
        "use-missing", f'there is no file "{path}" here', span, "paths start from the file that names them"
    )


def file_outside(span: Span, path: str) -> Diagnostic:
    """A used file outside the project folder."""
    return Diagnostic(
        "use-outside",
        f'"{path}" leads out of the project folder',
        span,
        "keep what a plan uses below the folder that holds `.planlang`",
    )


def file_loop(span: Span, chain: list[str]) -> Diagnostic:
    """Files that use one another in a ring."""
    ring = "these files use one another in a ring: " + " -> ".join(chain)
    return Diagnostic("use-loop", ring, span, "put what both need into a file of its own, and use that")


def file_too_large(span: Span, path: str, limit: int) -> Diagnostic:
    """A file over the size limit."""
    return Diagnostic("file-too-large", f'"{path}" is larger than {limit // 1_000_000} MB', span, "split it with `use`")


def file_not_text(span: Span, path: str) -> Diagnostic:
    """A file that is not UTF-8 text."""
    return Diagnostic("file-not-text", f'"{path}" is not text in UTF-8', span, "save it as UTF-8")


def too_many_files(span: Span, limit: int) -> Diagnostic:
    """More used files than the limit."""
    return Diagnostic("too-many-files", f"more than {limit} files are used", span, "put several of them into one")


def project_too_large(span: Span, path: str, limit: int) -> Diagnostic:
    """More text than the limit."""
    message = f'with "{path}" the plan and what it uses come to more than {in_groups(limit)} words'
    return Diagnostic("project-too-large", message, span, "give each room its own plan, and use only what it needs")


def line_too_long(span: Span, limit: int) -> Diagnostic:
    """A line over the limit."""
    message = f"this line is longer than {in_groups(limit)} characters"
    return Diagnostic("line-too-long", message, span, "break it after a comma, or write several statements")


def use_too_deep(span: Span, limit: int) -> Diagnostic:
    """Files that use files, too many levels."""
    message = f"this file is used by way of more than {limit} others"
    return Diagnostic("use-too-deep", message, span, "let the plan itself use it")


def tidy_loses(span: Span, what: str) -> Diagnostic:
    """A file that the layout would change in what it says."""
    return Diagnostic(
        "tidy-loses",
        f"tidying this file would have changed {what} from here on; it is left as it was",
        span,
        "please report it with the plan",
    )


def tidy_unsteady(span: Span) -> Diagnostic:
    """A file whose layout would be laid out differently once more."""
    return Diagnostic(
        "tidy-unsteady",
        "tidying this file twice would have changed it twice; it is left as it was",
        span,
        "please report it with the plan",
    )

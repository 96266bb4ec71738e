"""The chapter of statements: every block and statement as the vocabulary declares it."""

from __future__ import annotations

from planlang.plan.entries import PARAMETER
from planlang.plan.kinds import label_of
from planlang.plan.vocabulary import FILE
from planlang.plan.vocabulary.declare import Clause, StatementKind

FORMS = """\
In the forms below, words in small letters are written as they stand. Capitals stand for a value or a name (see 'How
values are written'); `…` after them says that there may be several, with commas between. Of words with `/` between them
one is chosen. What stands in `[ ]` may be left out.
"""


def statements_chapter() -> list[str]:
    """The chapter, block by block."""
    singles = [kind for kind in FILE.block or () if kind.block is None]
    blocks = [kind for kind in FILE.block or () if kind.block is not None]
    lines = ["## Statements", "", *FORMS.splitlines(), "", "### Outside all blocks", ""]
    for kind in singles:
        lines += statement_lines(kind, 4)
    for kind in blocks:
        lines += block_lines(kind, 3)
    return lines[:-1]


def block_lines(kind: StatementKind, level: int) -> list[str]:
    """A block and what it takes."""
    lines = statement_lines(kind, level)
    inner = kind.block or ()
    own = FILE.by_word.get(kind.word, kind)
    if own is not kind and own.block is kind.block:
        return [*lines, f"Takes what [`{kind.word}`](#{kind.word}) takes.", ""]
    needed = [f"`{each.word}`" for each in inner if each.required]
    takes = ", ".join(f"`{each.word}`" for each in inner)
    lines += [f"Takes: {takes}." + (f" Needed: {', '.join(needed)}." if needed else ""), ""]
    lines += variant_lines(kind)
    for each in inner:
        lines += block_lines(each, level + 1) if each.block is not None else statement_lines(each, level + 1)
    return lines


def variant_lines(kind: StatementKind) -> list[str]:
    """What each variant of a block needs and may take beside what all take."""
    lines: list[str] = []
    for variant in kind.variants:
        chosen = f"{variant.word} {variant.value}".rstrip()
        needs, takes = words_of(variant.needs), words_of(variant.takes)
        lines.append(f"- `{chosen}` makes it a {variant.name}, which needs {needs} and may take {takes}.")
    return [*lines, ""] if lines else []


def words_of(words: tuple[str, ...]) -> str:
    """Words in a row, each as it is written."""
    return ", ".join(f"`{word}`" for word in words)


def statement_lines(kind: StatementKind, level: int) -> list[str]:
    """A statement: what it is for, its forms, its clauses, an example."""
    brace = " {" if kind.block is not None and not kind.block_optional else ""
    forms = [f"{kind.word} {form_words(form)}".rstrip() + brace for form in kind.forms]
    shown = [f"`{forms[0]}`", *(f"or `{form}`" for form in forms[1:])]
    lines = [f"{'#' * level} `{kind.word}`", "", *(f"{form}  " for form in shown[:-1]), shown[-1], ""]
    lines += [f"{kind.help} {presence(kind)}".rstrip(), ""]
    if kind.clauses:
        lines += [*(clause_line(clause) for clause in kind.clauses), ""]
    if kind.block is None:
        lines += [f"For instance: `{kind.example}`", ""]
    return lines


def presence(kind: StatementKind) -> str:
    """Whether it is needed, may stand several times, and what is taken when it is left out."""
    words = ["Needed."] if kind.required else []
    words += ["May stand several times."] if kind.many else []
    if kind.default:
        words.append(f"Left out: `{kind.default}`{reason(kind.reason)}.")
    return " ".join(words)


def clause_line(clause: Clause) -> str:
    """A clause as an item of a list."""
    words = [f"- `{form_words(clause.form)}`"]
    words += [f"— {clause.help}"] if clause.help else []
    words += ["Needed."] if clause.required else []
    words += ["May be repeated."] if clause.repeat else []
    words += [f"Left out: `{clause.default}`{reason(clause.reason)}."] if clause.default else []
    return " ".join(words)


def reason(text: str) -> str:
    """A reason in brackets."""
    return f" ({text})" if text else ""


def form_words(form: str) -> str:
    """A form as a builder reads it: `{at:position+}` is `POSITION, …`, `south|north` is `south/north`."""
    parts: list[str] = []
    last = 0
    for found in PARAMETER.finditer(form):
        many = ", …" if found[0].endswith("+}") else ""
        parts += [form[last : found.start()].replace("|", "/"), label_of(found[1]) + many]
        last = found.end()
    return "".join([*parts, form[last:].replace("|", "/")]).replace(" , ", ", ")

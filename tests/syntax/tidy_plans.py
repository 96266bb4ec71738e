"""Plans written in every untidy way that still says the same, for the properties of the layout."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from typing import Any

from hypothesis import strategies as st
from lark import Lark, Token

from planlang.plan.tidying import VocabularyGuide
from planlang.plan.vocabulary import FILE
from planlang.syntax.nodes import Compound, Item, Statement
from planlang.syntax.parser import normalise, parse_file, plan_parser
from planlang.syntax.span import Span
from planlang.syntax.tables import grammar_text
from planlang.syntax.tidy.tidy import tidy_text

OPERATORS = {"PLUS", "MINUS", "STAR", "SLASH", "TIMES_SIGN"}
CLOSE = {"COMMA", "_RPAR"}
BRACKETS = """\
units mm
figure a (5' 10 3/4" + 1'2") * 2
figure b least of (a, 3 mm, (4 mm - 1 mm))
figure c 3 mm + 4 mm -1 mm
room a {
  window w1, w2 on south wall at a / 2, (a + 100), 900 x 1200, sill 900, glass
  target 5:12
}
"""


def tidied(text: str) -> str:
    """The layout of a text, which it must have."""
    outcome = tidy_text("a.plan", text, VocabularyGuide())
    assert outcome.diagnostics == ()
    assert outcome.value is not None
    return outcome.value


def said(text: str) -> list[Any]:
    """What the parser makes of a text without syntax errors: words, types and texts of all items, blocks."""
    parsed = parse_file("a.plan", text)
    assert parsed.diagnostics == ()
    return [statement_said(statement) for statement in parsed.value.statements]


def statement_said(statement: Statement) -> Any:
    body = None if statement.body is None else [statement_said(inner) for inner in statement.body]
    return [item_said(item) for item in statement.items], body


def item_said(item: Item) -> Any:
    if isinstance(item, Compound):
        return item.type, [item_said(part) for part in item.parts]
    return item.type, "," if item.type == "COMMA" else str(item)


NOTED: list[str] = []


def note(token: Token) -> Token:
    """Note the comments of a token that has any."""
    inside = token.split("\n") if token.type == "COMMA" else [str(token)]
    NOTED.extend(line[line.index("#") :].rstrip() for line in inside if "#" in line)
    return token


@cache
def noting_lexer() -> Lark:
    return Lark(
        grammar_text(), parser="lalr", lexer="basic", start=["plan"], lexer_callbacks={"COMMENT": note, "COMMA": note}
    )


def comments_in(text: str) -> list[str]:
    """The comments of a text, as the lexer meets them."""
    NOTED.clear()
    list(noting_lexer().lex(normalise(text)))
    return list(NOTED)


def without_places(value: Any) -> Any:
    """A typed plan without the places of its nodes in the files."""
    if isinstance(value, Span):
        return None
    if is_dataclass(value):
        return type(value).__name__, [without_places(getattr(value, part.name)) for part in fields(value)]
    if isinstance(value, (tuple, list)):
        return [without_places(part) for part in value]
    if isinstance(value, dict):
        return [(key, without_places(part)) for key, part in value.items()]
    return value


@dataclass(frozen=True)
class Scrawl:
    """How untidy: which blanks, which comments, what between lines."""

    blanks: tuple[str, ...] = (" ", "  ", "   ", "\t", " \t ")
    indents: tuple[str, ...] = ("", " ", "  ", "\t", "      ")
    comments: bool = True
    blank_lines: bool = True


def lines_of(text: str) -> list[tuple[bool, list[Token]]]:
    """The lines of a text as tokens, each with whether a blank line stands before it; comments are left out."""
    lines: list[tuple[bool, list[Token]]] = [(False, [])]
    for token in plan_parser(False).lex(normalise(text)):
        if token.type != "_NL":
            lines[-1][1].append(token)
        elif lines[-1][1]:
            lines.append((token.count("\n") > 1, []))
        else:
            lines[-1] = (lines[-1][0] or token.count("\n") > 1, [])
    return lines if lines[-1][1] else lines[:-1]


@st.composite
def scrawled(draw: st.DrawFn, text: str, scrawl: Scrawl = Scrawl()) -> str:
    """The statements of a text, written untidily; with `comments`, numbered ones stand wherever they may."""
    out: list[str] = []
    number = iter(range(10_000))
    rare = st.integers(0, 7).map(lambda n: n == 0 and scrawl.comments)

    def comment() -> str:
        return f"{draw(st.sampled_from(('', ' ', '   ')))}#{next(number)}{draw(st.sampled_from(('', ' x', ' {, ')))}"

    for blank_before, tokens in lines_of(text):
        if blank_before and scrawl.blank_lines:
            out.append("\n" * draw(st.integers(1, 3)))
        if draw(rare):
            out.append(comment() + "\n")
        out.append(draw(st.sampled_from(scrawl.indents)) + draw(written(tokens, scrawl, rare, comment)))
        out.append(comment() if draw(rare) else draw(st.sampled_from(("", " ", "\t"))))
        out.append("\n")
    whole = "".join(out)
    whole = draw(st.sampled_from((whole, whole.rstrip("\n"), whole + "\n\n", "\n" + whole, "\ufeff" + whole)))
    return draw(st.sampled_from((whole, whole.replace("\n", "\r\n"), whole.replace("\n", "\r"))))


@st.composite
def written(draw: st.DrawFn, tokens: list[Token], scrawl: Scrawl, rare: Any, comment: Any) -> str:
    """One statement."""
    text = ""
    before: Token | None = None
    for token in tokens:
        if before is not None:
            text += draw(gap(before, token, scrawl))
        text += {"_LPAR": "(", "_RPAR": ")", "COMMA": ","}.get(token.type, str(token))
        if token.type == "COMMA" and draw(rare):
            text += draw(st.sampled_from(("\n", comment() + "\n", "\n\n\t" + comment().lstrip() + "\n ")))
        before = token
    return text


def gap(before: Token, after: Token, scrawl: Scrawl) -> st.SearchStrategy[str]:
    """Blanks that keep two tokens apart, or together where nothing needs to stand between them."""
    if before.type == "LEAST_OR_MOST":
        return st.sampled_from(("", " "))
    if before.type in ("_LPAR", "COMMA") or after.type in CLOSE:
        return st.sampled_from(("", *scrawl.blanks))
    if OPERATORS & {before.type, after.type}:
        return st.sampled_from((" ", "  "))
    return st.sampled_from(scrawl.blanks)


def kinds_with_paths(kind: Any = FILE, path: tuple[Any, ...] = ()) -> list[tuple[tuple[Any, ...], Any]]:
    """Every declared statement, with the blocks that lead to it."""
    found = []
    for inner in kind.block or ():
        found.append((path, inner))
        found += kinds_with_paths(inner, (*path, inner))
    return found


@st.composite
def plans_of_examples(draw: st.DrawFn) -> str:
    """A text made of the vocabulary's own examples, in blocks where they belong."""
    return "\n".join(draw(st.lists(block_of(FILE), min_size=1, max_size=8)))


@st.composite
def block_of(draw: st.DrawFn, kind: Any) -> str:
    """One statement of a block, with a block of its own if it takes one."""
    chosen = draw(st.sampled_from(kind.block))
    if chosen.block is None:
        return chosen.example + draw(st.sampled_from(("", "\n")))
    inner = "\n".join(draw(st.lists(block_of(chosen), max_size=5)))
    return f"{chosen.example}\n{inner}\n}}"

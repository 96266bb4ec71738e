"""The parser's tables, worked out beforehand: reading them takes a tenth of the time that the grammar takes.

`grammar/plan.tables.json` is made from `grammar/plan.lark` by `python -m planlang.syntax.tables`. It says which grammar
and which release of lark it was made from; where either is another, the parser is built from the grammar as ever.
"""

from __future__ import annotations

import hashlib
import json
from pathlib import Path
from typing import Any

import lark
from lark import Lark, Transformer
from lark.grammar import Rule
from lark.lark import PostLex
from lark.lexer import TerminalDef

GRAMMAR, TABLES = "plan.lark", "plan.tables.json"
STARTS = ["plan", "line"]


def grammar_text() -> str:
    """The grammar."""
    return beside(GRAMMAR)


def beside(name: str) -> str:
    """A file of the grammar folder: from the installed package or, in a source tree, from the folder beside it."""
    packaged = Path(__file__).parents[1] / "grammar" / name
    path = packaged if packaged.is_file() else folder() / name
    return path.read_text(encoding="utf-8") if path.is_file() else ""


def folder() -> Path:
    """The grammar folder of a source tree."""
    return Path(__file__).parents[2] / "grammar"


def parser_for(grammar: str, tables: str, transformer: Transformer[Any, Any], postlex: PostLex | None = None) -> Lark:
    """The parser of a grammar: from its tables where they are its own, else from the grammar.

    `postlex` is lark's hook between lexer and parser: an object that changes the stream of tokens.
    """
    return from_tables(grammar, tables, transformer, postlex) or from_grammar(grammar, transformer, postlex)


def from_grammar(
    grammar: str, transformer: Transformer[Any, Any] | None = None, postlex: PostLex | None = None
) -> Lark:
    """Build the parser: starts `plan` (a whole file) and `line` (the items of one statement)."""
    given = {"transformer": transformer, "postlex": postlex}
    options: dict[str, Any] = {key: value for key, value in given.items() if value is not None}
    return Lark(grammar, parser="lalr", lexer="basic", start=STARTS, maybe_placeholders=False, **options)


def tables_of(grammar: str) -> str:
    """The tables of a grammar, as JSON."""
    data, memo = from_grammar(grammar).memo_serialize([TerminalDef, Rule])
    made = {**made_from(grammar), "data": data, "memo": memo}
    return json.dumps(made, separators=(",", ":"), sort_keys=True) + "\n"


def made_from(grammar: str) -> dict[str, str]:
    """What tables are good for: one grammar and one release of lark."""
    return {"lark": lark.__version__, "grammar": hashlib.sha256(grammar.encode()).hexdigest()}


def from_tables(
    grammar: str, tables: str, transformer: Transformer[Any, Any], postlex: PostLex | None = None
) -> Lark | None:
    """The parser from its tables; None where they were made from something else."""
    if not tables:
        return None
    made: dict[str, Any] = json.loads(tables)
    if any(made.get(key) != value for key, value in made_from(grammar).items()):
        return None
    memo = with_whole_keys(made["memo"])
    table = made["data"]["parser"]["parser"]
    table["states"] = {int(state): with_whole_keys(row) for state, row in table["states"].items()}
    table["tokens"] = with_whole_keys(table["tokens"])
    options = {"transformer": transformer, "postlex": postlex}
    parser: Lark = Lark._load_from_dict(made["data"], memo, **options)  # type: ignore[no-untyped-call]
    return parser


def with_whole_keys(row: dict[str, Any]) -> dict[int, Any]:
    """JSON has texts for keys where lark has whole numbers."""
    return {int(key): value for key, value in row.items()}


def write_tables() -> None:
    """Make the tables anew, in a source tree."""
    (folder() / TABLES).write_text(tables_of(grammar_text()), encoding="utf-8")


if __name__ == "__main__":
    write_tables()

"""Lines that go on because a bracket is open: their ends are taken out of the tokens before anything is parsed."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator
from itertools import dropwhile

from lark import Token
from lark.exceptions import UnexpectedCharacters
from lark.lark import PostLex

SIGNS = frozenset({"PLUS", "MINUS", "STAR", "SLASH", "TIMES_SIGN"})
GO_ON = SIGNS | {"COMMA", "_RPAR"}
AFTER_A_VALUE = GO_ON | {"_NL"}


def leaves_open(lines: list[str]) -> bool:
    """Whether a line opens a bracket that it doesn't close; inside texts and notes too, where it does no harm."""
    return any("(" in line and line.count("(") > line.count(")") for line in lines)


class LinesInBrackets(PostLex):
    """Leaves out the line ends inside brackets: those after a sign, or before a sign, a comma or the closing bracket.

    A bracket that nobody closed must not take the rest of the file with it, so any other line end ends the statement.
    """

    always_accept = ()

    def process(self, stream: Iterator[Token]) -> Iterator[Token]:
        """The tokens, without the line ends that end nothing."""
        tokens = Ahead(stream)
        depth, before = 0, ""
        for token in tokens:
            if token.type == "_NL":
                if depth and goes_on(before, *tokens.next_two()):
                    continue
                depth = 0
            elif token.type == "_LPAR":
                depth += 1
            elif token.type == "_RPAR":
                depth = max(0, depth - 1)
            before = token.type
            yield token


def goes_on(before: str, first: str, second: str) -> bool:
    """Whether a line in a bracket goes on, by the types of the token before its end and of the two after it."""
    if first in GO_ON:
        return True
    new_statement = first == "NAME" and second not in AFTER_A_VALUE
    return (before in SIGNS or before in ("_LPAR", "COMMA")) and bool(first) and not new_statement


class Ahead:
    """Tokens with a look at those that follow; what can't be read is met where it stands, not where it is seen."""

    def __init__(self, stream: Iterable[Token]) -> None:
        self.stream = iter(stream)
        self.waiting: deque[Token] = deque()
        self.fault: UnexpectedCharacters | None = None

    def __iter__(self) -> Iterator[Token]:
        while self.waiting or self.take():
            yield self.waiting.popleft()
        if self.fault is not None:
            raise self.fault

    def next_two(self) -> tuple[str, str]:
        """The types of the next two tokens after any further line ends; empty where there are none."""
        types = self.types()
        while len(types) < 2 and self.take():
            types = self.types()
        return (*types, "", "")[0], (*types, "", "")[1]

    def types(self) -> list[str]:
        """The types of the tokens that wait, from the first that is no line end."""
        return [token.type for token in dropwhile(lambda token: token.type == "_NL", self.waiting)]

    def take(self) -> bool:
        """Read one token more; False where there is none. Of line ends that follow one another, one is kept."""
        if self.fault is not None:
            return False
        try:
            token = next(self.stream)
        except StopIteration:
            return False
        except UnexpectedCharacters as fault:
            self.fault = fault
            return False
        if not (token.type == "_NL" and self.waiting and self.waiting[-1].type == "_NL"):
            self.waiting.append(token)
        return True

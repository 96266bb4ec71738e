"""What the compiler's own source says about its diagnostics."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "planlang"


@cache
def codes_made() -> dict[str, list[Path]]:
    """Every code that the source gives to a `Diagnostic`, with the modules that do so."""
    found: dict[str, list[Path]] = {}
    for module in sorted(PACKAGE.rglob("*.py")):
        for code in codes_in(module):
            found.setdefault(code, []).append(module)
    return found


def codes_in(module: Path) -> list[str]:
    """The codes of the diagnostics that a module makes."""
    codes: list[str] = []
    for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"), str(module))):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Diagnostic":
            codes += codes_of(node, module)
    return codes


def codes_of(call: ast.Call, module: Path) -> list[str]:
    """The codes that one call may give: text that stands there, also on both sides of an `if … else`."""
    given = call.args[0] if call.args else next(word.value for word in call.keywords if word.arg == "code")
    sides = [given.body, given.orelse] if isinstance(given, ast.IfExp) else [given]
    for side in sides:
        assert isinstance(side, ast.Constant), f"{module}:{call.lineno}: write the code of a Diagnostic as it stands"
    return [side.value for side in sides if isinstance(side, ast.Constant)]


@cache
def words_in(folder: Path) -> set[str]:
    """Every text constant in the modules of a folder."""
    return {
        node.value
        for module in folder.rglob("*.py")
        for node in ast.walk(ast.parse(module.read_text(encoding="utf-8")))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }

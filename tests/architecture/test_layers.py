"""The house: imports run one way, only the commands print, and nothing differs from one run to the next."""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "planlang"
MODULES = tuple(sorted(PACKAGE.rglob("*.py")))
TREES = {module: ast.parse(module.read_text(encoding="utf-8"), str(module)) for module in MODULES}
LONGEST = 400

BEFORE_ENGINES = {"syntax", "plan", "geometry"}
ENGINES = {"materials", "acoustics", "hardware"}
MAY_IMPORT: dict[str, set[str]] = {
    "__init__": set(),
    "syntax": set(),
    "plan": {"syntax"},
    "geometry": {"syntax", "plan"},
    **dict.fromkeys(ENGINES, BEFORE_ENGINES),
    "requirements": BEFORE_ENGINES | ENGINES,
    "jobbook": BEFORE_ENGINES | ENGINES | {"requirements"},
    "compiler": BEFORE_ENGINES | ENGINES | {"requirements", "jobbook"},
    "manual": BEFORE_ENGINES | ENGINES | {"requirements", "compiler"},
    "cli": BEFORE_ENGINES | ENGINES | {"requirements", "jobbook", "compiler", "manual"},
    "__main__": {"cli"},
}
UNSTEADY = {"random", "secrets", "time", "uuid", "locale", "platform", "getpass", "socket", "urllib", "http"}


def folder_of(module: Path) -> str:
    """The folder of the house that a module stands in; for a module beside the folders, its own name."""
    return module.relative_to(PACKAGE).with_suffix("").parts[0]


def imported_names(tree: ast.Module) -> Iterator[str]:
    """Full names of all that is imported anywhere in a module, also for the sake of annotations alone."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports are written in full"
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def broken_layers(module: Path, tree: ast.Module) -> list[str]:
    """What a module imports from folders that come after its own."""
    own = folder_of(module)
    allowed = MAY_IMPORT.get(own, set()) | {own}
    found = []
    for name in imported_names(tree):
        parts = name.split(".")
        if parts[0] == "planlang" and len(parts) > 1 and parts[1] in MAY_IMPORT and parts[1] not in allowed:
            found.append(name)
    return found


def broad_handlers(tree: ast.Module) -> list[int]:
    """Lines of `except:` and of `except` and `suppress` with Exception or BaseException."""
    lines = []
    for node in ast.walk(tree):
        if isinstance(node, ast.ExceptHandler) and (node.type is None or names_any_fault(node.type)):
            lines.append(node.lineno)
        if isinstance(node, ast.Call) and called(node) == "suppress" and any(map(names_any_fault, node.args)):
            lines.append(node.lineno)
    return lines


def names_any_fault(node: ast.expr) -> bool:
    return any(isinstance(part, ast.Name) and part.id in ("Exception", "BaseException") for part in ast.walk(node))


def called(node: ast.Call) -> str:
    """The last name of what is called: `print`, or `now` of `datetime.now`."""
    function = node.func
    return (
        function.id if isinstance(function, ast.Name) else function.attr if isinstance(function, ast.Attribute) else ""
    )


def unsteady(tree: ast.Module) -> list[str]:
    """What depends on the moment, the machine or chance. `Random(seed).random` draws alike on every Python."""
    found = [name for name in imported_names(tree) if name.split(".")[0] in UNSTEADY and name != "random.Random"]
    calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call)]
    unseeded = ["Random()" for call in calls if called(call) == "Random" and not call.args]
    return found + unseeded + [called(call) for call in calls if called(call) in ("now", "today")]


def printing(tree: ast.Module) -> list[int]:
    """Lines that print, or name the streams or the way out of the process."""
    streams = ("stdout", "stderr", "exit")
    return [
        node.lineno
        for node in ast.walk(tree)
        if (isinstance(node, ast.Call) and called(node) == "print")
        or (isinstance(node, ast.Attribute) and node.attr in streams)
    ]


def faults_in(modules: Iterable[Path], check: Callable[[Path, ast.Module], list[str] | list[int]]) -> list[str]:
    """What a check finds, each with its module."""
    return [f"{module.relative_to(ROOT)}: {found}" for module in modules for found in check(module, TREES[module])]


def outside(*names: str) -> list[Path]:
    """All modules but those of these folders."""
    return [module for module in MODULES if folder_of(module) not in names]


def test_every_folder_has_its_place() -> None:
    assert {folder_of(module) for module in MODULES} <= set(MAY_IMPORT)


def test_imports_run_one_way() -> None:
    assert faults_in(MODULES, broken_layers) == []


def test_only_the_commands_print() -> None:
    assert faults_in(outside("cli", "__main__"), lambda _, tree: printing(tree)) == []


def test_only_the_commands_catch_everything() -> None:
    assert faults_in(outside("cli"), lambda _, tree: broad_handlers(tree)) == []


def test_nothing_differs_from_run_to_run() -> None:
    assert faults_in(MODULES, lambda _, tree: unsteady(tree)) == []


def test_modules_are_short() -> None:
    lengths = {str(path.relative_to(ROOT)): len(path.read_text(encoding="utf-8").splitlines()) for path in MODULES}
    assert {name: length for name, length in lengths.items() if length > LONGEST} == {}


def test_the_checks_find_what_they_look_for() -> None:
    """The checks above hold nothing if they can't fail."""
    early = PACKAGE / "geometry" / "room.py"
    assert broken_layers(early, ast.parse("from planlang.jobbook.book import write_book")) == [
        "planlang.jobbook.book.write_book"
    ]
    assert broken_layers(early, ast.parse("from planlang import jobbook")) == ["planlang.jobbook"]
    assert broken_layers(PACKAGE / "acoustics" / "air.py", ast.parse("import planlang.materials.parts"))
    assert broken_layers(PACKAGE / "cli" / "build.py", ast.parse("from planlang.jobbook.book import write_book")) == []
    assert broad_handlers(ast.parse("try:\n    pass\nexcept (OSError, Exception):\n    pass")) == [3]
    assert broad_handlers(ast.parse("with suppress(Exception):\n    pass")) == [1]
    assert unsteady(ast.parse("import random\nfrom datetime import date\ndate.today()")) == ["random", "today"]
    assert printing(ast.parse("import sys\nprint(1)\nsys.stdout.write('')")) == [2, 3]

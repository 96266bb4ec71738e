"""The commands: the only place that prints or exits."""

from __future__ import annotations

import argparse
import gc
import io
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from planlang import __version__

if TYPE_CHECKING:
    from planlang.compiler import Compilation

CLEAN, FAILED, MISUSED, BROKEN = 0, 1, 2, 3
PARTS = (
    *("cover", "safety", "required", "options", "stated", "room", "estimate", "panels"),
    *("shop", "labels", "order", "hang", "loads", "price", "client", "assumptions", "warnings"),
)  # of the book; written out here so that nothing of the book is loaded to read a command line
MOST_EFFORT = 1000


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command. Status 0: clean; 1: the plan has errors; 2: used wrongly; 3: a fault of the compiler's own."""
    options = parse_arguments(arguments)
    prepare_process()
    prepare_output()
    try:
        return int(options.run(options))
    except OSError as fault:
        print(f"planlang: {fault.filename or options.plan or 'input'}: {fault.strerror or fault}", file=sys.stderr)
        return MISUSED
    except Exception as fault:
        if os.environ.get("PLANLANG_TRACE"):
            raise
        words = f"planlang {__version__} met a fault of its own ({type(fault).__name__}: {fault})"
        print(f"{words}\nSet PLANLANG_TRACE=1 to see where, and please report it with the plan.", file=sys.stderr)
        return BROKEN


def prepare_process() -> None:
    """Settings for a short-lived process: fewer collections, and no threads for matrices that are small."""
    gc.set_threshold(1_000_000, 50, 50)
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")


def prepare_output() -> None:
    """Let a terminal or pipe that lacks a character get its number instead: no name of a file may stop a build."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def parse_arguments(arguments: Sequence[str] | None) -> argparse.Namespace:
    """Read the command line; a wrong one ends with status 2."""
    parser = argparse.ArgumentParser(prog="planlang", description="Compiles acoustic treatment plans into job books.")
    parser.add_argument("--version", action="version", version=f"planlang {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")

    add_build(commands.add_parser("build", help="compile a plan into a job book"))

    check = commands.add_parser("check", help="report what is wrong with a plan, and write nothing")
    check.add_argument("plan", type=Path, metavar="PLAN")
    add_messages_option(check)
    check.set_defaults(run=run_check)

    tidy = commands.add_parser("tidy", help="lay plan files out in the one canonical way")
    tidy.add_argument("plans", nargs="+", metavar="PLAN", help="a plan file, or - for standard input")
    tidy.add_argument(
        "--check", action="store_true", help="write nothing; status 1 when a file would change, for a check in CI"
    )
    tidy.set_defaults(run=run_tidy)

    manual = commands.add_parser("manual", help="print the manual of the language, in Markdown")
    manual.add_argument("--check", type=Path, metavar="FILE", help="only say whether FILE is the current manual")
    manual.set_defaults(run=run_manual, plan=None)

    schema = commands.add_parser("data-schema", help="print the JSON Schema of job-book.json")
    schema.set_defaults(run=run_schema, plan=None)

    add_explain(commands.add_parser("explain", help="say how a figure of the job book came about"))

    page = commands.add_parser("explain-error", help="print the manual's page for the code of a message")
    page.add_argument("code", nargs="?", metavar="CODE", help="the code; left out, all codes are listed")
    page.set_defaults(run=run_explain_error, plan=None)
    return parser.parse_args(arguments)


def add_build(build: argparse.ArgumentParser) -> None:
    """What `build` takes."""
    build.add_argument("plan", type=Path, metavar="PLAN")
    build.add_argument(
        "--out", type=Path, metavar="DIR", help="folder for the job book (default: PLAN's name and -book)"
    )
    add_messages_option(build)
    build.set_defaults(run=run_build)
    build.add_argument("--option", default="", metavar="NAME", help="build the plan with one of its options")
    build.add_argument(
        "--part", nargs="+", action="extend", default=[], metavar="NAME",
        help=f"build only some parts of the book, safety always with hang: {', '.join(PARTS)}",
    )  # fmt: skip
    build.add_argument(
        "--search", type=effort_from, default=1, metavar="EFFORT",
        help=f"1 to {MOST_EFFORT}: how many times the least work to spend on cutting layouts (default: 1)",
    )  # fmt: skip
    build.add_argument("--pdf", action="store_true", help="print the book to job-book.pdf, by the Chromium on the path")
    build.add_argument(
        "--dxf",
        action="store_true",
        help="also draw job-book-ceiling.dxf and job-book-parts.dxf, in mm (needs planlang[cnc])",
    )


def add_explain(explain: argparse.ArgumentParser) -> None:
    """What `explain` takes."""
    explain.add_argument("plan", type=Path, metavar="PLAN")
    explain.add_argument(
        "what", nargs="*", metavar="WHAT",
        help="such as: hang SC2.b across, decay 500 Hz, sheets birch-ply-12; its first words give all that begin so; "
        "left out, all names are listed",
    )  # fmt: skip
    explain.add_argument("--option", default="", metavar="NAME", help="of the plan with one of its options")
    explain.set_defaults(run=run_explain)


def effort_from(word: str) -> int:
    """A whole number of effort."""
    effort = int(word) if word.isascii() and word.isdigit() and len(word) <= len(str(MOST_EFFORT)) else 0
    if not 1 <= effort <= MOST_EFFORT:
        raise argparse.ArgumentTypeError(f"`{word}` is no whole number from 1 to {MOST_EFFORT}")
    return effort


def add_messages_option(command: argparse.ArgumentParser) -> None:
    """Let a command report for machines."""
    command.add_argument(
        "--messages", choices=("text", "json"), default="text",
        help="json: one object a line on standard output, and no other text there",
    )  # fmt: skip


def run_check(options: argparse.Namespace) -> int:
    """Compile and report."""
    from planlang.compiler import compile_plan

    compilation = compile_plan(options.plan, for_book=False)
    report(compilation, options.messages)
    return CLEAN if compilation.ok else FAILED


def run_build(options: argparse.Namespace) -> int:
    """Compile, report, and write the job book when what is at fault, if anything, only marks it."""
    from planlang.cli.build import build

    return build(options)


def run_tidy(options: argparse.Namespace) -> int:
    """Tidy each file; the status is the worst of all files'."""
    return max(tidy_one(name, options.check) for name in options.plans)


def tidy_one(name: str, check: bool) -> int:
    """Tidy one file, or standard input. A file with syntax errors is left as it is."""
    from planlang.plan.tidying import VocabularyGuide
    from planlang.syntax.report import finding_as_text
    from planlang.syntax.tidy.files import read_content, tidy_content, write_content

    path = Path(name)
    try:
        content = sys.stdin.buffer.read() if name == "-" else read_content(path)
        tidied = tidy_content(name, content, VocabularyGuide())
        for finding in tidied.findings:
            print(finding_as_text(finding, tidied.project), file=sys.stderr)
        if tidied.content is None:
            print(f"left as it is: {name}", file=sys.stderr)
            return FAILED
        if check and tidied.changed:
            print(f"would change: {name}")
            return FAILED
        if check:
            return CLEAN
        if name == "-":
            sys.stdout.buffer.write(tidied.content)
        elif tidied.changed:
            write_content(path, tidied.content)
            print(f"tidied: {name}")
    except OSError as fault:
        print(f"planlang: {name}: {fault.strerror or fault}", file=sys.stderr)
        return MISUSED
    return CLEAN


def run_manual(options: argparse.Namespace) -> int:
    """Print the manual, or compare a file with it."""
    from planlang.manual.book import manual

    if options.check is None:
        print(manual(), end="")
        return CLEAN
    if options.check.read_text(encoding="utf-8") == manual():
        return CLEAN
    print(f"{options.check} is not the current manual: planlang manual > {options.check}", file=sys.stderr)
    return FAILED


def run_schema(options: argparse.Namespace) -> int:
    """Print the published form of the data."""
    from planlang.jobbook.data_schema import stored_schema

    print(stored_schema(), end="")
    return CLEAN


def run_explain(options: argparse.Namespace) -> int:
    """Say how a figure came about."""
    from planlang.cli.explain import explain

    return explain(options)


def run_explain_error(options: argparse.Namespace) -> int:
    """Print the page of one code, or the list of all."""
    from planlang.manual.explain import codes_listed, explained, nearest_code

    if options.code is None:
        print(codes_listed(), end="")
        return CLEAN
    page = explained(options.code)
    if page:
        print(page, end="")
        return CLEAN
    near = nearest_code(options.code)
    mend = f"did you mean `{near}`?" if near else "planlang explain-error lists them all"
    print(f"there is no message with the code `{options.code}`; {mend}", file=sys.stderr)
    return MISUSED


def report(compilation: Compilation, form: str) -> None:
    """Print all findings: as text with how many there are, or as JSON for machines."""
    from planlang.syntax.report import finding_as_json, finding_as_text, summary

    if form == "json":
        for finding in compilation.findings:
            print(finding_as_json(finding))
        return
    for finding in compilation.findings:
        print(finding_as_text(finding, compilation.project), file=sys.stderr)
    print(summary(compilation.findings), file=sys.stderr)

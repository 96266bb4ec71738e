"""`planlang build`: compile, report, write the files of the book."""

from __future__ import annotations

import sys
from argparse import Namespace
from difflib import get_close_matches
from pathlib import Path

from planlang import cli
from planlang.cli.progress import Progress
from planlang.compiler import STAGES, Compilation, Tell, UnknownOption, compile_plan
from planlang.jobbook.compiled import CompiledPlan

WRITING, PRINTING = "writing the book", "printing the book"


def build(options: Namespace) -> int:
    """Compile, report, and write the job book when what is at fault, if anything, only marks it."""
    from planlang.jobbook.dxf.sheet import NoLibrary, require_library
    from planlang.jobbook.pdf import NoPdf, find_browser

    unknown = [name for name in options.part if name not in cli.PARTS]
    if unknown:
        return misused(no_such_part(unknown[0]))
    try:
        browser = find_browser() if options.pdf else None
        if options.dxf:
            require_library()
        progress = Progress((*STAGES, WRITING, *((PRINTING,) if browser else ())), sys.stderr)
        with progress:
            compilation = compile_plan(options.plan, options.option, effort=options.search, tell=progress)
        cli.report(compilation, options.messages)
        if compilation.compiled is None or not compilation.bookable:
            print("no job book written", file=sys.stderr)
            return cli.FAILED
        folder = options.out or Path(f"{options.plan.stem}-book")
        with progress:
            write(compilation.compiled, folder, options.part, browser, options.dxf, progress)
    except UnknownOption:
        return misused(f"the plan has no option `{options.option}`")
    except (NoPdf, NoLibrary) as fault:
        return misused(f"{fault}\nno job book written")
    print(f"job book: {folder}", file=sys.stderr if options.messages == "json" else sys.stdout)
    return status(compilation, compilation.compiled)


def write(compiled: CompiledPlan, folder: Path, parts: list[str], browser: Path | None, dxf: bool, tell: Tell) -> None:
    """Make all files, then put them in place together."""
    tell(WRITING)
    from planlang.jobbook.book import write_book
    from planlang.jobbook.files import book_files, dxf_files
    from planlang.jobbook.pdf import to_pdf
    from planlang.jobbook.publish import PDF, publish

    book = write_book(compiled, parts)
    files = book_files(book, compiled)
    if dxf:
        files |= dxf_files(compiled)
    if browser is not None:
        tell(PRINTING)
        files[PDF] = to_pdf(book.html, browser)
    publish(files, folder)


def status(compilation: Compilation, compiled: CompiledPlan) -> int:
    """What a build that wrote a book answers."""
    if compilation.ok:
        return cli.CLEAN
    if not compiled.loads.hangable:
        print("loads are at fault: every part of the job book is marked NOT FOR HANGING", file=sys.stderr)
    return cli.FAILED


def no_such_part(name: str) -> str:
    """The message for a part that isn't one."""
    near = get_close_matches(name, cli.PARTS, n=1)
    mend = f"did you mean `{near[0]}`?" if near else f"they are {', '.join(cli.PARTS)}"
    return f"a job book has no part `{name}`; {mend}"


def misused(message: str) -> int:
    """Say what is wrong with the use of the command."""
    print(f"planlang: {message}", file=sys.stderr)
    return cli.MISUSED

"""`planlang explain`: how a figure of the book came about."""

from __future__ import annotations

import sys
from argparse import Namespace

from planlang import cli
from planlang.compiler import UnknownOption, compile_plan
from planlang.jobbook.reasons.text import as_text
from planlang.jobbook.reasons.topics import all_topics, meant, nearest


def explain(options: Namespace) -> int:
    """Print the reasons of what is asked for; the names of all that can be asked for when nothing is."""
    try:
        compilation = compile_plan(options.plan, options.option)
    except UnknownOption:
        print(f"planlang: the plan has no option `{options.option}`", file=sys.stderr)
        return cli.MISUSED
    if compilation.compiled is None or not compilation.bookable:
        cli.report(compilation, "text")
        return cli.FAILED
    topics = all_topics(compilation.compiled)
    what = " ".join(options.what)
    if not what:
        print("\n".join(topic.name for topic in topics))
        return cli.CLEAN
    found = meant(topics, what)
    if found:
        print("\n".join(as_text(topic, compilation.project) for topic in found), end="")
        return cli.CLEAN
    near = nearest(topics, what)
    mend = f"did you mean {' or '.join(f'`{name}`' for name in near)}?" if near else "left out, all are listed"
    print(f"planlang: the book has no figure `{what}`; {mend}", file=sys.stderr)
    return cli.MISUSED

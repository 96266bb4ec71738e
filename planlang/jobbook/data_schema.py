"""Where the JSON Schema of `job-book.json` is kept. Reading it loads no library."""

from __future__ import annotations

from pathlib import Path

SCHEMA = Path(__file__).with_name("job-book.schema.json")


def stored_schema() -> str:
    """The schema that goes with this version."""
    return SCHEMA.read_text(encoding="utf-8")

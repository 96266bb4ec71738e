"""The published form of `job-book.json`, made from the model. `python -m planlang.jobbook.data.schema` stores it."""

from __future__ import annotations

import json

from planlang.jobbook.data.model import JobBook
from planlang.jobbook.data.write import SCHEMA_VERSION
from planlang.jobbook.data_schema import SCHEMA


def made_schema() -> str:
    """The JSON Schema of the model as it is now."""
    head = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"urn:planlang:job-book:{SCHEMA_VERSION}",
    }
    schema = {**head, **JobBook.model_json_schema(mode="serialization")}
    return json.dumps(schema, ensure_ascii=False, indent=2) + "\n"


if __name__ == "__main__":
    SCHEMA.write_text(made_schema(), encoding="utf-8", newline="\n")

"""The job book as data: a published model, and the JSON that is made by it."""

from planlang.jobbook.data.model import JobBook
from planlang.jobbook.data.write import SCHEMA_VERSION, job_book_data, to_json

__all__ = ["SCHEMA_VERSION", "JobBook", "job_book_data", "to_json"]

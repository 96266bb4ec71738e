"""A job book's files: name -> content."""

from __future__ import annotations

from planlang.jobbook.book import Book
from planlang.jobbook.publish import HTML, JSON, MARKDOWN


def book_files(book: Book) -> dict[str, bytes]:
    """What every build writes."""
    texts = {MARKDOWN: book.markdown, HTML: book.html, JSON: book.json}
    return {name: text.encode() for name, text in texts.items()}

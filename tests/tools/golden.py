"""Keeps the Markdown of every demo's job book for the tests: `python -m tests.tools.golden`.

Read what git shows as changed before it is committed: it is what a reader of these books will see changed.
"""

from __future__ import annotations

from tests.jobbook.demo_books import KEPT, demo_book, kept_book
from tests.plans import DEMO_PLANS


def main() -> None:
    """Write the books, take away what no demo makes any more, and name those that changed."""
    KEPT.mkdir(exist_ok=True)
    wanted = {kept_book(plan): plan for plan in DEMO_PLANS}
    for path in set(KEPT.iterdir()) - wanted.keys():
        path.unlink()
    for path, plan in wanted.items():
        made = demo_book(plan).markdown
        if not path.exists() or path.read_text(encoding="utf-8") != made:
            path.write_text(made, encoding="utf-8")
            print(f"{path.name}: changed")


if __name__ == "__main__":
    main()

"""The kinds of panel: how each reads its own statements.

A kind is declared in `vocabulary/panels.py`; its record is in `plan/panel.py`. What it becomes in the shop, in the
estimate and on paper stands under its record's name in `materials/kinds.py`, `acoustics/kinds.py` and
`jobbook/drawings/panel.py`.
"""

"""How an array's panels are put on a surface: `grid.py`, `row.py`, `bays.py` and `along.py` that they share;
`points.py`, `others.py` (by another array), `room_for.py` (as many as fit) and `reflections.py`."""

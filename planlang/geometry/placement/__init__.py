"""How an array's panels are put on a surface: `grid.py`, `row.py`, `bays.py`, and `along.py` that they share."""

"""What must hold of placed panels: on the surface (`edges.py`), beside each other (`neighbours.py`), clear of features
(`obstacles.py`) and of zones (`zones.py`), clear in depth (`depth.py`), and out of the
way of doors (`swings.py`)."""

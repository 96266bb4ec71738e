"""What must hold of placed panels: on the surface (`edges.py`), beside each other (`neighbours.py`), clear of features
(`obstacles.py`) and of zones (`zones.py`), and clear in depth (`depth.py`)."""

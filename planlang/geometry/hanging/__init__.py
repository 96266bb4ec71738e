"""What a panel hangs by: points on it (`points.py`), what they land in (`landing.py`), rails and laser lines."""

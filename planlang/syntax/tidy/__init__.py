"""The canonical layout of plan files: what `planlang tidy` writes."""

"""Entries -> the typed plan: names resolved, defaults taken, what contradicts itself reported."""

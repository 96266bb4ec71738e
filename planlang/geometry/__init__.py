"""Plan -> surfaces, obstacles and placed panels."""

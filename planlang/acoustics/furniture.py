"""What furniture takes from the volume of a room."""

from collections.abc import Iterable

from planlang.plan.room import Furniture


def box_volume(piece: Furniture) -> float:
    """Volume of one piece, m3, by the box that it fills."""
    width, depth, height = piece.size
    return float(width * depth * height) / 1e9


def furniture_volume(furniture: Iterable[Furniture]) -> float:
    """Volume of all pieces, m3."""
    return sum(piece.count * box_volume(piece) for piece in furniture)

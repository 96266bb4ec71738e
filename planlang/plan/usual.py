"""What is usual where a plan says nothing, each with its source. What a local code or a maker asks for comes first."""

from fractions import Fraction

END_DISTANCE_IN_SHANKS = 10
END_DISTANCE_WORDS = (
    "ten shanks to the end, for a screw that is pulled along its axis (EN 1995-1-1:2004 table 8.6, from memory)"
)
OVERHANG = END_DISTANCE_IN_SHANKS * Fraction(6)  # mm, past the last member

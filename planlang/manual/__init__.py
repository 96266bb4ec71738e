"""The manual: generated from the vocabulary and from the page of each diagnostic code."""

"""How each figure of the book came about: formula, inputs, plan lines, source. For a command and for the page."""

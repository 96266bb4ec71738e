"""What the plan requires, held against what the engines found."""

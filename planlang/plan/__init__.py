"""Tree -> typed plan: quantities, vocabulary, names."""

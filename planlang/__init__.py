"""planlang: a language and a compiler for acoustic treatment plans."""

__version__ = "0.1.0"

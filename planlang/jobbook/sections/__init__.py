"""The parts of a job book, one module a part. Each is a pure function from a compiled plan to blocks."""

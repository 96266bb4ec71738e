"""Surfaces and panels -> absorption, decay and targets."""

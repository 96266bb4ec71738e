"""Panels -> weight, hang points, load shares and what holds them."""

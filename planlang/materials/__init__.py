"""Placed panels -> parts, cut sheets, purchases and price."""

"""Ceiling and panel parts as DXF, for a plotter, a router or another drawing program. Needs the extra `cnc`."""

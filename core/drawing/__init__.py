"""Drawings: a plan as neutral shapes, the one source of every picture."""

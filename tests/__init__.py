"""The checks: `python3 -m tests` runs them all."""

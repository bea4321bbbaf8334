"""What a hand says about its cloths: pins, flaws, motifs, and what comes of them.

In reading order: `said` (what is said, as a project holds it), `minded` (as the lay
takes it, and what is left aside), `laid` (what came of it).
"""

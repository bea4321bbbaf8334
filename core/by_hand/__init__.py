"""What a hand says about its cloths: pins, flaws, motifs, and what comes of them.

In reading order: `said` (what is said, as a project holds it), `minded` (as the lay
takes it, and what is left aside), `laid` (what came of it); `sheets` (the cloths in
sight), `holding` (a piece in the hand), `verdict` (whether it may lie there), `spot`
(a rectangle being marked), `edits` (what was done, as changes of the project).
"""

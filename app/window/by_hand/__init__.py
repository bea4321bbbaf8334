"""Yardage under one's hands: pieces are moved and pinned, flaws and motifs marked, on the picture.

`hand_canvas` forwards events to the `gesture` under way and knows none of them; `carry`
moves a piece, `mark` draws a rectangle. They preview on `overlay` items and commit
once; what may be done, and in which words, is for `core.by_hand` to say. `hand` joins
it all to the document, `cloth_menu` has the commands.
"""

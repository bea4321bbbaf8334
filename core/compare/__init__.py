"""Choices side by side, every number from a plan.

`choices` (what can be varied), `columns` (a plan for each value), `rows` (what is
compared, and which value is best); `staircase` (where the length to buy steps up);
`reverse` (what the cloth in hand is good for); `withstands` (how much narrower or
shorter the cloth may be).
"""

"""Views that put choices beside each other: columns, the staircase, and what is in hand."""

"""What the tabs and the columns of the window mean, for their tool tips."""

from __future__ import annotations

from core.language import marked

# Each tab by its name, and what it shows.
TABS = {
    marked("Yardage"): marked(
        "Every cloth to scale: what is cut from where, and what is left over"
    ),
    marked("Quilt"): marked("The finished quilt from the front, and its back"),
    marked("Binding"): marked("The bound edge cut through, and how bias cloth is marked"),
    marked("Side by side"): marked(
        "One choice with several values: what each buys, and how it is laid"
    ),
    marked("Staircase"): marked("From which width to which the same is bought"),
    marked("In hand"): marked(
        "What your own cloth is enough for, and how narrow or short it may turn out"
    ),
    marked("Edge"): marked(
        "Where the binding starts, where each join lands, and how far it is from a corner"
    ),
    marked("To cut"): marked("Every part with its letter, its size and how many"),
    marked("Pieces"): marked("Every single piece, and where on its cloth it lies"),
    marked("Cut order"): marked(
        "The cuts in sequence, each from edge to edge of the cloth in hand"
    ),
    marked("Sewing"): marked("How the pieces become borders, backing and binding"),
    marked("Figures"): marked("How the plan's figures come about: widths, lengths, reach"),
}

# Each column by its name, and what it says.
HEADERS = {
    marked("Buy"): marked("What to ask for in the shop, in the steps that the cloth is sold in"),
    marked("Cost"): marked("What that costs, where the fabric has a price"),
    marked("Waste"): marked("The share of the bought cloth that is neither cut nor worth keeping"),
    marked("Size"): marked("Across × along: from selvage to selvage, and parallel to the selvages"),
    marked("From edge"): marked(
        "How far the piece lies from the near edge, the one with the ruler"
    ),
    marked("From end"): marked("How far the piece lies from the straightened end of the cloth"),
}

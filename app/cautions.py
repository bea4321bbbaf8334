"""The usual cautions for blade, iron and pins.

Common practice, and extension publications for young sewers (University of
Kentucky Extension, 4JF-12PB, 2011: adult supervision with rotary equipment).
They defer to the makers' own instructions.
"""

from __future__ import annotations

from typing import Final

from core.language import marked

CAUTIONS: Final = (
    marked(
        "The makers' instructions for your cutter, ruler, mat, iron and machine come first. "
        "Where they and these pages differ, follow the makers."
    ),
    marked(
        "Anyone who is young or still learning cuts and presses only under the eyes of a teacher, "
        "parent or guardian."
    ),
    marked(
        "A rotary blade cuts skin as easily as cloth. Close its guard after every cut, and never "
        "leave it open on the table. Cut away from yourself. Keep the other hand flat on the "
        "ruler, fingers clear of its edge; a cut-resistant glove helps. Wear shoes, and stop when "
        "you are tired."
    ),
    marked(
        "Store cutters shut and out of reach of children. Wrap a worn blade before you throw it "
        "away."
    ),
    marked(
        "Use a mat made for the cutter, flat on a firm table. Keep it out of heat and sun, and "
        "never press on it."
    ),
    marked(
        "An iron burns and its steam scalds. Keep its cord out of the way, stand it safely, and "
        "switch it off when you walk away. Try its heat on a scrap first."
    ),
    marked("Count pins out and back in. Take them out before the needle or the iron reaches them."),
    marked(
        "Measure the real cloth before the first cut: its usable width and its length, washed if "
        "it is to be washed. Cloth cannot be uncut."
    ),
)

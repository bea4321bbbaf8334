"""What may be chosen in the menus, in words."""

from __future__ import annotations

from app.languages import LANGUAGES
from app.packet.paper import Paper
from app.window.appearance import Colours, Look
from app.window.export import Kind
from app.window.spoken import AS_SYSTEM
from core.language import marked
from core.lengths import Units

UNITS = {
    Units.INCHES: marked("Inches"),
    Units.CENTIMETRES: marked("Centimetres"),
    Units.MILLIMETRES: marked("Millimetres"),
}
LOOKS = {
    Look.SYSTEM: marked("As the &System"),
    Look.LIGHT: marked("&Light"),
    Look.DARK: marked("&Dark"),
    Look.CONTRAST_DARK: marked("&High Contrast"),
    Look.CONTRAST_LIGHT: marked("High Contrast on &White"),
}
COLOURS = {Colours.USUAL: marked("&Usual"), Colours.SAFE: marked("&Colour-blind Safe")}
PAPERS = {Paper.LETTER: marked("Letter"), Paper.A4: "A4"}
FILES = {
    Kind.SVG: marked("Drawings, true size (&SVG)…"),
    Kind.PNG: marked("Pictures (&PNG)…"),
    Kind.CSV: marked("Tables of pieces and purchases (&CSV)…"),
}
PARTS = {"fabrics": marked("&Fabric"), "borders": marked("&Border")}
# Every language but the system's in its own words.
SPOKEN = {AS_SYSTEM: marked("As the &System"), **LANGUAGES}

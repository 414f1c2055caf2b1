"""What is to be drawn, as plain data: items and links between ports, stacks of accessories, branches in one symbol.

A `Schematic` has all that a caller hands over; nothing here has a place yet.
"""

from plumbnet.drawing.items.accessory_stacks import Stack, stacks, without_stacks
from plumbnet.drawing.items.branches import MOST_ITEMS, abridged
from plumbnet.drawing.items.building_facts import BuildingFacts, PartFacts
from plumbnet.drawing.items.item import Diagram, Item, Link
from plumbnet.drawing.items.schematic import BlockRow, LegendWords, Letters, Schematic, Shading

__all__ = [
    "MOST_ITEMS",
    "BlockRow",
    "BuildingFacts",
    "Diagram",
    "Item",
    "LegendWords",
    "Letters",
    "Link",
    "PartFacts",
    "Schematic",
    "Shading",
    "Stack",
    "abridged",
    "stacks",
    "without_stacks",
]

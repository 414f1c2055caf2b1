"""The kinds of part, a class each: fields, ports, passages, water, and a paragraph for the reader.

Each registers itself when its module is imported; what other rooms must name is exported here.
"""

from plumbnet.layout.model.kinds.heat import SizingMethod
from plumbnet.layout.model.kinds.supplies import COLD_SUPPLY_K, FillingLoop

__all__ = ["COLD_SUPPLY_K", "FillingLoop", "SizingMethod"]

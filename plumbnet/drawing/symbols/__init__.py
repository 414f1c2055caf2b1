"""Symbols as data: strokes round a middle and the sockets at which pipes join them, a function each, by name."""

import sys

from plumbnet.discover import discover
from plumbnet.drawing.symbols.symbol import SYMBOLS, Disc, Fill, Letter, Mark, Point, Stroke, Symbol, symbol_named

discover(sys.modules[__name__])

__all__ = ["SYMBOLS", "Disc", "Fill", "Letter", "Mark", "Point", "Stroke", "Symbol", "symbol_named"]

"""What a family of layouts has in common: a list of parts, pipes for them to stand in, and where each may stand."""

from plumbnet.study.exercise.stock.device_placing import placed
from plumbnet.study.exercise.stock.part_names import neutral_names, renamed
from plumbnet.study.exercise.stock.stock import Stock
from plumbnet.study.exercise.stock.stretch import Spot, Stretch

__all__ = ["Spot", "Stock", "Stretch", "neutral_names", "placed", "renamed"]

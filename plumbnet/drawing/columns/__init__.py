"""A diagram to columns: what stands in which, in which order and how high, with few crossings and straight pipes.

Linear programmes and the usual sweeps of layered drawing; nothing here has an x yet.
"""

from plumbnet.drawing.columns.arcs import ArcGraph
from plumbnet.drawing.columns.footprints import BASE, Footprint, Tip, foot
from plumbnet.drawing.columns.grid import Grid
from plumbnet.drawing.columns.heights import APART, Apart, node_heights
from plumbnet.drawing.columns.layers import Layers, layers_of
from plumbnet.drawing.columns.mounts import FRAME, MARGIN, accessories, surround

__all__ = [
    "APART",
    "BASE",
    "FRAME",
    "MARGIN",
    "Apart",
    "ArcGraph",
    "Footprint",
    "Grid",
    "Layers",
    "Tip",
    "accessories",
    "foot",
    "layers_of",
    "node_heights",
    "surround",
]

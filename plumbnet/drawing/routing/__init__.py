"""Layers to an arrangement: every symbol in its place, every pipe a line with uprights on tracks of their own.

Up to here nothing is drawn, so that it can be judged by plain geometry.
"""

from plumbnet.drawing.routing.arrangement import arrangement_of
from plumbnet.drawing.routing.corners import dots, simple
from plumbnet.drawing.routing.placement import Arrangement, Box, Junction, Placement, Route

__all__ = ["Arrangement", "Box", "Junction", "Placement", "Route", "arrangement_of", "dots", "simple"]

"""A diagram to SVG for a screen: classes in place of colours, everything in its place whatever state is shown.

What may come to be in another state has its room kept (`reservation`): the widest of its symbols, a ring, the longest
word of a verdict. So a state is shown by turning classes, and nothing moves.
"""

from plumbnet.drawing.screen.reservation import Reservation, reserved
from plumbnet.drawing.screen.screen_painter import ScreenPicture, screen_picture

__all__ = ["Reservation", "ScreenPicture", "reserved", "screen_picture"]

"""Two searches: where a function meets zero, and the least value at which something holds."""

from plumbnet.physics.numerics.bisection import CLOSE, least
from plumbnet.physics.numerics.root_finding import root

__all__ = ["CLOSE", "least", "root"]

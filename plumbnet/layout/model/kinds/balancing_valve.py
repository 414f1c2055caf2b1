"""A balancing valve: by its screw the flow in a branch is set, and its wheel shuts it."""

from typing import ClassVar

from plumbnet.layout.model.kinds.inline import Valve
from plumbnet.layout.model.part import kind


@kind("balancing_valve")
class BalancingValve(Valve):
    """A balancing valve, or circuit setter: throttles a branch, as of a hot-water return, to the flow it is to have.

    However far it throttles, water at rest passes both ways, so it closes nothing. Most shut tight and serve as the
    shut-off of their branch as well (common practice): a hand may shut it, unless its setting is locked.
    """

    symbol: ClassVar[str] = "balancing_valve"

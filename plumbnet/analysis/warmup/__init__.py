"""A report and one of its heaters to a warm-up from cold, with all that warms with it."""

from plumbnet.analysis.warmup.heater_warmup import NoWarmUp, Warming, typical_warm_up, warm_up
from plumbnet.analysis.warmup.warmup_model import Fired

__all__ = [
    "Fired",
    "NoWarmUp",
    "Warming",
    "typical_warm_up",
    "warm_up",
]

"""A report and one of its heaters to a warm-up from cold, with all that warms with it."""

from plumbnet.analysis.warmup.heater_warmup import HeaterWarmup, NoWarmUp, typical_warm_up, warm_up
from plumbnet.analysis.warmup.warmup_model import Fired

__all__ = ["Fired", "HeaterWarmup", "NoWarmUp", "typical_warm_up", "warm_up"]

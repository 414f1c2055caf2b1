"""The sweep: every single credible event, and what it would change, from the district that feels it alone."""

from plumbnet.study.contingency.alike_events import AlikeEvents
from plumbnet.study.contingency.contingencies import PartChoice, choices
from plumbnet.study.contingency.event_names import UnknownEvent, with_events
from plumbnet.study.contingency.event_pairs import Pairs
from plumbnet.study.contingency.event_sweep import Sweep, sweep
from plumbnet.study.contingency.outcome import Error, Outcome, Turn, WorldAnswer
from plumbnet.study.contingency.worlds import Worlds

__all__ = [
    "AlikeEvents",
    "Error",
    "Outcome",
    "Pairs",
    "PartChoice",
    "Sweep",
    "Turn",
    "UnknownEvent",
    "WorldAnswer",
    "Worlds",
    "choices",
    "sweep",
    "with_events",
]

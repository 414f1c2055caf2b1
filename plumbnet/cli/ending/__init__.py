"""How a run ends: its status, its streams, and a key that interrupts."""

from plumbnet.cli.ending.exit_status import FINE, FOUND, INTERRUPTED, NOT_UNDERSTOOD, ON_TRUST
from plumbnet.cli.ending.interruption import Interrupted, heed_interrupts, tell_interrupted
from plumbnet.cli.ending.streams import silence, with_streams

__all__ = [
    "FINE",
    "FOUND",
    "INTERRUPTED",
    "NOT_UNDERSTOOD",
    "ON_TRUST",
    "Interrupted",
    "heed_interrupts",
    "silence",
    "tell_interrupted",
    "with_streams",
]

"""Where a heating circuit is joined to drinking water."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FillFacts:
    """A part by which a heating circuit is joined to drinking water, or may be.

    `circuit` names the circuit by a heater in it, of several by the first in the alphabet. `leads` is the part itself,
    or the one before it where the part belongs to the heating circuit. `ways` tell of each way from the circuit to
    drinking water the backflow preventers on it that work, as water that came back would meet them; of ways with the
    same sorts one, and none with more than another.
    """

    name: str
    circuit: str
    leads: str
    ways: tuple[tuple[str, ...], ...]
    is_parted: bool = False
    """Nothing passes it as it stands: a filling loop that is shut, or an air gap."""
    antifreeze: bool = False
    """Glycol is in the circuit."""
    is_drawn: bool = False
    """It is a heater with glycol whose water people draw: no circuit of its own at all."""

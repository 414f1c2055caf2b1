"""Whether expansion tanks can be served."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class TankServiceFacts:
    """An expansion tank, and what water would come from to it if it were let down with every valve shut.

    `held_to` are supplies that no switch stops; in a circuit that carries heat also the nearest heaters and emitters,
    whose water would have to be let out with it. `are_valves_drawn` says whether the file shows where valves are: one
    between some supply and the tank, or in a circuit that carries heat any at all.
    """

    name: str
    is_wet: bool
    carries_heat: bool
    held_to: tuple[str, ...]
    are_valves_drawn: bool

"""Growth that goes where it does harm: back to the main, or again and again past a check."""

from dataclasses import dataclass

from plumbnet.rules.facts.limit_facts import Basis


@dataclass(frozen=True, slots=True)
class ReturnFacts:
    """Growth that goes back by the supply pipe: of `heaters`, by one way or by ways that meet, to the main `main`.

    `expansion_m3` is theirs together, `held_m3` the water in the building's own pipes on that way, `store_m3` the water
    they warm. `mixed_k` is the temperature of those pipes once the growth of well mixed stores has mixed into
    them; None where the pipes do not hold the growth.
    """

    main: str
    heaters: tuple[str, ...]
    expansion_m3: float
    held_m3: float
    store_m3: float
    mixed_k: float | None


@dataclass(frozen=True, slots=True)
class PumpedFacts:
    """A place that heating and cooling again and again without a draw pumps above its limit, though once does not.

    Growth of `heaters` comes there `through` one-way devices and stays. `part` sets the limit; `limit_pa`, and `top_pa`
    that it approaches, are gauge at that part. It passes the limit at heat-up number `heat_ups` (None: after more than
    anybody waits for). A tank of `tank_m3` `at` a part or a pipe before those devices, charged to `precharge_pa`
    (gauge, at the tank), stops it (None: none there does).
    """

    heaters: tuple[str, ...]
    part: str
    limit_pa: float
    top_pa: float
    heat_ups: int | None
    through: tuple[str, ...]
    at: str
    tank_m3: float | None
    nominal_m3: float | None
    precharge_pa: float
    basis: Basis = "profile"
    """What that limit rests on."""

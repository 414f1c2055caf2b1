"""Where heated water settles, by its definition: the state of least stored energy, found by a general minimiser.

Water of a zone may be pressed into its tanks, let off at its outlet, or pass on through a gate. What a tank stores is
the integral of its pressure over the water taken; what an outlet costs is its pressure times the water. The
pressures are the prices of water in that state (Lagrange multipliers), found from the dual problem: the prices at
which all growth is worth most above what the tanks gain on it, where no gate leads from a dear zone to a cheap
one, no zone is dearer than its outlet, and none stands below its static pressure.
"""

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import LinearConstraint, minimize

from plumbnet.physics.equilibrium.equilibrium import OneWayGate, ZoneLoad
from plumbnet.physics.vessels.tank import Tank

HIGHEST_PA = 5e6
"""Prices end here: water with no room anywhere would be worth any price."""

Prices = NDArray[np.float64]
_BAR, _LITRE = 1e5, 1e-3
_NOTHING = 1e-9  # litres that a tank takes by rounding


def settled_pressures(loads: Mapping[str, ZoneLoad], gates: Sequence[OneWayGate[str]]) -> dict[str, float]:
    """Absolute pressure of every zone at datum; HIGHEST_PA where nothing holds it."""
    names = list(loads)
    lowest = np.array([loads[name].static_abs_pa / _BAR for name in names])
    outlets = np.array([loads[name].outlet_abs_pa / _BAR for name in names])
    highest = np.minimum(HIGHEST_PA / _BAR, np.maximum(outlets, lowest))
    uphill = np.array([[(gate.far == name) - (gate.near == name) for name in names] for gate in gates], dtype=float)

    def loss(prices: Prices) -> float:
        """Litre-bar, to be made small, in place of a gain to be made large."""
        return -sum(_gain(loads[name], price) for name, price in zip(names, prices, strict=True))

    def slope(prices: Prices) -> Prices:
        excess = (
            _taken(loads[name], price) - loads[name].expansion_m3 / _LITRE
            for name, price in zip(names, prices, strict=True)
        )
        return np.fromiter(excess, dtype=np.float64)

    found = np.clip(lowest + 1.0, lowest, highest)
    for _ in range(3):  # started anew it forgets its picture of the curvature, and comes closer
        found = minimize(
            loss,
            found,
            jac=slope,
            bounds=list(zip(lowest, highest, strict=True)),
            constraints=[LinearConstraint(uphill, 0.0, np.inf)] if gates else [],
            method="SLSQP",
            options={"ftol": 1e-14, "maxiter": 500},
        ).x
    return _least(loads, gates, dict(zip(names, found * _BAR, strict=True)))


def _least(
    loads: Mapping[str, ZoneLoad], gates: Sequence[OneWayGate[str]], prices: dict[str, float]
) -> dict[str, float]:
    """Zones that neither grow nor take anything may have any price: they are pressed no higher than need be."""
    idle = {
        name
        for name, load in loads.items()
        if load.expansion_m3 == 0.0 and _taken(load, prices[name] / _BAR) < _NOTHING
    }
    least = {name: loads[name].static_abs_pa if name in idle else price for name, price in prices.items()}
    for _ in loads:
        for gate in gates:
            if gate.far in idle:
                least[gate.far] = max(least[gate.far], least[gate.near])
    return least


def _gain(load: ZoneLoad, price_bar: float) -> float:
    """What growth is worth at a price above what the tanks gain, in litre-bar."""
    gained = sum(_Gas(tank).gained(price_bar) for tank in load.tanks)
    return load.expansion_m3 / _LITRE * price_bar - gained


def _taken(load: ZoneLoad, price_bar: float) -> float:
    """Litres that the tanks of a zone take at a price: all that stores at less than it."""
    return sum(_Gas(tank).taken(price_bar) for tank in load.tanks)


class _Gas:
    """Gas of one temperature behind a membrane; litres and bar, pressures of the water at datum."""

    def __init__(self, tank: Tank) -> None:
        self.amount = tank.charge_abs_pa / _BAR * tank.volume_m3 / _LITRE
        self.head = tank.head_pa / _BAR
        shell = tank.volume_m3 / _LITRE
        self.smallest = 0.0 if tank.most_m3 is None else max(0.0, shell - tank.most_m3 / _LITRE)
        cold = tank.start_abs_pa / _BAR - self.head
        squeezed = shell if cold <= 0.0 else min(shell, self.amount / cold)
        self.at_start = max(self.smallest, squeezed)

    def _pressure(self, gas: float) -> float:
        return self.amount / gas + self.head if gas > 0.0 else np.inf

    def taken(self, price: float) -> float:
        """Litres whose storing costs less than the price."""
        opens, full = self._pressure(self.at_start), self._pressure(self.smallest)
        return self.at_start - self.amount / (min(price, full) - self.head) if price > opens else 0.0

    def gained(self, price: float) -> float:
        """Integral of `taken` over the price."""
        opens, full = self._pressure(self.at_start), self._pressure(self.smallest)
        if price <= opens:
            return 0.0
        top = min(price, full)
        rising = self.at_start * (top - opens) - self.amount * np.log((top - self.head) / (opens - self.head))
        return float(rising + (price - top) * (self.taken(top) if price > top else 0.0))

"""The circuits of a building that codes tell apart."""

from enum import StrEnum


class Circuit(StrEnum):
    """Water that is not exchanged with other water: what people draw, or what only carries heat."""

    WATER = "water"
    """Drinking water, cold and hot."""
    HEATING = "heating"
    """Water of heating and solar circuits, antifreeze in it or not: people draw none of it."""

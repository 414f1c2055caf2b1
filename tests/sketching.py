"""A sketch to try a building block on, and the system it becomes."""

from dataclasses import replace
from random import Random

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import System
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock.stock import Stock
from plumbnet.study.exercise.usual_sizes import USUAL, Usual

NEVER = Recipe(
    bypass=0.0, unreduced=0.0, heater_valve=0.0, hot_valve=0.0, tap_valve=0.0, tank_valve=0.0, branch_checks=0.0
)


def chance(seed: int) -> Random:
    """Chance that is the same in every run."""
    return Random(seed)  # noqa: S311  the same in every run is the point


def recipe(**shares: float) -> Recipe:
    """A level that has only what is named."""
    return replace(NEVER, **shares)


def sketch(seed: int = 1, usual: Usual = USUAL["us"]) -> Sketch:
    """A sketch with a street and the tee from which a building is fed."""
    drawn = Sketch(chance(seed), usual)
    drawn.run(drawn.part("street", "main", pressure="60 psi"), drawn.part("split", "tee"))
    drawn.line = 60
    return drawn


def system(drawn: Sketch) -> System:
    """What the real reader makes of a sketch."""
    return read_system(as_drawn(drawn, "Lantern Falls").encode(), file="drawn.yaml")


def as_drawn(drawn: Sketch, title: str) -> str:
    """A sketch as a file, its names as they were drawn."""
    stock = Stock(drawn.usual, title, drawn.parts, tuple(drawn.stretches), drawn.hangers)
    return stock.text(stock.stretches)

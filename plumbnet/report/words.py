"""Small phrases that several reports share: where a device sits, what a kind is called, a loop, a limit."""

from collections.abc import Sequence

from plumbnet.layout.system import Pipe, System
from plumbnet.rules.facts import Facts, HeaterFacts
from plumbnet.rules.sentences import listed

__all__ = ["driven_round", "limit_in_words", "listed", "spoken", "where"]


def spoken(kind: str) -> str:
    """A kind with its article.

    >>> spoken("open_tank")
    'an open tank'
    """
    words = kind.replace("_", " ")
    return f"{'an' if words[0] in 'aeiou' else 'a'} {words}"


def where(system: System, name: str) -> str:
    """A part with the parts that the pipes at it lead to, as "meter (between street and stop)"."""
    near = [pipe.start.part if pipe.end.part == name else pipe.end.part for pipe in _pipes_at(system, name)]
    return f"{name} (between {listed(near)})" if near else name


def _pipes_at(system: System, name: str) -> list[Pipe]:
    return [pipe for pipe in system.pipes if name in (pipe.start.part, pipe.end.part)]


def limit_in_words(facts: Facts, heater: HeaterFacts) -> str:
    """The limit as it reads at the heater, and what sets it; where that stands at another height, as it reads there."""
    limit = facts.pressure(heater.limit_pa)
    own = limit if heater.limit_own_pa is None else facts.pressure(heater.limit_own_pa)
    return f"{limit} ({heater.limit_by})" if own == limit else f"{limit} ({heater.limit_by}: {own} there)"


def driven_round(loop: Sequence[str]) -> str:
    """A loop, its pump first, and what the water meets on its way round.

    >>> driven_round(["pump", "split", "heater"])
    'pump drives water through split and heater'
    """
    pump, *others = loop
    return f"{pump} drives water through {listed(others)}"

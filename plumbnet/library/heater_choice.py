"""Heaters by their names, or one calm sentence."""

from plumbnet.analysis import Report
from plumbnet.layout.yaml import Fault, nearest, quoted
from plumbnet.rules import listed
from plumbnet.rules.facts import HeaterFacts


class UnknownHeater(ValueError):
    """The layout has no such heater, or several where none is named; the message says which it has."""


def heater_named(report: Report, name: str, *, file: str | None = None) -> HeaterFacts:
    """The heater of a report by its name; `file` is what a message calls the layout. Raises UnknownHeater."""
    found = next((heater for heater in report.heaters if heater.name == name), None)
    if found is None:
        names = [heater.name for heater in report.heaters]
        words = f"no heater is called {quoted(name)} in {report.system.record.file if file is None else file}"
        hint = nearest(name, names) or f"there is {', '.join(names) or 'none'}"
        raise UnknownHeater(Fault(0, 0, words, hint).sentence)
    return found


def only_heater(report: Report, *, advice: str = "name one") -> HeaterFacts:
    """The one heater of a layout. Raises UnknownHeater where there are none, or several: then with that advice."""
    names = [heater.name for heater in report.heaters]
    if not names:
        raise UnknownHeater("nothing in this layout heats water")
    if len(names) > 1:
        raise UnknownHeater(f"the layout has {len(names)} heaters; {advice}: {listed(names, 'or')}")
    return report.heaters[0]

"""The numbers under which remedies are printed: the one place that says which remedy a number means."""

from plumbnet.layout.yaml import quoted
from plumbnet.rules import listed
from plumbnet.study.remedies.remedy import Found, Remedy


class UnknownRemedy(ValueError):
    """No remedy has this number; the message is a sentence that says which there are."""


def remedy_numbered(found: Found, number: int) -> Remedy:
    """The remedy of a number, as `plumbnet remedies` prints it: each list counts its own from 1.

    `found` are the lists that are meant. Raises UnknownRemedy where there are several, or no such number in the one.
    """
    lists = {heater: own for heater, own in found.items() if own}
    if not lists:
        raise UnknownRemedy("no heater here needs a remedy" if not found else "no remedy was found")
    if len(lists) > 1:
        some = listed(list(map(quoted, lists)))
        raise UnknownRemedy(f"each heater has remedies with numbers of its own; name one of them: {some}")
    ((heater, own),) = lists.items()
    if not 1 <= number <= len(own):
        count = "one remedy, number 1" if len(own) == 1 else f"remedies 1 to {len(own)}"
        raise UnknownRemedy(f"there is no remedy {number} for {heater}; it has {count}")
    return own[number - 1]

"""Steps to all that they lead to, met nearest first."""

from collections import deque
from collections.abc import Callable, Iterable, Iterator, Mapping

from plumbnet.network.graphs.dominator_tree import At


def nearest_first(starts: Iterable[At], beside: Callable[[At], Iterable[At]]) -> Iterator[At]:
    """All that can be come to from `starts`, each once, those first; `beside` has what follows each, in order. Linear.

    >>> list(nearest_first([2], lambda number: [number * 2, number + 3] if number < 6 else []))
    [2, 4, 5, 8, 7, 10]
    """
    seen = set(queue := deque(dict.fromkeys(starts)))
    while queue:
        at = queue.popleft()
        yield at
        for beyond in beside(at):
            if beyond not in seen:
                seen.add(beyond)
                queue.append(beyond)


def all_reached(starts: Iterable[At], onward: Mapping[At, Iterable[At]]) -> set[At]:
    """All that can be come to from `starts`, those among them; `onward` has those to which a step leads. Linear.

    >>> sorted(all_reached(["tap"], {"street": ["tap"], "tap": ["drain"], "boiler": ["tap"]}))
    ['drain', 'tap']
    """
    return set(nearest_first(starts, lambda at: onward.get(at, ())))


def by_start(steps: Iterable[tuple[At, At]]) -> dict[At, list[At]]:
    """By each thing from which a step leads those to which one does, in the order of the steps.

    >>> by_start([("street", "tap"), ("boiler", "tap"), ("street", "boiler")])
    {'street': ['tap', 'boiler'], 'boiler': ['tap']}
    """
    found: dict[At, list[At]] = {}
    for start, end in steps:
        found.setdefault(start, []).append(end)
    return found

"""A system to its parts in the order in which a reader follows the water: from the supply to heat and on to use."""

from collections import deque
from collections.abc import Mapping

from plumbnet.layout.model import System

_LONGEST_STUB = 6
"""Parts of a stub, its own joint with them."""


def water_order(system: System) -> tuple[str, ...]:
    """Every part once: each stub as it is passed, then on towards heat, then to the taps of that branch. Linear."""
    beside = _neighbours(system)
    far = _steps_from_heat(system, beside)
    waiting = [name for name, part in reversed([*system.parts.items()]) if part.source() is not None]
    found: dict[str, None] = {}
    while waiting:
        name = waiting.pop()
        if name in found:
            continue
        found[name] = None
        further = [other for other in dict.fromkeys(beside[name]) if other not in found]
        stubs = {other for other in further if _is_stub(system, beside, name, other)}
        waiting += sorted(further, key=lambda other: (other not in stubs, far.get(other, len(far))), reverse=True)
    return (*found, *(name for name in system.parts if name not in found))


def _is_stub(system: System, beside: Mapping[str, list[str]], name: str, other: str) -> bool:
    """Whether a branch is a short dead end at which nothing heats, supplies or draws water, as one to a tank is."""
    seen, queue = {name, other}, deque([other])
    while queue:
        here = queue.popleft()
        part = system.parts[here]
        if len(seen) > _LONGEST_STUB or part.heat() is not None or part.source() is not None or part.draws_at():
            return False
        new = [each for each in dict.fromkeys(beside[here]) if each not in seen]
        seen.update(new)
        queue.extend(new)
    return True


def _neighbours(system: System) -> Mapping[str, list[str]]:
    found: dict[str, list[str]] = {name: [] for name in system.parts}
    for pipe in system.pipes:
        found[pipe.start.part].append(pipe.end.part)
        found[pipe.end.part].append(pipe.start.part)
    return found


def _steps_from_heat(system: System, beside: Mapping[str, list[str]]) -> dict[str, int]:
    found = {name: 0 for name, part in system.parts.items() if part.heat() is not None}
    queue = deque(found)
    while queue:
        name = queue.popleft()
        for other in beside[name]:
            if other not in found:
                found[other] = found[name] + 1
                queue.append(other)
    return found

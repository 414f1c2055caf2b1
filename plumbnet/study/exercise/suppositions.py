"""What may be supposed of a layout in an exercise: one event each, in words and as the changes of a scenario."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from plumbnet.layout.edits import change_of
from plumbnet.layout.model import Change, End, Role, System
from plumbnet.layout.model.kinds import FillingLoop
from plumbnet.layout.units import PRESSURE, customary, to
from plumbnet.study.exercise.usual_sizes import USUAL


@dataclass(frozen=True, slots=True)
class Supposition:
    """An event in words, a sentence without its end, and the changes that make it."""

    words: str
    changes: tuple[Change, ...]


def suppositions(system: System) -> Iterator[Supposition]:
    """Every event that may be supposed of a system, in the order of its parts."""
    for sort in _SORTS:
        for name in system.parts:
            yield from sort(system, name)


def _shut(system: System, name: str) -> Iterator[Supposition]:
    if system.parts[name].is_valve():
        yield Supposition(f"{name} is left shut after a repair", (change_of("close", name),))


def _failed(system: System, name: str) -> Iterator[Supposition]:
    """A failure of a part, but never of a safety relief valve: that is a danger, and no matter to play with."""
    part = system.parts[name]
    if any(outlet.role is Role.SAFETY_RELIEF for outlet in part.outlets()):
        return
    if part.draws_at() and not set(part.port_names()) <= {end.port for end in _ends(system) if end.part == name}:
        return  # a tap for cold water alone joins nothing
    for how in part.can_fail():
        words = f"{name} has failed: {how.replace('_', ' ')}"
        yield Supposition(words, (change_of("fail", {"part": name, "how": how}),))


def _ends(system: System) -> Iterator[End]:
    return (end for pipe in system.pipes for end in pipe.ends)


def _never_charged(system: System, name: str) -> Iterator[Supposition]:
    """A tank that somebody should have pumped up, left at the charge with which it leaves the factory."""
    cushion, usual = system.parts[name].cushion(), USUAL[customary(system.units)]
    factory = f"{usual.factory_charge} {usual.unit.pressure}"
    if cushion is not None and to(cushion.precharge_pa, usual.unit.pressure, PRESSURE) > usual.factory_charge:
        words = f"{name} was never pumped up: it holds the {factory} with which it left the factory"
        yield Supposition(words, (change_of("set", {"part": name, "precharge": factory}),))


def _exchanged(system: System, name: str) -> Iterator[Supposition]:
    """A device that some makes have a check in, exchanged for one of those."""
    if getattr(system.parts[name], "check", None) is False:
        words = f"{name} is exchanged for one with a check valve in it"
        yield Supposition(words, (change_of("set", {"part": name, "check": True}),))


def _stopped(system: System, name: str) -> Iterator[Supposition]:
    part = system.parts[name]
    if part.driven() is not None and "running" in type(part).model_fields:
        yield Supposition(f"{name} is switched off", (change_of("set", {"part": name, "running": False}),))


def _left_open(system: System, name: str) -> Iterator[Supposition]:
    part = system.parts[name]
    if isinstance(part, FillingLoop) and part.state == "shut":
        words = f"{name} is left open after the circuit was topped up"
        yield Supposition(words, (change_of("set", {"part": name, "state": "open"}),))


def _raised(system: System, name: str) -> Iterator[Supposition]:
    """A street whose pressure rises, or the highest of one whose highest is given."""
    source, written = system.parts[name].source(), system.written.get(name, {})
    if source is None or "pressure" not in written:
        return
    field, what = ("highest", "the highest pressure") if "highest" in written else ("pressure", "the pressure")
    usual = USUAL[customary(system.units)]
    unit = usual.unit.pressure
    for rise in usual.rises:
        risen = f"{round(to(source.pressure_pa, unit, PRESSURE) + rise)} {unit}"
        yield Supposition(f"{what} in {name} rises to {risen}", (change_of("set", {"part": name, field: risen}),))


_SORTS: tuple[Callable[[System, str], Iterator[Supposition]], ...] = (
    _shut,
    _failed,
    _never_charged,
    _exchanged,
    _stopped,
    _left_open,
    _raised,
)

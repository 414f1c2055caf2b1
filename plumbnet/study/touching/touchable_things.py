"""A report to all that may be touched: what each part may be instead, and what may be put into each pipe."""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout.edits import change_of, new_name, pressure_text, volume_text
from plumbnet.layout.model import Change, End, Sort, System
from plumbnet.physics.vessels import nominal_sizes
from plumbnet.study.contingency import PartChoice, choices

MOST_PIPED = 300
"""Parts of a layout up to which something can be put into its pipes: more pipes than that nobody tells apart."""
_USUAL_SET_PA = 345e3
"""What a reducer in a house is set to as a rule: 50 psi (common practice, from memory)."""


@dataclass(frozen=True, slots=True)
class TouchOption:
    """What a touchable may be instead: in words, of what sort, and the changes that make it so."""

    words: str
    sort: Sort
    changes: tuple[Change, ...]


@dataclass(frozen=True, slots=True)
class TouchNumber:
    """A number that somebody chose: its field by the name in the file, its words, what it is now, and the unit."""

    field: str
    words: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Touchable:
    """A part, or the pipe of a number, with what it may be instead. `now` says how it stands as drawn."""

    name: str
    kind: str
    now: str
    options: tuple[TouchOption, ...] = ()
    numbers: tuple[TouchNumber, ...] = ()
    pipe: int | None = None


def touchables(report: Report) -> tuple[Touchable, ...]:
    """The parts that may be otherwise, in the order of the file, then the pipes, each with what can be put there."""
    system, by_part = report.system, dict[str, list[PartChoice]]()
    for choice in choices(system, report.rules, report.facts.circuit_of, report.facts.units):
        by_part.setdefault(choice.part, []).append(choice)
    parts = (_part(system, name, found) for name, found in by_part.items())
    return (*parts, *_pipes(report))


def _part(system: System, name: str, found: list[PartChoice]) -> Touchable:
    part = system.parts[name]
    options = tuple(TouchOption(one.words, one.sort, (one.change,)) for one in found if one.sort is not Sort.NUMBER)
    numbers = tuple(_number(one) for one in found if one.sort is Sort.NUMBER)
    return Touchable(name, part.kind, part.stands(), options, numbers)


def _number(choice: PartChoice) -> TouchNumber:
    written = {} if choice.change.set is None else choice.change.set.values
    value, _, unit = str(written[choice.field]).partition(" ")
    return TouchNumber(choice.field, choice.words, float(value), unit)


def _pipes(report: Report) -> Iterator[Touchable]:
    """The pipes into which something can be put, each under the names of its ends; none of a very large layout.

    Nothing may stand before a safety relief valve, and so nothing is offered there; nor where several pipes join the
    same two ports, of which none can be named.
    """
    system, taken = report.system, list[str]()
    if len(system.parts) > MOST_PIPED:
        return
    named = [frozenset(_named(system, end) for end in pipe.ends) for pipe in system.pipes]
    alone = Counter(named)
    for number, pipe in enumerate(system.pipes):
        if alone[named[number]] > 1 or len(named[number]) == 1 or any(_is_safety(system, end) for end in pipe.ends):
            continue
        between = _named(system, pipe.start), _named(system, pipe.end)
        found = list[TouchOption]()
        for words, sort, changes, own in _put_in(report, number, between, tuple(taken)):
            found.append(TouchOption(words, sort, changes))
            taken += own
        name = f"pipe from {pipe.start.part} to {pipe.end.part}"
        yield Touchable(name, "pipe", "nothing in it", tuple(found), pipe=number)


def _is_safety(system: System, end: End) -> bool:
    return any(outlet.is_safety for outlet in system.parts[end.part].outlets())


def _named(system: System, end: End) -> str:
    return f"{end.part}.{end.port}" if len(system.parts[end.part].port_names()) > 1 else end.part


_InPipe = tuple[str, Sort, tuple[Change, ...], tuple[str, ...]]


def _put_in(report: Report, number: int, between: tuple[str, str], taken: tuple[str, ...]) -> Iterator[_InPipe]:
    """What can be put into a pipe, with the names that the new parts have."""
    system, base = report.system, report.system.pipes[number].start.part
    reducer: Mapping[str, object] = {"set": pressure_text(system, _USUAL_SET_PA)}
    set_to = f"set to {reducer['set']}"
    for words, suffix, kind, values in (
        ("a check valve", "check", "check_valve", {}),
        ("a shut valve", "stop", "valve", {"state": "shut"}),
        (f"a reducer, {set_to}", "reducer", "pressure_reducer", reducer),
        (f"a reducer with a bypass, {set_to}", "bypass-reducer", "pressure_reducer", {**reducer, "bypass": True}),
    ):
        name = new_name(system, base.replace("/", "-"), suffix, taken=taken)
        change = change_of("insert", {"part": name, "kind": kind, "between": list(between), **values})
        yield words, Sort.OTHER_DEVICE, (change,), (name,)
    yield _tank(report, number, between, taken)


def _tank(report: Report, number: int, between: tuple[str, str], taken: tuple[str, ...]) -> _InPipe:
    """A tank on a tee, charged to what stands in the pipe: of the size that is needed, or else of the smallest."""
    system, network = report.system, report.network
    pipe = system.pipes[number]
    node = network.piping.node_of[pipe.start]
    static_pa = network.standing.static_pa[network.zoning.zone_of[node]]
    charge = pressure_text(system, max(0.0, (static_pa or 0.0) - network.piping.heads_pa[node]))
    sizes = [one.need.nominal_m3 for one in report.heaters if one.need is not None and one.need.nominal_m3 is not None]
    volume = volume_text(system, max(sizes, default=nominal_sizes("us" if system.units == "us" else "metric")[0]))
    base = pipe.start.part.replace("/", "-")
    tee, tank = (new_name(system, base, suffix, taken=taken) for suffix in ("tank-tee", "tank"))
    values = {"part": tank, "kind": "expansion_tank", "volume": volume, "precharge": charge, "run": f"{tee} -> {tank}"}
    changes = (change_of("insert", {"part": tee, "kind": "tee", "between": list(between)}), change_of("add", values))
    return f"a tank of {volume}, charged to {charge}", Sort.OTHER_DEVICE, changes, (tee, tank)

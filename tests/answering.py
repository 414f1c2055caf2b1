"""Answers to exercises found anew, from the written file, by other ways than those of the key."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.part import MIXED, Cushion, Part, Role
from plumbnet.layout.model.system import System
from plumbnet.layout.units.measure import show
from plumbnet.layout.units.units import VOLUME, customary
from plumbnet.physics.vessels.tank import nominal_sizes
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.exercise.answer import Choice, Measure
from plumbnet.study.exercise.exercise import SCENARIO, Exercise

TROUBLED = {Verdict.TRAPPED, Verdict.SEALED}
TAKES = {Role.STREET, Role.AIR, Role.TANK, Role.EXPANSION_RELIEF}
HUGE = "500 gal"


@dataclass(frozen=True)
class Task:
    """An exercise with its layout read from the text alone, what is supposed made."""

    exercise: Exercise
    system: System

    def heater(self, *changes: Mapping[str, object]) -> HeaterFacts:
        """The heater it is about, after further changes."""
        changed = with_changes(self.system, [Change.model_validate(change) for change in changes])
        (found,) = [one for one in plumbnet.check(changed).heaters if one.name == self.exercise.asked.heater]
        return found

    @property
    def choice(self) -> Choice:
        """The first blank, which is a choice in every sort of question."""
        blank = self.exercise.asked.blanks[0]
        assert isinstance(blank, Choice)
        return blank

    @property
    def measure(self) -> Measure:
        """The second blank."""
        blank = self.exercise.asked.blanks[1]
        assert isinstance(blank, Measure)
        return blank


def task(exercise: Exercise) -> Task:
    """The exercise as somebody else reads it."""
    system = read_system(exercise.text.encode(), file="somewhere.yaml")
    scenario = system.scenarios.get(SCENARIO)
    assert (scenario is None) == (exercise.supposed == "")
    return Task(exercise, system if scenario is None else with_changes(system, scenario.change))


def _verdict(task: Task) -> None:
    assert task.heater().verdict.value == task.choice.right


def _stopper(task: Task) -> None:
    """Take out each device in turn: the heater comes open by that which stops the water, and by no other."""
    was_open = task.heater().verdict is Verdict.OPEN
    assert was_open == (task.choice.right == "nothing")
    for device in [name for name, part in task.system.parts.items() if _is_in_line(part)]:
        now_open = task.heater(_let_pass(task.system, device)).verdict is Verdict.OPEN
        assert was_open or now_open == (device == task.choice.right), device


def _is_in_line(part: Part) -> bool:
    """Whether a part has a way through it that may be shut one way or both."""
    return any(part.passages()) and not part.is_fitting and part.heat() is None


def _let_pass(system: System, device: str) -> Mapping[str, object]:
    """A device taken out, or its checks stuck open where it joins more than two pipes."""
    if system.parts[device].leaves_at() == MIXED:
        return {"set": {"part": device, "checks": False}}
    return {"remove": device}


def _opens_first(task: Task) -> None:
    rungs = {rung.outlet: rung.opens_pa for rung in task.heater().ladder}
    assert min(rungs, key=lambda outlet: rungs[outlet]) == task.choice.right
    assert task.measure.right == min(rungs.values())


def _first_drip(task: Task) -> None:
    """What drips is the lowest relief valve below every way out; when is worked out as by hand, by Boyle and Kell."""
    heater = task.heater()
    reliefs = [rung for rung in heater.ladder if rung.role.is_relief]
    ways_pa = [rung.opens_pa for rung in heater.ladder if rung.role.is_way_out]
    if not reliefs or any(way_pa < reliefs[0].opens_pa for way_pa in ways_pa):
        assert (task.choice.right, task.measure.right) == ("nothing", None)
        return
    pushing = [one for one in plumbnet.check(task.system).heaters if one.name in {heater.name, *heater.shares_with}]
    room_m3 = _room_m3(task, heater, pushing, reliefs[0].opens_pa)
    if task.measure.right is None:
        assert task.choice.right == "nothing"
        assert sum(_grown_m3(task, one, 1e9) for one in pushing) <= room_m3
        return
    assert task.choice.right == reliefs[0].outlet
    times = (60.0 * minute for minute in range(1, 600))
    found_s = next(time_s for time_s in times if sum(_grown_m3(task, one, time_s) for one in pushing) >= room_m3)
    assert abs(found_s - task.measure.right) <= task.measure.tolerance + 60.0


def _room_m3(task: Task, heater: HeaterFacts, pushing: list[HeaterFacts], opens_pa: float) -> float:
    """What tanks take up, and water and walls give way by, from what stands cold to a pressure at the heater."""
    cold_pa, parts = heater.static_pa or 0.0, task.system.parts
    room_m3 = sum(one.heated_volume_m3 for one in pushing) * 1.45e-9 * (opens_pa - cold_pa)
    for name in heater.tanks:
        lift_pa, tank = 9806.65 * (parts[heater.name].elevation_m - parts[name].elevation_m), parts[name].cushion()
        room_m3 += 0.0 if tank is None else _boyle_m3(tank, cold_pa + lift_pa, opens_pa + lift_pa)
    return room_m3


def _boyle_m3(tank: Cushion, cold_pa: float, hot_pa: float) -> float:
    """What a tank takes up between two gauge pressures."""
    air, atmosphere_pa = tank.volume_m3 * (tank.precharge_pa + 101_325.0), 101_325.0
    held = [tank.volume_m3 - min(tank.volume_m3, air / (at + atmosphere_pa)) for at in (cold_pa, hot_pa)]
    return held[1] - held[0]


def _grown_m3(task: Task, heater: HeaterFacts, time_s: float) -> float:
    """What the water of a heater has grown by after a time, at 4.186 kJ/(kg K) and four fifths of its input."""
    source, cold_k = task.system.parts[heater.name].heat(), heater.cold_k or 283.15
    input_w = 0.0 if source is None else source.input_w or 0.0
    rise_k = min(heater.hot_k - cold_k, 0.8 * input_w * time_s / (heater.heated_volume_m3 * 4.186e6))
    start_k = max(cold_k, 277.13)
    return heater.heated_volume_m3 * (_kell(start_k) / _kell(max(start_k, cold_k + rise_k)) - 1.0)


def _kell(temperature_k: float) -> float:
    """Density of water, kg/m3 (Kell 1975, J. Chem. Eng. Data 20, 97; from memory: 999.97 at 4 degrees, 983.2 at 60)."""
    t = temperature_k - 273.15
    top = (
        999.83952
        + 16.945176 * t
        - 7.9870401e-3 * t**2
        - 46.170461e-6 * t**3
        + 105.56302e-9 * t**4
        - 280.54253e-12 * t**5
    )
    return top / (1.0 + 16.879850e-3 * t)


def _locked_valve(task: Task) -> None:
    """Shut each valve in turn: only that of the key leaves no place to go."""
    for valve in [name for name, part in task.system.parts.items() if part.is_valve()]:
        heater = task.heater({"close": valve})
        bound = max(heater.limit_pa, heater.static_pa or 0.0) + 1.0
        goes = any(rung.role in TAKES and rung.opens_pa <= bound for rung in heater.ladder)
        assert goes == (valve != task.choice.right), valve
        assert goes or heater.verdict in TROUBLED | {Verdict.ON_DEMAND}


def _tank(task: Task) -> None:
    """Hang tanks on the pipe to the heater: that of the key holds, the next smaller one does not."""
    heater = task.heater()
    assert heater.verdict is Verdict.TRAPPED
    assert heater.need is not None
    where = (heater.need.at, f"{task.system.parts[heater.name].elevation_m!r} m")
    sizes = [show(size, VOLUME, task.system.units) for size in nominal_sizes(customary(task.system.units))]
    if task.measure.right is None:
        assert task.heater(*_added(where, HUGE, 0.0)).verdict is Verdict.TRAPPED
        return
    right = sizes.index(task.choice.right)
    assert task.heater(*_added(where, sizes[right], task.measure.right)).verdict is Verdict.CONTROLLED
    if right:
        assert task.heater(*_added(where, sizes[right - 1], task.measure.right)).verdict is Verdict.TRAPPED


def _added(where: tuple[str, str], volume: str, precharge_pa: float) -> Iterator[Mapping[str, object]]:
    """A tank at a part or in a pipe, level with the heater."""
    at, elevation = where
    start, arrow, end = at.partition(" -> ")
    if arrow:
        yield {"insert": {"part": "trial-tee", "kind": "tee", "between": [start, end], "elevation": elevation}}
    air = {"volume": volume, "precharge": f"{precharge_pa / 1000.0!r} kPa"}
    tank = {"part": "trial", "kind": "expansion_tank", "elevation": elevation, **air}
    yield {"add": {**tank, "run": f"{'trial-tee' if arrow else at} -> trial"}}


def _trapped_heaters(task: Task) -> None:
    trapped = [one.name for one in plumbnet.check(task.system).heaters if one.verdict is Verdict.TRAPPED]
    assert task.choice.right.replace(" and ", ", ").split(", ") == (trapped or ["none"])


def _two_codes(task: Task) -> None:
    first, second = (plumbnet.check(task.system, rules=name) for name in task.exercise.asked.profiles)
    expected = {
        (True, True): "both",
        (True, False): f"only the {first.profile.title}",
        (False, True): f"only the {second.profile.title}",
        (False, False): "neither",
    }
    assert task.choice.right == expected[first.is_fine, second.is_fine]


CHECKS: Mapping[str, Callable[[Task], None]] = {
    "verdict": _verdict,
    "stopper": _stopper,
    "opens-first": _opens_first,
    "first-drip": _first_drip,
    "locked-valve": _locked_valve,
    "tank": _tank,
    "trapped-heaters": _trapped_heaters,
    "two-codes": _two_codes,
}
"""For each sort of question, what fails if its key is wrong."""

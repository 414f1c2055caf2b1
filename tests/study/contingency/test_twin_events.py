"""Events of twins: a sweep that looks at one of them says what a sweep of each says."""

from collections.abc import Iterator
from random import Random

import pytest
from conftest import system
from hotel import hotel

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.system import System
from plumbnet.study.contingency.contingencies import Contingency, happenings
from plumbnet.study.contingency.event_sweep import sweep
from plumbnet.study.contingency.levelled_pipes import Correspondence
from plumbnet.study.contingency.outcome import Outcome, outcome
from plumbnet.study.contingency.twin_events import TwinEvents
from plumbnet.study.contingency.worlds import Worlds


def rooms(seed: int) -> System:
    """Rooms of a few sorts off one riser, two of them of each sort at least; some stand otherwise than their twins."""
    random = Random(seed)  # noqa: S311  # a layout, not a secret
    runs = ["street -> meter -> tee1 -> cv -> tee2 -> heater -> tee3 -> tee4", "tee2 -> tank", "tee1 -> tap.cold"]
    parts = {"heater": "relief: {pressure: 150 psi, temperature: 210 degF}"}
    for sort in range(random.randint(1, 2)):
        hot, cold = random.choice(["tee3", "tee4"]), random.choice(["tee1", "tee2"])
        middle = random.choice(["valve", "cv", "mixer"])
        for number in range(random.randint(2, 4)):
            name = f"{10 * (sort + 1) + number}"
            runs += list(room_runs(name, hot, cold, middle))
            parts[f"tap{name}"] = f"elevation: {random.choice([3, 3, 3, 13])} ft"
    if random.random() < 0.5:
        parts["meter"] = "check: true"
    return system("\n".join(runs), **parts)


def room_runs(name: str, hot: str, cold: str, middle: str) -> Iterator[str]:
    if middle == "mixer":
        yield f"{hot} -> mixer{name}.hot"
        yield f"{cold} -> mixer{name}.cold"
        yield f"mixer{name}.mixed -> tap{name}.hot"
    else:
        yield f"{hot} -> {middle}{name} -> tap{name}.hot"
        yield f"{cold} -> valve{name}7 -> tap{name}.cold"


def told_one_by_one(report: Report) -> dict[str, Outcome]:
    """What each event changes, each answered by itself."""
    worlds = Worlds(report)
    events = happenings(report.system, report.rules, report.facts.circuit_of)
    return {one.title: outcome(worlds.before, worlds.single(one).answer) for one in events}


@pytest.mark.parametrize("seed", range(24))
def test_folded_sweep_says_what_is_said_event_by_event(seed: int) -> None:
    report = plumbnet.check(rooms(seed))
    assert {one.event.title: one.outcome for one in sweep(report).events} == told_one_by_one(report)


def folded(layout: System) -> list[str]:
    """Events that are like one before them, were nothing to change anything."""
    twins, found = TwinEvents(layout, frozenset(), Correspondence(layout).parts), list[str]()
    for event in happenings(layout, plumbnet.check(layout).rules):
        if twins.is_like_an_idle_one(event):
            found.append(event.title)
        twins.changes_nothing(event)
    return found


PAIR = """street -> tee1 -> heater -> tee3
          tee3 -> valve1 -> tap1.hot
          tee1 -> tap1.cold
          tee3 -> valve2 -> tap2.hot
          tee1 -> tap2.cold"""


def test_rooms_off_one_riser_are_twins() -> None:
    assert folded(system(PAIR)) == ["valve2: shut", "tap2: crossover"]


@pytest.mark.parametrize("parts", [{"tap2": "elevation: 9 ft"}, {"valve2": "elevation: 9 ft"}])
def test_rooms_at_other_heights_are_none(parts: dict[str, str]) -> None:
    assert folded(system(PAIR, **parts)) == []


def test_room_that_hangs_elsewhere_is_none() -> None:
    assert folded(system(PAIR.replace("tee3 -> valve2", "tee3 -> tee4 -> valve2"))) == []


def test_room_that_stands_before_its_twin_by_name_is_looked_at() -> None:
    assert folded(system(PAIR.replace("valve1", "valve3").replace("tap1", "tap3"))) == []


def test_what_must_stay_is_exchanged_with_nothing() -> None:
    layout = system(PAIR)
    event = next(one for one in happenings(layout, plumbnet.check(layout).rules) if one.part == "valve2")
    earlier = Contingency("valve1", event.words, event.change.model_copy(update={"close": "valve1"}))
    for named, is_like in ((frozenset[str](), True), (frozenset({"tap1"}), False)):
        twins = TwinEvents(layout, named, Correspondence(layout).parts)
        twins.changes_nothing(earlier)
        assert twins.is_like_an_idle_one(event) is is_like


def test_hotel_is_swept_by_a_few_of_its_rooms() -> None:
    layout = plumbnet.read_bytes(hotel(24).encode(), file="hotel")
    assert len(folded(layout)) > 60

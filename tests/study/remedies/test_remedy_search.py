"""Remedies as a whole: proved, ranked, found once for all whom they cure, the same on every run."""

import re
from functools import cache
from pathlib import Path

import pytest
from campus import campus
from curing import HOUSE, RELIEVED, TANKED, cures, efforts, house, scene
from hotel import hotel

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import change_fields
from plumbnet.layout.model.system import System
from plumbnet.rules.facts.verdict_words import TROUBLED, Verdict
from plumbnet.study.remedies import remedy_search
from plumbnet.study.remedies.candidate import Effort
from plumbnet.study.remedies.remedy import MOST_PARTS, MOST_WORK, Found, left_out
from plumbnet.study.remedies.remedy_search import SORTS, remedies, remedies_if_small, remedies_of
from plumbnet.study.remedies.trial import tried

ROOT = Path(__file__).parents[3]
SYSTEMS = sorted((ROOT / "systems").glob("*.yaml"))
BESIDE = """street -> cv -> tee -> heater -> tap.hot
            street -> cv2 -> tee2 -> heater2 -> tap2.hot"""
JOINED = f"""{BESIDE}
             tap.hot -> tap2.hot"""
NO_REMEDY: dict[str, str] = {}
"""Layouts with a heater in trouble that no sort of remedy cures, with the reason."""


def worlds(path: Path) -> list[tuple[str, System]]:
    """A layout as it is, and under each of its scenarios."""
    system = plumbnet.read(path)
    changed = [(name, with_changes(system, one.change)) for name, one in system.scenarios.items()]
    return [("", system), *changed]


WORLDS = {f"{path.stem} {name}".strip(): system for path in SYSTEMS for name, system in worlds(path)}


def report(system: System) -> Report:
    return plumbnet.check(system)


@cache
def report_on(name: str) -> Report:
    return report(WORLDS[name])


@cache
def found_in(name: str) -> Found:
    return remedies(report_on(name))


@pytest.mark.parametrize("name", WORLDS)
def test_every_heater_in_trouble_has_a_remedy(name: str) -> None:
    before = report_on(name)
    found = found_in(name)
    assert {one.name for one in before.heaters if one.verdict in TROUBLED} <= found.keys()
    if name not in NO_REMEDY:
        assert all(found.values())


@pytest.mark.parametrize("name", WORLDS)
def test_every_remedy_cures_what_it_says_and_breaks_nothing(name: str) -> None:
    before = scene(WORLDS[name])
    for heater, own in found_in(name).items():
        for remedy in own:
            trial = tried(before, remedy.changes)
            assert trial is not None, name
            assert trial.is_harmless
            assert tuple(trial.cures()) == remedy.cures
            after = trial.after.heaters[heater]
            assert remedy.heater == heater
            assert (after.verdict, after.settled_pa) == (remedy.verdict, remedy.settled_pa)
            assert after.verdict not in TROUBLED


@pytest.mark.parametrize("name", WORLDS)
def test_nothing_that_protects_is_ever_taken_out(name: str) -> None:
    system = WORLDS[name]
    protecting = {"relief_valve", "dual_check", "double_check", "reduced_pressure_assembly", "vacuum_breaker", "meter"}
    for own in found_in(name).values():
        for remedy in own:
            after = with_changes(system, remedy.changes)
            for part, kind in ((part, one.kind) for part, one in system.parts.items() if one.kind in protecting):
                assert part in after.parts, name
                assert after.parts[part].kind == kind


@pytest.mark.parametrize("name", WORLDS)
def test_remedies_stand_in_the_order_of_the_work_they_ask_for(name: str) -> None:
    for own in found_in(name).values():
        assert [remedy.effort for remedy in own] == sorted(remedy.effort for remedy in own)


def test_same_layout_gives_the_same_remedies_in_the_same_words() -> None:
    system = plumbnet.read(ROOT / "systems" / "two-heaters-own-checks.yaml")
    first, second = (
        {
            name: [(one.title, [change_fields(change) for change in one.changes]) for one in own]
            for name, own in remedies(report(system)).items()
        }
        for _ in range(2)
    )
    assert first == second


def test_open_and_controlled_heaters_need_none() -> None:
    assert remedies(report(house("street -> tee -> heater -> tap.hot"))) == {}
    assert remedies(report(house(TANKED))) == {}


def test_recharging_comes_before_moving_and_moving_before_adding() -> None:
    layout = house(
        f"{HOUSE}\n tee -> tank\n street -> tee2 -> cv\n tee2 -> tank2".replace("street -> cv -> tee", "cv -> tee"),
        tank="precharge: 20 psi, volume: 5 gal",
        tank2="volume: 8 gal",
    )
    assert efforts(layout) == [Effort.RECHARGE, Effort.MOVE, Effort.ADD]


def test_remedy_that_cures_two_heaters_is_found_once_and_shown_for_each() -> None:
    runs = """street -> cv -> tee -> heater -> tee2 -> tap.hot
              tee -> heater2 -> tee2"""
    layout = house(runs, heater2=RELIEVED)
    (one,), (other,) = cures(layout), cures(layout, "heater2")
    assert one.changes == other.changes
    assert one.cures == other.cures == ("heater", "heater2")
    assert (one.heater, other.heater) == ("heater", "heater2")


def test_heaters_apart_have_remedies_of_their_own() -> None:
    layout = house(BESIDE, heater2=RELIEVED)
    (one,), (other,) = cures(layout), cures(layout, "heater2")
    assert one.cures == ("heater",)
    assert other.cures == ("heater2",)
    assert one.changes != other.changes


def test_remedy_that_traps_a_neighbour_is_not_offered() -> None:
    """Taking cv2 out would let the second heater fill the tank that is just enough for the first."""
    runs = """street -> cv -> tee -> heater -> tap.hot
              tee -> tank
              tee -> cv2 -> heater2 -> tap2.hot"""
    layout = house(runs, heater2=RELIEVED, tank="volume: 5 gal")
    assert report(layout).heaters[0].verdict is Verdict.CONTROLLED
    assert efforts(layout, "heater2") == [Effort.PAIR]
    assert cures(layout, "heater2")[0].cures == ("heater2",)


def test_every_sort_is_registered_once() -> None:
    assert len(SORTS) == len(set(SORTS)) == len(Effort)


@pytest.mark.parametrize("name", WORLDS)
def test_title_is_one_sentence_that_never_takes_a_relief_valve_away(name: str) -> None:
    for own in found_in(name).values():
        for remedy in own:
            assert remedy.title[0].isupper()
            assert remedy.title.endswith(".")
            assert "\n" not in remedy.title
            assert not re.search(r"(remove|plug|cap|take out) .*relief", remedy.title.lower())


def test_remedies_of_a_large_layout_are_left_to_those_who_ask() -> None:
    large = report(plumbnet.read_bytes(campus(1500).encode()))
    troubled = sum(heater.verdict in TROUBLED for heater in large.heaters)
    assert len(large.system.parts) > MOST_PARTS
    assert len(large.system.parts) * troubled > MOST_WORK
    assert remedies_if_small(large) is None
    assert remedies_if_small(report(house())) == remedies(report(house()))


def test_large_layout_with_few_heaters_in_trouble_is_searched() -> None:
    one = plumbnet.read_bytes(hotel(70).encode())
    assert len(one.parts) > MOST_PARTS
    found = remedies_if_small(report(one))
    assert found is not None
    assert all(found.values())


def test_layout_is_cured_as_its_report_is() -> None:
    layout = house()
    assert remedies(layout) == remedies(plumbnet.check(layout))


def test_heaters_of_which_not_every_change_could_be_tried_are_named(monkeypatch: pytest.MonkeyPatch) -> None:
    whole = remedies_if_small(report(plumbnet.read_bytes(hotel(8).encode())))
    monkeypatch.setattr(remedy_search, "REMEDIES_BESIDE_CHECK", 3_000)
    cut = remedies_if_small(report(plumbnet.read_bytes(hotel(8).encode())))
    assert whole is not None
    assert cut is not None
    assert left_out(whole) == ()
    assert left_out(cut) == tuple(name for name in whole if name in set(left_out(cut)))
    assert left_out(cut)[-1] == list(whole)[-1]
    assert all(set(cut[name]) <= set(whole[name]) for name in whole)


def test_heater_that_is_named_is_searched_alone_where_its_turn_did_not_come(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = report(plumbnet.read_bytes(hotel(8).encode()))
    last = list(remedies(asked))[-1]
    monkeypatch.setattr(remedy_search, "REMEDIES_ASKED_FOR", 3_000)
    assert last in left_out(remedies(asked))
    assert remedies(asked)[last] == ()
    assert remedies_of(asked, last)[last]

"""Parts that only got another name: in the layouts of systems/ every one, in a drawn one by one the hard cases."""

from collections.abc import Callable
from itertools import combinations
from pathlib import Path

import pytest
from conftest import system

import plumbnet
from plumbnet.layout.model.system import System
from plumbnet.study.compare.layout_revision import Changes, revision
from plumbnet.study.renaming.part_renames import Renames, renames
from plumbnet.study.renaming.surroundings import own_parts
from plumbnet.study.renaming.system_renaming import renamed_system

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
HOUSE = "street -> cv -> tee -> valve -> heater -> tap.hot\ntee -> tap.cold"


def found(before: System, after: System) -> dict[str, str]:
    return {one.before: one.after for one in renames(before, after).found}


def naming(names: dict[str, str]) -> Callable[[str], str]:
    return Renames(names=names).name_now


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_any_one_part_of_another_name_is_found(path: Path) -> None:
    layout = plumbnet.read(path)
    for name in own_parts(layout):
        after = renamed_system(layout, naming({name: "another"}))
        assert found(layout, after) == {name: "another"}, name
        assert found(after, layout) == {"another": name}, name


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_two_parts_that_exchange_their_names_change_nothing_else(path: Path) -> None:
    layout = plumbnet.read(path)
    for one, other in list(combinations(own_parts(layout), 2))[::7]:
        after = renamed_system(layout, naming({one: other, other: one}))
        told = revision(layout, after)
        assert not told.parts, (one, other)
        assert not told.pipes, (one, other)


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_all_parts_of_other_names_are_found_and_nothing_else_differs(path: Path) -> None:
    layout = plumbnet.read(path)
    told = revision(layout, renamed_system(layout, lambda name: f"b-{name}"))
    assert len(told.renamed) == len(own_parts(layout))
    assert (told.parts, told.pipes) == (Changes(), Changes())


def test_same_layout_has_no_renames() -> None:
    assert renames(system(HOUSE), system(HOUSE)) == Renames()


def test_chain_of_names_is_followed() -> None:
    """street -> pump1 -> tee1 -> pump2 -> tee2    before
    street -> pump2 -> tee1 -> pump3 -> tee2    after
    """
    runs = "street -> {} -> tee1 -> {} -> tee2 -> heater -> tap.hot\ntee1 -> tap1.cold\ntee2 -> tap2.cold"
    before, after = (system(runs.format(*pumps)) for pumps in (("pump1", "pump2"), ("pump2", "pump3")))
    assert found(before, after) == {"pump1": "pump2", "pump2": "pump3"}


def test_exchanged_names_of_unlike_parts_side_by_side_are_told_by_their_values() -> None:
    runs = "street -> tee -> heater1 -> tee2 -> tap.hot\ntee -> heater2 -> tee2"
    before = system(runs, heater1="volume: 50 gal", heater2="volume: 80 gal")
    after = system(runs, heater1="volume: 80 gal", heater2="volume: 50 gal")
    assert found(before, after) == {"heater1": "heater2", "heater2": "heater1"}


def test_one_value_may_be_another_and_two_may_not() -> None:
    before = system(HOUSE)
    other = HOUSE.replace("heater", "heater9")
    assert found(before, system(other, heater9="volume: 60 gal")) == {"heater": "heater9"}
    exchanged = renames(before, system(other, heater9="volume: 60 gal, setpoint: 120 degF"))
    assert exchanged.found == ()
    assert [(one.before, one.after) for one in exchanged.alike] == [(("heater",), ("heater9",))]


def test_other_kind_in_the_place_is_no_rename() -> None:
    assert renames(system(HOUSE), system(HOUSE.replace("cv", "meter"))) == Renames()


def test_part_with_other_neighbours_is_no_rename() -> None:
    """tee -> valve1 -> tap1, and then tee2 -> valve9 -> tap1 behind the heater."""
    before = system(f"{HOUSE}\ntee -> valve1 -> tap1.cold")
    moved = HOUSE.replace("heater -> tap.hot", "heater -> tee2 -> tap.hot")
    assert "valve1" not in found(before, system(f"{moved}\ntee2 -> valve9 -> tap1.cold"))


def test_part_known_by_its_values_is_followed_though_a_device_came_beside_it() -> None:
    before = system(HOUSE)
    after = system(HOUSE.replace("valve -> heater", "valve -> meter -> heater9"))
    assert found(before, after) == {"heater": "heater9"}
    assert found(before, system(HOUSE.replace("valve -> heater", "valve9 -> meter -> heater"))) == {}


def test_renamed_parts_are_found_beside_others_that_kept_their_names_and_changed() -> None:
    """Between valve1 and valve2, which both changed on one side, pump is called pump2."""
    before = system("street -> meter -> valve1 -> pump1 -> valve2 -> cv -> heater -> tap.hot")
    after = system("street -> valve1 -> pump2 -> valve2 -> heater -> tap.hot")
    assert found(before, after) == {"pump1": "pump2"}


def test_of_two_alike_the_one_that_kept_its_name_is_the_same() -> None:
    runs = "street -> tee -> heater -> tap.hot\ntee -> {}.cold\ntee -> {}.cold"
    assert found(system(runs.format("tap1", "tap2")), system(runs.format("tap2", "tap3"))) == {"tap1": "tap3"}


def test_two_that_are_alike_in_everything_are_taken_in_the_order_of_the_files() -> None:
    runs = "street -> tee -> heater -> tap.hot\ntee -> {}.cold\ntee -> {}.cold"
    before, after = (system(runs.format(*taps)) for taps in (("tap1", "tap2"), ("tap3", "tap4")))
    assert found(before, after) == {"tap1": "tap3", "tap2": "tap4"}


def test_two_plants_alike_are_not_mixed() -> None:
    """tee -> valve1 -> heater1 -> tap1, tee -> valve2 -> heater2 -> tap2; all of other names."""
    runs = "street -> tee -> valve{0} -> heater{0} -> tap{0}.hot\ntee -> valve{1} -> heater{1} -> tap{1}.hot"
    before, after = system(runs.format(1, 2)), system(runs.format(3, 4))
    names = found(before, after)
    assert names in (
        {f"{kind}{n}": f"{kind}{n + 2}" for kind in ("valve", "heater", "tap") for n in (1, 2)},
        {f"{kind}{n}": f"{kind}{5 - n}" for kind in ("valve", "heater", "tap") for n in (1, 2)},
    )


def test_two_alike_of_which_one_has_another_value_stay_apart() -> None:
    runs = "street -> tee -> heater -> tap.hot\ntee -> {}.cold\ntee -> {}.cold"
    told = renames(system(runs.format("tap1", "tap2")), system(runs.format("tap3", "tap4"), tap4="elevation: 9 ft"))
    assert told.found == ()
    assert [(one.before, one.after) for one in told.alike] == [(("tap1", "tap2"), ("tap3", "tap4"))]


def test_two_alike_are_told_apart_by_a_value() -> None:
    runs = "street -> tee -> heater -> tap.hot\ntee -> {}.cold\ntee -> {}.cold"
    before = system(runs.format("tap1", "tap2"), tap2="elevation: 9 ft")
    after = system(runs.format("tap3", "tap4"), tap3="elevation: 9 ft")
    assert found(before, after) == {"tap1": "tap4", "tap2": "tap3"}


def test_gone_part_whose_name_another_one_has_is_called_so_before() -> None:
    """street -> valve1 -> tee -> valve2 -> heater: valve2 goes, and valve1 is called valve2."""
    before = system("street -> valve1 -> tee -> valve2 -> heater -> tap.hot\ntee -> tap.cold")
    after = system("street -> valve2 -> tee -> heater -> tap.hot\ntee -> tap.cold")
    told = renames(before, after)
    assert dict(told.names) == {"valve1": "valve2", "valve2": "valve2 (before)"}
    assert [(one.before, one.after) for one in told.found] == [("valve1", "valve2")]


def test_name_of_what_is_fixed_to_a_part_goes_with_it() -> None:
    names = Renames(names={"heater": "boiler"})
    assert [names.name_now(name) for name in ("heater", "heater/relief", "tank", "tank/relief")] == [
        "boiler",
        "boiler/relief",
        "tank",
        "tank/relief",
    ]


def test_long_run_of_other_names_is_found_end_to_end() -> None:
    before, after = (
        system(f"street -> {' -> '.join(f'valve{n}' for n in range(first, first + 59))} -> heater -> tap.hot")
        for first in (1, 101)
    )
    assert found(before, after) == {f"valve{n}": f"valve{n + 100}" for n in range(1, 60)}

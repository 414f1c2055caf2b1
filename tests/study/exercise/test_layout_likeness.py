from conftest import system

from plumbnet.layout.model.change import Change
from plumbnet.study.exercise.layout_likeness import likeness

HOUSE = "street -> meter -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold"


def test_names_make_no_difference() -> None:
    renamed = HOUSE.replace("tap", "sink").replace("tee", "split")
    other = system(renamed, sink="kind: fixture", split="kind: tee")
    assert likeness(other) == likeness(system(HOUSE))


def test_order_makes_no_difference() -> None:
    assert likeness(system("\n".join(reversed(HOUSE.splitlines())))) == likeness(system(HOUSE))


def test_pressure_size_device_and_way_make_a_difference() -> None:
    keys = [
        likeness(system(HOUSE)),
        likeness(system(HOUSE, street="pressure: 61 psi")),
        likeness(system(HOUSE, heater="volume: 40 gal")),
        likeness(system(HOUSE, meter="check: true")),
        likeness(system(HOUSE.replace("meter -> cv", "cv -> meter"))),
        likeness(system(HOUSE.replace("cv -> tee -> heater", "tee -> cv -> heater"))),
    ]
    assert len(set(keys)) == len(keys)


def test_what_is_supposed_makes_a_difference() -> None:
    house = system("street -> valve -> tee -> valve2 -> heater -> tap.hot")
    first, second = (Change.model_validate({"close": name}) for name in ("valve", "valve2"))
    assert len({likeness(house), likeness(house, (first,)), likeness(house, (second,))}) == 3
    set_check = Change.model_validate({"set": {"part": "valve", "locked": True}})
    assert likeness(house, (set_check,)) not in {likeness(house), likeness(house, (first,))}

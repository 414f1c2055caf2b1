from tall_buildings import tall, tower

from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.stacking.doors import DoorKey
from plumbnet.drawing.riser.stacking.riser_columns import (
    RiserWidth,
    columns_of,
    device_step,
    home_risers,
    on_the_right,
    right_doors,
    riser_width,
)

BUILDING = tall(tower(storeys=5, shafts=2))
SHAFT = BUILDING.folding.shafts[0]


def test_cold_risers_stand_right_of_what_hangs_on_hot_and_cold() -> None:
    right = on_the_right(BUILDING.structure, SHAFT)
    assert [riser.service for riser in SHAFT.risers if riser.number in right] == [Service.COLD]
    number = BUILDING.component("flat2a").number
    assert right_doors(BUILDING.structure, number, home_risers(BUILDING.structure, SHAFT), right) == {DoorKey("c2a")}


def test_a_joint_sits_on_the_riser_that_passes_it_and_not_on_the_return() -> None:
    homes = home_risers(BUILDING.structure, SHAFT)
    assert homes[DoorKey("h5a")].service is Service.HOT
    assert homes[DoorKey("c1a")].service is Service.COLD


def test_risers_keep_apart_for_devices_and_their_words() -> None:
    bare, valve = RiserWidth(0.0, 0.0), RiserWidth(8.0, 40.0)
    assert columns_of([bare, bare], 1) == ([0.0, 13.0], 13.0)
    left, end = columns_of([valve, bare], 1)
    assert left[0] == 48.0
    assert end >= 48.0 + 13.0
    right, end = columns_of([bare, valve], 0)
    assert end - right[1] == 48.0


def test_a_riser_is_as_wide_as_its_devices_and_their_names() -> None:
    back = next(riser for riser in SHAFT.risers if riser.service is Service.RETURN)
    own = riser_width(BUILDING.structure, back)
    assert own.device > 5.0
    assert own.words > 30.0
    valve = BUILDING.structure.diagram.items["balance-a"]
    assert device_step(valve) > valve.symbol.width

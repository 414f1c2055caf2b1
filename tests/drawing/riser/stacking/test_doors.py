from tall_buildings import tall, tower

from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.stacking.doors import DoorKey, door_key, doors_of

BUILDING = tall(tower(storeys=5, shafts=2))


def test_a_branch_has_a_door_at_each_joint_hot_first() -> None:
    doors = doors_of(BUILDING.structure, BUILDING.component("flat5a"))
    assert list(doors) == [DoorKey("h5a"), DoorKey("c5a")]
    assert [each.chain.service for each in doors[DoorKey("h5a")]] == [Service.HOT, Service.RETURN]


def test_a_plant_has_a_door_for_each_service_of_a_joint() -> None:
    plant = BUILDING.component("heater")
    doors = doors_of(BUILDING.structure, plant)
    assert {(key.part, key.service) for key in doors} == {
        ("hot", Service.HOT), ("split", Service.COLD), ("back", Service.RETURN),
    }  # fmt: skip
    assert all(len(ends) == 2 for ends in doors.values())
    assert door_key(BUILDING.structure, plant, plant.ends[0]) in doors

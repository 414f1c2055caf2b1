from sketching import chance

from plumbnet.layout.model.runs import NAME
from plumbnet.study.exercise.town import LARGE_BUILDINGS, ROOMS, TOWN, address


def test_every_building_stands_in_the_invented_town() -> None:
    drawn = chance(1)
    found = {address(drawn) for _ in range(50)}
    assert all(title.endswith(f", {TOWN}") for title in found)
    assert len(found) > 40


def test_large_building_is_called_by_what_it_is() -> None:
    assert address(chance(1), large=True).partition(",")[0] in LARGE_BUILDINGS


def test_rooms_are_names_a_part_can_have() -> None:
    assert all(NAME.fullmatch(room) for room in ROOMS)

import pytest
from posing import RELIEF, posed, said

TWO = "street -> tee -> cv -> heater1 -> tap.hot\ntee -> {}heater2 -> tap2.hot"


@pytest.mark.parametrize(
    ("option", "name", "about"),
    [
        ("none", "check-passed-over", "cv"),
        ("heater1 and heater2", "way-out-overlooked", "heater2"),
        ("heater2", "way-out-overlooked", "heater2"),
    ],
)
def test_first_heater_on_the_other_side_is_told(option: str, name: str, about: str) -> None:
    hint = said(posed("trapped-heaters", TWO.format(""), heater1=RELIEF, heater2=RELIEF), option)
    assert hint.name == name
    assert about in hint.text


def test_largest_named_alone_was_chosen_for_its_size() -> None:
    large = f"{RELIEF}, volume: 119 gal"
    one = posed("trapped-heaters", TWO.format(""), heater1=RELIEF, heater2=large)
    assert said(one, "heater2").name == "bigger-heater-higher-pressure"


def test_trapped_heater_beside_a_lost_tank_was_counted_as_held() -> None:
    runs = f"{TWO.format('')}\ntee -> tank"
    assert said(posed("trapped-heaters", runs, heater1=RELIEF, heater2=RELIEF), "none").name == "any-tank-anywhere"

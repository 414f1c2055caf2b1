import pytest
from tall_buildings import altered, tall, tower


def test_what_is_left_out_is_taken_over_from_beside_and_the_plant_stays_at_zero() -> None:
    text = altered(tower(), ("h3a -> flat3a.hot", "h3a -> stop -> flat3a.hot"), ("runs:\n", "  stop: valve\nruns:\n"))
    height = tall(text).structure.height
    assert height["stop"] == pytest.approx(9.144)  # the tee's, the lower of two as near
    assert height["heater"] == height["split"] == height["meter"] == 0.0
    assert height["balance-a"] == 0.0


def test_only_ends_have_heights_and_the_trunks_take_theirs_from_them() -> None:
    bare = "\n".join(
        line.split(": {")[0] + ": tee" if "kind: tee, elevation" in line else line for line in tower().splitlines()
    )
    structure = tall(bare).structure
    assert structure.height["h4b"] == pytest.approx(structure.height["flat4b"])
    assert structure.height["hot"] == 0.0
    assert len(structure.floors) == 7

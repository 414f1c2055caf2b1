from sketching import chance, recipe

from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.stock.part_names import WORDS
from plumbnet.study.exercise.stock.stock import Stock
from plumbnet.study.exercise.usual_sizes import USUAL


def drawn(seed: int) -> Stock:
    rich = recipe(
        own_check=1.0, yard_check=1.0, heater_valve=1.0, hot_valve=1.0, tank=1.0, heights=1.0, circulation=1.0
    )
    return building(rich, chance(seed), USUAL["us"])


def test_names_say_the_kind_and_a_number_where_there_are_several() -> None:
    stock = drawn(1)
    for kind, word in WORDS.items():
        names = {name for name in stock.parts if stock.kind(name) == kind}
        assert all(name == word or name.rpartition("-")[0] == word for name in names), kind
    assert {"tank", "pump", "check-1", "check-2", "valve-1", "valve-2", "valve-3"} <= set(stock.parts)


def test_number_and_order_do_not_tell_where_a_part_was_drawn() -> None:
    first = {next(stop for stop in drawn(seed).stretches[0].stops if stop.startswith("valve")) for seed in range(12)}
    assert first == {"valve-1", "valve-2", "valve-3"}
    assert len({list(drawn(seed).parts).index("street") for seed in range(12)}) > 4


def test_devices_in_line_have_no_height_that_would_tell_their_floor() -> None:
    for seed in range(4):
        stock = drawn(seed)
        in_line = {stop for one in stock.stretches if one.place is not None for stop in one.devices}
        assert not any("elevation" in stock.parts[name] for name in in_line)
        assert "elevation" in stock.parts["yard-tap"]

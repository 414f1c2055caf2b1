from collections import Counter
from dataclasses import replace

from sketching import chance

from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.question import QUESTIONS
from plumbnet.study.exercise.stock.device_placing import placed
from plumbnet.study.exercise.stock.stock import Stock
from plumbnet.study.exercise.stock.stretch import Spot, Stretch, part_of
from plumbnet.study.exercise.stock.usual_places import CHECKS, PLACES, is_usual
from plumbnet.study.exercise.usual_sizes import USUAL


def stock(seed: int, level: int = 4) -> Stock:
    return building(QUESTIONS["verdict"].recipe(level), chance(seed), USUAL["us"])


def twins(drawn: Stock, number: int) -> list[tuple[Stretch, ...]]:
    same = chance(7)
    return [found for found in (placed(drawn, same) for _ in range(number)) if found is not None]


def stops(stretches: tuple[Stretch, ...]) -> Counter[str]:
    return Counter(part_of(stop) for one in stretches for stop in one.stops)


def test_every_twin_is_made_of_the_same_parts_each_joined_as_often() -> None:
    drawn = stock(1)
    found = twins(drawn, 20)
    assert len({drawn.text(one) for one in found}) > 15
    assert all(stops(one) == stops(drawn.stretches) for one in found)


def test_every_device_stands_where_it_may_in_an_order_that_is_usual() -> None:
    for seed in range(6):
        drawn = stock(seed)
        for found in twins(drawn, 5):
            for one in found:
                if one.place is None:
                    continue
                kinds = [drawn.kind(name) for name in one.devices]
                assert is_usual(one.place, kinds)
                places = [drawn.hangers.get(name) or PLACES.get(drawn.kind(name)) for name in one.devices]
                assert all(place is None or one.place in place for place in places)


def test_way_to_a_heater_has_two_checks_at_most_and_one_of_its_own() -> None:
    for seed in range(6):
        drawn = stock(seed, 3)
        for found in twins(drawn, 5):
            own = [sum(drawn.kind(name) in CHECKS for name in one.devices) for one in found if one.place is Spot.FEED]
            service = [
                sum(drawn.kind(name) in CHECKS for name in one.devices) for one in found if one.place is Spot.SERVICE
            ]
            assert max(own) <= 1
            assert max(own) + sum(service) <= 2


def test_heaters_stand_in_each_others_place() -> None:
    drawn = stock(1, 3)
    ends = {next(one.end for one in found if one.place is Spot.FEED) for found in twins(drawn, 20)}
    assert ends == {"heater-1", "heater-2"}


def test_tee_of_a_circulation_stays_in_the_pipe_of_its_heater() -> None:
    drawn = stock(1, 3)
    (back,) = [one.end for one in drawn.stretches if one.place is Spot.RETURN]
    (home,) = [number for number, one in enumerate(drawn.stretches) if back in one.devices]
    assert all(back in found[home].devices for found in twins(drawn, 10))


def test_what_stands_in_a_circuit_stays_in_it() -> None:
    drawn = building(replace(QUESTIONS["verdict"].recipe(5), boiler=0.0, solar=1.0), chance(1), USUAL["us"])
    inside = {name for one in drawn.stretches if one.place is Spot.CIRCUIT for name in one.devices}
    homes = {tuple(one.devices for one in found if one.place is Spot.CIRCUIT) for found in twins(drawn, 10)}
    assert {drawn.kind(name) for name in inside} == {"circulator", "check_valve", "valve", "tee"}
    assert all({name for devices in home for name in devices} == inside for home in homes)
    assert len(homes) > 3


def test_list_that_fits_nowhere_has_no_layout() -> None:
    drawn = stock(1, 3)
    crowded = {**drawn.parts, **{f"more-{number}": {"kind": "meter"} for number in range(4)}}
    (service,) = [one for one in drawn.stretches if one.place is Spot.SERVICE]
    full = Stretch((service.stops[0], *(f"more-{number}" for number in range(4)), *service.stops[1:]), Spot.SERVICE)
    others = tuple(one for one in drawn.stretches if one is not service)
    assert placed(Stock(drawn.usual, drawn.title, crowded, (full, *others), drawn.hangers), chance(1)) is None

from dataclasses import fields

from plumbnet.study.exercise.level import LEVELS, Recipe

SHARES = [field.name for field in fields(Recipe)]


def share(level: int, name: str) -> float:
    found = getattr(LEVELS[level].recipe, name)
    assert isinstance(found, float)
    return found


def test_levels_count_from_one_to_five() -> None:
    assert list(LEVELS) == [1, 2, 3, 4, 5]
    assert all(level.number == number for number, level in LEVELS.items())


def test_shares_lie_between_never_and_always() -> None:
    assert all(0.0 <= share(level, name) <= 1.0 for level in LEVELS for name in SHARES)


def test_each_level_brings_what_the_one_before_has_not() -> None:
    new = {2: "tank", 3: "circulation", 4: "shared", 5: "boiler"}
    for level, name in new.items():
        assert share(level - 1, name) == 0.0 < share(level, name)


def test_first_level_has_a_check_valve_or_none_and_nothing_else() -> None:
    there = {name for name in SHARES if share(1, name)}
    qualify = {"bypass", "unreduced", "tank_valve", "small_tank", "branch_checks", "annex_tankless", "plate"}
    assert there - qualify == {"backflow", "own_check", "yard_check", "heater_valve", "hot_valve", "tap_valve"}

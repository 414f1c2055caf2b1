from pathlib import Path

from running import run

ROOT = Path(__file__).parents[3]


def size(*arguments: str) -> tuple[int, str]:
    done = run("size", *arguments)
    return done.exit_code, done.output


def test_command_prints_every_heater_or_the_one_named() -> None:
    file = str(ROOT / "systems" / "two-heaters-one-tank.yaml")
    status, both = size(file)
    assert status == 0
    assert ("Expansion tank for heater-a" in both, "Expansion tank for heater-b" in both) == (True, True)
    assert "Expansion tank for heater-a" not in size(file, "heater-b")[1]


def test_command_exits_like_the_check() -> None:
    trapped = str(ROOT / "systems" / "house-with-check.yaml")
    assert size(trapped)[0] == 1
    assert size(trapped, "hatter") == (2, f'no heater is called "hatter" in {trapped}: did you mean "heater"?\n')


def test_method_asked_for_goes_before_that_of_file_and_rules() -> None:
    house = str(ROOT / "systems" / "house-with-check.yaml")
    assert "(uk-4-percent; asked for)." in size(house, "--method", "uk-4-percent")[1]
    status, told = size(house, "--method", "membran")
    assert (status, told.endswith('did you mean "membrane"?\n')) == (2, True)


def test_no_tank_is_an_answer_and_no_error() -> None:
    status, text = size(str(ROOT / "systems" / "main-above-limit-no-tank-can-help.yaml"))
    assert status == 1  # for the finding, not for the sheet
    assert "No tank can do this: " in text


def test_formats_are_those_of_the_renderers() -> None:
    house = str(ROOT / "systems" / "house-with-check.yaml")
    assert size(house, "--format", "markdown")[1].startswith("# Expansion tank for heater\n")
    assert size(house, "--format", "json")[1].startswith("{\n")
    assert "kPa abs" in size(house, "--units", "metric")[1]

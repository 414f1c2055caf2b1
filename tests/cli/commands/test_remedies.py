from running import run


def test_command_prints_all_or_those_of_one_heater() -> None:
    result = run("remedies", "systems/two-heaters-own-checks.yaml", "heater-b")
    assert result.exit_code == 1
    assert "heater-b: TRAPPED" in result.output
    assert "heater-a: TRAPPED" not in result.output
    fine = run("remedies", "systems/open-house.yaml")
    assert fine.exit_code == 0
    assert "No heater here needs a remedy." in fine.output


def test_command_refuses_a_heater_that_is_not_there() -> None:
    result = run("remedies", "systems/open-house.yaml", "heeter")
    assert result.exit_code == 2
    assert 'did you mean "heater"?' in result.output

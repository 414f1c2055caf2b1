import pytest
from running import CONTROL, FAULTY, HOSTILE, OPEN, TRAPPED, Write, document, run


@pytest.fixture
def two(write: Write) -> Write:
    """A layout that is open and its revision that is trapped."""
    write("open.yaml", OPEN)
    write("trapped.yaml", TRAPPED)
    return write


@pytest.mark.usefixtures("two")
def test_status_is_1_where_something_became_worse_and_0_otherwise() -> None:
    worse = run("compare", "open.yaml", "trapped.yaml")
    assert (worse.exit_code, worse.stderr) == (1, "")
    assert "heater is worse: open before" in worse.stdout
    better = run("compare", "trapped.yaml", "open.yaml")
    assert better.exit_code == 0
    assert "heater is better: trapped before" in better.stdout
    assert run("compare", "trapped.yaml", "trapped.yaml").exit_code == 0


@pytest.mark.parametrize("names", [("open.yaml", "faulty.yaml"), ("faulty.yaml", "open.yaml")])
def test_status_is_2_where_one_of_them_is_not_understood(two: Write, names: tuple[str, str]) -> None:
    two("faulty.yaml", FAULTY)
    result = run("compare", *names)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith('faulty.yaml:2:19: unknown kind "mian"')
    assert run("compare", "open.yaml", "none.yaml").stderr == "none.yaml: no such file or directory\n"


@pytest.mark.usefixtures("two")
def test_json_sets_the_same_status() -> None:
    result = run("compare", "open.yaml", "trapped.yaml", "--format", "json")
    assert result.exit_code == 1
    assert document(result)["is_worse"] is True
    assert run("compare", "trapped.yaml", "open.yaml", "--format", "json").exit_code == 0


@pytest.mark.usefixtures("two")
def test_one_of_the_files_may_come_by_standard_input() -> None:
    assert run("compare", "open.yaml", "-", given=TRAPPED).exit_code == 1
    assert run("compare", "-", "trapped.yaml", given=OPEN).exit_code == 1
    result = run("compare", "-", "-", given=OPEN)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith("standard input can stand for one ")


@pytest.mark.usefixtures("two")
def test_units_and_rules_can_be_chosen_for_both() -> None:
    text = run("compare", "open.yaml", "trapped.yaml", "--units", "metric", "--rules", "ipc-2021").stdout
    assert "414 kPa" in text
    assert text.count("(ipc-2021)") == 2
    assert run("compare", "open.yaml", "trapped.yaml", "--rules", "nope").exit_code == 2


def test_hostile_title_is_escaped(two: Write) -> None:
    two("hostile.yaml", HOSTILE + TRAPPED)
    for form in ("text", "json"):
        result = run("compare", "open.yaml", "hostile.yaml", "--format", form)
        assert result.exit_code == 1
        assert not any(character in result.output for character in CONTROL)

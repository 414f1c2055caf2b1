"""The command `assemblies`."""

from every_command import app
from typer.testing import CliRunner

from plumbnet.layout.authoring.assembly_sets import shipped_assemblies, shipped_names


def test_every_set_is_listed_with_its_ports() -> None:
    told = CliRunner().invoke(app, ["assemblies"]).output
    for name in shipped_names():
        assert f"\n{name} " in told
    assert "in, out, balanced-cold" in told


def test_a_set_is_told_as_its_file() -> None:
    told = CliRunner().invoke(app, ["assemblies", "twin-heaters"]).output
    assert told == shipped_assemblies("twin-heaters").decode()


def test_a_slip_of_the_name_is_met_with_the_nearest() -> None:
    result = CliRunner().invoke(app, ["assemblies", "twin-heater"])
    assert result.exit_code == 2
    assert 'no assemblies are called "twin-heater": did you mean "twin-heaters"?' in result.output

"""Water piece by piece, and its walls."""

import pytest

from plumbnet.analysis.equilibrium.wall_compliance import standing_water
from plumbnet.layout.file.loader import read_system
from plumbnet.network.network import network_of
from plumbnet.physics.vessels.walls import Shell, heater_shell

LAYOUT = """
plumbnet: 1
units: us
parts:
  street: {{kind: main, pressure: 60 psi}}
  check: check_valve
  heater: {{kind: {kind}, volume: 50 gal, setpoint: 140 degF}}
  tap: fixture
runs:
  - street -> check
  - {{path: check -> heater, pipe: {pipe}, length: 30 ft}}
  - {{path: heater -> tap.hot, volume: 1 gal}}
"""


def shells(kind: str = "storage_heater", pipe: str = "copper-L 3/4 in") -> dict[str, Shell]:
    network = network_of(read_system(LAYOUT.format(kind=kind, pipe=pipe).encode(), file="drawn.yaml"))
    return {name: piece.shell for name, piece in standing_water(network).pieces.items()}


def test_storage_heater_has_the_typical_shell_and_a_flow_through_one_is_rigid() -> None:
    assert shells()["heater.cold"] == heater_shell(50 * 231 * 0.0254**3)
    assert shells("tankless_heater")["heater.cold"].compliance_per_pa == 0.0


def test_copper_yields_by_its_dimensions() -> None:
    """API 521: d (2.5 - 2 mu)/(2 E w) = 0.785/0.045 * 0.91/117 GPa."""
    assert shells()["pipe 1"].compliance_per_pa == pytest.approx(0.785 / 0.045 * 0.91 / 117e9, rel=1e-3)


@pytest.mark.parametrize("pipe", ["pex 3/4 in", "cpvc 3/4 in"])
def test_plastic_pipe_is_never_counted_on(pipe: str) -> None:
    assert shells(pipe=pipe)["pipe 1"].rigid == shells(pipe=pipe)["pipe 1"]


def test_pipe_of_which_only_the_water_is_known_is_rigid() -> None:
    known = shells()["pipe 2"]
    assert known == Shell(known.volume_m3)
    assert known.volume_m3 == pytest.approx(231 * 0.0254**3)


def test_water_beside_the_heated_is_that_of_the_same_zone() -> None:
    network = network_of(read_system(LAYOUT.format(kind="storage_heater", pipe="pex 3/4 in").encode(), file="drawn"))
    water = standing_water(network)
    zone = water.pieces["heater.cold"].zone
    assert list(water.beside({"heater.cold"}, zone)) == [water.pieces[name].shell for name in ("pipe 1", "pipe 2")]
    assert list(water.beside((), -1)) == []

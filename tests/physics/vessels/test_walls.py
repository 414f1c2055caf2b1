import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.layout.units.tubes import tube
from plumbnet.physics.fluids.water import ATMOSPHERE_PA, compressibility_per_pa, expansivity_per_k
from plumbnet.physics.vessels import walls
from plumbnet.physics.vessels.walls import (
    Material,
    Shell,
    UnknownWall,
    elastic_tube,
    heater_shell,
    joined_shells,
    material,
    materials,
    tube_shell,
)

shells = st.builds(Shell, st.floats(0.001, 2.0), st.floats(0.0, 5e-9), st.floats(0.0, 6e-5))


def copper() -> Shell:
    pipe = tube("copper-L 3/4 in")
    return elastic_tube(0.001, material(pipe.material), inside_m=pipe.inside_m, wall_m=pipe.wall_m)


def test_softness_of_a_tube_follows_from_its_dimensions() -> None:
    expected = (0.785 / 0.045) * (2.5 - 2 * 0.34) / 2 / 117e9
    assert copper().compliance_per_pa == pytest.approx(expected, rel=1e-9)


def test_closed_ends_are_girth_and_length_of_a_thin_cylinder() -> None:
    hoop, mu, modulus = 0.785 / 0.045 / 2, 0.34, 117e9  # hoop stress for each pascal; half of it lengthwise
    girth = (hoop - mu * hoop / 2) / modulus
    length = (hoop / 2 - mu * hoop) / modulus
    assert copper().compliance_per_pa == pytest.approx(2 * girth + length, rel=1e-9)


def test_warmth_widens_a_tube_by_three_times_its_linear_expansion() -> None:
    assert copper().expansion_per_k == pytest.approx(3 * 16.8e-6)


@pytest.mark.parametrize("name", ["pex", "cpvc"])
def test_the_stretch_of_a_plastic_pipe_is_never_credited(name: str) -> None:
    shell = tube_shell(0.001, material(name), inside_m=0.02, wall_m=0.002)
    assert shell == Shell(0.001)
    assert elastic_tube(0.001, material(name), inside_m=0.02, wall_m=0.002).compliance_per_pa > 0


def test_the_stretch_of_a_copper_pipe_is_credited() -> None:
    assert tube_shell(0.001, material("copper"), inside_m=0.02, wall_m=0.001).compliance_per_pa > 0


def test_pex_grows_faster_than_water_until_about_53_degc() -> None:
    grows = 3 * material("pex").expansion_per_k
    below, above = (expansivity_per_k(t + 273.15, pressure_abs_pa=ATMOSPHERE_PA) for t in (52, 55))
    assert below < grows < above


def test_a_typical_heater_is_softer_than_the_water_in_it() -> None:
    water = compressibility_per_pa(298.15, pressure_abs_pa=ATMOSPHERE_PA)
    assert heater_shell(0.2).compliance_per_pa == pytest.approx(20 / 0.075 * 0.95 / 200e9)
    assert heater_shell(0.2).compliance_per_pa > water


def test_room_grows_with_warmth_and_with_pressure() -> None:
    shell = Shell(2.0, compliance_per_pa=1e-9, expansion_per_k=5e-5)
    assert shell.room_m3(rise_k=10.0, rise_pa=0.0) == pytest.approx(2.0 * 1.0005)
    assert shell.room_m3(rise_k=0.0, rise_pa=1e6) == pytest.approx(2.0 * 1.001)


@given(pieces=st.lists(shells, min_size=1, max_size=5), rise_k=st.floats(-50, 100), rise_pa=st.floats(-1e6, 1e7))
def test_joined_shells_hold_what_they_hold_apart(pieces: list[Shell], rise_k: float, rise_pa: float) -> None:
    apart = sum(piece.room_m3(rise_k=rise_k, rise_pa=rise_pa) for piece in pieces)
    assert joined_shells(pieces).room_m3(rise_k=rise_k, rise_pa=rise_pa) == pytest.approx(apart, rel=1e-12)


def test_no_shells_have_no_room() -> None:
    assert joined_shells([]) == Shell(0.0)


def test_every_material_says_where_its_numbers_come_from() -> None:
    for each in materials().values():
        assert each.source
        assert "memory" in each.status or "read" in each.status
        assert 1e8 < each.modulus_pa < 3e11
        assert 0.2 < each.poisson < 0.5
        assert 1e-6 < each.expansion_per_k < 3e-4


def test_an_unknown_wall_is_refused_by_name() -> None:
    with pytest.raises(UnknownWall) as refused:
        material("lead")
    assert str(refused.value) == "nothing is known of walls of lead; known are copper, steel, cpvc, pex, stainless"


@pytest.mark.parametrize("numbers", [(-0.1, 0.0, 0.0), (0.1, -1e-9, 0.0), (0.1, 0.0, math.nan), (math.inf, 0.0, 0.0)])
def test_impossible_walls_are_refused(numbers: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match=r"^walls cannot have a volume, compliance or expansion of "):
        Shell(*numbers)


@pytest.mark.parametrize(
    ("inside_m", "wall_m"), [(0.0, 0.001), (0.02, 0.0), (math.nan, 0.001), (math.inf, 0.001), (0.02, math.inf)]
)
def test_a_tube_without_bore_or_wall_is_refused(inside_m: float, wall_m: float) -> None:
    with pytest.raises(ValueError, match=rf"^a tube needs a bore and a wall: not {inside_m:g} m and {wall_m:g} m$"):
        elastic_tube(0.001, material("copper"), inside_m=inside_m, wall_m=wall_m)


@pytest.fixture
def _read_anew() -> None:
    """The table is read once for all tests: without this, not by the one that is to see it read."""
    materials.cache_clear()


@pytest.mark.usefixtures("_read_anew")
def test_walls_are_what_the_row_of_their_material_says() -> None:
    # data/walls.csv: 117 GPa, 0.34, 16.8 millionths a kelvin; pex 0.7 GPa, 0.46, 160 millionths, not credited.
    copper, pex = material("copper"), material("pex")
    numbers = (copper.modulus_pa, copper.poisson, copper.expansion_per_k)
    assert numbers == pytest.approx((117e9, 0.34, 16.8e-6), rel=1e-12)
    assert (copper.name, copper.credited, copper.status) == ("copper", True, "expansion read and the rest from memory")
    assert copper.source.startswith("modulus and Poisson's ratio of deoxidised copper tube")
    assert (pex.name, pex.credited, pex.status) == ("pex", False, "approximate and from memory")
    assert (pex.modulus_pa, pex.poisson, pex.expansion_per_k) == pytest.approx((0.7e9, 0.46, 160e-6), rel=1e-12)
    assert isinstance(copper, Material)


def test_family_of_a_wall_is_what_stands_before_its_first_hyphen() -> None:
    assert material("copper-L") is material("copper-type-L") is material("copper")


def test_wall_that_the_table_names_in_full_comes_before_its_family(monkeypatch: pytest.MonkeyPatch) -> None:
    family = material("copper")
    soft = replace(family, name="copper-soft")
    monkeypatch.setattr(walls, "materials", lambda: {"copper": family, "copper-soft": soft})
    assert material("copper-soft") is soft


def test_stretch_of_a_copper_tube_is_counted_on() -> None:
    tube_of_metal = tube_shell(0.001, material("copper"), inside_m=0.02, wall_m=0.001)
    assert tube_of_metal.compliance_per_pa == pytest.approx(0.02 * (1.25 - 0.34) / (117e9 * 0.001), rel=1e-12)

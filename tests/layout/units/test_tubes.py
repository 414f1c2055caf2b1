import math
from importlib.resources import files

import pytest

from plumbnet.layout.units.tubes import UnknownTube, every_tube, read_tubes, tube

STEEL = "DN 15, 20, 25, 32, 40, 50, 65, 80, 100, 125, 150"
HEAD = "material,size,unit,outside,wall,standard,status"
GOOD = "pex,1/2,in,0.625,0.07,ASTM F876,from memory"
TABLE = tuple(read_tubes((files("plumbnet") / "data" / "tubes.csv").read_text(encoding="utf-8")))


@pytest.mark.parametrize(
    "text",
    [
        "copper-L 3/4 in",
        "copper-L 3/4",
        "copper-L 0.75 in",
        "copper-l 3/4in",
        "COPPER-L 0.750 IN",
        'copper-L 3/4"',
        "  copper-L\t3/4  in ",
    ],
)
def test_a_tube_is_found_however_its_size_is_written(text: str) -> None:
    found = tube(text)
    assert (found.material, found.size) == ("copper-L", "3/4 in")
    assert found.inside_m == pytest.approx(0.785 * 0.0254)


@pytest.mark.parametrize("text", ["steel 1-1/4 in", "steel 1 1/4 in", "steel 1.25", "steel 5/4 in"])
def test_a_mixed_number_is_one_size(text: str) -> None:
    assert tube(text).size == "1-1/4 in"


@pytest.mark.parametrize(
    ("text", "inside_mm"),
    [
        ("copper-K 1 in", 0.995 * 25.4),
        ("copper-M 2 in", 2.009 * 25.4),
        ("pex 1 in", 0.875 * 25.4),
        ("cpvc 3/4 in", 0.715 * 25.4),
        ("steel 6 in", 6.065 * 25.4),
        ("copper-B 22 mm", 19.8),
        ("copper-C 54 mm", 51.0),
        ("copper-EN 22 mm", 20.0),
        ("copper-X 15", 13.6),
        ("copper-Y 28 mm", 25.6),
        ("pex-S3.2 16 mm", 11.6),
        ("pex-s5 25", 20.4),
        ("multilayer 16 mm", 12.0),
        ("stainless 76.1 mm", 72.1),
        ("steel-M DN 20", 21.7),
        ("steel-m dn50", 53.1),
        ("steel-H 25 mm", 25.7),
    ],
)
def test_the_bore_is_that_of_the_standard(text: str, inside_mm: float) -> None:
    assert tube(text).inside_m * 1000 == pytest.approx(inside_mm, abs=1e-9)
    assert tube(text).volume_m3_per_m == pytest.approx(math.pi / 4 * (inside_mm / 1000) ** 2)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("coper-L 3/4 in", 'no tubes are called "coper-L": did you mean "copper-L"?'),
        (
            "lead 1 in",
            (
                'no tubes are called "lead": known are copper-K, copper-L, copper-M, pex, cpvc, steel, copper-B, '
                "copper-C, copper-EN, copper-X, copper-Y, pex-S3.2, pex-S5, multilayer, stainless, steel-M, steel-H"
            ),
        ),
        (
            "copper 3/4 in",
            (
                '"copper" tubes are copper-K, copper-L, copper-M, copper-B, copper-C, copper-EN, copper-X, copper-Y: '
                "name one of them"
            ),
        ),
        ("pex 7/8 in", 'pex tubes come in 3/8, 1/2, 3/4, 1, 1-1/4, 1-1/2, 2 in; not "7/8 in"'),
        (
            "pex 22 mm",
            'pex tubes come in 3/8, 1/2, 3/4, 1, 1-1/4, 1-1/2, 2 in; not "22 mm", to which the nearest is 3/4 in',
        ),
        ("steel-H DN 20 in", f'steel-H tubes come in {STEEL}; not "DN 20 in"'),
        ("steel-H DN 21", f'steel-H tubes come in {STEEL}; not "DN 21"'),
        ("steel-H", f"steel-H tubes come in {STEEL}; name one of them"),
        ("pex-S9 20 mm", 'no tubes are called "pex-S9": did you mean "pex-S5"?'),
        ("pex 1/0", 'pex tubes come in 3/8, 1/2, 3/4, 1, 1-1/4, 1-1/2, 2 in; not "1/0"'),
        ("pex", "pex tubes come in 3/8, 1/2, 3/4, 1, 1-1/4, 1-1/2, 2 in; name one of them"),
        ("copper-B 1 mm", 'copper-B tubes come in 15, 22, 28, 35, 42, 54 mm; not "1 mm"'),
        ("3/4 in", '"3/4 in" names no tube; write one like copper-L 3/4 in'),
        ("", '"" names no tube; write one like copper-L 3/4 in'),
        ("pex 1e9999999 in", '"pex 1e9999999 in" names no tube; write one like copper-L 3/4 in'),
    ],
)
def test_an_unknown_tube_is_told_what_would_be_right(text: str, message: str) -> None:
    with pytest.raises(UnknownTube) as unknown:
        tube(text)
    assert str(unknown.value) == message


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("copper-L 22 mm", "3/4 in"),
        ("copper-L 22", "3/4 in"),
        ("copper-L DN 20", "3/4 in"),
        ("copper-EN 3/4 in", "22 mm"),
        ("copper-EN 1/2", "15 mm"),
        ('copper-Y 2"', "54 mm"),
        ("pex-S5 1 in", "32 mm"),
        ("pex 16 mm", "1/2 in"),
        ("steel DN 40", "1-1/2 in"),
        ("steel-M 1-1/2 in", "DN 40"),
        ("steel-M 1-1/4 in", "DN 32"),
        ("steel-H 4 in", "DN 100"),
        ("stainless DN 25", "28 mm"),
        ("copper-B 3", "54 mm"),
    ],
)
def test_to_a_size_of_another_system_the_nearest_is_told(text: str, meant: str) -> None:
    with pytest.raises(UnknownTube) as unknown:
        tube(text)
    assert str(unknown.value).endswith(f", to which the nearest is {meant}")


def test_a_name_of_a_million_letters_is_refused_at_once() -> None:
    with pytest.raises(UnknownTube) as unknown:
        tube("a " * 500_000 + "!")
    assert len(str(unknown.value)) < 120


@pytest.mark.parametrize(
    ("row", "message"),
    [
        ("pex,3/4,in,0.875,0.097,ASTM F876", "tubes.csv line 3: wants a value in each of 7 columns"),
        ("pex,3/4,in,0.875,0.097,,read", "tubes.csv line 3: wants a value in each of 7 columns"),
        ("pex,3/4,ft,0.875,0.097,ASTM F876,read", "tubes.csv line 3: 3/4 ft is no nominal size"),
        ("pex,big,in,0.875,0.097,ASTM F876,read", "tubes.csv line 3: big in is no nominal size"),
        (
            "pex,3/4,in,0.875,0.5,ASTM F876,read",
            "tubes.csv line 3: a wall of 0.5 does not fit an outside diameter of 0.875",
        ),
        (
            "pex,3/4,in,0.875,nan,ASTM F876,read",
            "tubes.csv line 3: a wall of nan does not fit an outside diameter of 0.875",
        ),
        ("PEX,0.5,in,0.625,0.07,ASTM F876,read", "tubes.csv line 3: PEX 0.5 in stands here twice"),
    ],
)
def test_a_bad_row_of_the_table_names_its_line(row: str, message: str) -> None:
    with pytest.raises(ValueError, match="tubes") as bad:
        list(read_tubes(f"{HEAD}\n{GOOD}\n{row}\n"))
    assert str(bad.value) == message


def test_a_table_without_its_columns_is_refused() -> None:
    with pytest.raises(ValueError, match="tubes") as bad:
        list(read_tubes(GOOD))
    assert str(bad.value) == (
        "tubes.csv line 1: the columns must be material, size, unit, outside, wall, standard, status"
    )


def test_every_row_of_the_table_is_found_by_its_own_name() -> None:
    assert len(TABLE) == 143
    assert tuple(every_tube()) == TABLE
    for each in TABLE:
        assert tube(f"{each.material} {each.size}") == each


def test_every_row_of_the_table_says_where_it_is_from() -> None:
    for each in TABLE:
        assert each.source.startswith(("ASTM ", "EN "))
        assert ", read in " in each.source or each.source.endswith(", from memory")


def test_a_larger_size_of_a_material_holds_more() -> None:
    materials = {each.material for each in TABLE}
    for material in sorted(materials):
        held = [each.volume_m3_per_m for each in TABLE if each.material == material]
        assert held == sorted(held)

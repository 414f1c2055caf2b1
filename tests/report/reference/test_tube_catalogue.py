"""The tubes as an author looks them up."""

import math

import pytest

from plumbnet.layout.units.tubes import every_tube
from plumbnet.report.reference.tube_catalogue import tube_names, tube_text, tubes_text


def test_every_sort_of_tube_is_listed_with_its_standard() -> None:
    told = tubes_text()
    assert tube_names() == tuple(dict.fromkeys(each.material for each in every_tube()))
    assert all(f"\n{name} " in told for name in tube_names())
    for standard in ("EN 1057", "EN ISO 15875-2", "EN ISO 21003", "EN 10312", "EN 10255", "ASTM B88"):
        assert standard in told


def row(text: str, size: str) -> list[str]:
    line = next(line for line in text.splitlines() if line.startswith(f"{size} "))
    return line.removeprefix(size).split()


def test_tube_is_told_size_by_size_with_what_it_holds_per_metre_and_per_foot() -> None:
    cells = row(tube_text("copper-EN"), "22 mm")
    litres = math.pi / 4 * 0.2**2 * 10  # a bore of 20 mm, in decimetres
    assert cells == ["22.0", "mm", "1.0", "mm", "20.0", "mm", f"{litres:.4g}", "L", "0.0253", "gal"]
    assert float(cells[-2]) == pytest.approx(litres * 0.3048 / 3.785411784, rel=1e-3)
    assert row(tube_text("copper-L"), "3/4 in")[:6] == ["0.875", "in", "0.045", "in", "0.785", "in"]
    assert row(tube_text("steel-M"), "DN 20")[:4] == ["26.9", "mm", "2.6", "mm"]


def test_family_is_told_whole_and_a_name_that_stands_for_itself_alone_is_not() -> None:
    copper = tube_text("Copper")
    assert [line for line in copper.splitlines() if line.startswith("copper-")] == [
        name for name in tube_names() if name.startswith("copper-")
    ]
    assert "pex-S5" not in tube_text("pex")
    assert tube_text("PEX-s5").startswith("pex-S5\n")


@pytest.mark.parametrize("name", ["lead", "copper-Q", ""])
def test_name_that_no_tube_has_is_refused(name: str) -> None:
    with pytest.raises(KeyError):
        tube_text(name)


def test_what_is_from_memory_says_so() -> None:
    assert "- EN 10312 series 2, from memory" in tube_text("stainless")
    assert "Dimensions are nominal" in tube_text("stainless")

from drawing_board import sketch

from plumbnet.drawing.ink.legend import entries
from plumbnet.report.schematic.legend_words import LEGEND


def words(runs: str) -> list[str]:
    house = sketch(runs)
    return [entry.words for entry in entries(house.composition, LEGEND)]


def test_legend_names_what_is_there_and_nothing_else() -> None:
    assert words("street -> valve -> tap.cold") == ["cold water", "main", "valve", "fixture"]
    assert words("street -> cv -> heater -> tap.hot") == [
        "cold water",
        "hot water",
        "sealed zone: no relief valve in reach, danger",
        "stops the water on its way out",
        "main",
        "check valve",
        "storage heater",
        "fixture",
    ]


def test_way_out_and_return_are_explained_where_they_are_drawn() -> None:
    found = words("street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1")
    assert "way out for growing water" in found
    assert "return, and its direction" in found


def test_hop_is_explained_where_pipes_cross() -> None:
    ladder = "street -> tee1 -> heater -> tee2 -> tap1.hot\ntee1 -> tap1.cold"
    crossed = (
        "street -> tee1 -> heater -> tee2 -> tap1.hot\ntee1 -> tap1.cold\ntee1 -> valve1 -> tee3 -> tap2.cold\n"
        "tee2 -> valve2 -> tee4 -> tap2.hot\ntee3 -> tap3.cold\ntee4 -> tap3.hot\ntee1 -> valve3 -> tee4"
    )
    assert "pipes pass, not joined" not in words(ladder)
    assert "pipes pass, not joined" in words(crossed)

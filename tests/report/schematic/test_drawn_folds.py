from conftest import system
from tall_buildings import tall, tower

import plumbnet
from plumbnet.report.schematic.drawn_folds import fold_rows, is_riser_diagram


def test_everything_that_is_drawn_once_is_listed_with_all_its_names() -> None:
    report = tall(tower(storeys=5, shafts=3)).report
    assert is_riser_diagram(report)
    flats, shafts = fold_rows(report)
    assert flats[:3] == ("A", "15", "flat1a")
    assert flats[3].split(", ")[:4] == ["flat1a", "flat1b", "flat1c", "flat2a"]
    assert len(flats[3].split(", ")) == 15
    assert shafts[:2] == ("shaft", "3")
    assert {"balance-a", "swing-c", "flat5b"} <= set(shafts[3].split(", "))


def test_a_house_has_nothing_drawn_once() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot"))
    assert not is_riser_diagram(report)
    assert fold_rows(report) == ()

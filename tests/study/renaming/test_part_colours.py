"""Colours that are alike where surroundings are."""

from conftest import system

from plumbnet.study.renaming.part_colours import Side, beside, refined
from plumbnet.study.renaming.surroundings import surroundings

# street -> tee1 -> tap1          street -> east -> sink
#           tee1 -> tee2 -> tap2            east -> west -> basin
OLD = surroundings(system("street -> tee1 -> tap1.cold\ntee1 -> tee2 -> tap2.cold"))
NEW = surroundings(system("street -> east -> tap.cold\neast -> west -> tap9.cold", east="kind: tee", west="kind: tee"))


def kinds(part: object) -> str:
    return type(part).__name__


def test_parts_are_coloured_by_what_lies_further_and_further_out() -> None:
    old, new = refined((Side(OLD, {}), Side(NEW, {})), kinds)
    assert old == {
        "street": new["street"],
        "tee1": new["east"],
        "tap1": new["tap"],
        "tee2": new["west"],
        "tap2": new["tap9"],
    }
    assert len(set(old.values())) == len(old)


def test_part_that_is_paired_has_no_colour_and_gives_its_neighbours_theirs() -> None:
    old, new = refined((Side(OLD, {"street": "street"}), Side(NEW, {"street": "street"})), kinds)
    assert "street" not in old
    assert old["tee1"] == new["east"]
    other, _ = refined((Side(OLD, {"street": "main"}), Side(NEW, {"street": "street"})), kinds)
    _, wrong = refined((Side(OLD, {"street": "main"}), Side(NEW, {"street": "street"})), kinds)
    assert other["tee1"] != wrong["east"]


def test_beside_nothing_that_is_paired_there_is_no_colour() -> None:
    old, new = beside(Side(OLD, {"tee1": "east"}), Side(NEW, {"east": "east"}))
    assert sorted(old) == ["street", "tap1", "tee2"]
    assert old["tee2"] == new["west"]
    assert old["tap1"] == new["tap"]
    assert beside(Side(OLD, {}), Side(NEW, {})) == ({}, {})

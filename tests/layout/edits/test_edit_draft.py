"""What every change needs: parts found, made, put in their place; or a refusal in words."""

import pytest
from conftest import system

from plumbnet.layout.edits.edit_draft import ChangeError, made, new_part, part_named, placed_part, refusal, unknown_kind
from plumbnet.layout.model.change import PlacedPart

HOUSE = system("street -> valve -> tap.hot")


def test_refusal_is_one_sentence_with_its_advice() -> None:
    assert str(refusal("it is shut", "open it")) == "it is shut; open it"
    assert str(refusal("no such valve", "look again", meant=("valv", ["valve"]))) == (
        'no such valve: did you mean "valve"?'
    )


def test_part_is_found_by_its_name() -> None:
    assert part_named(HOUSE, "valve") is HOUSE.parts["valve"]
    with pytest.raises(ChangeError, match='no part is called "valv": did you mean "valve"'):
        part_named(HOUSE, "valv")


def test_kind_that_there_is_not_is_told_with_the_nearest() -> None:
    assert str(unknown_kind("chek_valve")).endswith('"chek_valve": did you mean "check_valve"?')
    assert str(unknown_kind("spaceship")).startswith('unknown kind "spaceship"; ')
    assert str(unknown_kind("spaceship")).endswith("plumbnet kinds lists them all")
    assert str(unknown_kind(None)) == "a kind is a word, not nothing; for example kind: valve"


def test_new_part_needs_a_name_of_its_own() -> None:
    with pytest.raises(ChangeError, match="valve is there already; give the new part a name of its own"):
        new_part(HOUSE, PlacedPart(part="valve", kind="tee"))
    with pytest.raises(ChangeError, match='"a/b" is no name for a part; use up to 60 letters, digits, _ and -'):
        new_part(HOUSE, PlacedPart(part="a/b", kind="tee"))


def test_part_in_its_place_keeps_the_order_of_the_file() -> None:
    written = {"kind": "meter", "check": True}
    after = placed_part(HOUSE, "valve", made(HOUSE, "valve", written), written)
    assert list(after.parts) == ["street", "valve", "tap"]
    assert after.parts["valve"].kind == "meter"
    assert after.pipes == HOUSE.pipes

"""The kinds as an author looks them up; golden/kinds.out holds some whole."""

import json

import pytest
from usual import field_names

from plumbnet.layout.model.part import KINDS
from plumbnet.report.reference.kind_catalogue import CATALOGUE_WIDTH, kind_text, kinds_text, schema_text


def test_every_kind_is_listed_once_in_the_order_of_the_alphabet() -> None:
    names = [line.split()[0] for line in kinds_text().splitlines() if not line.startswith(" ")]
    assert names == sorted(KINDS)


def test_no_line_is_wider_than_a_page() -> None:
    for text in (kinds_text(), *(kind_text(name) for name in KINDS)):
        assert max(map(len, text.splitlines())) <= CATALOGUE_WIDTH
        assert text.endswith("\n")
        assert not text.endswith("\n\n")


@pytest.mark.parametrize("name", sorted(KINDS))
def test_kind_is_told_with_every_port_field_default_and_failure(name: str) -> None:
    text = kind_text(name)
    lines = text.splitlines()
    assert lines[0] == name
    for field in field_names(name):
        (line,) = [line for line in lines if line.startswith(f"  {field}: ")]
        told = text[text.index(line) :].split(".")[0]
        assert "required" in told or "default" in told or "may be left out" in told, told
    flat = " ".join(text.split())
    for words in KINDS[name].assumed.values():
        assert f"it {words}" in flat
    failures = ", ".join(KINDS[name].failures)
    assert flat.endswith(f"can fail as: {failures}") if failures else "can fail as" not in flat
    if name != "device":
        assert all(port in flat for port in KINDS[name].ports)


def test_state_names_its_words_and_quantity_its_units() -> None:
    text = kind_text("expansion_tank")
    assert "  state: sound | waterlogged, default" in text
    assert "  volume: volume (gal or L), required." in text


def test_fields_inside_a_field_stand_further_in() -> None:
    assert "\n    pressure: pressure (psi or kPa), " in kind_text("boiler")
    device = kind_text("device")
    assert "  ports: list of names, required." in device
    assert "  passages: list of mappings, required." in device
    assert "\n    one_way: two names" in device
    assert "ports: as its author writes them" in device


def test_port_that_takes_any_number_of_pipes_says_so() -> None:
    assert "ports: joint (any number of pipes)\n" in kind_text("tee")


def test_kind_that_there_is_not_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        kind_text("spaceship")


def test_schema_is_json_of_plain_ascii() -> None:
    text = schema_text({"title": "\u00b0C"})
    assert text.isascii()
    assert json.loads(text) == {"title": "\u00b0C"}

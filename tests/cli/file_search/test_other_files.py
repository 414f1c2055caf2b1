"""What a file is that was found in a folder and is no layout."""

import pytest

from plumbnet.cli.file_search.other_files import OtherFile, other_file


def told(text: str) -> OtherFile:
    found = other_file(text.encode())
    assert found is not None
    return found


@pytest.mark.parametrize(
    "key",
    ["Plumbnet", "PLUMBNET", "plumnet", "plumbet", "plumbnett", "plmubnet", "plumb-net", "pIumbnet", '"plumbnet "'],
)
def test_slip_of_the_key_is_one_with_its_place(key: str) -> None:
    found = told(f"title: A\n{key}: 1\nparts: {{}}\n")
    assert found.is_slip
    assert (found.fault.line, found.fault.column) == (2, 1)
    assert found.fault.text.startswith('a layout has the key "plumbnet" at its top, and this file has "')
    assert found.fault.hint == "write plumbnet: 1"


@pytest.mark.parametrize("text", ["plumber: Joe\n", "plumbing: 1\n", "pipes: 1\nparts: {}\n", "a: {plumnet: 1}\n"])
def test_another_word_is_no_slip(text: str) -> None:
    assert not told(text).is_slip


def test_slip_needs_a_number_or_parts_and_runs_beside_it_but_not_for_its_case() -> None:
    assert not told("plumnet: see below\n").is_slip
    assert told("plumnet: one\nruns: []\n").is_slip
    assert told("PlumbNet: one\n").is_slip


@pytest.mark.parametrize(
    ("text", "sort", "why"),
    [
        ("services: {}\n", "not a layout", "it has no key plumbnet at its top"),
        (
            "parts: {}\nruns: []\n",
            "not a layout",
            "it has no key plumbnet at its top; with plumbnet: 1 its parts and runs would be read",
        ),
        ("- a\n- b\n", "not a layout", "it has no key plumbnet at its top"),
        ("", "not a layout", "it is empty"),
        ("# nothing\n", "not a layout", "it is empty"),
        ("profile: town\n", "rule profile", "it judges where --rules names it"),
        ("plumbnet-acceptances: 1\n", "list of acceptances", "it counts where --own-acceptances names it"),
        ("plumbnet-questions: 1\n", "file of questions", "plumbnet exercise --from asks what stands in it"),
        ("plumbnet-results: 1\n", "results of exercises", "plumbnet class reads it"),
    ],
)
def test_sort_is_told_with_its_reason(text: str, sort: str, why: str) -> None:
    found = told(text)
    assert (found.sort, found.fault.sentence, found.is_slip) == (sort, why, False)


def test_what_is_no_yaml_is_told_with_the_place() -> None:
    found = told("services: [\n")
    assert found.fault.line == 1
    assert found.fault.text.startswith("it is no YAML that can be read: ")


@pytest.mark.parametrize(
    "text", ["plumbnet: 1\n", "plumbnet: [\n", "plumnet: 1\nparts: [\n", "{Plumbnet: 1, parts: [\n"]
)
def test_layout_and_what_may_be_meant_for_one_are_left_to_the_reader(text: str) -> None:
    assert other_file(text.encode()) is None

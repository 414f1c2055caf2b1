"""The inspector's own list: what it says, for which files, and what is wrong with one."""

from pathlib import Path

import pytest

from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.accepting.own_acceptances import (
    OwnAcceptance,
    OwnAcceptances,
    own_acceptances_at,
    read_own_acceptances,
)

ENTRY = "{file: bakery.yaml, finding: relief-missing, part: heater, reason: seen on site}"


def read(*entries: str, head: str = "plumbnet-acceptances: 1\n") -> OwnAcceptances:
    return read_own_acceptances((f"{head}accept:\n" + "".join(f"  - {one}\n" for one in entries)).encode(), file="own")


def refused(data: str) -> str:
    with pytest.raises(LayoutError) as caught:
        read_own_acceptances(data.encode(), file="own.yaml")
    return str(caught.value)


def test_entries_are_read_with_their_lines_and_the_sum_of_the_file() -> None:
    found = read(ENTRY, ENTRY.replace("part: heater", "parts: [heater, tank]"))
    assert [(one.finding, one.names) for one in found.accept] == [
        ("relief-missing", ("heater",)),
        ("relief-missing", ("heater", "tank")),
    ]
    assert (found.file, found.lines, len(found.sha256)) == ("own", (3, 4), 64)


def test_list_of_a_file_is_called_as_its_path(tmp_path: Path) -> None:
    path = tmp_path / "own.yaml"
    path.write_text("plumbnet-acceptances: 1\naccept: []\n")
    assert own_acceptances_at(str(path)).file == str(path)


@pytest.mark.parametrize(
    ("pattern", "file", "is_meant"),
    [
        ("bakery.yaml", "bakery.yaml", True),
        ("bakery.yaml", "plans/south/bakery.yaml", True),
        ("south/bakery.yaml", "plans/south/bakery.yaml", True),
        ("north/bakery.yaml", "plans/south/bakery.yaml", False),
        ("*.yaml", "plans/south/bakery.yaml", True),
        ("plans/*.yaml", "plans/south/bakery.yaml", False),
        ("/plans/bakery.yaml", "/plans/bakery.yaml", True),
        ("bakery", "bakery.yaml", False),
        ("[1].yaml", "[1].yaml", True),
        ("standard input", "standard input", True),
    ],
)
def test_file_is_meant_by_the_end_of_its_path(pattern: str, file: str, *, is_meant: bool) -> None:
    assert OwnAcceptance(file=pattern, finding="x", part="p", reason="r").is_for(file) is is_meant


def test_sealed_heater_is_accepted_by_no_list() -> None:
    sealed = ENTRY.replace("relief-missing", "sealed-heater")
    told = '"sealed-heater" is a danger to life and is accepted by no list'
    assert refused(f"plumbnet-acceptances: 1\naccept:\n  - {sealed}\n").splitlines() == [
        f"own.yaml:3:34: {told}; have the layout put right, and take this entry out",
        f"  3 |   - {sealed}",
        "    |                                  ^~~~~~~~~~~~~",
    ]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("plumbnet-acceptances: 2\naccept: []\n", "own.yaml:1:23: plumbnet-acceptances: write 1, not 2"),
        (
            "accept: []\n",
            'own.yaml:1:1: a list of acceptances needs "plumbnet-acceptances"; for example plumbnet-acceptances: 1',
        ),
        ("- 1\n", "own.yaml:1:1: a list of acceptances is a mapping; begin it with plumbnet-acceptances: 1"),
        (
            "plumbnet-acceptances: 1\naccept:\n  - {file: a, finding: heat-sok, part: h, reason: so}\n",
            'own.yaml:3:24: no finding is called "heat-sok": did you mean "heat-soak"?',
        ),
        (
            "plumbnet-acceptances: 1\naccept:\n  - {file: a, finding: heat-soak, part: h, reason: ..}\n",
            'own.yaml:3:52: reason: say why in words, not ".."',
        ),
        (
            "plumbnet-acceptances: 1\naccept:\n  - {finding: heat-soak, part: h, reason: so}\n",
            'own.yaml:3:5: an acceptance needs "file"; for example file: bakery.yaml',
        ),
        (
            "plumbnet-acceptances: 1\naccept:\n  - {file: a, until: 2027, finding: heat-soak, part: h, reason: so}\n",
            'own.yaml:3:15: an acceptance has no field "until"; its fields are finding, part, parts, reason, file',
        ),
        (
            "plumbnet-acceptances: 1\naccept:\n  - {file: ., finding: heat-soak, part: h, reason: so}\n",
            'own.yaml:3:12: file: "." names no file',
        ),
        ("plumbnet-acceptances: 1\naccept: 5\n", "own.yaml:2:9: accept: a list is wanted here, not 5"),
        ("plumbnet-acceptances: 1\naccept: {}\n", "own.yaml:2:1: accept: a list is wanted here, not a mapping"),
        (
            "plumbnet-acceptances: [\n",
            "own.yaml:1:24: the file ends where a value is wanted; a bracket may be left open",
        ),
    ],
)
def test_mistake_is_told_with_its_place(text: str, told: str) -> None:
    assert refused(text).splitlines()[0] == told

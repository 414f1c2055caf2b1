"""Files that bring assemblies."""

import pytest

from plumbnet.layout.file.assembly_files import Shelf
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import AssemblyFile
from plumbnet.layout.rewriting.rewritten_layout import rewritten
from plumbnet.layout.yaml.fault import LayoutError

ROOM = b"assemblies: {room: {ports: [c], parts: {c: tee, tap: fixture}, runs: [c -> tap.cold]}}"
PARTS = b"parts: {street: {kind: main, pressure: 60 psi}, r: {use: room, times: 2}}"
TWO = b"plumbnet: 1\n" + PARTS + b"\nruns: [street -> r/1.c, r/1.c -> r/2.c]"


NO_SET = "a file of assemblies is a mapping with the key assemblies; for example assemblies: {}"
NO_FIELD = 'a file of assemblies has no field "part"; its fields are plumbnet, title, assemblies'


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (b"parts: {a: tee}", f"f:1:1: {NO_SET}"),
        (b"plumbnet: 2\nassemblies: {}", "f:1:11: this program reads format 1 of the file, not 2; write plumbnet: 1"),
        (b"assemblies: {}\npart: {}", f"f:2:1: {NO_FIELD}"),
        (b"assemblies: {", "f:1:14: the file ends where a value is wanted; a bracket may be left open"),
        (b"\xff", "f:1:1: the byte 0xFF is not UTF-8; save the file in the encoding UTF-8"),
    ],
)
def test_what_is_no_such_file_says_why(data: bytes, told: str) -> None:
    with pytest.raises(LayoutError) as caught:
        Shelf.of([AssemblyFile("f", data)])
    assert str(caught.value).splitlines()[0] == told


def test_parts_stand_at_the_line_that_asked_for_them() -> None:
    system = read_system(TWO, file="row.yaml", shelf=[AssemblyFile("shelf.yaml", ROOM)])
    assert list(system.parts) == ["street", "r/1/c", "r/1/tap", "r/2/c", "r/2/tap"]
    assert system.line_of("r/2/tap") == 2
    assert {pipe.line for pipe in system.pipes} == {2, 3}


def test_mistakes_of_both_files_are_told_one_below_the_other() -> None:
    bad = ROOM.replace(b"tap.cold", b"tapp.cold")
    with pytest.raises(LayoutError) as caught:
        read_system(TWO.replace(b"r/2.c]", b"r/3.c]"), file="row.yaml", shelf=[AssemblyFile("shelf.yaml", bad)])
    lines = [line for line in str(caught.value).splitlines() if ".yaml:" in line]
    assert [line.partition(": ")[0] for line in lines] == ["row.yaml:3:34", "shelf.yaml:1:76"]


def test_a_changed_text_is_read_again_with_the_same_files() -> None:
    system = read_system(TWO, file="row.yaml", shelf=[AssemblyFile("shelf.yaml", ROOM)])
    text = rewritten(system, [Change.model_validate({"set": {"part": "r/2/tap", "crossover": True}})])
    assert text.endswith("\nchange: [{set: {part: r/2/tap, crossover: true}}]")

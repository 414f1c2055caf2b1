"""What is wrong in an assembly, told once."""

from assembling import told_and_written

from plumbnet.layout.assemblies.definition import WrittenAt
from plumbnet.layout.assemblies.told_once import TextSource, ToldOnce, Where
from plumbnet.layout.model.validation_messages import Mistake
from plumbnet.layout.yaml.source import parse_yaml

ROOM = """
assemblies: {room: {ports: [cold], parts: {cold: tee, tap: fixture}, runs: [cold -> tapp.cold]}}
"""


def test_a_mistake_of_two_hundred_instances_is_told_once_with_the_first() -> None:
    told, _out = told_and_written(
        f"{ROOM}parts: {{a: tee, rooms: {{use: room, times: 200}}}}\nruns: [a -> rooms/each.cold]"
    )
    tail = "(assembly room, as rooms/1 and 199 more, asked for in line 4)"
    assert told == [f"no part is named tapp; did you mean tap? {tail}"]


def test_one_in_another_file_says_which_file_asked_for_it() -> None:
    text = "parts: {a: tee, r: {use: room}}\nruns: [a -> r.cold]"
    told, _out = told_and_written(text, ROOM)
    assert told == ["no part is named tapp; did you mean tap? (assembly room, as r, asked for in line 2 of file0)"]


def test_names_inside_the_instance_lose_what_is_before_them() -> None:
    root = parse_yaml("parts: {rooms: {use: room}}", [])
    assert root is not None
    once = ToldOnce([TextSource("f", root)])
    for number in ("1", "2"):
        where = Where("room", f"rooms/{number}", WrittenAt(0, ("parts", "rooms")))
        once.tell(0, Mistake(("parts",), f"rooms/{number}/tap is shut", "open it"), where)
    assert [str(mistake) for _source, mistake, _stop in once.all()] == [
        "tap is shut; open it (assembly room, as rooms/1 and 1 more, asked for in line 1)"
    ]

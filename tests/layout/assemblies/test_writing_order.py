"""The order of the rules: assemblies by themselves, counts, then all written out."""

from assembling import told_and_written, written

ROOM = "room: {ports: [c], parts: {c: tee, tap: fixture}, runs: [c -> tap.cold]}"


def test_the_layouts_own_assembly_counts_before_one_of_another_file() -> None:
    other = "assemblies: {room: {ports: [c], parts: {c: tee}}}"
    out = written(f"assemblies: {{{ROOM}}}\nparts: {{a: tee, r: {{use: room}}}}\nruns: [a -> r.c]", other)
    assert [name for name, *_ in out.parts] == ["a", "r/c", "r/tap"]


def test_what_is_wrong_in_several_places_comes_in_one_go() -> None:
    parts = "{a: tee, r: {use: rom}, s: {use: room, times: 2}}"
    text = f"assemblies: {{{ROOM}}}\nparts: {parts}\nruns: [a -> s.c, a -> s/3.c]"
    told, out = told_and_written(text)
    assert len(told) == 3
    assert out is not None
    assert [name for name, *_ in out.parts] == ["a", "s/1/c", "s/1/tap", "s/2/c", "s/2/tap"]


def test_inner_changes_come_before_outer_ones() -> None:
    room = ROOM.replace("runs:", "change: [{remove: tap}], runs:")
    parts = "{a: tee, r: {use: room, times: 2}}"
    text = f"assemblies: {{{room}}}\nparts: {parts}\nruns: [a -> r/each.c]\nchange: [{{remove: a}}]"
    wheres = [one.where and one.where.instance for one in written(text).changes]
    assert wheres == ["r/1", "r/2", None]

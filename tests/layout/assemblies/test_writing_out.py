"""Parts written out: heights, what instances give the parts inside, what is shared."""

from assembling import written

from plumbnet.layout.assemblies.writing_out import height_above

ROOM = (
    "room: {ports: [c], parts: {c: tee, tap: {kind: fixture, elevation: 3 ft}, s: valve}, runs: [c -> s -> tap.cold]}"
)


def values(assemblies: str, parts: str, runs: str, field: str) -> dict[str, object]:
    out = written(f"assemblies: {{{assemblies}}}\nparts: {{a: tee, {parts}}}\nruns: [{runs}]")
    return {name: part.fields[field] for name, part, _ in out.parts if field in part.fields}


def test_heights_inside_count_from_the_instance_and_nested_ones_add() -> None:
    rooms = "{use: room, times: 2, elevation: [1 ft, 2 ft]}"
    floor = f"{ROOM}, floor: {{ports: {{c: r/1.c}}, parts: {{t: tee, r: {rooms}}}, runs: [t -> r/2.c]}}"
    heights = values(
        floor, "f: {use: floor, times: 2, elevation: {first: 10 ft, step: 10 ft}}", "a -> f/each.c", "elevation"
    )
    assert [heights[f"f/{k}/r/{n}/tap"] for k in (1, 2) for n in (1, 2)] == ["14 ft", "15 ft", "24 ft", "25 ft"]
    assert heights["f/2/t"] == "20 ft"
    assert heights["f/2/r/2/s"] == "22 ft"


def test_without_a_height_of_its_own_an_instance_adds_nothing() -> None:
    assert values(ROOM, "r: {use: room}", "a -> r.c", "elevation") == {"r/tap": "3 ft"}


def test_each_gives_a_value_to_a_part_inside_and_counts_who_bears_it() -> None:
    given = "r: {use: room, times: 3, each: {s: {state: [open, shut, open]}, tap: {rating: 100 psi}}}"
    assert values(ROOM, given, "a -> r/each.c", "state") == {"r/1/s": "open", "r/2/s": "shut", "r/3/s": "open"}
    assert set(values(ROOM, given, "a -> r/each.c", "rating").values()) == {"100 psi"}


def test_each_of_the_outer_instance_counts_over_that_of_the_inner() -> None:
    own = "{use: room, each: {s: {state: open, rating: 9 bar}}}"
    floor = f"{ROOM}, floor: {{ports: {{c: r.c}}, parts: {{r: {own}}}}}"
    given = "f: {use: floor, times: 2, each: {r: {each: {s: {state: [shut, open]}}}}}"
    assert values(floor, given, "a -> f/each.c", "state") == {"f/1/r/s": "shut", "f/2/r/s": "open"}
    assert values(floor, given, "a -> f/each.c", "rating") == {"f/1/r/s": "9 bar", "f/2/r/s": "9 bar"}


def test_parts_that_have_the_same_values_share_them() -> None:
    out = written(f"assemblies: {{{ROOM}}}\nparts: {{a: tee, r: {{use: room, times: 50}}}}\nruns: [a -> r/each.c]")
    assert len({id(part) for _, part, _ in out.parts}) == 4
    assert out.groups == {"r": tuple(map(str, range(1, 51)))}


def test_a_height_that_is_none_is_left_to_the_reader_of_the_kind() -> None:
    assert height_above("10 ft", "high", "us") == "high"
    assert height_above("10 ft", None, "us") == "10 ft"
    assert height_above(None, "3 ft", "us") == "3 ft"

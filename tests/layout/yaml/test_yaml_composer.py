"""What is refused or passed over while the events of a file are read."""

import pytest

from plumbnet.layout.yaml import yaml_composer as reading
from plumbnet.layout.yaml.fault import Fault, LayoutError
from plumbnet.layout.yaml.node import YamlNode
from plumbnet.layout.yaml.source import parse_yaml
from plumbnet.layout.yaml.yaml_composer import MAX_DEPTH, MAX_FAULTS


def refused(text: str) -> str:
    faults: list[Fault] = []
    assert parse_yaml(text, faults) is None
    return str(LayoutError("f", faults, text))


def passed_over(text: str) -> tuple[YamlNode, str]:
    faults: list[Fault] = []
    node = parse_yaml(text, faults)
    assert node is not None
    return node, str(LayoutError("f", faults, text))


def read(text: str) -> YamlNode:
    faults: list[Fault] = []
    node = parse_yaml(text, faults)
    assert faults == []
    assert node is not None
    return node


def bomb(*, levels: int) -> str:
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, levels)]
    return "\n".join(lines)


def test_key_written_twice_names_the_first_line() -> None:
    node, said = passed_over("tank: 1\nsink: 2\ntank: 3\n")
    assert said.startswith('f:3:1: the key "tank" ')
    assert " the first is in line 1\n" in said
    assert said.endswith("\n    | ^~~~")
    assert node.value == {"tank": 3, "sink": 2}


def test_key_written_three_times_names_the_first_line_each_time() -> None:
    _, said = passed_over("a: 1\na: 2\na: 3\n")
    assert said.count("the first is in line 1") == 2


def test_number_and_text_make_the_same_key() -> None:
    _, said = passed_over("1: a\n'1': b\n")
    assert "written a second time" in said


def test_same_key_in_two_mappings_is_fine() -> None:
    assert read("a: {kind: tee}\nb: {kind: tee}").value == {"a": {"kind": "tee"}, "b": {"kind": "tee"}}


def test_merge_key_brings_the_entries_of_an_anchor_and_own_ones_count() -> None:
    node = read("x: &x {a: 1, b: 7}\ny:\n  <<: *x\n  b: 2\n")
    assert node.value == {"x": {"a": 1, "b": 7}, "y": {"a": 1, "b": 2}}
    y = node.at("y")
    assert isinstance(y.items, dict)
    assert list(y.items) == list(y.keys or {}) == ["a", "b"]
    assert (y.at("a").line, y.at("b").line) == (1, 4)


def test_of_several_that_are_merged_the_first_counts() -> None:
    node = read("x: &x {a: 1}\nz: &z {a: 2, c: 3}\ny: {<<: [*x, *z], d: 4}\nw: &w {<<: *z}\nv: {<<: *w}")
    assert node.at("y").value == {"a": 1, "c": 3, "d": 4}
    assert node.at("v").value == {"a": 2, "c": 3}


def test_merge_key_of_what_is_no_mapping_is_passed_over() -> None:
    node, said = passed_over("x: &x {a: 1}\ny:\n  <<: [*x, 3]\n  b: 2\n")
    assert said == (
        'f:3:3: a merge key "<<" stands for a mapping that bears an anchor, or a list of them; write <<: *name\n'
        "  3 |   <<: [*x, 3]\n    |   ^~"
    )
    assert node.at("y").value == {"b": 2}


def test_merge_key_in_quotes_is_a_key() -> None:
    assert read("{'<<': 3}").value == {"<<": 3}


def test_merged_entries_count_within_the_bounds() -> None:
    wide = ", ".join(f"k{k}: {k}" for k in range(1000))
    text = f"x: &x {{{wide}}}\n" + "".join(f"y{k}: {{<<: *x}}\n" for k in range(600))
    said = refused(text)
    assert "holds more than 1,000,000 values" in said


def test_two_merge_keys_are_two_faults() -> None:
    node, said = passed_over("<<: 1\n<<: 2\nb: 3\n")
    assert said.count("f:") == 2
    assert node.value == {"b": 3}


@pytest.mark.parametrize("text", ["a: !!python/object/apply:os.system [x]", "a: !!int 5", "a: !x {b: c}", "a: ! b"])
def test_tag_is_passed_over_and_runs_nothing(text: str) -> None:
    _, said = passed_over(text)
    assert said.startswith("f:1:4: a tag ")
    assert said.endswith(f"\n  1 | {text}\n    |    ^")


def test_tag_does_not_change_the_value() -> None:
    node, _ = passed_over("a: !!str 5\nb: !!int '6'\n")
    assert node.value == {"a": 5, "b": "6"}


def test_tag_on_a_key_is_a_fault_too() -> None:
    _, said = passed_over("!!str a: 1")
    assert said.startswith("f:1:1: a tag")


@pytest.mark.parametrize(("text", "column"), [("? [a]\n: b", 3), ("{a: b}: c", 1), ("a: {{x}: y}", 5)])
def test_mapping_or_list_as_key_is_refused(text: str, column: int) -> None:
    assert refused(text).split("\n")[0] == (f"f:1:{column}: a mapping or a list cannot be a key; put the key in quotes")


def test_alias_as_key_is_refused() -> None:
    assert refused("a: &x b\n*x : c").split("\n")[0] == "f:2:1: an alias cannot be a key; write the key out"


def test_alias_stands_for_its_anchor_and_keeps_its_own_place() -> None:
    node = read("a: &pipe {size: 3/4 in}\nb: *pipe\n")
    assert node.value == {"a": {"size": "3/4 in"}, "b": {"size": "3/4 in"}}
    assert (node.at("b").line, node.at("b").column, node.at("b").width) == (2, 4, 5)
    assert (node.at("b", "size").line, node.at("b", "size").column) == (1, 17)


def test_alias_of_a_scalar_has_its_value() -> None:
    assert read("a: &x 62\nb: *x\nc: &y '62'\nd: *y\n").value == {"a": 62, "b": 62, "c": "62", "d": "62"}
    assert read("[&x true, *x, &y ~, *y, &z 'true', *z]").value == [True, True, None, None, "true", "true"]


def test_alias_of_a_key_has_its_text() -> None:
    assert read("&x a: *x").value == {"a": "a"}


def test_anchor_given_anew_counts_from_there() -> None:
    assert read("- &x 1\n- *x\n- &x 2\n- *x\n").value == [1, 1, 2, 2]


def test_alias_without_anchor_is_refused() -> None:
    assert refused("a: *pipe") == ('f:1:4: no anchor "&pipe" stands before this alias\n  1 | a: *pipe\n    |    ^')


@pytest.mark.parametrize("text", ["a: &x [*x]", "a: &x {b: {c: *x}}", "&x a: 1\nb: &x [[*x]]"])
def test_alias_inside_its_own_anchor_is_refused(text: str) -> None:
    assert 'the alias "*x" stands inside what it stands for' in refused(text)


def test_small_tower_of_aliases_is_read() -> None:
    assert read(bomb(levels=4)).at("a3", 0, 0, 0, 0).value == "x"


def test_alias_bomb_is_refused_before_it_grows() -> None:
    first = refused(bomb(levels=9)).split("\n")[0]
    assert first == "f:6:45: the file holds more than 1,000,000 values; split the layout"


def test_size_of_an_anchor_counts_aliases_inside_it() -> None:
    text = bomb(levels=6) + "\nlast: [" + ", ".join(["*a5"] * 2) + "]"
    assert "the file holds more than" in refused(text)


@pytest.mark.parametrize("text", ["[0, 1, 2, 3, 4, 5]", "{a: 0, b: 1, c: 2}", "[[], {}, [], {}, [], {}]"])
def test_every_key_and_every_value_counts(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reading, "MAX_NODES", 7)
    read(text)
    monkeypatch.setattr(reading, "MAX_NODES", 6)
    assert "the file holds more than 6 values" in refused(text)


def test_deepest_nesting_allowed_is_read() -> None:
    assert read("[" * MAX_DEPTH + "]" * MAX_DEPTH).value is not None


@pytest.mark.parametrize("text", ["[" * (MAX_DEPTH + 1) + "]" * (MAX_DEPTH + 1), "- " * 100_000, "{a: " * 100_000])
def test_deeper_nesting_is_refused(text: str) -> None:
    assert "this is nested deeper than 40 levels" in refused(text)


@pytest.mark.parametrize("bracket", "[{")
def test_a_hundred_thousand_brackets_are_refused(bracket: str) -> None:
    assert "nested" in refused(bracket * 100_000)


def test_second_document_is_refused() -> None:
    said = refused("a: 1\n---\nb: 2\n")
    assert said.startswith("f:2:1: a second document ")
    assert said.endswith("\n  2 | ---\n    | ^")


def test_marks_round_a_single_document_are_fine() -> None:
    assert read("%YAML 1.2\n---\na: 1\n...\n").value == {"a": 1}


@pytest.mark.parametrize("text", ["", "\n\n", "# only a remark\n", "---\n...\n# x"])
def test_empty_file_is_refused(text: str) -> None:
    faults: list[Fault] = []
    node = parse_yaml(text, faults)
    if "---" in text:  # an explicit document with nothing in it is a null
        assert node is not None
        assert node.value is None
    else:
        assert faults == [Fault(0, 0, "there is nothing in this file")]


def test_reading_stops_after_very_many_faults() -> None:
    faults: list[Fault] = []
    assert parse_yaml("a: 1\n" * 100_000, faults) is None
    assert len(faults) == MAX_FAULTS + 1
    assert faults[-1] == Fault(1001, 1, "reading stops here", "there are too many faults before")

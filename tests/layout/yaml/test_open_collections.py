from plumbnet.layout.yaml.node import YamlNode
from plumbnet.layout.yaml.open_collections import MERGE, OpenList, OpenMapping


def mapping(**entries: str) -> OpenMapping:
    opened = OpenMapping(1, 1)
    for column, (key, value) in enumerate(entries.items(), start=1):
        opened.name(key, 1, column)
        opened.add(YamlNode(value, 1, column))
    return opened


def test_list_has_what_was_added_in_order_as_nodes_and_as_plain_values() -> None:
    opened = OpenList(3, 5)
    for value in ("a", "b"):
        opened.add(YamlNode(value, 3, 7))
    assert opened.node.value == ["a", "b"]
    assert (opened.node.line, opened.node.column) == (3, 5)


def test_mapping_wants_a_key_and_a_value_in_turn_and_keeps_where_the_first_key_of_a_name_stands() -> None:
    opened = mapping(a="1")
    assert opened.wants_key
    opened.name("a", 2, 1)
    assert not opened.wants_key
    assert opened.keys == {"a": (1, 1)}


def test_dropped_entry_is_gone_from_nodes_values_and_places() -> None:
    opened = mapping(a="1", b="2")
    opened.drop("a")
    assert (list(opened.items), opened.values, list(opened.keys)) == (["b"], {"b": "2"}, ["b"])


def test_merged_entries_stand_where_the_merge_key_stood_and_give_way_to_the_own_and_to_earlier_ones() -> None:
    opened = mapping(a="own", **{MERGE: "*two"}, c="own")
    opened.merge([mapping(a="theirs", b="first").node, mapping(b="second", d="second").node])
    assert opened.values == {"a": "own", "b": "first", "d": "second", "c": "own"}
    assert list(opened.values) == ["a", "b", "d", "c"]

"""The way down a tree of nodes."""

from plumbnet.layout.yaml.node import YamlNode

STREET = YamlNode("street", 4, 5)
RUNS = YamlNode(["street"], 4, 3, [STREET])
LAYOUT = YamlNode({"runs": ["street"]}, 1, 1, {"runs": RUNS}, {"runs": (3, 1)})


def test_path_leads_to_the_node_at_its_end() -> None:
    assert LAYOUT.at() is LAYOUT
    assert LAYOUT.at("runs") is RUNS
    assert LAYOUT.at("runs", 0) is STREET


def test_path_that_leads_nowhere_ends_at_the_last_node_on_it() -> None:
    assert LAYOUT.at("parts", "runs") is LAYOUT
    assert LAYOUT.at("runs", 1) is RUNS
    assert LAYOUT.at("runs", -1) is RUNS
    assert LAYOUT.at("runs", "0") is RUNS
    assert LAYOUT.at(0) is LAYOUT
    assert LAYOUT.at("runs", 0, "further", 7) is STREET

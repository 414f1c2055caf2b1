import networkx as nx

from plumbnet.drawing.riser.likeness.graph_classes import graph_classes


def graph(labels: str, *edges: str) -> "nx.MultiDiGraph[str]":
    """Nodes named by their place, with a letter each for a label; edges as "01" from the first to the second."""
    made: nx.MultiDiGraph[str] = nx.MultiDiGraph()
    for place, label in enumerate(labels):
        made.add_node(str(place), label=label)
    for edge in edges:
        made.add_edge(edge[0], edge[1], label="pipe")
    return made


def test_the_same_but_for_names_is_one_class() -> None:
    one, other = graph("abc", "01", "12"), graph("cab", "12", "20")
    assert graph_classes([one, other, graph("abc", "01", "02"), graph("abd", "01", "12")]) == [0, 0, 2, 3]


#   0 - 1 - 2        0 - 1 - 2 - 3      every node has two neighbours of its own sort: labels refined never tell
#    \_____/    x 2   \         /        two triangles from a hexagon; the exact comparison does
#                      5 - - - 4
def test_what_refined_labels_do_not_tell_apart_is_told_by_comparing_node_by_node() -> None:
    triangles = graph("aaaaaa", "01", "12", "20", "34", "45", "53")
    hexagon = graph("aaaaaa", "01", "12", "23", "34", "45", "50")
    assert graph_classes([triangles, hexagon]) == [0, 1]


def test_edges_count_by_label_and_number() -> None:
    single, double = graph("ab", "01"), graph("ab", "01", "01")
    other = graph("ab")
    other.add_edge("0", "1", label="thin pipe")
    assert graph_classes([single, double, other]) == [0, 1, 2]

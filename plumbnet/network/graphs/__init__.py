"""What the network asks of graphs: dominators, blocks, groups, and all that steps lead to, in the time to read them."""

from plumbnet.network.graphs.biconnected_blocks import blocks
from plumbnet.network.graphs.breadth_first import all_reached, by_start, nearest_first
from plumbnet.network.graphs.dominator_tree import Tree, dominators, spans, under_one
from plumbnet.network.graphs.number_groups import groups

__all__ = ["Tree", "all_reached", "blocks", "by_start", "dominators", "groups", "nearest_first", "spans", "under_one"]

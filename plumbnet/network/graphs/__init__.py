"""What the network asks of graphs of numbers: dominators, blocks, and groups, in the time they take to read."""

from plumbnet.network.graphs.biconnected_blocks import blocks
from plumbnet.network.graphs.dominator_tree import Tree, dominators, spans, under_one
from plumbnet.network.graphs.number_groups import groups

__all__ = ["Tree", "blocks", "dominators", "groups", "spans", "under_one"]

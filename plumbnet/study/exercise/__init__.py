"""Tasks for apprentices: a layout made from a seed, a what-if, a question about it, and what the engine answers."""

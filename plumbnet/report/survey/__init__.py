"""A survey of many layouts: its file of results, its sums, and how people and programs see them."""

"""Histories: in which order and portions heaters warm, and how high each zone can come behind one-way gates."""

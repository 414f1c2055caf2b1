"""Hostile and random layouts: how they are made, what is asked of the program, what counts as a failure."""

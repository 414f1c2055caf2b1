"""Ties network, physics and rules into one Report."""

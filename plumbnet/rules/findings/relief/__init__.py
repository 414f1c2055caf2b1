"""Findings about safety relief valves and expansion relief valves."""

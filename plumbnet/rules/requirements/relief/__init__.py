"""Requirements on safety relief valves and expansion relief valves."""

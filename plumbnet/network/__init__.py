"""Where water may move: passages, zones and gates, pressures, what stops it, loops. Knows no physics, no rules."""

"""Building blocks that layouts of exercises are drawn from, each a part of a building's piping."""

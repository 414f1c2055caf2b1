"""What notebooks and services call by paths and names: sheets, warm-ups, walks, comparisons, pictures, tables."""

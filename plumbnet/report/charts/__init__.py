"""Charts of a report: ladders of pressure, a warm-up in time, and the size of a tank."""

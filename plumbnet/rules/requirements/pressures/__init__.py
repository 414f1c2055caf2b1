"""Requirements on pressures that are too high or too low while nothing is heated, and about boiling."""

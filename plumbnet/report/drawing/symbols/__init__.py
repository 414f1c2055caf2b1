"""The symbols of piping, a function each, by the sort of part they stand for."""

"""Findings about expansion tanks: their size, charge and place."""

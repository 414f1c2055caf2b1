"""Requirements on expansion tanks: their size, charge and place."""

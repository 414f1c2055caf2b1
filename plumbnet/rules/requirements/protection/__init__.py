"""Requirements on what keeps other water out of the drinking water."""

"""Requirements on stores of hot drinking water."""

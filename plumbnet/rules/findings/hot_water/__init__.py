"""Findings about stores of hot drinking water."""

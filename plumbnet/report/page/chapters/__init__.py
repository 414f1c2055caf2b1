"""Chapters of the page: each what it holds of a dossier, as blocks."""

"""Slow answers, written from the definitions alone: every way is walked, every valve is shut."""

"""Runs the command line: python -m plumbnet."""

from plumbnet.cli import app

app()

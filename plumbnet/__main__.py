"""Runs the command line: python -m plumbnet."""

from plumbnet.cli import main

if __name__ == "__main__":
    main()

"""Runs the command line: python -m plumbnet."""

from plumbnet.cli.main import main

if __name__ == "__main__":
    main()

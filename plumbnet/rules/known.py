"""The findings that there are, and what each rests on: filled as they are declared, asked as profiles are read."""

from collections.abc import Collection, Iterator

from plumbnet.layout.yaml import quoted

FINDINGS_ADVICE = "the command plumbnet rules --findings lists them all"

RESTS_ON: dict[str, str | None] = {}
"""By a finding's name the value of a profile that it rests on, empty for none; None where it says its clause itself."""


def unknown_finding(name: str) -> str:
    """What is wrong with the name of a finding that there is not."""
    return f"no finding is called {quoted(name)}"


def without_clause(written: Collection[str], values: Collection[str]) -> Iterator[str]:
    """The findings behind which no clause stands, where a profile has clauses for those `written` and these values."""
    for name, rests_on in RESTS_ON.items():
        if rests_on is not None and name not in written and rests_on not in values:
            yield name

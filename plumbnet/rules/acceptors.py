"""Who accepts a finding, and whose word silences it."""

from enum import StrEnum


class Acceptor(StrEnum):
    """Who accepts a finding: the applicant in the submitted file, or the inspector in a list of his own."""

    APPLICANT = "applicant"
    INSPECTOR = "inspector"


class MayAccept(StrEnum):
    """Whose word silences a finding."""

    ANYBODY = "anybody"
    """The applicant's, in the file, or the inspector's."""
    INSPECTOR = "inspector"
    """The inspector's alone, in a list of his own."""
    NOBODY = "nobody"
    """Nobody's: a danger to life is put right, and no list makes it less."""

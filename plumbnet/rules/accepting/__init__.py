"""Whose word silences a finding: the inspector's own list, and what becomes of it and of what a file accepts."""

from plumbnet.rules.accepting.own_acceptances import (
    OWN_KEY,
    OwnAcceptance,
    OwnAcceptances,
    own_acceptances_at,
    read_own_acceptances,
)
from plumbnet.rules.accepting.silencing import Silenced, Silencer, Word, silenced, silencer_of

__all__ = [
    "OWN_KEY",
    "OwnAcceptance",
    "OwnAcceptances",
    "Silenced",
    "Silencer",
    "Word",
    "own_acceptances_at",
    "read_own_acceptances",
    "silenced",
    "silencer_of",
]

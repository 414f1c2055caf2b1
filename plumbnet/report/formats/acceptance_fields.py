"""Who accepts what, as JSON has it."""

from dataclasses import asdict

from plumbnet.rules import Accepted, Claimed, OwnAcceptances, Word


def accepted_fields(one: Accepted | Claimed) -> dict[str, object]:
    """A finding and who accepts it; `file` is the inspector's list, null where the line is one of the layout."""
    return {
        "finding": asdict(one.finding),
        "reason": one.reason,
        "line": one.line,
        "by": one.by.value,
        "file": one.file or None,
    }


def idle_fields(word: Word) -> dict[str, object]:
    """A word about nothing that was found."""
    names = word.acceptance.names
    return {
        "finding": word.acceptance.finding,
        "part": names[0],
        "parts": list(names),
        "line": word.line,
        "by": word.by.value,
        "file": word.file or None,
    }


def own_fields(own: OwnAcceptances | None) -> dict[str, object] | None:
    """What decides in place of the acceptances in the file; null where those do, a file of null accepts nothing."""
    return None if own is None else {"file": own.file or None, "sha256": own.sha256 or None}

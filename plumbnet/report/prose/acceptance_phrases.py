"""Who accepts which finding, in words: what is silenced, what stands all the same, and what was accepted of nothing."""

from collections.abc import Iterable, Iterator

from plumbnet.layout.yaml import quoted, visible
from plumbnet.rules import Accepted, Acceptor, Claimed, Word, listed


def silenced_in_words(accepted: Iterable[Accepted]) -> str:
    """How many findings are silenced, by whom, and which; empty where none is."""
    return "; ".join(_of_each(tuple(accepted)))


def _of_each(accepted: tuple[Accepted, ...]) -> Iterator[str]:
    for by in Acceptor:
        own = [one.finding for one in accepted if one.by is by]
        if own:
            named = listed([f"{one.name} ({one.parts[0]})" for one in own])
            yield f"{len(own)} accepted by the {by.value}: {named}"


def findings_in_short(*, stand: bool, accepted: Iterable[Accepted]) -> str:
    """What heads the findings: that there are none, and never that alone where somebody silences some."""
    silenced = silenced_in_words(accepted)
    if stand:
        return "Findings:"
    return f"No findings; {silenced}." if silenced else "No findings."


def claim_in_words(one: Claimed) -> str:
    """That somebody accepts a finding that stands, for what reason, and why it stands all the same."""
    return f"The {one.by.value} accepts this ({_place(one)}): {quoted(visible(one.reason))}. It stands: {one.why}."


def accepted_in_words(one: Accepted) -> str:
    """By whom a finding is accepted, and where that is written."""
    return f"accepted by the {one.by.value} in {_place(one)}"


def idle_in_words(words: Iterable[Word]) -> str:
    """What the file accepts and was not found; empty where there is nothing of the sort."""
    names = [one.acceptance.in_words for one in words if one.by is Acceptor.APPLICANT]
    return f"Accepted in the file but not found: {listed(names)}." if names else ""


def _place(one: Accepted | Claimed) -> str:
    return f"{visible(one.file)}, line {one.line}" if one.file else f"line {one.line}"

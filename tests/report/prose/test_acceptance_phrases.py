"""Who accepts what, in words."""

from dataclasses import replace

import pytest
from forms import trapped

from plumbnet.layout.model.acceptance import Acceptance
from plumbnet.report.prose.acceptance_phrases import (
    accepted_in_words,
    claim_in_words,
    findings_in_short,
    idle_in_words,
    silenced_in_words,
)
from plumbnet.rules.accepting.silencing import Word
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.finding import Accepted, Claimed

(FOUND,) = trapped().findings
BY_FILE = Accepted(FOUND, "so be it", 9)
BY_LIST = Accepted(replace(FOUND, name="heat-soak"), "seen", 3, Acceptor.INSPECTOR, "own\x1b.yaml")


def test_silenced_findings_are_told_by_whom() -> None:
    assert silenced_in_words([BY_LIST, BY_FILE, BY_FILE]) == (
        "2 accepted by the applicant: trapped-expansion (heater) and trapped-expansion (heater); "
        "1 accepted by the inspector: heat-soak (heater)"
    )
    assert silenced_in_words([]) == ""


@pytest.mark.parametrize(
    ("stand", "accepted", "words"),
    [
        (False, [], "No findings."),
        (False, [BY_FILE], "No findings; 1 accepted by the applicant: trapped-expansion (heater)."),
        (True, [BY_FILE], "Findings:"),
    ],
)
def test_no_findings_is_never_said_alone_where_some_are_silenced(
    accepted: list[Accepted], words: str, *, stand: bool
) -> None:
    assert findings_in_short(stand=stand, accepted=accepted) == words


def test_place_of_a_word_is_the_line_and_the_list_where_there_is_one() -> None:
    assert accepted_in_words(BY_FILE) == "accepted by the applicant in line 9"
    assert accepted_in_words(BY_LIST) == "accepted by the inspector in own\\x1b.yaml, line 3"
    assert claim_in_words(Claimed(FOUND, "so \x1bbe it", 9, "why not")) == (
        'The applicant accepts this (line 9): "so \\x1bbe it". It stands: why not.'
    )


def test_only_what_the_file_accepts_of_nothing_is_told_of_the_file() -> None:
    one = Acceptance(finding="heat-soak", parts=("heater", "cv"), reason="so")
    words = [Word(one, 9, Acceptor.APPLICANT), Word(one, 3, Acceptor.INSPECTOR, "own.yaml")]
    assert idle_in_words(words) == "Accepted in the file but not found: heat-soak of heater, cv."
    assert idle_in_words(words[1:]) == ""

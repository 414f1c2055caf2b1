"""What a survey asks of every file: by which rules, in which units, what is supposed; as it travels, as it is kept."""

import json
from dataclasses import dataclass
from typing import Final

from plumbnet.layout.units import Units
from plumbnet.report.output import program_version
from plumbnet.rules import GivenRules, OwnAcceptances, rules_in_words
from plumbnet.study.whatif import Supposed

NONE_COUNTS: Final = "none"
"""What stands for the inspector's list where no acceptance counts at all."""


@dataclass(frozen=True, slots=True)
class SurveyQuery:
    """The question of a survey. It can be sent to other processes and machines.

    `own` decides in place of the acceptances in files; None leaves it to them.
    `rules` None: each file's own; `units` those of sentences, None: each file's own.
    """

    rules: GivenRules | None
    units: Units | None
    supposed: Supposed
    own: OwnAcceptances | None = None

    @property
    def own_list(self) -> str | None:
        """What decides in place of the acceptances in files, by name; None where those do."""
        return None if self.own is None else self.own.file or NONE_COUNTS

    def fields(self) -> dict[str, str | None]:
        """All that its answers hang on, under the names of columns: that is one question which has the same."""
        given = self.rules
        return {
            "plumbnet": program_version(),
            "rules": None if given is None else rules_in_words(given.told(lambda profile: profile.profile)),
            "rules_sha256": None if given is None else rules_in_words(given.told(lambda profile: profile.sha256)),
            "units": self.units,
            "own_acceptances": self.own_list,
            "own_sha256": None if self.own is None else self.own.sha256,
            "scenario": self.supposed.scenario,
            "to_each": json.dumps([done.fields() for done in self.supposed.to_each], ensure_ascii=False),
        }

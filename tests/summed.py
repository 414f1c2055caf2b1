"""The sums of a survey in which nothing was met, for tests that say what was."""

from plumbnet.report.output.writer import Fate
from plumbnet.report.survey.survey_entry import WhatIfFate
from plumbnet.report.survey.survey_sums import First, SurveySums

NOTHING = SurveySums(
    is_supposed=True,
    files=dict.fromkeys(Fate, 0),
    missing=0,
    changes=dict.fromkeys(WhatIfFate, 0),
    worse_files=0,
    better_files=0,
    turns={},
    worse_heaters=0,
    better_heaters=0,
    places=First((), 0),
    findings=First((), 0),
    errors=0,
    accepted=0,
    accepted_by={},
    used_lines=frozenset(),
    on_trust=0,
    unknown=0,
    others=First((), 0),
    misread=First((), 0),
)

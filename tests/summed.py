"""The sums of a survey in which nothing was met, for tests that say what was."""

from plumbnet.report.survey.entry import Change
from plumbnet.report.survey.sums import First, Sums
from plumbnet.report.writer import Fate

NOTHING = Sums(
    is_supposed=True,
    files=dict.fromkeys(Fate, 0),
    missing=0,
    changes=dict.fromkeys(Change, 0),
    worse_files=0,
    better_files=0,
    turns={},
    worse_heaters=0,
    better_heaters=0,
    places=First((), 0),
    findings=First((), 0),
    errors=0,
    accepted=0,
    misread=First((), 0),
)

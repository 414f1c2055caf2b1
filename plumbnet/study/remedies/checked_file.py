"""A file that was checked, as writers are handed it: whole, with nothing left to be looked for."""

from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.study.remedies.remedy import Found


@dataclass(frozen=True, slots=True)
class Checked:
    """The answer for one file.

    `remedies` are those of each heater in trouble; None where they were not looked for.
    """

    report: Report
    remedies: Found | None = None

    @property
    def file(self) -> str:
        """The name of the file, as it was given."""
        return self.report.system.record.file

    @property
    def sha256(self) -> str:
        """SHA-256 of the bytes of the file; empty where it was read from none."""
        return self.report.system.record.sha256

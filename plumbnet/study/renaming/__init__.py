"""Two layouts to the parts that only got another name, and a layout or a report told by other names."""

from plumbnet.study.renaming.part_renames import Alike, Rename, Renames, renames
from plumbnet.study.renaming.report_renaming import renamed_report
from plumbnet.study.renaming.surroundings import own_parts
from plumbnet.study.renaming.system_renaming import renamed_system

__all__ = ["Alike", "Rename", "Renames", "own_parts", "renamed_report", "renamed_system", "renames"]

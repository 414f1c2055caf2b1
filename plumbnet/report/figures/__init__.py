"""The colours of what is drawn, and figures as files, the same bytes for the same figure."""

from plumbnet.report.figures.colours import PALETTES, Theme
from plumbnet.report.figures.figure_file import FORMS, Form, bound, saved, settled

__all__ = ["FORMS", "PALETTES", "Form", "Theme", "bound", "saved", "settled"]

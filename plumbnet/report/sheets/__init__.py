"""Calculation sheets for people and for programs."""

from plumbnet.report.sheets.sheet_data import sheets_json
from plumbnet.report.sheets.sheet_report import sheet_blocks, sheets_markdown, sheets_text

__all__ = ["sheet_blocks", "sheets_json", "sheets_markdown", "sheets_text"]

"""Warm-ups for people and for programs."""

from plumbnet.report.warmup.warmup_data import to_csv, warmup_json
from plumbnet.report.warmup.warmup_report import in_words, time_in_words, warmup_text, warmup_told

__all__ = ["in_words", "time_in_words", "to_csv", "warmup_json", "warmup_text", "warmup_told"]

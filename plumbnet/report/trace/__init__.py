"""The way of the water in words: where it pushes, what lets it pass, what stops it."""

from plumbnet.report.trace.hop_sentences import single_hops
from plumbnet.report.trace.trace_report import trace_text

__all__ = ["single_hops", "trace_text"]

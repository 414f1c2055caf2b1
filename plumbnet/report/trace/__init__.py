"""The way of the water in words: where it pushes, what lets it pass, what stops it."""

from plumbnet.report.trace.hop_sentences import single_hops
from plumbnet.report.trace.trace_in_short import ShortTrace, short_trace
from plumbnet.report.trace.trace_report import trace_text

__all__ = ["ShortTrace", "short_trace", "single_hops", "trace_text"]

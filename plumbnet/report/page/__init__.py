"""The report to hand over: one page with everything, as HTML or as PDF."""

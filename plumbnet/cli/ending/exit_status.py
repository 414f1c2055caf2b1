"""What the program says by its exit status."""

FINE, FOUND, NOT_UNDERSTOOD = 0, 1, 2
ON_TRUST = 3
"""No error stands, but one is silenced by nothing but what a file says of itself."""
INTERRUPTED = 130
"""Common practice: 128 and the number of the signal that a key sends."""

"""What the code asks: profiles (data), facts (types), findings (one small file each)."""

from plumbnet.discover import discover
from plumbnet.rules import findings

discover(findings)

"""Long searches: several things at a time, in order, and watched."""

from plumbnet.study.long_runs.parallel import answers, cores
from plumbnet.study.long_runs.progress import Progress, unwatched

__all__ = ["Progress", "answers", "cores", "unwatched"]

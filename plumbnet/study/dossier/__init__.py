"""What is worked out before a page or a chart is written: sheets, sizes of tank, warm-ups, what-ifs, cures."""

from plumbnet.study.dossier.report_dossier import Dossier, dossier
from plumbnet.study.dossier.tank_curves import NoChart, Sizes, sizes
from plumbnet.study.dossier.warm_ups import WarmUps, warm_ups_with_tank
from plumbnet.study.dossier.whole_cure import CuredWhole, cured_whole

__all__ = [
    "CuredWhole",
    "Dossier",
    "NoChart",
    "Sizes",
    "WarmUps",
    "cured_whole",
    "dossier",
    "sizes",
    "warm_ups_with_tank",
]

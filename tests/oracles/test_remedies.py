"""Remedies of random layouts: none fails to be made, each does what it says when it is read back from its YAML."""

from hypothesis import HealthCheck, given, settings

import plumbnet
from oracles.random_layouts import Layout, layouts
from plumbnet.layout.apply import with_changes
from plumbnet.layout.change import Scenario
from plumbnet.layout.system import System
from plumbnet.rules.facts import Verdict
from plumbnet.study.placement import plans
from plumbnet.study.remedies import remedies
from plumbnet.study.scene import TROUBLED
from plumbnet.study.written import change_fields


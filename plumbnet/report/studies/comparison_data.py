"""A layout and its revision as JSON: verdicts and key figures before and after, findings, what was changed."""

from dataclasses import asdict

from plumbnet.analysis import Report
from plumbnet.report.formats import Json, in_order
from plumbnet.report.studies.comparison_report import Comparison
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.compare import Changes, HeaterChange, Named, Revision


def comparison_json(compared: Comparison) -> str:
    """One JSON document, SI and gauge at each heater; fields of the layouts as their file would write them.

    No line break at the end.
    """
    found = compared.difference
    document = {
        "before": _file(compared.before),
        "after": _file(compared.after),
        "is_worse": found.is_worse,
        "is_better": found.is_better,
        "heaters": [_heater(heater) for heater in found.heaters],
        "findings": {
            "new": [asdict(one) for one in found.new],
            "gone": [asdict(one) for one in found.gone],
            "accepted": [asdict(one) for one in found.accepted],
            "altered": [asdict(one) for one in found.altered],
        },
        "changes": _changed(compared.revision),
    }
    return in_order(document)


def _file(report: Report) -> Json:
    return {
        "file": report.system.record.file,
        "sha256": report.system.record.sha256,
        "title": report.system.title,
        "rules": report.rules.named,
        "rules_sha256": report.rules.sha256,
    }


def _heater(heater: HeaterChange) -> Json:
    return {
        "name": heater.name,
        "is_worse": heater.is_worse,
        "is_better": heater.is_better,
        "differs": heater.differs,
        "verdict": {"before": _verdict(heater.before), "after": _verdict(heater.after)},
        "stopped_by": {"before": _stops(heater.before), "after": _stops(heater.after)},
        **{figure.key: {"before": figure.before, "after": figure.after} for figure in heater.figures},
    }


def _verdict(heater: HeaterFacts | None) -> str | None:
    return None if heater is None else heater.verdict.value


def _stops(heater: HeaterFacts | None) -> list[list[str]] | None:
    return None if heater is None else [list(names) for names in heater.stopped_by.sets]


def _changed(revision: Revision) -> Json:
    return {
        "head": [asdict(one) for one in revision.head],
        "parts": _changes(revision.parts),
        "pipes": _changes(revision.pipes),
        "scenarios": _changes(revision.scenarios),
        "accepted": _changes(revision.accepted),
    }


def _changes(changes: Changes) -> Json:
    return {
        "added": [_thing(one) for one in changes.added],
        "removed": [_thing(one) for one in changes.removed],
        "altered": [{"name": one.name, "fields": [asdict(each) for each in one.fields]} for one in changes.altered],
    }


def _thing(thing: Named) -> Json:
    return {"name": thing.name, "kind": thing.kind} if thing.kind else {"name": thing.name}

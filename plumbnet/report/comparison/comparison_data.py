"""A layout and its revision as JSON: verdicts and key figures before and after, findings, what was changed."""

from dataclasses import asdict

from plumbnet.analysis import Report
from plumbnet.report.formats import Json, in_order
from plumbnet.rules import Accepted, Claimed
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.compare import (
    Changes,
    CommentNow,
    Comparison,
    HeaterChange,
    LastReview,
    Named,
    Revision,
    RuleChange,
    SelfAccepted,
)


def comparison_json(compared: Comparison) -> str:
    """One JSON document, SI and gauge at each heater; fields of the layouts as their file would write them.

    No line break at the end.
    """
    found = compared.difference
    document = {
        "before": _file(compared.before),
        "after": _file(compared.after),
        "is_worse": compared.is_worse,
        "is_better": compared.is_better,
        "accepted_by_applicant": [_self_accepted(one) for one in compared.self_accepted],
        "rules": [_rules(one) for one in compared.rules],
        "review": None if compared.review is None else _review(compared.review),
        "comments": [_comment(one) for one in compared.comments],
        "heaters": [_heater(heater) for heater in found.heaters],
        "findings": {
            "new": [asdict(one) for one in found.new],
            "gone": [asdict(one) for one in found.gone],
            "accepted": [asdict(one) for one in found.accepted],
            "altered": [asdict(one) for one in found.altered],
        },
        "changes": _changed(compared.revision),
        "alike": [asdict(one) for one in compared.alike],
    }
    return in_order(document)


def _self_accepted(one: SelfAccepted) -> Json:
    return {"is_new": one.is_new, "is_worse": one.is_worse, **_accepted(one.accepted)}


def _accepted(one: Accepted | Claimed) -> Json:
    return {"finding": asdict(one.finding), **_word(one)}


def _word(one: Accepted | Claimed) -> Json:
    return {"reason": one.reason, "line": one.line}


def _rules(one: RuleChange) -> Json:
    return {
        "circuit": one.circuit or None,
        "before": {"rules": one.before.profile, "rules_sha256": one.before.sha256},
        "after": {"rules": one.after.profile, "rules_sha256": one.after.sha256},
        "values": [asdict(each) for each in one.values],
        "clauses": one.clauses,
    }


def _review(review: LastReview) -> Json:
    return {name: getattr(review, name) for name in ("file", "sha256", "rules", "reviewer", "date")}


def _comment(one: CommentNow) -> Json:
    measured = None if one.now is None else one.now.measured
    return {
        "number": one.number,
        "state": one.state.value,
        "name": one.name,
        "parts": list(one.parts),
        "parts_before": None if one.asked is None else one.asked.parts,
        "answer_before": None if one.asked is None else one.asked.answer.value,
        "answer": None if one.now is None else one.now.word.value,
        "value": None if measured is None else measured.value,
        "bound": None if measured is None else measured.bound,
        "text": one.text,
        "accepted": None if one.accepted is None else {"by": one.accepted.by.value, **_word(one.accepted)},
    }


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
        "renamed": [asdict(one) for one in revision.renamed],
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

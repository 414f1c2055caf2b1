"""The sums of a survey as JSON: what was asked, files, heaters from verdict to verdict, what is worse, findings."""

from collections.abc import Callable
from dataclasses import asdict

from plumbnet.report.formats import Json, in_order
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.report.survey.survey_sums import FilePlace, First, Item, SurveySums


def survey_json(asked: SurveyQuery, sums: SurveySums) -> str:
    """One JSON document, plain ASCII; of a list its first members, and how many more there are. No line break.

    Everything else is in the file of the survey.
    """
    document = {
        "rules": None if asked.rules is None else asked.rules.told(lambda profile: profile.profile),
        "rules_sha256": None if asked.rules is None else asked.rules.told(lambda profile: profile.sha256),
        "own_acceptances": asked.own_list,
        "own_sha256": None if asked.own is None else asked.own.sha256,
        "scenario": asked.supposed.scenario,
        "to_each": [done.fields() for done in asked.supposed.to_each],
        "files": {
            **{fate.replace(" ", "_"): count for fate, count in sums.files.items()},
            "missing": sums.missing,
            "what_if": {change.replace(" ", "_"): count for change, count in sums.changes.items()},
            "worse": sums.worse_files,
            "better": sums.better_files,
        },
        "heaters": {
            "before": sums.before,
            "after": sums.after if sums.is_supposed else None,
            "turned": [{"before": old, "after": new, "heaters": count} for (old, new), count in sums.turns.items()],
            "worse": sums.worse_heaters,
            "better": sums.better_heaters,
        },
        "became_trapped" if sums.is_supposed else "trapped": _first(sums.places, _place),
        "findings": _first(sums.findings, asdict),
        "errors": sums.errors,
        "accepted": sums.accepted,
        "accepted_by": [
            {"by": by.value, "finding": name, "stands": count} for (by, name), count in sums.accepted_by.items()
        ],
        "not_understood": _first(sums.misread, asdict),
        "no_layout": _first(sums.others, asdict),
    }
    return in_order(document)


def _first(first: First[Item], fields: Callable[[Item], Json]) -> Json:
    return {"in_all": first.in_all, "first": [fields(item) for item in first.items]}


def _place(place: FilePlace) -> Json:
    before, after = place.turn
    return {
        "path": place.path,
        "line": place.line,
        "heater": place.name,
        "before": before,
        "after": after,
        "stopped_by": place.stopped_by,
    }

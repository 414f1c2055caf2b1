"""A report to every single credible event and what each would change, the worst first."""

from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report
from plumbnet.layout import shown
from plumbnet.study.contingency.alike_events import AlikeEvents, SweptEvent, alike_events
from plumbnet.study.contingency.contingencies import happenings
from plumbnet.study.contingency.event_pairs import Pairs, pairs_of
from plumbnet.study.contingency.folded_events import FoldedEvents
from plumbnet.study.contingency.outcome import outcome
from plumbnet.study.contingency.worlds import Worlds
from plumbnet.study.long_runs import Progress, unwatched


@dataclass(frozen=True, slots=True)
class Sweep:
    """Every single event of a layout, the worst first; `pairs` are those of two events, where they were asked for."""

    report: Report
    events: tuple[SweptEvent, ...]
    pairs: Pairs | None = None

    @property
    def changing(self) -> tuple[SweptEvent, ...]:
        """The events that change a verdict or bring an error."""
        return tuple(one for one in self.events if not one.outcome.changes_nothing)

    @property
    def alike_changing(self) -> tuple[AlikeEvents, ...]:
        """The same, those together that change the same of parts of one kind."""
        return alike_events(self.changing, self._kinds)

    @property
    def alike_idle(self) -> tuple[AlikeEvents, ...]:
        """The events that change nothing, those together that are the same of parts of one kind."""
        return alike_events((one for one in self.events if one.outcome.changes_nothing), self._kinds)

    @property
    def _kinds(self) -> dict[str, str]:
        return {name: part.kind for name, part in self.report.system.parts.items()}

    @property
    def idle_count(self) -> int:
        """How many events change nothing."""
        return len(self.events) - len(self.changing)

    def to_text(self, *, top: int | None = None) -> str:
        """What `plumbnet sweep` prints of it: the `top` worst events, or all that change something."""
        return shown(self, "text", str, top=top)


def sweep(layout: Layout | Report, *, pairs: bool = False, watch: Progress = unwatched) -> Sweep:
    """Every single credible event of the layout, and what each changes: verdicts, and errors that are new.

    With `pairs` those of two events too, as far as their combination changes what neither does alone. Each answer is
    that of the layout with the event made to a copy. Cost: for a building with a check or a meter to each of its
    heaters some ten analyses, and in any building less than one analysis for each event.

    `layout` is a report, or what `check` makes one of; raises what `check` does. `watch` is told of each event.

    >>> import plumbnet
    >>> swept = plumbnet.sweep("systems/open-house.yaml")
    >>> worst = swept.changing[0]
    >>> worst.event.title, [(turn.heater, turn.after.value) for turn in worst.outcome.turns]
    ('curb-stop: shut', [('heater', 'trapped')])
    """
    report = as_report(layout)
    worlds = Worlds(report)
    events = happenings(report.system, report.rules, report.facts.circuit_of)
    answered = worlds.single if pairs else FoldedEvents(worlds).single
    singles = [answered(event) for event in watch(events, len(events))]
    swept = (SweptEvent(single.event, outcome(worlds.before, single.answer)) for single in singles)
    joint = pairs_of(worlds, singles, watch=watch) if pairs else None
    return Sweep(report, tuple(sorted(swept, key=lambda one: one.rank)), joint)

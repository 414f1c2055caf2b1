"""What shows itself in a notebook."""

from dataclasses import dataclass

from plumbnet.layout.shown import Shown, show_with


@dataclass(frozen=True, slots=True)
class Valve(Shown):
    name: str


@dataclass(frozen=True, slots=True)
class Plain(Shown):
    name: str


def test_thing_is_shown_as_was_said_from_above() -> None:
    show_with(f"{__name__}.Valve", lambda thing: f"<b>{thing}</b>")
    assert Valve("stop")._repr_html_() == "<b>Valve(name='stop')</b>"


def test_thing_of_which_nothing_was_said_falls_back_to_plain_text() -> None:
    assert Plain("stop")._repr_html_() is None


def test_shown_things_stay_as_small_as_they_were() -> None:
    assert not hasattr(Plain("stop"), "__dict__")

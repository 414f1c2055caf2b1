"""What shows itself in other forms."""

from dataclasses import dataclass

import pytest

from plumbnet.layout.presentation import Shown, show_with, shown


@dataclass(frozen=True, slots=True)
class Stopcock(Shown):
    name: str


@dataclass(frozen=True, slots=True)
class Gatecock(Stopcock):
    pass


@dataclass(frozen=True, slots=True)
class Plain(Shown):
    name: str


def in_words(thing: Stopcock, size: str = "", *, loud: bool = False) -> str:
    words = f"{size}{thing.name}"
    return words.upper() if loud else words


show_with("Stopcock", "html", __name__, "in_words")
show_with("Stopcock", "text", __name__, "in_words")


def test_thing_is_shown_as_was_said_from_above() -> None:
    assert Stopcock("stop")._repr_html_() == "stop"


def test_thing_of_which_nothing_was_said_falls_back_to_plain_text() -> None:
    assert Plain("stop")._repr_html_() is None


def test_class_that_comes_from_another_is_shown_as_that() -> None:
    assert Gatecock("gate")._repr_html_() == "gate"


def test_what_is_given_and_the_options_go_to_the_function() -> None:
    assert shown(Stopcock("stop"), "text", str, "large ", loud=True) == "LARGE STOP"


def test_form_of_which_nothing_was_said_is_no_form() -> None:
    with pytest.raises(KeyError, match="frame"):
        shown(Stopcock("stop"), "frame", str)


def test_form_of_another_kind_is_refused() -> None:
    with pytest.raises(TypeError, match="text of a Stopcock is of another kind"):
        shown(Stopcock("stop"), "text", bytes)


def test_shown_things_stay_as_small_as_they_were() -> None:
    assert not hasattr(Plain("stop"), "__dict__")

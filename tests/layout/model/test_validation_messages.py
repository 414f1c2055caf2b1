"""Failed validation in plain words: nothing of the library's own wording is ever shown."""

from collections.abc import Iterator
from typing import get_args

import pytest
from pydantic import ValidationError
from pydantic_core import ErrorDetails
from pydantic_core.core_schema import ErrorType

from plumbnet.layout.file.document import Document, RunWithPipe
from plumbnet.layout.model import validation_messages as wording
from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.change import Change, Scenario
from plumbnet.layout.model.part import KINDS
from plumbnet.layout.model.validation_messages import Mistake, mistakes, shown_value, with_article
from plumbnet.layout.yaml.node import YamlNode
from plumbnet.rules.rule_profile import Profile

MODELS: list[type[Declared]] = [Document, RunWithPipe, Profile, Change, Scenario, *KINDS.values()]
ANYTHING: list[object] = [
    None, True, 5, -1.5, float("nan"), "", "x", "3 psi", [], [1], ["a"], ["a", "b", "c"], ["A"], {}, {"x": 1},
    [{"free": ["a", "b", "c"]}], {"part": 1},
    {"free": ["in"]}, [{"free": ["in"]}], [{}], {"x": {}}, {"s": {"change": [{"fail": {}}]}},
]  # fmt: skip


def told(model: type[Declared], value: object) -> list[str]:
    try:
        model.model_validate(value, context={"units": "us"})
    except ValidationError as error:
        return [str(mistake) for mistake in mistakes(error, what="it", model=model)]
    return []


def kinds_of_mistake() -> Iterator[tuple[str, str]]:
    """Every kind of mistake that any value in any field of any model brings out, with the library's sentence."""
    for model in MODELS:
        for name, field in model.model_fields.items():
            for value in ANYTHING:
                try:
                    model.model_validate({field.alias or name: value}, context={"units": "us"})
                except ValidationError as error:
                    yield from ((detail["type"], detail["msg"]) for detail in error.errors(include_url=False))


KNOWN = {
    "missing", "extra_forbidden", "value_error", "literal_error", "bool_type", "string_type", "tuple_type",
    "enum", "list_type", "model_type", "dict_type", "string_pattern_mismatch", "too_short", "too_long",
}  # fmt: skip


def test_every_mistake_that_can_occur_has_its_sentence() -> None:
    assert {kind for kind, _ in kinds_of_mistake()} == KNOWN
    assert set(get_args(ErrorType)) >= KNOWN


def test_no_sentence_of_the_library_is_shown() -> None:
    own = {sentence for kind, sentence in kinds_of_mistake() if kind != "value_error"}
    for model in MODELS:
        for name, field in model.model_fields.items():
            for value in ANYTHING:
                for sentence in told(model, {field.alias or name: value}):
                    assert not any(foreign.lower() in sentence.lower() for foreign in own), sentence


@pytest.mark.parametrize("kind", sorted(set(get_args(ErrorType)) - KNOWN))
def test_mistake_of_any_other_kind_is_still_told_in_our_words(kind: str) -> None:
    detail = ErrorDetails(type=kind, loc=("volume",), msg="Input should be so", input=[3])
    assert wording._wrong(detail, "it").text == "volume: a list cannot be used here"  # noqa: SLF001  # the fallback


def test_field_that_is_missing_comes_with_an_example() -> None:
    (emitter,) = told(KINDS["emitter"], {})
    assert emitter.startswith('it needs "volume"; for example ')
    (run,) = told(RunWithPipe, {})
    assert run.startswith('it needs "path"; for example path: ')
    (scenario,) = told(Scenario, {})
    assert scenario.startswith('it needs "change"; for example ')
    assert told(Profile, {"profile": "p", "title": "t", "findings": {}})[0] == 'it needs "distribution_limit"'


def test_every_required_field_of_the_file_has_an_example() -> None:
    for model in MODELS:
        if model is not Profile:
            for sentence in told(model, {}):
                assert "; for example " in sentence or "exactly one of" in sentence


def inner_models(model: type[Declared]) -> Iterator[type[Declared]]:
    for field in model.model_fields.values():
        for inner in wording.declared_in(field.annotation):
            yield inner
            yield from inner_models(inner)


def test_everything_written_inside_something_has_its_own_name_and_examples() -> None:
    for outer in MODELS:
        for model in inner_models(outer):
            assert model.called != Declared.called, model
            if outer is not Profile:
                assert all("for example" in said or "exactly one of" in said for said in told(model, {})), model


def test_misspelt_field_is_not_called_missing_as_well() -> None:
    (misspelt,) = told(KINDS["emitter"], {"volum": 3})
    assert misspelt.endswith('"volum": did you mean "volume"?')


def test_field_like_no_other_comes_with_those_there_are() -> None:
    (unlike,) = told(KINDS["tee"], {"colour": 1})
    assert unlike.startswith('it has no field "colour"; ')
    assert unlike.endswith("; its fields are elevation, rating")


def test_field_inside_a_field_is_told_of_what_it_belongs_to() -> None:
    boiler = {"volume": 5, "setpoint": 180, "relief": {"presure": 3}}
    (misspelt,) = told(KINDS["boiler"], boiler)
    assert misspelt.startswith("relief has no field ")
    assert misspelt.endswith('"presure": did you mean "pressure"?')
    layout = {"plumbnet": 1, "parts": {}, "runs": [], "scenarios": {"s": {"change": [{"insert": {"part": "x"}}]}}}
    kind, between = told(Document, layout)
    assert kind.startswith('insert needs "kind"; ')
    assert between.startswith('insert needs "between"; ')
    claus = told(Profile, {"findings": {"trapped": {"claus": "x"}}})[0]
    assert claus.startswith("a ruling has no field ")
    assert claus.endswith('"claus": did you mean "clause"?')


def test_list_with_a_faulty_item_is_not_called_too_short_as_well() -> None:
    (wanted,) = told(Scenario, {"change": [{"close": 5}]})
    assert wanted.startswith("close: a name or text is wanted")


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (None, "nothing"),
        (True, "true"),
        (False, "false"),
        (5, "5"),
        (1.5, "1.5"),
        ({}, "a mapping"),
        ([], "a list"),
        ("shut", '"shut"'),
        ("x" * 100, '"' + "x" * 57 + '..."'),
    ],
)
def test_value_is_shown_as_a_sentence_mentions_it(value: object, words: str) -> None:
    assert shown_value(value) == words


def test_article_goes_with_the_sound() -> None:
    assert with_article("open_tank") == "an open_tank"
    assert with_article("valve") == "a valve"
    assert with_article("") == "a "


def test_mistake_seen_from_further_out_has_a_longer_path() -> None:
    assert Mistake(("volume",), "wrong").under("parts", "tank").path == ("parts", "tank", "volume")


def test_mistake_at_a_key_that_is_not_there_stands_at_the_value() -> None:
    runs = YamlNode(["a"], 4, 3, [YamlNode("a", 4, 5)])
    assert Mistake((0,), "wrong", at_key=True).fault(runs).column == 5
    assert Mistake((), "wrong", at_key=True).fault(runs).column == 3

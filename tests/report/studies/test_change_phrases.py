"""Changes in words."""

import pytest

from plumbnet.layout.model.change import Change
from plumbnet.report.studies.change_phrases import change_in_words, changes_in_words


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"close": "stop"}, "close stop"),
        ({"open": "stop"}, "open stop"),
        ({"remove": "meter"}, "remove meter"),
        ({"draw": "tap"}, "draw tap"),
        ({"fail": "tank"}, "let tank fail"),
        ({"fail": {"part": "prv", "how": "bypass_stuck_shut"}}, "let prv fail (bypass stuck shut)"),
        ({"set": {"part": "heater", "setpoint": "160 degF"}}, "set heater: setpoint 160 degF"),
        (
            {"set": {"part": "heater", "relief": {"pressure": "125 psi", "capacity": 9}, "volume": None}},
            "set heater: relief (pressure 125 psi, capacity 9) and volume as usual",
        ),
        ({"set": {"part": "meter", "check": True}}, "set meter: check yes"),
        ({"set": {"part": "box", "ports": ["a", "b"]}}, "set box: ports (a, b)"),
        (
            {"insert": {"part": "cv", "kind": "check_valve", "between": ["tee", "heater"]}},
            "insert cv (check valve) between tee and heater",
        ),
        (
            {"insert": {"part": "prv", "kind": "pressure_reducer", "set": 50, "between": ["a", "b"]}},
            "insert prv (pressure reducer) between a and b, with set 50",
        ),
        (
            {"add": {"part": "t", "kind": "expansion_tank", "volume": "5 gal", "precharge": 60, "run": "split -> t"}},
            "add t (expansion tank) by split -> t, with volume 5 gal and precharge 60",
        ),
    ],
)
def test_change_reads_as_an_order(fields: dict[str, object], words: str) -> None:
    assert change_in_words(Change.model_validate(fields)) == words


def test_changes_stand_in_their_order() -> None:
    assert changes_in_words([Change(close="stop"), Change(draw="tap")]) == "close stop, then draw tap"

import pytest
from asking import asked
from sketching import chance

import plumbnet
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import QUESTIONS, World
from plumbnet.study.exercise.questions import two_codes

RELIEF = "relief: {pressure: 150 psi, temperature: 210 degF}"
RUNS = "street -> meter -> prv -> tee -> heater -> tap.hot"


@pytest.fixture
def ipc_then_upc(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(two_codes, "CODES", {"us": (("ipc-2021",), ("upc-2024",))})


@pytest.mark.usefixtures("ipc_then_upc")
def test_reducer_with_a_bypass_passes_one_code_and_not_the_other() -> None:
    """UPC 608.2 (2024) asks for a tank behind every regulator; the IPC wants a control of closed systems."""
    (one,) = asked("two-codes", "street -> prv -> heater -> tap.hot", 5, heater=RELIEF, prv="set: 60 psi, bypass: true")
    (blank,) = one.blanks
    assert isinstance(blank, Choice)
    assert set(blank.options) == {
        "both",
        "only the International Plumbing Code 2021",
        "only the Uniform Plumbing Code 2024",
        "neither",
    }
    assert any("608.2" in reason for reason in one.because)
    assert set(one.profiles) == {"ipc-2021", "upc-2024"}


@pytest.mark.usefixtures("ipc_then_upc")
def test_open_house_passes_both_and_a_trapped_one_neither() -> None:
    (free,) = asked("two-codes", "street -> heater -> tap.hot", 5, heater=RELIEF)
    (shut,) = asked("two-codes", "street -> cv -> heater -> tap.hot", 5, heater=RELIEF)
    assert (free.outcome, shut.outcome) == ("both", "neither")
    assert len(free.because) == 2
    assert all(reason.endswith("nothing stands against it.") for reason in free.because)


def test_every_code_is_a_profile_there_is() -> None:
    house = plumbnet.read_bytes(
        b"plumbnet: 1\nparts: {street: {kind: main, pressure: 60 psi}, tap: fixture}\nruns: [street -> tap.cold]\n"
    )
    for code in (code for sides in two_codes.CODES.values() for side in sides for code in side):
        assert plumbnet.check(house, rules=code).profile.profile == code


def test_metric_layout_is_put_before_codes_from_outside_north_america() -> None:
    house = plumbnet.read_bytes(
        b"plumbnet: 1\nunits: metric\nparts: {street: {kind: main, pressure: 300 kPa}, tap: fixture}\n"
        b"runs: [street -> tap.cold]\n"
    )
    (one,) = QUESTIONS["two-codes"].ask(World(plumbnet.check(house), 5, chance(1)))
    assert len(set(one.profiles) & {"as-nzs-3500", "en-806", "uk-2010"}) == 2

"""A short run of the fuzzing, the same inputs every time; the long one is python tests/fuzz.py."""

import signal
from collections.abc import Iterator
from random import Random

import pytest

from fuzzing import trying
from fuzzing.inputs import input_of
from fuzzing.shrinking import shrunk
from fuzzing.structure import generated
from fuzzing.trying import Broken, TooLong, look_at_faults, tried
from fuzzing.working import outcome
from plumbnet.layout.yaml.fault import Fault, LayoutError
from plumbnet.physics.fluids.glycol import freezing_k


@pytest.fixture(autouse=True)
def _watch() -> Iterator[None]:
    """Time that runs out is told; what is loaded once is loaded before."""
    freezing_k("propylene", 0.3)

    def end(_signal: int, _frame: object) -> None:
        raise TooLong

    before = signal.signal(signal.SIGPROF, end)
    yield
    signal.signal(signal.SIGPROF, before)


@pytest.fixture(autouse=True)
def _memory_of_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    """The peak of this process is that of all tests before; the long run and the command line watch it."""
    monkeypatch.setattr(trying, "peak_mib", lambda: 0.0)


@pytest.mark.parametrize("start", range(0, 400, 100))
def test_odd_inputs_break_no_promise(start: int) -> None:
    for number in range(start, start + 100):
        failure = outcome(input_of(0, number), number)[1]
        assert failure is None, (number, failure.story)


def test_half_of_the_structures_reach_the_analysis() -> None:
    fortunes = [tried(generated(Random(number)), 1) for number in range(60)]
    assert fortunes.count("analysed") > 30


def test_same_seed_and_number_give_the_same_input() -> None:
    assert [input_of(3, number) for number in range(20)] == [input_of(3, number) for number in range(20)]
    assert len({input_of(3, number) for number in range(20)}) > 15


def test_fault_outside_its_file_is_seen() -> None:
    for place in ((9, 1), (1, 9), (1, 0)):
        with pytest.raises(Broken, match="outside"):
            look_at_faults(LayoutError("f", [Fault(*place, "wrong")], "a: 1"), b"a: 1")
    look_at_faults(LayoutError("f", [Fault(1, 5, "wrong")], "a: 1"), b"a: 1")


def test_what_fails_is_shortened_while_it_fails_alike() -> None:
    assert shrunk(b"one\ntwo\nthree\n", lambda data: b"w" in data and b"e" in data) in {b"we", b"ew"}

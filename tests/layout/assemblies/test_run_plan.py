"""Every arrow is pipe: runs with many in them to chains of single parts."""

import pytest
from assembling import chains, told_and_written, written

FOUR = "parts: {a: tee, b: tee, v: {kind: valve, times: 3}, w: {kind: valve, times: 3}, t: {kind: tee, times: 3}}\n"
FLAT = """
assemblies: {flat: {ports: {in: stop.in, out: end, hot: hot}, parts: {stop: valve, hot: tee, end: tee},
             runs: [stop -> hot -> end]}}
parts: {a: tee, b: tee, flats: {use: flat, times: 2}}
"""


def runs(*written: str) -> str:
    return f"{FOUR}runs: [a -> v/each -> w/each -> t/each, a -> b, {', '.join(written)}]"


def test_between_many_and_many_it_is_one_with_one() -> None:
    assert chains(runs())[:3] == ["a -> v/1 -> w/1 -> t/1", "a -> v/2 -> w/2 -> t/2", "a -> v/3 -> w/3 -> t/3"]


def test_a_common_stretch_stands_once() -> None:
    assert chains(f"{FOUR}runs: [a -> b -> v/each -> t/each, w/each -> t/each]")[:4] == [
        "a -> b",
        "b -> v/1 -> t/1",
        "b -> v/2 -> t/2",
        "b -> v/3 -> t/3",
    ]


def test_what_a_run_has_come_to_is_passed_and_not_begun_again() -> None:
    text = "parts: {a: tee, r: {kind: pressure_reducer, set: 60 psi}, t: {kind: tee, times: 2}}\n"
    found = written(f"{text}runs: [a -> r -> t/each]").chains
    assert [chain.passes for chain, _ in found] == [False, True, True]


def test_next_is_the_one_after_and_does_not_wrap() -> None:
    assert chains(runs("{path: t/each -> t/next, length: [1 ft, 2 ft]}"))[-2:] == ["t/1 -> t/2", "t/2 -> t/3"]
    assert chains(runs("t/2-3 -> t/next"))[-1] == "t/2 -> t/3"


def test_through_an_instance_without_a_port_a_run_goes_in_and_out() -> None:
    found = chains(f"{FLAT}runs: [a -> flats/each -> b, flats/each.hot -> capped]")
    assert found[2:] == ["a -> flats/1/stop.in", "flats/1/end -> b", "a -> flats/2/stop.in", "flats/2/end -> b"]


def test_each_pipe_of_many_gets_its_own_length() -> None:
    out = written(runs("{path: a -> t/each, pipe: copper-L 1 in, length: {first: 12 m, step: 9 m}}"))
    assert [chain.fields["length"] for chain, _ in out.chains[-3:]] == ["12 m", "21 m", "30 m"]


@pytest.mark.parametrize(
    ("run", "told"),
    [
        ("t/next -> a", "t/next needs t/each or a range of two or more before it in the same run"),
        ("t/each -> t/next -> t/next", "t/next needs t/each or a range of two or more before it in the same run"),
        (
            "a -> v/1-2 -> t/each",
            "a run takes its instances one with one, but v/1-2 stands for 2 and t/each stands for 3",
        ),
        ("a -> t -> b", "t stands for 3 (1 to 3); say which: t/1, t/first, t/last, a range, or t/each"),
    ],
)
def test_a_run_that_cannot_be_shared_out_says_why(run: str, told: str) -> None:
    assert told_and_written(runs(run))[0] == [told]


def test_too_many_pipes_are_refused_before_they_are_written_out() -> None:
    text = "parts: {a: tee, t: {kind: tee, times: 90000}}\n"
    told, _out = told_and_written(f"{text}runs: [a -> t/each -> t/each -> t/each -> t/each]")
    assert told == ["up to here the runs have more than 250,000 pipes; split the layout"]
    long = " -> ".join(["a", "b"] * 5_001)
    assert told_and_written(runs(long))[0] == ["this run has more than 10,000 pipes; write it as several"]

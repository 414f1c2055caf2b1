"""How assemblies use each other. Circles and bounds stand in tests/faults."""

from assembling import told_and_written, written


def nested(levels: int) -> str:
    inner = "".join(
        f"  a{k}: {{ports: [x], parts: {{x: tee, b: {{use: a{k + 1}}}}}, runs: [x -> b.x]}}\n" for k in range(1, levels)
    )
    last = f"  a{levels}: {{ports: [x], parts: {{x: tee, t: tee}}, runs: [x -> t]}}\n"
    return f"assemblies:\n{inner}{last}parts: {{s: tee, all: {{use: a1}}}}\nruns: [s -> all.x]\n"


def test_assemblies_stand_eight_deep_and_no_deeper() -> None:
    assert len(written(nested(8)).instances) == 8
    assert told_and_written(nested(9)) == (["assemblies stand inside one another more than 8 deep"], None)


def test_use_before_the_assembly_is_declared_does_not_matter() -> None:
    text = "parts: {s: tee, r: {use: b, times: 2}}\nruns: [s -> r/each.x]\n"
    inner = "a: {ports: [x], parts: {x: tee, t: tee}, runs: [x -> t]}"
    text += f"assemblies: {{b: {{ports: {{x: y.x}}, parts: {{y: {{use: a}}}}}}, {inner}}}"
    assert [name for name, *_ in written(text).parts] == ["s", "r/1/y/x", "r/1/y/t", "r/2/y/x", "r/2/y/t"]


def test_an_assembly_of_another_file_may_stay_unused() -> None:
    shelf = "assemblies: {spare: {ports: [x], parts: {x: tee, t: tee}, runs: [x -> t]}}"
    assert [name for name, *_ in written("parts: {a: tee, b: tee}\nruns: [a -> b]", shelf).parts] == ["a", "b"]

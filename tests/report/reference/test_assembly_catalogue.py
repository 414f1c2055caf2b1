"""The catalogue of assemblies."""

from plumbnet.report.reference.assembly_catalogue import assemblies_text


def test_each_assembly_is_told_with_its_ports_and_its_note() -> None:
    data = b"assemblies: {a: {note: A pair., ports: [x, y]}, b: {ports: {in: stop.in}}}"
    told = assemblies_text({"pair": data})
    assert [line.split() for line in told.splitlines()[1:3]] == [
        ["pair", "a", "x,", "y", "A", "pair."],
        ["pair", "b", "in"],
    ]
    assert "--with NAME" in told

from plumbnet.layout.model.circuit import Circuit


def test_circuits_go_by_the_words_that_a_file_and_a_command_line_use() -> None:
    assert [circuit.value for circuit in Circuit] == ["water", "heating"]

from running import document, run


def test_schema_is_json() -> None:
    result = run("schema")
    assert result.exit_code == 0
    assert document(result)["title"] == "plumbnet layout, format 1"


def test_that_of_a_file_of_questions_may_be_asked_for() -> None:
    assert document(run("schema", "questions"))["title"] == "plumbnet questions, form 1"

from running import document, run


def test_schema_is_json() -> None:
    result = run("schema")
    assert result.exit_code == 0
    assert document(result)["title"] == "plumbnet layout, format 1"

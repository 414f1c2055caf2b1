from plumbnet.study.long_runs.progress import unwatched


def test_unwatched_search_passes_everything_on() -> None:
    assert list(unwatched(iter("abc"), 3)) == ["a", "b", "c"]

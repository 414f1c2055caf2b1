"""One finding, or a close pair, to a file: test, sentence, advice, and two layouts that show the difference."""

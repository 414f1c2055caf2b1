"""One finding, or a close pair, to a file: test, sentence, advice, and two layouts that show the difference.

Folders go by what a finding is about; which one it stands in means nothing else.
"""

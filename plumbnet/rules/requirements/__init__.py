"""One requirement, or a close pair, to a file: what is asked, its test, and two layouts that show the difference.

A test answers for each of its subjects; what is broken is the finding of its name, with a sentence and advice. Folders
go by what a requirement is about, and are the chapters of a review; which one it stands in means nothing else.
"""

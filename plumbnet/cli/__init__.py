"""The command line: one module a command, named after it, which registers itself when it is imported."""

"""How the answers to each sort of question are read: a module for each."""

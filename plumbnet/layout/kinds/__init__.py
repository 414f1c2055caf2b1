"""The kinds of part, a class each: fields, ports, passages, water, and a paragraph for the reader."""

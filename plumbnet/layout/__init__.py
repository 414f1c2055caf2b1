"""What the author wrote: YAML text to a typed system of parts and pipes, in SI."""

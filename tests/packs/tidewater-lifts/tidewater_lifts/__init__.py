"""A pack's code is never run: whoever imports this is told."""

raise RuntimeError("somebody imported a pack")

"""Names become things: imports, libraries, `like` and its edits. The result is one plan, still by block."""

"""One printer a reader: people at a terminal, programs (JSON), pull requests (GitHub).

Each takes plain records (`diagnostics.plain`) and nothing else, so a cached run prints what the first one printed.
"""

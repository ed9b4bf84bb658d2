"""The language server: everything that the command line knows, as one types. pygls is imported here only."""

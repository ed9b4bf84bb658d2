"""Callbacks that turn reduced rules into syntax nodes, a file for each part of the language."""

"""Figures read off an expanded plan, for measures and reports alike: sets that count, effort, the time a session takes.

Comes in: a plan and how sets are counted. Goes out: numbers with the lines that make them up.
"""

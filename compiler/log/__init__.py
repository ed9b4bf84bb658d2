"""What happened: done sessions as data, and what can be said of them beside a plan.

`link` makes a `Log` of the `session` entries of files; `expand`, `fit` and `report` read it. Nothing here opens a file.
"""

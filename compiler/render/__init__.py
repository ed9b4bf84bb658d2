"""Outputs, one file or folder each. Comes in: a plan with its volume and overview. Goes out: text of one format.

`csv`, `json`, `markdown` and `html` are the outputs; `words` and `sheet` are what those for people share.
"""

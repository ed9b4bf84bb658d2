"""Outputs, one file or folder each. Comes in: `Material`, dressed in a `Look`. Goes out: the bytes of one format.

The formats stand in `outputs`; `words` and `sheet` are what those for people share.
"""

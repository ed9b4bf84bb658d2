"""Live preview: builds on save, and a page on loopback that shows the newest sheets.

Comes in: a file and what is wanted of it. Goes out: answers to a browser on this machine, and to nobody else.
"""

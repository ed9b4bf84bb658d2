"""From text to a typed tree, with every mistake as a diagnostic beside it. The only room that imports lark."""

from setwright.syntax.parser import LineReader, Parsed

__all__ = ["LineReader", "Parsed"]

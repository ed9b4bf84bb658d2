"""The one diagnostic type, the catalogue of codes, and the printers for people and programs."""

from setwright.diagnostics.model import Code, Diagnostic, Fix, Related, Severity

__all__ = ["Code", "Diagnostic", "Fix", "Related", "Severity"]

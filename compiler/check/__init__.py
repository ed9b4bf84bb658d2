"""Holds a plan to what it promises: rules, bounds, waivers, and one file a measure.

Comes in: a `Plan` and a `Promise`. Goes out: diagnostics; `rule_faults` once a promise, `breaches` once a plan.
"""

from setwright.check.faults import rule_faults
from setwright.check.promises import breaches

__all__ = ["breaches", "rule_faults"]

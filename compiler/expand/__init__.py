"""Blocks become weeks of sessions: tracks, deloads, limits, dates. The only caller is `pipeline`."""

from setwright.expand.weeks import expanded_plan

__all__ = ["expanded_plan"]

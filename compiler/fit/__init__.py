"""A plan fitted to an athlete: sessions on their days, prescriptions as loads their equipment can make."""

from setwright.fit.athletes import adapted_plan, fitted_plan

__all__ = ["adapted_plan", "fitted_plan"]

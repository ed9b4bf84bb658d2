"""A plan fitted to an athlete: sessions on their days, prescriptions as loads their equipment can make."""

from setwright.fit.athletes import fitted_plan

__all__ = ["fitted_plan"]

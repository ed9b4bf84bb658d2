"""The arithmetic of strength training: functions of numbers that know no plan.

Comes in: repetitions, shares, masses, seconds. Goes out: the same. Each function names its units and its source.
"""

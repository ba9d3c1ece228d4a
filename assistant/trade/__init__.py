"""The computations of the trade: pure functions in SI with their formula, range and source.

Standard library only.
"""

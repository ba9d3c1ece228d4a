"""Fault trees: their frozen model, loading, limits, the power rules, and the checker."""

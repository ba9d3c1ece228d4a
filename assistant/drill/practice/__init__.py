"""Drills: an apprentice works on a simulated house, along a tree or free, and hears how it went."""

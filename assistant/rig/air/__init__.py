"""Blower, ducts and what they do to each other."""

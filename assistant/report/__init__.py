"""The report: one story told from a trail, then written as PDF, HTML, text or CSV."""

"""The workbench: every computation of the trade as a page of its own."""

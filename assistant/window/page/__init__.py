"""The pages: one module each, rebuilt for every step."""

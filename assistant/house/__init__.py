"""The house's own words: the strict YAML reader, and the vocabulary that everything else shares."""

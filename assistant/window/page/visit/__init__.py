"""Pages around the walk: telephone, before starting, the unit, how it is left, advice, waiting, call-back."""

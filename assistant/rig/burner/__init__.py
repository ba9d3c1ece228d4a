"""Gas, flue gas and fire: pressures, flame, heat, and the board's sequence in time."""

"""What a technician types, as an interval with a unit; and the instruments that readings are taken with."""

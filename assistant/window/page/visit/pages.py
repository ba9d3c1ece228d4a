"""The pages around the walk, by name and in the order of a visit."""

AROUND = (
    ("triage", "On the telephone"),
    ("before", "Before starting"),
    ("who", "For whom"),
    ("earlier", "Our earlier visits"),
    ("unit", "The unit"),
    ("waiting", "Waiting for a part"),
    ("tonight", "No heat tonight"),
    ("advise", "Recommend"),
    ("outlook", "Repair or replace"),
    ("proof", "Before and after"),
    ("as_left", "As left"),
    ("baseline", "Healthy numbers"),
)

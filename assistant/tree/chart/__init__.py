"""A tree as a diagram, laid out on sheets without Qt: steps in columns, findings beside them.

An own layout. A general library for layered graphs would draw 300 steps with 690 ways as a net of crossing
lines some metres wide, which no page holds and nobody reads. A fault tree is mostly read downwards, so a lane
of questions goes straight down, what ends or branches off stands to its right, and a way to a step that
stands elsewhere is written as that step's number instead of drawn as a line across the sheet.
"""

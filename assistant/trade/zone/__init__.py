"""The zone survey's reasoning: from the air at each register, with each thermostat calling alone, to who
blows where.
"""

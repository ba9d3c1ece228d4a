def class_of(*a): return "?"
def classes_table(x): return []

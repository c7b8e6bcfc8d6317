"""What the past says: rates with intervals, time to comeback, what frees which type. Pure."""

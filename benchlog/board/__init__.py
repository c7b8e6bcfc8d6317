"""What is found on a board: markings read, values placed in their series, small calculations. Pure."""

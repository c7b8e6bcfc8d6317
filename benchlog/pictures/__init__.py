"""Photos and files of a job: what they are by their content, freed of where they were taken, and small ones of them."""

"""The page "Record and costs" of a job: what happened, what was found, what it costs, what it waits for."""

"""Real processes killed and stopped while current flows: `python -m tests.campaign.processes --seed 1 --times 3`."""

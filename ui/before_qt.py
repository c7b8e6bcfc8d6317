"""What the window stands on and is not Qt, imported first.

Once PySide6 is imported it reads the source file of every module that comes after it, to see whether that uses its own
features: half as long again for each of some 400 modules that have nothing to do with it.
"""

import benchlog.bench.link
import benchlog.bench.looking_around
import benchlog.board.calculators
import benchlog.board.markings
import benchlog.children
import benchlog.history.past
import benchlog.history.prior
import benchlog.ledger.backups
import benchlog.ledger.capture_request
import benchlog.ledger.costs
import benchlog.ledger.drafts
import benchlog.ledger.files
import benchlog.ledger.filing
import benchlog.ledger.findings
import benchlog.ledger.good_runs
import benchlog.ledger.judging_runs
import benchlog.ledger.known_good
import benchlog.ledger.leads
import benchlog.ledger.likes
import benchlog.ledger.lot_checks
import benchlog.ledger.lots
import benchlog.ledger.pasts
import benchlog.ledger.store
import benchlog.ledger.unlocks
import benchlog.ledger.waiting
import benchlog.ledger.warmth
import benchlog.logs
import benchlog.motor.align
import benchlog.motor.interleave
import benchlog.motor.judging
import benchlog.motor.overlay
import benchlog.recovery.running_in
import benchlog.reports.document
import benchlog.reports.foreign_csv
import benchlog.reports.jobs_csv
import benchlog.reports.lot_document
import benchlog.reports.sheet_html
import benchlog.reports.start_files
import benchlog.reports.tag
import benchlog.reports.trace_csv
import benchlog.settings  # noqa: F401

"""Probe: is there a winding, what is its resistance, is a diode or an electronic driver in the way?"""

from PySide6.QtCore import Signal

from benchlog.ledger.leads import LeadCheck
from benchlog.quantities import show
from benchlog.records import RunKind
from ui import texts, theme
from ui.moments import day_text
from ui.pieces import button, grey, label
from ui.stages.run_view import RunView
from ui.theme import Tokens


class ProbeStage(RunView):
    """The verdict comes as the sentence, the resistance with its interval in it. `leads_begun`: measure the leads."""

    leads_begun = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__(RunKind.PROBE, tokens)
        self.leads = label(texts.LEADS_NEVER, "second", px=theme.SECOND_PX)
        self.leads.setObjectName("probe_leads")
        self.leads_button = button(texts.LEADS_BUTTON, "probe_leads_start", accessible=texts.LEADS_ACCESSIBLE)
        self.leads_button.setToolTip(texts.LEADS_HINT)
        self.leads_button.clicked.connect(self.leads_begun)
        self.press_row.add(self.leads_button, at=0)
        self.press_row.add(self.leads, at=1)

    def show_leads(self, check: LeadCheck | None) -> None:
        if check is None:
            self.leads.setText(texts.LEADS_NEVER)
        else:
            self.leads.setText(texts.LEADS_KNOWN.format(ohm=show(check.ohm, "Ω"), day=day_text(check.utc)))

    def offer_leads(self, why: str) -> None:
        """Why they can't be measured now; "" where they can."""
        grey(self.leads_button, why)

<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>ui.texts</name>
    <message>
        <source>benchlog</source>
        <comment>PROGRAM</comment>
        <translation>benchlog</translation>
    </message>
    <message>
        <source>none</source>
        <comment>OPTIONAL</comment>
        <translation>keine</translation>
    </message>
    <message>
        <source>{name}, in {unit}</source>
        <comment>QUANTITY_NAME</comment>
        <translation>{name}, in {unit}</translation>
    </message>
    <message>
        <source>Not a number above zero in {unit}. Write it as 0.5, 0,5, 500m or 500 m{unit}.</source>
        <comment>NOT_A_QUANTITY</comment>
        <translation>Keine Zahl über null in {unit}. Schreiben Sie 0.5, 0,5, 500m oder 500 m{unit}.</translation>
    </message>
    <message>
        <source>DEMO</source>
        <comment>DEMO</comment>
        <translation>DEMO</translation>
    </message>
    <message>
        <source>Simulated supply and motor. Nothing real is switched. Press for what hangs on the clips.</source>
        <comment>DEMO_HINT</comment>
        <translation>Netzgerät und Motor sind simuliert. Nichts Wirkliches wird geschaltet. Drücken: was an den Klemmen hängt.</translation>
    </message>
    <message>
        <source>DEMO: {thing}</source>
        <comment>DEMO_WITH</comment>
        <translation>DEMO: {thing}</translation>
    </message>
    <message>
        <source>Demo. On the supply’s clips: {thing}. Press to hang something else on them</source>
        <comment>DEMO_NAME</comment>
        <translation>Demo. An den Klemmen des Netzgeräts: {thing}. Drücken, um etwas anderes daran zu hängen</translation>
    </message>
    <message>
        <source>hums, does not turn</source>
        <comment>DEMO_COMPLAINT</comment>
        <translation>brummt, dreht sich nicht</translation>
    </message>
    <message>
        <source>as at first</source>
        <comment>DEMO_FIRST</comment>
        <translation>wie zu Beginn</translation>
    </message>
    <message>
        <source>the clips joined</source>
        <comment>DEMO_JOINED</comment>
        <translation>die Klemmen verbunden</translation>
    </message>
    <message>
        <source>cabin fan {number}</source>
        <comment>DEMO_FAN</comment>
        <translation>Kabinenlüfter {number}</translation>
    </message>
    <message>
        <source>The output may be on: the clips are left alone until it is off.</source>
        <comment>DEMO_WAITS</comment>
        <translation>Der Ausgang kann ein sein: die Klemmen bleiben in Ruhe, bis er aus ist.</translation>
    </message>
    <message>
        <source>Bench</source>
        <comment>BENCH</comment>
        <translation>Werkbank</translation>
    </message>
    <message>
        <source>Curves</source>
        <comment>CURVES</comment>
        <translation>Kurven</translation>
    </message>
    <message>
        <source>History</source>
        <comment>HISTORY</comment>
        <translation>Verlauf</translation>
    </message>
    <message>
        <source>New job</source>
        <comment>NEW_JOB</comment>
        <translation>Neuer Auftrag</translation>
    </message>
    <message>
        <source>Settings</source>
        <comment>SETTINGS</comment>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Help</source>
        <comment>HELP</comment>
        <translation>Hilfe</translation>
    </message>
    <message>
        <source>Settings. Key: Ctrl and comma</source>
        <comment>SETTINGS_NAME</comment>
        <translation>Einstellungen. Taste: Strg und Komma</translation>
    </message>
    <message>
        <source>Help about this page. Key: F1</source>
        <comment>HELP_NAME</comment>
        <translation>Hilfe zu dieser Seite. Taste: F1</translation>
    </message>
    <message>
        <source>New job</source>
        <comment>NO_JOB</comment>
        <translation>Neuer Auftrag</translation>
    </message>
    <message>
        <source>nothing is on the bench yet</source>
        <comment>NO_JOB_ABOUT</comment>
        <translation>noch nichts auf der Werkbank</translation>
    </message>
    <message>
        <source>Job {number:04d} · {kind}</source>
        <comment>JOB_TITLE</comment>
        <translation>Auftrag {number:04d} · {kind}</translation>
    </message>
    <message>
        <source>tag {tag} · {volts}</source>
        <comment>JOB_ABOUT</comment>
        <translation>Etikett {tag} · {volts}</translation>
    </message>
    <message>
        <source>tag {tag} · {volts} · “{complaint}”</source>
        <comment>JOB_ABOUT_COMPLAINT</comment>
        <translation>Etikett {tag} · {volts} · „{complaint}“</translation>
    </message>
    <message>
        <source>“{text}”</source>
        <comment>QUOTED</comment>
        <translation>„{text}“</translation>
    </message>
    <message>
        <source>Intake</source>
        <comment>STAGE_NAMES</comment>
        <translation>Annahme</translation>
    </message>
    <message>
        <source>Make safe</source>
        <comment>STAGE_NAMES</comment>
        <translation>Sichern</translation>
    </message>
    <message>
        <source>Probe</source>
        <comment>STAGE_NAMES</comment>
        <translation>Messen</translation>
    </message>
    <message>
        <source>Free</source>
        <comment>STAGE_NAMES</comment>
        <translation>Lösen</translation>
    </message>
    <message>
        <source>Prove</source>
        <comment>STAGE_NAMES</comment>
        <translation>Nachweis</translation>
    </message>
    <message>
        <source>Close</source>
        <comment>STAGE_NAMES</comment>
        <translation>Abschluss</translation>
    </message>
    <message>
        <source>Stage {number}, {name}: {standing}. {found}</source>
        <comment>STAGE_ACCESSIBLE</comment>
        <translation>Schritt {number}, {name}: {standing}. {found}</translation>
    </message>
    <message>
        <source>done</source>
        <comment>STANDINGS</comment>
        <translation>erledigt</translation>
    </message>
    <message>
        <source>here</source>
        <comment>STANDINGS</comment>
        <translation>hier</translation>
    </message>
    <message>
        <source>next</source>
        <comment>STANDINGS</comment>
        <translation>als Nächstes</translation>
    </message>
    <message>
        <source>to come</source>
        <comment>STANDINGS</comment>
        <translation>kommt noch</translation>
    </message>
    <message>
        <source>left out</source>
        <comment>STANDINGS</comment>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>done</source>
        <comment>STANDING_DONE</comment>
        <translation>erledigt</translation>
    </message>
    <message>
        <source>here</source>
        <comment>STANDING_HERE</comment>
        <translation>hier</translation>
    </message>
    <message>
        <source>next</source>
        <comment>STANDING_NEXT</comment>
        <translation>als Nächstes</translation>
    </message>
    <message>
        <source>to come</source>
        <comment>STANDING_TO_COME</comment>
        <translation>kommt noch</translation>
    </message>
    <message>
        <source>left out</source>
        <comment>STANDING_SKIPPED</comment>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>left out: {reason}</source>
        <comment>SKIPPED_BECAUSE</comment>
        <translation>ausgelassen: {reason}</translation>
    </message>
    <message>
        <source>{done} done</source>
        <comment>CHECKED_FOUND</comment>
        <translation>{done} erledigt</translation>
    </message>
    <message>
        <source>{done} done, {other} not for this job</source>
        <comment>CHECKED_FOUND_NOT</comment>
        <translation>{done} erledigt, {other} nicht zutreffend</translation>
    </message>
    <message>
        <source>rung {rung}, {kicks}</source>
        <comment>LIVE_FOUND</comment>
        <translation>Stufe {rung}, {kicks}</translation>
    </message>
    <message>
        <source>going on</source>
        <comment>LIVE_FOUND_PLAIN</comment>
        <translation>läuft gerade</translation>
    </message>
    <message>
        <source>closed</source>
        <comment>CLOSED_FOUND</comment>
        <translation>abgeschlossen</translation>
    </message>
    <message>
        <source>Volts and amps over time, as read back</source>
        <comment>CHART_NAME</comment>
        <translation>Volt und Ampere über der Zeit, wie zurückgelesen</translation>
    </message>
    <message>
        <source>Wheel or + and −: closer or wider. Drag or arrows: along. Double click or Home: back to the whole. C: two cursors, moved with the arrows; X or Tab: the other one. Ctrl+C: copies the picture.</source>
        <comment>CHART_HINT</comment>
        <translation>Rad oder + und −: näher oder weiter. Ziehen oder Pfeile: verschieben. Doppelklick oder Pos1: zurück zum Ganzen. C: zwei Cursor, mit den Pfeilen bewegt; X oder Tab: der andere. Strg+C: kopiert das Bild.</translation>
    </message>
    <message>
        <source>Cursors</source>
        <comment>CHART_CURSORS</comment>
        <translation>Cursor</translation>
    </message>
    <message>
        <source>Two cursors with the time, volts and amps between them. Key: C</source>
        <comment>CHART_CURSORS_NAME</comment>
        <translation>Zwei Cursor mit der Zeit, den Volt und den Ampere dazwischen. Taste: C</translation>
    </message>
    <message>
        <source>Copy picture</source>
        <comment>CHART_COPY</comment>
        <translation>Bild kopieren</translation>
    </message>
    <message>
        <source>Copy this chart as a picture. Key: Ctrl+C</source>
        <comment>CHART_COPY_NAME</comment>
        <translation>Dieses Diagramm als Bild kopieren. Taste: Strg+C</translation>
    </message>
    <message>
        <source>The picture is on the clipboard, {width} × {height} pixels, in light colours for paper.</source>
        <comment>CHART_COPIED</comment>
        <translation>Das Bild ist in der Zwischenablage, {width} × {height} Bildpunkte, in hellen Farben für Papier.</translation>
    </message>
    <message>
        <source>Looking closer: {low} to {high} of {whole}.</source>
        <comment>CHART_ZOOMED</comment>
        <translation>Näher angesehen: {low} bis {high} von {whole}.</translation>
    </message>
    <message>
        <source>Looking wider: {low} to {high}, the whole is {whole}.</source>
        <comment>CHART_WIDER</comment>
        <translation>Weiter gefasst: {low} bis {high}, das Ganze ist {whole}.</translation>
    </message>
    <message>
        <source>The run goes on and is not followed: {low} to {high} is shown.</source>
        <comment>CHART_NOT_FOLLOWED</comment>
        <translation>Der Lauf geht weiter und wird nicht verfolgt: Zu sehen ist {low} bis {high}.</translation>
    </message>
    <message>
        <source>Back to the whole</source>
        <comment>CHART_BACK</comment>
        <translation>Zurück zum Ganzen</translation>
    </message>
    <message>
        <source>Follow the run again</source>
        <comment>CHART_FOLLOW</comment>
        <translation>Dem Lauf wieder folgen</translation>
    </message>
    <message>
        <source>Nothing was measured yet</source>
        <comment>CHART_EMPTY</comment>
        <translation>Noch nichts gemessen</translation>
    </message>
    <message>
        <source>volts</source>
        <comment>VOLTS_LINE</comment>
        <translation>Volt</translation>
    </message>
    <message>
        <source>amps</source>
        <comment>AMPS_LINE</comment>
        <translation>Ampere</translation>
    </message>
    <message>
        <source>ceiling {value}</source>
        <comment>CEILING_LABEL</comment>
        <translation>Grenzwert {value}</translation>
    </message>
    <message>
        <source>ceiling {value} ↑</source>
        <comment>CEILING_ABOVE_LABEL</comment>
        <translation>Grenzwert {value} ↑</translation>
    </message>
    <message>
        <source>s</source>
        <comment>SECONDS_UNIT</comment>
        <translation>s</translation>
    </message>
    <message>
        <source>min</source>
        <comment>MINUTES_UNIT</comment>
        <translation>min</translation>
    </message>
    <message>
        <source>h</source>
        <comment>HOURS_UNIT</comment>
        <translation>h</translation>
    </message>
    <message>
        <source>TURNING</source>
        <comment>MOTION_WORDS</comment>
        <translation>DREHT</translation>
    </message>
    <message>
        <source>LOCKED</source>
        <comment>MOTION_WORDS</comment>
        <translation>BLOCKIERT</translation>
    </message>
    <message>
        <source>CREEPING</source>
        <comment>MOTION_WORDS</comment>
        <translation>KRIECHT</translation>
    </message>
    <message>
        <source>NOT DRIVEN</source>
        <comment>MOTION_WORDS</comment>
        <translation>OHNE ANTRIEB</translation>
    </message>
    <message>
        <source>NOT KNOWN</source>
        <comment>MOTION_WORDS</comment>
        <translation>UNBEKANNT</translation>
    </message>
    <message>
        <source>NO READING</source>
        <comment>MOTION_WORDS</comment>
        <translation>KEIN WERT</translation>
    </message>
    <message>
        <source>Volts</source>
        <comment>USED_NAMES</comment>
        <translation>Volt</translation>
    </message>
    <message>
        <source>V</source>
        <comment>USED_NAMES</comment>
        <translation>V</translation>
    </message>
    <message>
        <source>Amps</source>
        <comment>USED_NAMES</comment>
        <translation>Ampere</translation>
    </message>
    <message>
        <source>A</source>
        <comment>USED_NAMES</comment>
        <translation>A</translation>
    </message>
    <message>
        <source>Winding</source>
        <comment>USED_NAMES</comment>
        <translation>Wicklung</translation>
    </message>
    <message>
        <source>°C</source>
        <comment>USED_NAMES</comment>
        <translation>°C</translation>
    </message>
    <message>
        <source>Locked</source>
        <comment>USED_NAMES</comment>
        <translation>Blockiert</translation>
    </message>
    <message>
        <source>s</source>
        <comment>USED_NAMES</comment>
        <translation>s</translation>
    </message>
    <message>
        <source>Energy</source>
        <comment>USED_NAMES</comment>
        <translation>Energie</translation>
    </message>
    <message>
        <source>J</source>
        <comment>USED_NAMES</comment>
        <translation>J</translation>
    </message>
    <message>
        <source>On-time</source>
        <comment>USED_NAMES</comment>
        <translation>Ein-Zeit</translation>
    </message>
    <message>
        <source>Kicks</source>
        <comment>USED_NAMES</comment>
        <translation>Anstöße</translation>
    </message>
    <message>
        <source>Ceilings used</source>
        <comment>USED_TITLE</comment>
        <translation>Genutzte Grenzwerte</translation>
    </message>
    <message>
        <source>Ceilings used, last run</source>
        <comment>USED_LAST_TITLE</comment>
        <translation>Genutzt, letzter Lauf</translation>
    </message>
    <message>
        <source>Ceilings of this job</source>
        <comment>USED_BEFORE_TITLE</comment>
        <translation>Grenzwerte dieses Auftrags</translation>
    </message>
    <message>
        <source>Before the supply is known: its own range holds where it is lower.</source>
        <comment>USED_BEFORE_HINT</comment>
        <translation>Bevor das Netzgerät bekannt ist: Wo sein eigener Bereich niedriger ist, gilt dieser.</translation>
    </message>
    <message>
        <source>set by</source>
        <comment>USED_SET_BY</comment>
        <translation>gesetzt von</translation>
    </message>
    <message>
        <source>Shown once a job is taken in.</source>
        <comment>USED_NONE</comment>
        <translation>Erst mit einem Auftrag.</translation>
    </message>
    <message>
        <source>&lt;b&gt;{value}&lt;/b&gt; / {ceiling}</source>
        <comment>USED_OF</comment>
        <translation>&lt;b&gt;{value}&lt;/b&gt; / {ceiling}</translation>
    </message>
    <message>
        <source>all {count}</source>
        <comment>USED_ALL</comment>
        <translation>alle {count}</translation>
    </message>
    <message>
        <source>nearest</source>
        <comment>USED_NEAREST</comment>
        <translation>nächster</translation>
    </message>
    <message>
        <source>Show all ceilings, or only the one nearest its end</source>
        <comment>USED_ALL_NAME</comment>
        <translation>Alle Grenzwerte zeigen, oder nur den, der seinem Ende am nächsten ist</translation>
    </message>
    <message>
        <source>at the supply’s terminals</source>
        <comment>USED_WHAT</comment>
        <translation>an den Klemmen des Netzgeräts</translation>
    </message>
    <message>
        <source>an upper bound on its temperature</source>
        <comment>USED_WHAT</comment>
        <translation>obere Schranke ihrer Temperatur</translation>
    </message>
    <message>
        <source>with current into a rotor that stands still, in any 60 s</source>
        <comment>USED_WHAT</comment>
        <translation>mit Strom in einen Läufer, der steht, in beliebigen 60 s</translation>
    </message>
    <message>
        <source>heat into the winding, in any 60 s</source>
        <comment>USED_WHAT</comment>
        <translation>Wärme in die Wicklung, in je 60 s</translation>
    </message>
    <message>
        <source>in a row, with volts on the motor</source>
        <comment>USED_WHAT</comment>
        <translation>am Stück, mit Spannung am Motor</translation>
    </message>
    <message>
        <source>of this job, today</source>
        <comment>USED_WHAT</comment>
        <translation>dieses Auftrags, heute</translation>
    </message>
    <message>
        <source>{name}, {what}: the lowest ceiling is {ceiling}, set by the {layer}.</source>
        <comment>USED_HINT</comment>
        <translation>{name}, {what}: Der niedrigste Grenzwert ist {ceiling}, gesetzt durch: {layer}.</translation>
    </message>
    <message>
        <source>{name}: {value} of {ceiling}, set by the {layer}</source>
        <comment>USED_ACCESSIBLE</comment>
        <translation>{name}: {value} von {ceiling}, gesetzt durch: {layer}</translation>
    </message>
    <message>
        <source>program itself</source>
        <comment>LAYER_NAMES</comment>
        <translation>Programm selbst</translation>
    </message>
    <message>
        <source>owner of this workshop</source>
        <comment>LAYER_NAMES</comment>
        <translation>Inhaber dieser Werkstatt</translation>
    </message>
    <message>
        <source>supply’s own range</source>
        <comment>LAYER_NAMES</comment>
        <translation>eigener Bereich des Netzgeräts</translation>
    </message>
    <message>
        <source>motor’s thermal class, A where it is not known</source>
        <comment>LAYER_NAMES</comment>
        <translation>Wärmeklasse des Motors, A wo sie nicht bekannt ist</translation>
    </message>
    <message>
        <source>job</source>
        <comment>LAYER_NAMES</comment>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>step</source>
        <comment>LAYER_NAMES</comment>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>{value} volts at the supply’s terminals</source>
        <comment>VOLTS_ACCESSIBLE</comment>
        <translation>{value} Volt an den Klemmen des Netzgeräts</translation>
    </message>
    <message>
        <source>{value} amperes</source>
        <comment>AMPS_ACCESSIBLE</comment>
        <translation>{value} Ampere</translation>
    </message>
    <message>
        <source>CV: the voltage is held. CC: the current limit is held; more volts then change nothing.</source>
        <comment>REGULATION_HINT</comment>
        <translation>CV: Die Spannung wird gehalten. CC: Die Strombegrenzung wird gehalten; mehr Volt ändern dann nichts.</translation>
    </message>
    <message>
        <source>Output off</source>
        <comment>OUTPUT_OFF</comment>
        <translation>Ausgang aus</translation>
    </message>
    <message>
        <source>Esc</source>
        <comment>OUTPUT_OFF_KEY</comment>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Output off. Key: Escape or Pause, anywhere in this program</source>
        <comment>OUTPUT_OFF_ACCESSIBLE</comment>
        <translation>Ausgang aus. Taste: Escape oder Pause, überall in diesem Programm</translation>
    </message>
    <message>
        <source>Output off. Key: Escape, Pause or {key}, anywhere in this program</source>
        <comment>OUTPUT_OFF_TAUGHT</comment>
        <translation>Ausgang aus. Taste: Escape, Pause oder {key}, überall in diesem Programm</translation>
    </message>
    <message>
        <source>Not an emergency stop.</source>
        <comment>NO_EMERGENCY_STOP_SHORT</comment>
        <translation>Kein Not-Halt.</translation>
    </message>
    <message>
        <source>Stops by command over the cable; not an emergency stop. In danger use the supply’s own output key or the mains switch.</source>
        <comment>NO_EMERGENCY_STOP</comment>
        <translation>Schaltet per Befehl über das Kabel ab; kein Not-Halt. Bei Gefahr die Ausgangstaste am Netzgerät oder den Netzschalter drücken.</translation>
    </message>
    <message>
        <source>off</source>
        <comment>OFF_SHORT</comment>
        <translation>aus</translation>
    </message>
    <message>
        <source>Nothing was switched on from here.</source>
        <comment>OFF_IDLE</comment>
        <translation>Von hier aus wurde nichts eingeschaltet.</translation>
    </message>
    <message>
        <source>Output not read back yet: first the supply is looked for.</source>
        <comment>OFF_RUNNING</comment>
        <translation>Ausgang noch nicht rückgelesen: Zuerst wird das Netzgerät gesucht.</translation>
    </message>
    <message>
        <source>OUTPUT ON since {at}, by read-back.</source>
        <comment>OFF_RUNNING_ON</comment>
        <translation>AUSGANG AN seit {at}, rückgelesen.</translation>
    </message>
    <message>
        <source>Off, confirmed by read-back at {at}; the run goes on.</source>
        <comment>OFF_RUNNING_OFF</comment>
        <translation>Aus, um {at} durch Rücklesen bestätigt; der Lauf geht weiter.</translation>
    </message>
    <message>
        <source>Off commanded at {at}; waiting for the supply to confirm.</source>
        <comment>OFF_COMMANDED</comment>
        <translation>Aus befohlen um {at}; das Netzgerät muss es noch bestätigen.</translation>
    </message>
    <message>
        <source>Off, confirmed by read-back at {at}.</source>
        <comment>OFF_CONFIRMED</comment>
        <translation>Aus, um {at} durch Rücklesen bestätigt.</translation>
    </message>
    <message>
        <source>NOT CONFIRMED: switch the supply off by hand</source>
        <comment>OFF_NOT_CONFIRMED</comment>
        <translation>NICHT BESTÄTIGT: Netzgerät von Hand ausschalten</translation>
    </message>
    <message>
        <source>I switched it off by hand</source>
        <comment>OFF_ACKNOWLEDGE</comment>
        <translation>Von Hand ausgeschaltet</translation>
    </message>
    <message>
        <source>A bench supply's output may be on</source>
        <comment>AWAKE_WHY</comment>
        <translation>Der Ausgang eines Netzgeräts kann an sein</translation>
    </message>
    <message>
        <source>Output off</source>
        <comment>ROLE_OFF</comment>
        <translation>Ausgang aus</translation>
    </message>
    <message>
        <source>start</source>
        <comment>ROLE_START</comment>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>on to the next stage</source>
        <comment>ROLE_NEXT</comment>
        <translation>weiter zum nächsten Schritt</translation>
    </message>
    <message>
        <source>This key has no name here. Set the foot switch to another key, for example F13.</source>
        <comment>KEY_WITHOUT_NAME</comment>
        <translation>Diese Taste hat hier keinen Namen. Stellen Sie den Fußschalter auf eine andere Taste, etwa F13.</translation>
    </message>
    <message>
        <source>This key switches the keyboard itself. Take another one.</source>
        <comment>KEY_LOCKS</comment>
        <translation>Diese Taste schaltet die Tastatur selbst um. Nehmen Sie eine andere.</translation>
    </message>
    <message>
        <source>{key} already has its work in this window. Take another key.</source>
        <comment>KEY_OF_WINDOW</comment>
        <translation>{key} hat in diesem Fenster schon ihre Aufgabe. Nehmen Sie eine andere Taste.</translation>
    </message>
    <message>
        <source>Alt and F4 close the window. Take another key.</source>
        <comment>KEY_CLOSES</comment>
        <translation>Alt und F4 schließen das Fenster. Nehmen Sie eine andere Taste.</translation>
    </message>
    <message>
        <source>This key types or moves in fields. Take a key such as F9, one of the keypad, or one together with Ctrl or Alt.</source>
        <comment>KEY_TYPES</comment>
        <translation>Diese Taste schreibt oder bewegt sich in Feldern. Nehmen Sie eine Taste wie F9, eine vom Ziffernblock oder eine zusammen mit Strg oder Alt.</translation>
    </message>
    <message>
        <source>With Num Lock off this key is another one, and output off must not hang on that. Take a key such as F9.</source>
        <comment>KEY_NUM_LOCK</comment>
        <translation>Ohne Num-Taste ist diese Taste eine andere, und „Ausgang aus“ darf daran nicht hängen. Nehmen Sie eine Taste wie F9.</translation>
    </message>
    <message>
        <source>{key} already means: {role}. A key has one meaning.</source>
        <comment>KEY_TWICE</comment>
        <translation>{key} bedeutet schon: {role}. Eine Taste hat eine Bedeutung.</translation>
    </message>
    <message>
        <source>The taught key has nothing to do here now.</source>
        <comment>KEY_NOTHING_HERE</comment>
        <translation>Die angelernte Taste hat hier jetzt nichts zu tun.</translation>
    </message>
    <message>
        <source>supply: {resource}</source>
        <comment>FOOT_SUPPLY</comment>
        <translation>Netzgerät: {resource}</translation>
    </message>
    <message>
        <source>supply: none chosen</source>
        <comment>FOOT_NO_SUPPLY</comment>
        <translation>Netzgerät: keines gewählt</translation>
    </message>
    <message>
        <source>{rate:.0f} readings/s, last {age}</source>
        <comment>FOOT_RATE</comment>
        <translation>{rate:.0f} Messwerte/s, letzter {age}</translation>
    </message>
    <message>
        <source>no readings</source>
        <comment>FOOT_NO_RATE</comment>
        <translation>keine Messwerte</translation>
    </message>
    <message>
        <source>trace on disk to {at}</source>
        <comment>FOOT_TRACE</comment>
        <translation>Aufzeichnung auf der Platte bis {at}</translation>
    </message>
    <message>
        <source>no trace open</source>
        <comment>FOOT_NO_TRACE</comment>
        <translation>keine Aufzeichnung offen</translation>
    </message>
    <message>
        <source>run filed with job {number:04d}</source>
        <comment>FOOT_FILED</comment>
        <translation>Lauf abgelegt bei Auftrag {number:04d}</translation>
    </message>
    <message>
        <source>ledger: {name}</source>
        <comment>FOOT_LEDGER</comment>
        <translation>Auftragsbuch: {name}</translation>
    </message>
    <message>
        <source>this room can switch nothing on</source>
        <comment>FOOT_HISTORY</comment>
        <translation>dieser Raum kann nichts einschalten</translation>
    </message>
    <message>
        <source>{value:.0f} ms ago</source>
        <comment>AGE_MS</comment>
        <translation>vor {value:.0f} ms</translation>
    </message>
    <message>
        <source>{value:.0f} s ago</source>
        <comment>AGE_S</comment>
        <translation>vor {value:.0f} s</translation>
    </message>
    <message>
        <source>A fault in the window: {what}. Output off was sent. {rest}</source>
        <comment>FAULT</comment>
        <translation>Ein Fehler im Fenster: {what}. „Ausgang aus“ wurde gesendet. {rest}</translation>
    </message>
    <message>
        <source>Look at the supply before you go on.</source>
        <comment>FAULT_REST</comment>
        <translation>Sehen Sie nach dem Netzgerät, bevor Sie weitermachen.</translation>
    </message>
    <message>
        <source>The ledger could not be used: {what}. The run itself is safe on disk in its journal.</source>
        <comment>LEDGER_TROUBLE</comment>
        <translation>Das Auftragsbuch konnte nicht benutzt werden: {what}. Der Lauf selbst ist in seinem Journal auf der Platte sicher.</translation>
    </message>
    <message>
        <source>The run could not be begun: {what}. Nothing was switched on.</source>
        <comment>NO_START</comment>
        <translation>Der Lauf konnte nicht begonnen werden: {what}. Es wurde nichts eingeschaltet.</translation>
    </message>
    <message>
        <source>Run {run} of job {number:04d} ({kind}, begun {day} {at}) ended early: {why}. {off} What was read until then is filed with the job, in the history.</source>
        <comment>ENDED_EARLY</comment>
        <translation>Lauf {run} von Auftrag {number:04d} ({kind}, begonnen am {day} um {at}) endete vorzeitig: {why}. {off} Was bis dahin gelesen wurde, ist beim Auftrag abgelegt, im Verlauf.</translation>
    </message>
    <message>
        <source>the program ended while it went on</source>
        <comment>LEFT_BEHIND_WHY</comment>
        <translation>das Programm endete, während er lief</translation>
    </message>
    <message>
        <source>The program ended while that run went on; what was read until then is filed with the job, in the history.</source>
        <comment>LEFT_BEHIND_TOO</comment>
        <translation>Das Programm endete, während dieser Lauf lief; was bis dahin gelesen wurde, ist beim Auftrag abgelegt, im Verlauf.</translation>
    </message>
    <message>
        <source>{count} runs that a crash left behind were filed.</source>
        <comment>LEFT_BEHIND_MANY</comment>
        <translation>{count} Läufe, die von einem Absturz übrig waren, wurden abgelegt.</translation>
    </message>
    <message>
        <source>Run {run} of job {number:04d}, begun {day} {at} on {resource}, ended without its output confirmed off. Nobody has said since that it was switched off by hand.</source>
        <comment>FOUND_NOT_CONFIRMED</comment>
        <translation>Lauf {run} von Auftrag {number:04d}, begonnen {day} {at} an {resource}, endete, ohne dass sein Ausgang als aus bestätigt war. Seither hat niemand gesagt, dass von Hand ausgeschaltet wurde.</translation>
    </message>
    <message>
        <source>First switch the supply off by hand, and say so at the right.</source>
        <comment>ACKNOWLEDGE_FIRST</comment>
        <translation>Schalten Sie zuerst das Netzgerät von Hand aus, und bestätigen Sie das rechts.</translation>
    </message>
    <message>
        <source>A run is on: let it end or press Output off, then try again.</source>
        <comment>NOT_WHILE_ON</comment>
        <translation>Ein Lauf ist an: Warten Sie sein Ende ab oder drücken Sie „Ausgang aus“, dann noch einmal.</translation>
    </message>
    <message>
        <source>Seen</source>
        <comment>DISMISS</comment>
        <translation>Gesehen</translation>
    </message>
    <message>
        <source>ACT NOW</source>
        <comment>ACT_NOW</comment>
        <translation>JETZT HANDELN</translation>
    </message>
    <message>
        <source>LOOK</source>
        <comment>LOOK</comment>
        <translation>ANSEHEN</translation>
    </message>
    <message>
        <source>YOUR TURN</source>
        <comment>YOUR_TURN</comment>
        <translation>SIE SIND DRAN</translation>
    </message>
    <message>
        <source>{count} more</source>
        <comment>NOTICE_MORE</comment>
        <translation>{count} weitere</translation>
    </message>
    <message>
        <source>Earlier</source>
        <comment>NOTICE_EARLIER</comment>
        <translation>Früheres</translation>
    </message>
    <message>
        <source>What was said last</source>
        <comment>NOTICE_LIST</comment>
        <translation>Was zuletzt gesagt wurde</translation>
    </message>
    <message>
        <source>Act now: the output may be on</source>
        <comment>RED_NAME</comment>
        <translation>Jetzt handeln: Der Ausgang kann an sein</translation>
    </message>
    <message>
        <source>Switch the supply off by hand: its own output key or the mains switch.</source>
        <comment>RED_DO</comment>
        <translation>Schalten Sie das Netzgerät von Hand aus: mit seiner eigenen Ausgangstaste oder dem Netzschalter.</translation>
    </message>
    <message>
        <source>Then say so with the red button above “Output off”.</source>
        <comment>RED_THEN</comment>
        <translation>Sagen Sie es dann mit dem roten Knopf über „Ausgang aus“.</translation>
    </message>
    <message>
        <source>The output may be on. “Off” was sent, but the supply has not confirmed it.</source>
        <comment>RED_WHY</comment>
        <translation>Der Ausgang kann an sein. „Aus“ wurde gesendet, aber das Netzgerät hat es nicht bestätigt.</translation>
    </message>
    <message>
        <source>The link to the supply was lost while its output was on. From here it can’t be switched off any more.</source>
        <comment>RED_WHY_LINK</comment>
        <translation>Die Verbindung zum Netzgerät ging verloren, während sein Ausgang an war. Von hier aus lässt es sich nicht mehr ausschalten.</translation>
    </message>
    <message>
        <source>Since then, at {at}, the supply has answered that its output is off. Look at it all the same.</source>
        <comment>RED_SINCE</comment>
        <translation>Seither, um {at}, hat das Netzgerät geantwortet, dass sein Ausgang aus ist. Sehen Sie trotzdem nach.</translation>
    </message>
    <message>
        <source>What has stopped moving, and what does its label say?</source>
        <comment>INTAKE_SAY</comment>
        <translation>Was bewegt sich nicht mehr, und was steht auf seinem Schild?</translation>
    </message>
    <message>
        <source>What it is and its rated volts are needed to begin; everything else helps the next one like it.</source>
        <comment>INTAKE_WHY</comment>
        <translation>Zum Beginnen genügen, was es ist, und die Nennspannung; alles Weitere hilft beim nächsten dieser Art.</translation>
    </message>
    <message>
        <source>Taken in as job {number:04d}.</source>
        <comment>INTAKE_OPEN_SAY</comment>
        <translation>Angenommen als Auftrag {number:04d}.</translation>
    </message>
    <message>
        <source>What is put right here is kept beside what it was. The rated volts stay: runs were made with them.</source>
        <comment>INTAKE_OPEN_WHY</comment>
        <translation>Was hier berichtigt wird, steht neben dem, was vorher war. Die Nennspannung bleibt: Mit ihr wurden Läufe gemacht.</translation>
    </message>
    <message>
        <source>Bilge pump</source>
        <comment>KINDS</comment>
        <translation>Bilgepumpe</translation>
    </message>
    <message>
        <source>Fresh-water pump</source>
        <comment>KINDS</comment>
        <translation>Frischwasserpumpe</translation>
    </message>
    <message>
        <source>Cabin fan</source>
        <comment>KINDS</comment>
        <translation>Kabinenlüfter</translation>
    </message>
    <message>
        <source>Hatch actuator</source>
        <comment>KINDS</comment>
        <translation>Lukenantrieb</translation>
    </message>
    <message>
        <source>Anchor-light dimmer fan</source>
        <comment>KINDS</comment>
        <translation>Lüfter am Ankerlichtdimmer</translation>
    </message>
    <message>
        <source>What it is</source>
        <comment>FIELD_KIND</comment>
        <translation>Was es ist</translation>
    </message>
    <message>
        <source>Make</source>
        <comment>FIELD_MAKE</comment>
        <translation>Hersteller</translation>
    </message>
    <message>
        <source>Model</source>
        <comment>FIELD_MODEL</comment>
        <translation>Modell</translation>
    </message>
    <message>
        <source>Serial</source>
        <comment>FIELD_SERIAL</comment>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <source>Complaint, in the owner’s words</source>
        <comment>FIELD_COMPLAINT</comment>
        <translation>Beanstandung, mit den Worten des Eigentümers</translation>
    </message>
    <message>
        <source>Rated volts</source>
        <comment>FIELD_RATED</comment>
        <translation>Nennspannung</translation>
    </message>
    <message>
        <source>Volts ceiling</source>
        <comment>FIELD_MAX_VOLTS</comment>
        <translation>Grenzwert Volt</translation>
    </message>
    <message>
        <source>Amps ceiling</source>
        <comment>FIELD_MAX_AMPS</comment>
        <translation>Grenzwert Ampere</translation>
    </message>
    <message>
        <source>Load: dry or wet</source>
        <comment>FIELD_WET</comment>
        <translation>Last: trocken oder nass</translation>
    </message>
    <message>
        <source>Load: coupled or not</source>
        <comment>FIELD_COUPLED</comment>
        <translation>Last: gekuppelt oder nicht</translation>
    </message>
    <message>
        <source>Supply address</source>
        <comment>FIELD_SUPPLY</comment>
        <translation>Adresse des Netzgeräts</translation>
    </message>
    <message>
        <source>TCPIP::192.0.2.7::5025::SOCKET</source>
        <comment>SUPPLY_EXAMPLE</comment>
        <translation>TCPIP::192.0.2.7::5025::SOCKET</translation>
    </message>
    <message>
        <source>Look for supplies</source>
        <comment>LOOK_FOR</comment>
        <translation>Netzgeräte suchen</translation>
    </message>
    <message>
        <source>Look for supplies: on the network, on USB, at the serial ports</source>
        <comment>LOOK_FOR_NAME</comment>
        <translation>Netzgeräte suchen: im Netz, an USB, an den seriellen Anschlüssen</translation>
    </message>
    <message>
        <source>Looking on the network, on USB and at the serial ports …</source>
        <comment>LOOKING</comment>
        <translation>Suche im Netz, an USB und an den seriellen Anschlüssen …</translation>
    </message>
    <message>
        <source>Looked on {day} at {at}. Pick one, then ask it; nothing that was found got a message.</source>
        <comment>LOOKED</comment>
        <translation>Gesucht am {day} um {at}. Wählen Sie eines aus und fragen Sie es dann; nichts Gefundenes bekam eine Nachricht.</translation>
    </message>
    <message>
        <source>Looked on {day} at {at}: nothing was found.</source>
        <comment>LOOKED_NOTHING</comment>
        <translation>Gesucht am {day} um {at}: nichts gefunden.</translation>
    </message>
    <message>
        <source>A plain socket is never found by looking: type its address.</source>
        <comment>LOOK_SOCKETS</comment>
        <translation>Ein einfacher Socket wird beim Suchen nie gefunden: Geben Sie seine Adresse ein.</translation>
    </message>
    <message>
        <source>Could not look: {what}.</source>
        <comment>LOOK_FAILED</comment>
        <translation>Suchen war nicht möglich: {what}.</translation>
    </message>
    <message>
        <source>Not looked at: {part}, {why}.</source>
        <comment>LOOK_MISSED</comment>
        <translation>Nicht durchsucht: {part}, {why}.</translation>
    </message>
    <message>
        <source>Where supplies may be; Enter picks one for the address</source>
        <comment>PLACES_NAME</comment>
        <translation>Wo Netzgeräte sein können; Enter übernimmt eines als Adresse</translation>
    </message>
    <message>
        <source>serial port</source>
        <comment>PLACE_KINDS</comment>
        <translation>serieller Anschluss</translation>
    </message>
    <message>
        <source>USB</source>
        <comment>PLACE_KINDS</comment>
        <translation>USB</translation>
    </message>
    <message>
        <source>network</source>
        <comment>PLACE_KINDS</comment>
        <translation>Netz</translation>
    </message>
    <message>
        <source>VISA</source>
        <comment>PLACE_KINDS</comment>
        <translation>VISA</translation>
    </message>
    <message>
        <source>May be anything: it gets no message before you pick it and press “Ask it”.</source>
        <comment>PLACE_SERIAL_HINT</comment>
        <translation>Kann alles sein: Es bekommt keine Nachricht, bevor Sie es auswählen und „Fragen“ drücken.</translation>
    </message>
    <message>
        <source>Ask it</source>
        <comment>ASK_IT</comment>
        <translation>Fragen</translation>
    </message>
    <message>
        <source>Ask the supply at this address what it is</source>
        <comment>ASK_IT_NAME</comment>
        <translation>Das Netzgerät an dieser Adresse fragen, was es ist</translation>
    </message>
    <message>
        <source>Asks by questions only: nothing is set or switched.</source>
        <comment>ASK_HINT</comment>
        <translation>Stellt nur Fragen: Nichts wird eingestellt oder geschaltet.</translation>
    </message>
    <message>
        <source>Asking what it is, by questions only; nothing is set or switched …</source>
        <comment>ASKING</comment>
        <translation>Fragt, was es ist, nur mit Fragen; nichts wird eingestellt oder geschaltet …</translation>
    </message>
    <message>
        <source>the asking was ended</source>
        <comment>ASK_STOPPED</comment>
        <translation>das Fragen wurde beendet</translation>
    </message>
    <message>
        <source>it did not get done within {after}</source>
        <comment>ASK_TOO_LONG</comment>
        <translation>es wurde in {after} nicht fertig</translation>
    </message>
    <message>
        <source>the process that asked ended without a word</source>
        <comment>ASK_NOTHING</comment>
        <translation>der Prozess, der fragte, endete ohne ein Wort</translation>
    </message>
    <message>
        <source>A supply is being asked what it is. Wait until it has answered.</source>
        <comment>NOT_WHILE_ASKING</comment>
        <translation>Ein Netzgerät wird gerade gefragt, was es ist. Warten Sie, bis es geantwortet hat.</translation>
    </message>
    <message>
        <source>Give the address first: type it, or look for supplies.</source>
        <comment>NEEDS_ADDRESS</comment>
        <translation>Geben Sie zuerst die Adresse an: eintippen oder Netzgeräte suchen.</translation>
    </message>
    <message>
        <source>Usable: runs on this address open with what it told.</source>
        <comment>SUPPLY_USABLE</comment>
        <translation>Brauchbar: Läufe an dieser Adresse beginnen mit dem, was es gesagt hat.</translation>
    </message>
    <message>
        <source>Not usable: {why}.</source>
        <comment>SUPPLY_NOT_USABLE</comment>
        <translation>Nicht brauchbar: {why}.</translation>
    </message>
    <message>
        <source>Asked on {day} at {at}; {checked}.</source>
        <comment>SUPPLY_ASKED</comment>
        <translation>Gefragt am {day} um {at}; {checked}.</translation>
    </message>
    <message>
        <source>checked on {day}</source>
        <comment>SUPPLY_CHECKED</comment>
        <translation>geprüft am {day}</translation>
    </message>
    <message>
        <source>checked on {day}, not all within what was stated</source>
        <comment>SUPPLY_CHECKED_NOT_ALL</comment>
        <translation>geprüft am {day}, nicht alles war innerhalb der Angaben</translation>
    </message>
    <message>
        <source>not checked with a resistor yet</source>
        <comment>SUPPLY_NOT_CHECKED</comment>
        <translation>noch nicht mit einem Widerstand geprüft</translation>
    </message>
    <message>
        <source>What was kept of it before is from {day}.</source>
        <comment>SUPPLY_NOT_KEPT</comment>
        <translation>Was davor von ihm gemerkt wurde, ist vom {day}.</translation>
    </message>
    <message>
        <source>What it told</source>
        <comment>REPORT_SHOW</comment>
        <translation>Was es sagte</translation>
    </message>
    <message>
        <source>Hide what it told</source>
        <comment>REPORT_HIDE</comment>
        <translation>Ausblenden, was es sagte</translation>
    </message>
    <message>
        <source>What the supply told: {told}</source>
        <comment>REPORT_NAME</comment>
        <translation>Was das Netzgerät sagte: {told}</translation>
    </message>
    <message>
        <source>It says it is</source>
        <comment>REPORT_IDENTITY</comment>
        <translation>Es nennt sich</translation>
    </message>
    <message>
        <source>Speaks</source>
        <comment>REPORT_SPEAKS</comment>
        <translation>Spricht</translation>
    </message>
    <message>
        <source>Gives at most</source>
        <comment>REPORT_GIVES</comment>
        <translation>Gibt höchstens</translation>
    </message>
    <message>
        <source>Answers</source>
        <comment>REPORT_QUICK</comment>
        <translation>Antwortet</translation>
    </message>
    <message>
        <source>Shortest kick</source>
        <comment>REPORT_KICK</comment>
        <translation>Kürzester Anstoß</translation>
    </message>
    <message>
        <source>Please say</source>
        <comment>REPORT_QUESTION</comment>
        <translation>Bitte angeben</translation>
    </message>
    <message>
        <source>{volts} and {amps}</source>
        <comment>REPORT_RANGE</comment>
        <translation>{volts} und {amps}</translation>
    </message>
    <message>
        <source>{volts} and {amps}, output {output} of {outputs}</source>
        <comment>REPORT_RANGE_OF</comment>
        <translation>{volts} und {amps}, Ausgang {output} von {outputs}</translation>
    </message>
    <message>
        <source>what it does not tell</source>
        <comment>REPORT_NO_RANGE</comment>
        <translation>was es nicht sagt</translation>
    </message>
    <message>
        <source>{latency} a question, {reading} a reading, {rate} readings a second</source>
        <comment>REPORT_LATENCY</comment>
        <translation>{latency} je Frage, {reading} je Messwert, {rate} Messwerte in der Sekunde</translation>
    </message>
    <message>
        <source>{least}; reckoned, not tried: settling is measured only with the output on</source>
        <comment>REPORT_LEAST</comment>
        <translation>{least}; gerechnet, nicht probiert: Das Einschwingen wird nur mit eingeschaltetem Ausgang gemessen</translation>
    </message>
    <message>
        <source>{least}; tried on {day} with the leads open</source>
        <comment>REPORT_TRIED</comment>
        <translation>{least}; probiert am {day} mit offenen Leitungen</translation>
    </message>
    <message>
        <source>At a terminal</source>
        <comment>REPORT_TERMINAL</comment>
        <translation>Am Terminal</translation>
    </message>
    <message>
        <source>Checks, which switch it on: benchlog supply {address} --check --ohm 10, or --settling</source>
        <comment>REPORT_COMMANDS</comment>
        <translation>Prüfungen, die einschalten: benchlog supply {address} --check --ohm 10, oder --settling</translation>
    </message>
    <message>
        <source>The answer goes into its dialect file: benchlog supply --write, then --dialect.</source>
        <comment>REPORT_BY_FILE</comment>
        <translation>Die Antwort kommt in seine Dialektdatei: benchlog supply --write, dann --dialect.</translation>
    </message>
    <message>
        <source>Its range is no ceiling then: the owner’s, the job’s and the program’s hold. Say it below.</source>
        <comment>REPORT_GAPS</comment>
        <translation>Sein Bereich ist dann kein Grenzwert: Es gelten die des Inhabers, des Auftrags und des Programms. Geben Sie ihn unten an.</translation>
    </message>
    <message>
        <source>Output</source>
        <comment>FIELD_OUTPUT</comment>
        <translation>Ausgang</translation>
    </message>
    <message>
        <source>Output {number}</source>
        <comment>OUTPUT_CHOICE</comment>
        <translation>Ausgang {number}</translation>
    </message>
    <message>
        <source>Most volts of an output</source>
        <comment>FIELD_MOST_VOLTS</comment>
        <translation>Höchste Volt eines Ausgangs</translation>
    </message>
    <message>
        <source>Most amps of an output</source>
        <comment>FIELD_MOST_AMPS</comment>
        <translation>Höchste Ampere eines Ausgangs</translation>
    </message>
    <message>
        <source>Ask again with these</source>
        <comment>ASK_AGAIN</comment>
        <translation>Damit neu fragen</translation>
    </message>
    <message>
        <source>Ask the supply again, with these most volts and amps</source>
        <comment>ASK_AGAIN_NAME</comment>
        <translation>Das Netzgerät neu fragen, mit diesen höchsten Volt und Ampere</translation>
    </message>
    <message>
        <source>Give both, the most volts and the most amps, above zero.</source>
        <comment>NEEDS_RANGE</comment>
        <translation>Geben Sie beides an, die höchsten Volt und die höchsten Ampere, über null.</translation>
    </message>
    <message>
        <source>{resource}, output {output}</source>
        <comment>FOOT_OUTPUT</comment>
        <translation>{resource}, Ausgang {output}</translation>
    </message>
    <message>
        <source>The thing itself</source>
        <comment>CARD_ITEM</comment>
        <translation>Das Gerät selbst</translation>
    </message>
    <message>
        <source>On the bench</source>
        <comment>CARD_BENCH</comment>
        <translation>Auf der Werkbank</translation>
    </message>
    <message>
        <source>Starts as the rated volts. Above them only if this job is given more.</source>
        <comment>MAX_VOLTS_HINT</comment>
        <translation>Beginnt mit der Nennspannung. Darüber nur, wenn dieser Auftrag mehr bekommt.</translation>
    </message>
    <message>
        <source>Left empty, the supply’s own range and the probed winding decide.</source>
        <comment>MAX_AMPS_HINT</comment>
        <translation>Leer entscheiden der eigene Bereich des Netzgeräts und die gemessene Wicklung.</translation>
    </message>
    <message>
        <source>Who unlocks</source>
        <comment>FIELD_UNLOCK_WHO</comment>
        <translation>Wer freigibt</translation>
    </message>
    <message>
        <source>Why the usual ceilings don’t do, in a few words</source>
        <comment>FIELD_UNLOCK_WHY</comment>
        <translation>Warum die üblichen Grenzwerte nicht reichen, in wenigen Worten</translation>
    </message>
    <message>
        <source>Unlock for 12 h</source>
        <comment>UNLOCK</comment>
        <translation>Für 12 h freigeben</translation>
    </message>
    <message>
        <source>The owner’s settings let this job be unlocked up to {limits}; it is kept with the job.</source>
        <comment>UNLOCK_ALLOWED</comment>
        <translation>Die Einstellungen des Inhabers erlauben für diesen Auftrag bis zu {limits}; das wird beim Auftrag vermerkt.</translation>
    </message>
    <message>
        <source>Unlocked by {who} until {at}: {why}</source>
        <comment>UNLOCKED</comment>
        <translation>Freigegeben von {who} bis {at}: {why}</translation>
    </message>
    <message>
        <source>Its owner</source>
        <comment>CARD_OWNER</comment>
        <translation>Sein Eigentümer</translation>
    </message>
    <message>
        <source>Owner</source>
        <comment>FIELD_OWNER</comment>
        <translation>Eigentümer</translation>
    </message>
    <message>
        <source>How to reach them</source>
        <comment>FIELD_CONTACT</comment>
        <translation>Wie er zu erreichen ist</translation>
    </message>
    <message>
        <source>Taken in by</source>
        <comment>FIELD_WHO</comment>
        <translation>Angenommen von</translation>
    </message>
    <message>
        <source>May cost at most</source>
        <comment>FIELD_LIMIT</comment>
        <translation>Darf höchstens kosten</translation>
    </message>
    <message>
        <source>no limit agreed</source>
        <comment>LIMIT_HINT</comment>
        <translation>keine Grenze vereinbart</translation>
    </message>
    <message>
        <source>What it moved</source>
        <comment>FIELD_PUMPED</comment>
        <translation>Was es bewegt hat</translation>
    </message>
    <message>
        <source>sea water, air, …</source>
        <comment>PUMPED_HINT</comment>
        <translation>Seewasser, Luft, …</translation>
    </message>
    <message>
        <source>Who else was in it</source>
        <comment>FIELD_OPENED_BEFORE</comment>
        <translation>Wer sonst daran war</translation>
    </message>
    <message>
        <source>nobody, the owner, …</source>
        <comment>OPENED_BEFORE_HINT</comment>
        <translation>niemand, der Eigentümer, …</translation>
    </message>
    <message>
        <source>The owner agrees to the attempt and to what it may do to the thing</source>
        <comment>FIELD_CONSENT</comment>
        <translation>Der Eigentümer stimmt dem Versuch zu und dem, was dabei dem Gerät geschehen kann</translation>
    </message>
    <message>
        <source>a name, or a berth</source>
        <comment>OWNER_HINT</comment>
        <translation>ein Name oder ein Liegeplatz</translation>
    </message>
    <message>
        <source>Take back the last change</source>
        <comment>UNDO_CHANGE</comment>
        <translation>Letzte Änderung zurücknehmen</translation>
    </message>
    <message>
        <source>Taken back: {fields}.</source>
        <comment>UNDONE</comment>
        <translation>Zurückgenommen: {fields}.</translation>
    </message>
    <message>
        <source>what it is</source>
        <comment>JOB_FIELDS</comment>
        <translation>was es ist</translation>
    </message>
    <message>
        <source>make</source>
        <comment>JOB_FIELDS</comment>
        <translation>Hersteller</translation>
    </message>
    <message>
        <source>model</source>
        <comment>JOB_FIELDS</comment>
        <translation>Modell</translation>
    </message>
    <message>
        <source>serial</source>
        <comment>JOB_FIELDS</comment>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <source>complaint</source>
        <comment>JOB_FIELDS</comment>
        <translation>Beanstandung</translation>
    </message>
    <message>
        <source>load state</source>
        <comment>JOB_FIELDS</comment>
        <translation>Belastung</translation>
    </message>
    <message>
        <source>owner</source>
        <comment>JOB_FIELDS</comment>
        <translation>Eigentümer</translation>
    </message>
    <message>
        <source>how to reach them</source>
        <comment>JOB_FIELDS</comment>
        <translation>wie er zu erreichen ist</translation>
    </message>
    <message>
        <source>taken in by</source>
        <comment>JOB_FIELDS</comment>
        <translation>angenommen von</translation>
    </message>
    <message>
        <source>the owner’s consent</source>
        <comment>JOB_FIELDS</comment>
        <translation>Zustimmung des Eigentümers</translation>
    </message>
    <message>
        <source>what it may cost</source>
        <comment>JOB_FIELDS</comment>
        <translation>was es kosten darf</translation>
    </message>
    <message>
        <source>who else was in it</source>
        <comment>JOB_FIELDS</comment>
        <translation>wer sonst daran war</translation>
    </message>
    <message>
        <source>what it moved</source>
        <comment>JOB_FIELDS</comment>
        <translation>was es bewegt hat</translation>
    </message>
    <message>
        <source>cause</source>
        <comment>JOB_FIELDS</comment>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>work done</source>
        <comment>JOB_FIELDS</comment>
        <translation>was getan wurde</translation>
    </message>
    <message>
        <source>prognosis</source>
        <comment>JOB_FIELDS</comment>
        <translation>Aussicht</translation>
    </message>
    <message>
        <source>result</source>
        <comment>JOB_FIELDS</comment>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>what did it</source>
        <comment>JOB_FIELDS</comment>
        <translation>was geholfen hat</translation>
    </message>
    <message>
        <source>advice</source>
        <comment>JOB_FIELDS</comment>
        <translation>Rat</translation>
    </message>
    <message>
        <source>warranty</source>
        <comment>JOB_FIELDS</comment>
        <translation>Gewährleistung</translation>
    </message>
    <message>
        <source>Here before: job {number:04d}, {day}, {ended}.</source>
        <comment>COMEBACK_ONE</comment>
        <translation>War schon hier: Auftrag {number:04d}, {day}, {ended}.</translation>
    </message>
    <message>
        <source>Here before, {count} times; last as job {number:04d}, {day}, {ended}.</source>
        <comment>COMEBACK_MANY</comment>
        <translation>War schon {count}-mal hier; zuletzt als Auftrag {number:04d}, {day}, {ended}.</translation>
    </message>
    <message>
        <source>Come back</source>
        <comment>COMEBACK_SAME</comment>
        <translation>Zurückgekommen</translation>
    </message>
    <message>
        <source>Look at it</source>
        <comment>COMEBACK_LOOK</comment>
        <translation>Ansehen</translation>
    </message>
    <message>
        <source>The day’s backup: {what}</source>
        <comment>BACKUP_FAILED</comment>
        <translation>Die Sicherung des Tages: {what}</translation>
    </message>
    <message>
        <source>The day’s backup is made, but {what}</source>
        <comment>BACKUP_LACKS</comment>
        <translation>Die Sicherung des Tages ist gemacht, aber {what}</translation>
    </message>
    <message>
        <source>What was being typed when the program last ended is here again.</source>
        <comment>DRAFT_FOUND</comment>
        <translation>Was gerade getippt wurde, als das Programm zuletzt endete, steht wieder hier.</translation>
    </message>
    <message>
        <source>Take it in</source>
        <comment>OPEN_JOB</comment>
        <translation>Annehmen</translation>
    </message>
    <message>
        <source>Say what it is.</source>
        <comment>NEEDS_KIND</comment>
        <translation>Geben Sie an, was es ist.</translation>
    </message>
    <message>
        <source>Rated volts: give a number above zero, as the label says.</source>
        <comment>NEEDS_RATED</comment>
        <translation>Nennspannung: Geben Sie eine Zahl über null an, wie auf dem Schild.</translation>
    </message>
    <message>
        <source>Volts ceiling: give a number above zero.</source>
        <comment>NEEDS_MAX_VOLTS</comment>
        <translation>Grenzwert Volt: Geben Sie eine Zahl über null an.</translation>
    </message>
    <message>
        <source>{name}: “{typed}” is no number above zero. Write it as 0.5, 0,5, 500m or 500 m{unit}.</source>
        <comment>WRONG_QUANTITY</comment>
        <translation>{name}: „{typed}“ ist keine Zahl über null. Schreiben Sie 0.5, 0,5, 500m oder 500 m{unit}.</translation>
    </message>
    <message>
        <source>Supply address: there is a space in it, and an address has none. Take it out, or look for supplies.</source>
        <comment>ADDRESS_WITH_SPACE</comment>
        <translation>Adresse des Netzgeräts: Darin ist ein Leerzeichen, und eine Adresse hat keines. Nehmen Sie es heraus, oder lassen Sie nach Netzgeräten suchen.</translation>
    </message>
    <message>
        <source>Supply address: not usable ({why}). Ask it again, give another address, or leave it empty for now.</source>
        <comment>ADDRESS_UNUSABLE</comment>
        <translation>Adresse des Netzgeräts: nicht brauchbar ({why}). Fragen Sie es noch einmal, geben Sie eine andere Adresse an, oder lassen Sie sie vorerst leer.</translation>
    </message>
    <message>
        <source>{name}: {value} is above the {limit} that this program never goes beyond.</source>
        <comment>ABOVE_PROGRAM</comment>
        <translation>{name}: {value} liegt über {limit}; darüber geht dieses Programm nie.</translation>
    </message>
    <message>
        <source>Give the supply’s address on the intake page first.</source>
        <comment>NEEDS_SUPPLY</comment>
        <translation>Geben Sie zuerst bei der Annahme die Adresse des Netzgeräts an.</translation>
    </message>
    <message>
        <source>Make it safe before a lead is clipped on.</source>
        <comment>SAFE_SAY</comment>
        <translation>Sichern Sie es, bevor eine Leitung angeklemmt wird.</translation>
    </message>
    <message>
        <source>Press each line when it is so, or say that it does not apply to this job; nothing is left open.</source>
        <comment>SAFE_WHY</comment>
        <translation>Bestätigen Sie jede Zeile, wenn es so ist, oder sagen Sie, dass sie für diesen Auftrag nicht zutrifft; nichts bleibt offen.</translation>
    </message>
    <message>
        <source>Made safe.</source>
        <comment>SAFE_DONE_SAY</comment>
        <translation>Gesichert.</translation>
    </message>
    <message>
        <source>Kept with the job, line by line.</source>
        <comment>SAFE_DONE_WHY</comment>
        <translation>Beim Auftrag vermerkt, Zeile für Zeile.</translation>
    </message>
    <message>
        <source>Not with this: medical devices, life-safety gear, gas appliances, pressure vessels, swollen cells. Mains motors: not with this.</source>
        <comment>SAFE_REFUSE</comment>
        <translation>Nicht damit: medizinische Geräte, Rettungsmittel, Gasgeräte, Druckbehälter, aufgeblähte Zellen, Motoren für Netzspannung.</translation>
    </message>
    <message>
        <source>Local rules and licensed practice come first.</source>
        <comment>SAFE_RULES</comment>
        <translation>Örtliche Vorschriften und die Arbeit von Fachkräften gehen vor.</translation>
    </message>
    <message>
        <source>It is safe: on to the probe</source>
        <comment>SAFE_GO_ON</comment>
        <translation>Es ist gesichert: weiter zum Messen</translation>
    </message>
    <message>
        <source>Ready to look at the winding.</source>
        <comment>RUN_BEFORE</comment>
        <translation>Bereit zum Messen der Wicklung.</translation>
    </message>
    <message>
        <source>A few short pulses of small current tell winding, open, short, diode and electronics apart.</source>
        <comment>RUN_BEFORE</comment>
        <translation>Einige kurze Stromstöße mit wenig Ampere unterscheiden Wicklung, Unterbrechung, Kurzschluss, Diode und Elektronik.</translation>
    </message>
    <message>
        <source>Ready to free it.</source>
        <comment>RUN_BEFORE</comment>
        <translation>Bereit, es zu lösen.</translation>
    </message>
    <message>
        <source>First the winding is measured with small currents. Start: a gentle start, then kicks, hand work between. Hand on the shaft: current only while you hold a key.</source>
        <comment>RUN_BEFORE</comment>
        <translation>Zuerst wird die Wicklung mit kleinen Strömen gemessen. Start: ein sanfter Anlauf, dann Anstöße, dazwischen Handarbeit. Hand an der Welle: Strom nur, solange Sie eine Taste halten.</translation>
    </message>
    <message>
        <source>Ready to prove that it starts again.</source>
        <comment>RUN_BEFORE</comment>
        <translation>Bereit nachzuweisen, dass es wieder anläuft.</translation>
    </message>
    <message>
        <source>First it measures the winding with small currents; then each start is from rest. One start is luck; several are a repair.</source>
        <comment>RUN_BEFORE</comment>
        <translation>Zuerst wird die Wicklung mit kleinen Strömen gemessen; dann ist jeder Anlauf aus dem Stillstand. Ein Anlauf ist Glück; mehrere sind eine Reparatur.</translation>
    </message>
    <message>
        <source>Looking for the supply.</source>
        <comment>RUN_STARTING</comment>
        <translation>Das Netzgerät wird gesucht.</translation>
    </message>
    <message>
        <source>Nothing is switched on before its output was read back as off.</source>
        <comment>RUN_STARTING</comment>
        <translation>Nichts wird eingeschaltet, bevor sein Ausgang als aus rückgelesen ist.</translation>
    </message>
    <message>
        <source>Every run begins by measuring the winding with small currents.</source>
        <comment>RUN_START_HINT</comment>
        <translation>Jeder Lauf misst zuerst die Wicklung mit kleinen Strömen.</translation>
    </message>
    <message>
        <source>Probe</source>
        <comment>RUN_START_BUTTON</comment>
        <translation>Messen</translation>
    </message>
    <message>
        <source>Start</source>
        <comment>RUN_START_BUTTON</comment>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Start the proof</source>
        <comment>RUN_START_BUTTON</comment>
        <translation>Nachweis beginnen</translation>
    </message>
    <message>
        <source>Probe again</source>
        <comment>RUN_AGAIN_BUTTON</comment>
        <translation>Erneut messen</translation>
    </message>
    <message>
        <source>Start again</source>
        <comment>RUN_AGAIN_BUTTON</comment>
        <translation>Erneut beginnen</translation>
    </message>
    <message>
        <source>Prove again</source>
        <comment>RUN_AGAIN_BUTTON</comment>
        <translation>Erneut nachweisen</translation>
    </message>
    <message>
        <source>probe</source>
        <comment>RUN_KIND_NAMES</comment>
        <translation>Messung</translation>
    </message>
    <message>
        <source>recovery</source>
        <comment>RUN_KIND_NAMES</comment>
        <translation>Lösen</translation>
    </message>
    <message>
        <source>proof</source>
        <comment>RUN_KIND_NAMES</comment>
        <translation>Nachweis</translation>
    </message>
    <message>
        <source>hand</source>
        <comment>RUN_KIND_NAMES</comment>
        <translation>von Hand</translation>
    </message>
    <message>
        <source>leads</source>
        <comment>RUN_KIND_NAMES</comment>
        <translation>Leitungen</translation>
    </message>
    <message>
        <source>start-up</source>
        <comment>RUN_KIND_NAMES</comment>
        <translation>Anlauf</translation>
    </message>
    <message>
        <source>run-in</source>
        <comment>RUN_KIND_NAMES</comment>
        <translation>Einlauf</translation>
    </message>
    <message>
        <source>supply check</source>
        <comment>RUN_KIND_NAMES</comment>
        <translation>Prüfung des Netzgeräts</translation>
    </message>
    <message>
        <source>On to {stage}</source>
        <comment>GO_ON</comment>
        <translation>Weiter zu: {stage}</translation>
    </message>
    <message>
        <source>Starts from rest:</source>
        <comment>STARTS_LABEL</comment>
        <translation>Anläufe aus dem Stillstand:</translation>
    </message>
    <message>
        <source>Each start at the rated {rated}.</source>
        <comment>PROOF_AT_RATED</comment>
        <translation>Jeder Anlauf mit der Nennspannung, {rated}.</translation>
    </message>
    <message>
        <source>Each start at {volts}, not the rated {rated}: the look whether it turns needs room up to the volts ceiling of {ceiling}, set by the {layer}.</source>
        <comment>PROOF_BELOW_RATED</comment>
        <translation>Jeder Anlauf mit {volts}, nicht mit der Nennspannung von {rated}: Der Blick, ob er dreht, braucht Raum bis zum Grenzwert von {ceiling}, gesetzt durch: {layer}.</translation>
    </message>
    <message>
        <source>At fewer volts if the supply can’t give that: the run asks it first.</source>
        <comment>PROOF_AT_MOST</comment>
        <translation>Mit weniger Volt, wenn das Netzgerät das nicht geben kann: Der Lauf fragt es zuerst.</translation>
    </message>
    <message>
        <source>Started at the rated {rated}.</source>
        <comment>PROVEN_AT_RATED</comment>
        <translation>Angelaufen mit der Nennspannung, {rated}.</translation>
    </message>
    <message>
        <source>Started at {volts}, not the rated {rated}: the volts ceiling of {ceiling}, set by the {layer}, left no more room.</source>
        <comment>PROVEN_BELOW_RATED</comment>
        <translation>Angelaufen mit {volts}, nicht mit der Nennspannung von {rated}: Der Grenzwert von {ceiling}, gesetzt durch: {layer}, ließ nicht mehr Raum.</translation>
    </message>
    <message>
        <source>{outcome}, started at {volts}</source>
        <comment>PROOF_TRIED</comment>
        <translation>{outcome}, angelaufen mit {volts}</translation>
    </message>
    <message>
        <source>{count} starts from rest</source>
        <comment>STARTS_ACCESSIBLE</comment>
        <translation>{count} Anläufe aus dem Stillstand</translation>
    </message>
    <message>
        <source>Done by hand:</source>
        <comment>HAND_LABEL</comment>
        <translation>Von Hand getan:</translation>
    </message>
    <message>
        <source>Note that it was {step} by hand</source>
        <comment>HAND_ACCESSIBLE</comment>
        <translation>Vermerken: von Hand {step}</translation>
    </message>
    <message>
        <source>Kept with the job: {step}, {at}.</source>
        <comment>HAND_KEPT</comment>
        <translation>Beim Auftrag vermerkt: {step}, {at}.</translation>
    </message>
    <message>
        <source>A note, stamped into the running record</source>
        <comment>FIELD_NOTE</comment>
        <translation>Eine Notiz, mit Zeitstempel im laufenden Protokoll</translation>
    </message>
    <message>
        <source>A note for the record, then Enter</source>
        <comment>NOTE_HINT</comment>
        <translation>Notiz für das Protokoll, dann Enter</translation>
    </message>
    <message>
        <source>It moved  (M)</source>
        <comment>MOVED_BUTTON</comment>
        <translation>Es hat sich bewegt  (M)</translation>
    </message>
    <message>
        <source>It moved, even a little. Key: M</source>
        <comment>MOVED_ACCESSIBLE</comment>
        <translation>Es hat sich bewegt, und sei es wenig. Taste: M</translation>
    </message>
    <message>
        <source>Hand on the shaft</source>
        <comment>HAND_START</comment>
        <translation>Hand an der Welle</translation>
    </message>
    <message>
        <source>Hand on the shaft: first the winding is measured, then at most a quarter of the stall current while a key is held</source>
        <comment>HAND_START_ACCESSIBLE</comment>
        <translation>Hand an der Welle: Zuerst wird die Wicklung gemessen, dann höchstens ein Viertel des Blockierstroms, solange eine Taste gehalten wird</translation>
    </message>
    <message>
        <source>Hold for current  (Space)</source>
        <comment>HOLD_BUTTON</comment>
        <translation>Halten für Strom  (Leertaste)</translation>
    </message>
    <message>
        <source>Current flows while this, or the space bar, is held</source>
        <comment>HOLD_ACCESSIBLE</comment>
        <translation>Strom fließt, solange dies oder die Leertaste gehalten wird</translation>
    </message>
    <message>
        <source>Measured start at {volts}: steady {amps}, run-up {tau}.</source>
        <comment>MEASURED_LINE</comment>
        <translation>Gemessener Anlauf mit {volts}: stetig {amps}, Hochlauf {tau}.</translation>
    </message>
    <message>
        <source>not known ({why})</source>
        <comment>MEASURED_NOT</comment>
        <translation>nicht bekannt ({why})</translation>
    </message>
    <message>
        <source>Nothing to compare with yet: the first proof of its model.</source>
        <comment>MEASURED_FIRST</comment>
        <translation>Noch nichts zum Vergleichen: der erste Nachweis dieses Modells.</translation>
    </message>
    <message>
        <source>Against {others}: {verdict}</source>
        <comment>MEASURED_AGAINST</comment>
        <translation>Gegen {others}: {verdict}</translation>
    </message>
    <message>
        <source>Advice, with its reason</source>
        <comment>ADVICE_TITLE</comment>
        <translation>Rat mit Begründung</translation>
    </message>
    <message>
        <source>Same as last time</source>
        <comment>SAME_AS_LAST</comment>
        <translation>Wie beim letzten Mal</translation>
    </message>
    <message>
        <source>Ceilings and ladder as in job {job:04d}, run {run}, which ended freed.</source>
        <comment>SAME_AS_LAST_HINT</comment>
        <translation>Grenzwerte und Leiter wie in Auftrag {job:04d}, Lauf {run}, der mit „gelöst“ endete.</translation>
    </message>
    <message>
        <source>As in job {job:04d}: its ladder, and its ceilings of {volts} and {amps}.</source>
        <comment>SAME_AS_LAST_DONE</comment>
        <translation>Wie in Auftrag {job:04d}: dessen Leiter und dessen Grenzwerte {volts} und {amps}.</translation>
    </message>
    <message>
        <source>Not the same as last time: {why}.</source>
        <comment>SAME_AS_LAST_NOT</comment>
        <translation>Nicht wie beim letzten Mal: {why}.</translation>
    </message>
    <message>
        <source>Begin at rung {rung}</source>
        <comment>BEGIN_AT</comment>
        <translation>Mit Stufe {rung} beginnen</translation>
    </message>
    <message>
        <source>Begin the ladder at the rung that is advised</source>
        <comment>BEGIN_AT_ACCESSIBLE</comment>
        <translation>Die Leiter mit der empfohlenen Stufe beginnen</translation>
    </message>
    <message>
        <source>Leads: not measured; their resistance is part of what is found.</source>
        <comment>LEADS_NEVER</comment>
        <translation>Leitungen: nicht gemessen; ihr Widerstand steckt im Ergebnis.</translation>
    </message>
    <message>
        <source>Leads: {ohm}, measured {day}, taken out.</source>
        <comment>LEADS_KNOWN</comment>
        <translation>Leitungen: {ohm}, gemessen am {day}, herausgerechnet.</translation>
    </message>
    <message>
        <source>Measure the leads</source>
        <comment>LEADS_BUTTON</comment>
        <translation>Leitungen messen</translation>
    </message>
    <message>
        <source>Measure the leads, their two clips joined, no motor between them</source>
        <comment>LEADS_ACCESSIBLE</comment>
        <translation>Die Leitungen messen: beide Klemmen zusammen, kein Motor dazwischen</translation>
    </message>
    <message>
        <source>Join the two clips, with no motor between them: at most 1 A at 1 V, for a second.</source>
        <comment>LEADS_HINT</comment>
        <translation>Klemmen Sie die beiden Klemmen zusammen, ohne Motor dazwischen: höchstens 1 A bei 1 V, eine Sekunde lang.</translation>
    </message>
    <message>
        <source>leads measured</source>
        <comment>LEADS_WORD</comment>
        <translation>Leitungen gemessen</translation>
    </message>
    <message>
        <source>Leads of {ohm}.</source>
        <comment>LEADS_SAY</comment>
        <translation>Leitungen mit {ohm}.</translation>
    </message>
    <message>
        <source>Clip the motor on again, then probe.</source>
        <comment>LEADS_DO</comment>
        <translation>Klemmen Sie den Motor wieder an, dann messen.</translation>
    </message>
    <message>
        <source>The leads were not measured.</source>
        <comment>LEADS_NOT_SAY</comment>
        <translation>Die Leitungen wurden nicht gemessen.</translation>
    </message>
    <message>
        <source>Join the two clips, with no motor between them; then check again.</source>
        <comment>LEADS_NOT_DO</comment>
        <translation>Verbinden Sie die beiden Klemmen, ohne Motor dazwischen; dann erneut prüfen.</translation>
    </message>
    <message>
        <source>Thermal class</source>
        <comment>FIELD_CLASS</comment>
        <translation>Wärmeklasse</translation>
    </message>
    <message>
        <source>Of the winding, as the label says; A where it says nothing.</source>
        <comment>CLASS_HINT</comment>
        <translation>Der Wicklung, wie auf dem Schild; A, wenn dort nichts steht.</translation>
    </message>
    <message>
        <source>swapped</source>
        <comment>RUNG_SWAPPED</comment>
        <translation>Tausch</translation>
    </message>
    <message>
        <source>The leads are swapped by hand before this rung.</source>
        <comment>RUNG_SWAPPED_HINT</comment>
        <translation>Die Leitungen werden vor dieser Stufe von Hand getauscht.</translation>
    </message>
    <message>
        <source>left out</source>
        <comment>RUNG_LEFT_OUT</comment>
        <translation>entfällt</translation>
    </message>
    <message>
        <source>Left out of this run.</source>
        <comment>RUNG_LEFT_OUT_HINT</comment>
        <translation>In diesem Lauf ausgelassen.</translation>
    </message>
    <message>
        <source>Above the job’s volts ceiling: left out.</source>
        <comment>RUNG_ABOVE_HINT</comment>
        <translation>Über dem Grenzwert Volt des Auftrags: ausgelassen.</translation>
    </message>
    <message>
        <source>Rung {number}, {name}, {volts}: {tries} of {of} tries</source>
        <comment>RUNG_ACCESSIBLE</comment>
        <translation>Stufe {number}, {name}, {volts}: {tries} von {of} Versuchen</translation>
    </message>
    <message>
        <source>Your turn</source>
        <comment>QUESTION_TITLE</comment>
        <translation>Sie sind dran</translation>
    </message>
    <message>
        <source>It needs your hands.</source>
        <comment>QUESTION_SAY</comment>
        <translation>Jetzt braucht es Ihre Hände.</translation>
    </message>
    <message>
        <source>Only once it says at the right: off, confirmed by read-back.</source>
        <comment>QUESTION_SAY</comment>
        <translation>Erst, wenn rechts steht: aus, durch Rücklesen bestätigt.</translation>
    </message>
    <message>
        <source>It turns</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Es dreht</translation>
    </message>
    <message>
        <source>Still stuck</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Sitzt noch fest</translation>
    </message>
    <message>
        <source>I turned it</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Von Hand gedreht</translation>
    </message>
    <message>
        <source>Enough</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Genug</translation>
    </message>
    <message>
        <source>Leads swapped</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Leitungen getauscht</translation>
    </message>
    <message>
        <source>Swapped back</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Zurückgetauscht</translation>
    </message>
    <message>
        <source>Done</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Erledigt</translation>
    </message>
    <message>
        <source>Skip</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Überspringen</translation>
    </message>
    <message>
        <source>Yes</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Ja</translation>
    </message>
    <message>
        <source>No</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Nein</translation>
    </message>
    <message>
        <source>Stop</source>
        <comment>CHOICE_WORDS</comment>
        <translation>Stopp</translation>
    </message>
    <message>
        <source>Prove that it starts by itself, or go on by hand.</source>
        <comment>HAND_ENDED_DO</comment>
        <translation>Weisen Sie nach, dass es von selbst anläuft, oder machen Sie von Hand weiter.</translation>
    </message>
    <message>
        <source>Every ceiling at the right holds.</source>
        <comment>WHY_BY_KIND</comment>
        <translation>Jeder Grenzwert rechts gilt.</translation>
    </message>
    <message>
        <source>One short push; then a look whether it turns.</source>
        <comment>WHY_BY_KIND</comment>
        <translation>Ein kurzer Anstoß; dann ein Blick, ob es dreht.</translation>
    </message>
    <message>
        <source>A rotor that turns makes a voltage of its own.</source>
        <comment>WHY_BY_KIND</comment>
        <translation>Ein Läufer, der dreht, macht eine eigene Spannung.</translation>
    </message>
    <message>
        <source>Heat leaves the winding while it rests.</source>
        <comment>WHY_BY_KIND</comment>
        <translation>In der Pause verlässt Wärme die Wicklung.</translation>
    </message>
    <message>
        <source>The output goes off first.</source>
        <comment>WHY_BY_KIND</comment>
        <translation>Erst geht der Ausgang aus.</translation>
    </message>
    <message>
        <source>turning</source>
        <comment>MARK_WORDS</comment>
        <translation>dreht</translation>
    </message>
    <message>
        <source>moved</source>
        <comment>MARK_WORDS</comment>
        <translation>bewegt</translation>
    </message>
    <message>
        <source>cut off</source>
        <comment>MARK_WORDS</comment>
        <translation>abgeschaltet</translation>
    </message>
    <message>
        <source>by hand</source>
        <comment>MARK_WORDS</comment>
        <translation>von Hand</translation>
    </message>
    <message>
        <source>note</source>
        <comment>MARK_WORDS</comment>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>rescued</source>
        <comment>MARK_WORDS</comment>
        <translation>gerettet</translation>
    </message>
    <message>
        <source>It is free.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Es ist frei.</translation>
    </message>
    <message>
        <source>It runs.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Es läuft.</translation>
    </message>
    <message>
        <source>Still stuck.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Es sitzt noch fest.</translation>
    </message>
    <message>
        <source>Not decided.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Nicht entschieden.</translation>
    </message>
    <message>
        <source>No current flows: the winding or a brush is open.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Es fließt kein Strom: Die Wicklung oder eine Bürste ist unterbrochen.</translation>
    </message>
    <message>
        <source>Shorted: all current, hardly any volts.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Kurzgeschlossen: voller Strom, kaum Volt.</translation>
    </message>
    <message>
        <source>A diode is in the way.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Eine Diode ist im Weg.</translation>
    </message>
    <message>
        <source>There are electronics between the leads and the motor.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Zwischen den Leitungen und dem Motor liegt Elektronik.</translation>
    </message>
    <message>
        <source>A ceiling ended the run.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Ein Grenzwert hat den Lauf beendet.</translation>
    </message>
    <message>
        <source>Stopped.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Gestoppt.</translation>
    </message>
    <message>
        <source>The supply was lost.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Das Netzgerät ging verloren.</translation>
    </message>
    <message>
        <source>Refused: nothing was switched on.</source>
        <comment>OUTCOME_SAY</comment>
        <translation>Abgelehnt: Es wurde nichts eingeschaltet.</translation>
    </message>
    <message>
        <source>Off, confirmed by read-back.</source>
        <comment>OFF_READ_BACK</comment>
        <translation>Aus, durch Rücklesen bestätigt.</translation>
    </message>
    <message>
        <source>NOT CONFIRMED: switch the supply off by hand.</source>
        <comment>OFF_NOT_READ_BACK</comment>
        <translation>NICHT BESTÄTIGT: Schalten Sie das Netzgerät von Hand aus.</translation>
    </message>
    <message>
        <source>Next, prove it: several starts from rest.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Als Nächstes der Nachweis: mehrere Anläufe aus dem Stillstand.</translation>
    </message>
    <message>
        <source>Work on it by hand, let it soak, and start again; or close the job.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Arbeiten Sie von Hand daran, lassen Sie es einweichen und beginnen Sie erneut; oder schließen Sie den Auftrag ab.</translation>
    </message>
    <message>
        <source>Turn the shaft a little and try again, or close the job.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Drehen Sie die Welle ein wenig und versuchen Sie es erneut, oder schließen Sie den Auftrag ab.</translation>
    </message>
    <message>
        <source>Tap the housing or look at the brushes, then probe again; or close the job.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Klopfen Sie ans Gehäuse oder sehen Sie nach den Bürsten, dann erneut messen; oder schließen Sie den Auftrag ab.</translation>
    </message>
    <message>
        <source>Kicks would only heat it. Look for bridged segments or a cut lead; close the job or probe again.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Anstöße würden es nur erhitzen. Suchen Sie nach überbrückten Lamellen oder einer gequetschten Leitung; schließen Sie den Auftrag ab oder messen Sie erneut.</translation>
    </message>
    <message>
        <source>Lift one end of it and probe again, or close the job.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Löten Sie ein Ende davon ab und messen Sie erneut, oder schließen Sie den Auftrag ab.</translation>
    </message>
    <message>
        <source>Reach the motor’s own leads behind the board and probe again, or close the job.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Gehen Sie an die eigenen Leitungen des Motors hinter der Platine und messen Sie erneut, oder schließen Sie den Auftrag ab.</translation>
    </message>
    <message>
        <source>Let it cool and rest, find out why, and only then start again.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Lassen Sie es abkühlen und ruhen, finden Sie den Grund, und beginnen Sie erst dann erneut.</translation>
    </message>
    <message>
        <source>Look at the motor, and begin again when it is right.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Sehen Sie sich den Motor an, und beginnen Sie erneut, wenn alles stimmt.</translation>
    </message>
    <message>
        <source>Look at the cable and at the supply’s own display; press its output key if it is on.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Sehen Sie nach dem Kabel und nach der Anzeige des Netzgeräts; drücken Sie seine Ausgangstaste, wenn es an ist.</translation>
    </message>
    <message>
        <source>Put right what the sentence names, then begin again.</source>
        <comment>OUTCOME_DO</comment>
        <translation>Bringen Sie in Ordnung, was der Satz nennt, dann beginnen Sie erneut.</translation>
    </message>
    <message>
        <source>It can be closed as running.</source>
        <comment>PROVEN_DO</comment>
        <translation>Der Auftrag kann als „läuft“ abgeschlossen werden.</translation>
    </message>
    <message>
        <source>A winding of {ohm}.</source>
        <comment>PROBED_SAY</comment>
        <translation>Eine Wicklung mit {ohm}.</translation>
    </message>
    <message>
        <source>There is a winding; its resistance is not known.</source>
        <comment>PROBED_SAY_UNKNOWN</comment>
        <translation>Eine Wicklung ist da; ihr Widerstand ist nicht bekannt.</translation>
    </message>
    <message>
        <source>Next, free it.</source>
        <comment>PROBED_DO</comment>
        <translation>Als Nächstes: lösen.</translation>
    </message>
    <message>
        <source>({low} to {high})</source>
        <comment>INTERVAL</comment>
        <translation>({low} bis {high})</translation>
    </message>
    <message>
        <source>winding</source>
        <comment>VERDICT_WORDS</comment>
        <translation>Wicklung</translation>
    </message>
    <message>
        <source>open</source>
        <comment>VERDICT_WORDS</comment>
        <translation>unterbrochen</translation>
    </message>
    <message>
        <source>short</source>
        <comment>VERDICT_WORDS</comment>
        <translation>Kurzschluss</translation>
    </message>
    <message>
        <source>diode</source>
        <comment>VERDICT_WORDS</comment>
        <translation>Diode</translation>
    </message>
    <message>
        <source>electronics</source>
        <comment>VERDICT_WORDS</comment>
        <translation>Elektronik</translation>
    </message>
    <message>
        <source>undecided</source>
        <comment>VERDICT_WORDS</comment>
        <translation>unentschieden</translation>
    </message>
    <message>
        <source>not probed</source>
        <comment>VERDICT_WORDS</comment>
        <translation>nicht gemessen</translation>
    </message>
    <message>
        <source>freed</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>gelöst</translation>
    </message>
    <message>
        <source>runs</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>läuft</translation>
    </message>
    <message>
        <source>still stuck</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>sitzt noch fest</translation>
    </message>
    <message>
        <source>undetermined</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>unentschieden</translation>
    </message>
    <message>
        <source>open</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>unterbrochen</translation>
    </message>
    <message>
        <source>short</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>Kurzschluss</translation>
    </message>
    <message>
        <source>diode</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>Diode</translation>
    </message>
    <message>
        <source>electronic</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>Elektronik</translation>
    </message>
    <message>
        <source>ceiling</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>Grenzwert</translation>
    </message>
    <message>
        <source>stopped</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>gestoppt</translation>
    </message>
    <message>
        <source>supply lost</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>Netzgerät verloren</translation>
    </message>
    <message>
        <source>refused</source>
        <comment>OUTCOME_WORDS</comment>
        <translation>abgelehnt</translation>
    </message>
    <message>
        <source>1 kick</source>
        <comment>KICKS_ONE</comment>
        <translation>1 Anstoß</translation>
    </message>
    <message>
        <source>{count} kicks</source>
        <comment>KICKS_MANY</comment>
        <translation>{count} Anstöße</translation>
    </message>
    <message>
        <source>no kicks</source>
        <comment>NO_KICKS</comment>
        <translation>keine Anstöße</translation>
    </message>
    <message>
        <source>What was wrong, what was done, how long will it last?</source>
        <comment>CLOSE_SAY</comment>
        <translation>Was war los, was wurde getan, wie lange wird es halten?</translation>
    </message>
    <message>
        <source>An honest word here is what the next one like it starts from.</source>
        <comment>CLOSE_WHY</comment>
        <translation>Was hier ehrlich steht, hilft beim nächsten dieser Art.</translation>
    </message>
    <message>
        <source>Job {number:04d} is closed.</source>
        <comment>CLOSE_DONE_SAY</comment>
        <translation>Auftrag {number:04d} ist abgeschlossen.</translation>
    </message>
    <message>
        <source>It is in the history, with every run as it was.</source>
        <comment>CLOSE_DONE_WHY</comment>
        <translation>Er steht im Verlauf, mit jedem Lauf, wie er war.</translation>
    </message>
    <message>
        <source>Cause</source>
        <comment>FIELD_CAUSE</comment>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>Work done</source>
        <comment>FIELD_WORK</comment>
        <translation>Was getan wurde</translation>
    </message>
    <message>
        <source>Prognosis</source>
        <comment>FIELD_PROGNOSIS</comment>
        <translation>Aussicht</translation>
    </message>
    <message>
        <source>dried residue at the seal, hardened grease, brush stuck, …</source>
        <comment>CAUSE_HINT</comment>
        <translation>eingetrocknete Reste an der Dichtung, verharztes Fett, Bürste klemmt, …</translation>
    </message>
    <message>
        <source>cleaned, oiled, new seal, …</source>
        <comment>WORK_HINT</comment>
        <translation>gereinigt, geölt, neue Dichtung, …</translation>
    </message>
    <message>
        <source>should last the season; may come back when it stands dry, …</source>
        <comment>PROGNOSIS_HINT</comment>
        <translation>sollte die Saison halten; kann wiederkommen, wenn es trocken steht, …</translation>
    </message>
    <message>
        <source>It came to</source>
        <comment>FIELD_RESULT</comment>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>What did it</source>
        <comment>FIELD_METHOD</comment>
        <translation>Was geholfen hat</translation>
    </message>
    <message>
        <source>Advice to the owner</source>
        <comment>FIELD_ADVICE</comment>
        <translation>Rat an den Eigentümer</translation>
    </message>
    <message>
        <source>turn it by hand once a month, …</source>
        <comment>ADVICE_HINT</comment>
        <translation>einmal im Monat von Hand drehen, …</translation>
    </message>
    <message>
        <source>Warranty in days</source>
        <comment>FIELD_WARRANTY</comment>
        <translation>Gewährleistung in Tagen</translation>
    </message>
    <message>
        <source>none</source>
        <comment>WARRANTY_HINT</comment>
        <translation>keine</translation>
    </message>
    <message>
        <source>works</source>
        <comment>RESULTS</comment>
        <translation>läuft</translation>
    </message>
    <message>
        <source>works in part</source>
        <comment>RESULTS</comment>
        <translation>läuft teilweise</translation>
    </message>
    <message>
        <source>not repaired</source>
        <comment>RESULTS</comment>
        <translation>nicht repariert</translation>
    </message>
    <message>
        <source>Say what it came to.</source>
        <comment>NEEDS_RESULT</comment>
        <translation>Geben Sie das Ergebnis an.</translation>
    </message>
    <message>
        <source>Warranty: a whole number of days, or nothing.</source>
        <comment>WRONG_WARRANTY</comment>
        <translation>Gewährleistung: eine ganze Zahl von Tagen oder nichts.</translation>
    </message>
    <message>
        <source>Close the job</source>
        <comment>CLOSE_JOB</comment>
        <translation>Auftrag abschließen</translation>
    </message>
    <message>
        <source>Next job</source>
        <comment>NEXT_JOB</comment>
        <translation>Nächster Auftrag</translation>
    </message>
    <message>
        <source>Job sheet</source>
        <comment>JOB_SHEET</comment>
        <translation>Auftragsblatt</translation>
    </message>
    <message>
        <source>The sheet of this job, as it would be printed</source>
        <comment>JOB_SHEET_NAME</comment>
        <translation>Das Blatt dieses Auftrags, wie es gedruckt würde</translation>
    </message>
    <message>
        <source>The last run ({last}) proposes: {words}. You say what it came to.</source>
        <comment>PROPOSAL</comment>
        <translation>Der letzte Lauf ({last}) schlägt vor: {words}. Was dabei herauskam, sagen Sie.</translation>
    </message>
    <message>
        <source>Take over</source>
        <comment>PROPOSAL_TAKE</comment>
        <translation>Übernehmen</translation>
    </message>
    <message>
        <source>Take over: {words}</source>
        <comment>PROPOSAL_TAKE_NAME</comment>
        <translation>Übernehmen: {words}</translation>
    </message>
    <message>
        <source>Cause: say what it was, or “not found”.</source>
        <comment>NEEDS_CAUSE</comment>
        <translation>Ursache: Sagen Sie, was es war, oder „nicht gefunden“.</translation>
    </message>
    <message>
        <source>Before and after</source>
        <comment>CLOSE_SUMMARY</comment>
        <translation>Vorher und nachher</translation>
    </message>
    <message>
        <source>what for</source>
        <comment>SUMMARY_NAMES</comment>
        <translation>wofür</translation>
    </message>
    <message>
        <source>how it ended</source>
        <comment>SUMMARY_NAMES</comment>
        <translation>wie er endete</translation>
    </message>
    <message>
        <source>winding</source>
        <comment>SUMMARY_NAMES</comment>
        <translation>Wicklung</translation>
    </message>
    <message>
        <source>highest volts</source>
        <comment>SUMMARY_NAMES</comment>
        <translation>höchste Spannung</translation>
    </message>
    <message>
        <source>highest amps</source>
        <comment>SUMMARY_NAMES</comment>
        <translation>höchster Strom</translation>
    </message>
    <message>
        <source>kicks</source>
        <comment>SUMMARY_NAMES</comment>
        <translation>Anstöße</translation>
    </message>
    <message>
        <source>first run</source>
        <comment>SUMMARY_BEFORE</comment>
        <translation>erster Lauf</translation>
    </message>
    <message>
        <source>run that freed it</source>
        <comment>SUMMARY_FREED</comment>
        <translation>Lauf, der es löste</translation>
    </message>
    <message>
        <source>last run</source>
        <comment>SUMMARY_AFTER</comment>
        <translation>letzter Lauf</translation>
    </message>
    <message>
        <source>Search the jobs</source>
        <comment>SEARCH_NAME</comment>
        <translation>Die Aufträge durchsuchen</translation>
    </message>
    <message>
        <source>1 job</source>
        <comment>JOBS_COUNT_ONE</comment>
        <translation>1 Auftrag</translation>
    </message>
    <message>
        <source>{count} jobs</source>
        <comment>JOBS_COUNT</comment>
        <translation>{count} Aufträge</translation>
    </message>
    <message>
        <source>Jobs found</source>
        <comment>HISTORY_TABLE</comment>
        <translation>Gefundene Aufträge</translation>
    </message>
    <message>
        <source>Runs of this job</source>
        <comment>HISTORY_RUNS</comment>
        <translation>Läufe dieses Auftrags</translation>
    </message>
    <message>
        <source>What was kept with this job</source>
        <comment>HISTORY_RECORD</comment>
        <translation>Was zu diesem Auftrag vermerkt wurde</translation>
    </message>
    <message>
        <source>No run was filed with this job.</source>
        <comment>HISTORY_NO_RUN</comment>
        <translation>Bei diesem Auftrag ist kein Lauf abgelegt.</translation>
    </message>
    <message>
        <source>Pick a job to see its runs.</source>
        <comment>HISTORY_PICK</comment>
        <translation>Wählen Sie einen Auftrag, um seine Läufe zu sehen.</translation>
    </message>
    <message>
        <source>Take to the bench</source>
        <comment>HISTORY_TO_BENCH</comment>
        <translation>Auf die Werkbank</translation>
    </message>
    <message>
        <source>Job {number:04d} · {kind}</source>
        <comment>JOB_DETAIL</comment>
        <translation>Auftrag {number:04d} · {kind}</translation>
    </message>
    <message>
        <source>no run yet</source>
        <comment>NO_RUN_YET</comment>
        <translation>noch kein Lauf</translation>
    </message>
    <message>
        <source>closed</source>
        <comment>STATE_CLOSED</comment>
        <translation>abgeschlossen</translation>
    </message>
    <message>
        <source>Record and costs</source>
        <comment>RECORD</comment>
        <translation>Protokoll und Kosten</translation>
    </message>
    <message>
        <source>Record of job {number:04d}</source>
        <comment>RECORD_SAY</comment>
        <translation>Protokoll von Auftrag {number:04d}</translation>
    </message>
    <message>
        <source>Back to {stage}</source>
        <comment>RECORD_BACK</comment>
        <translation>Zurück zu: {stage}</translation>
    </message>
    <message>
        <source>Your turn: back to {stage}</source>
        <comment>RECORD_YOUR_TURN</comment>
        <translation>Sie sind dran: zurück zu {stage}</translation>
    </message>
    <message>
        <source>Who</source>
        <comment>FIELD_RECORD_WHO</comment>
        <translation>Wer</translation>
    </message>
    <message>
        <source>who works</source>
        <comment>RECORD_WHO_HINT</comment>
        <translation>wer arbeitet</translation>
    </message>
    <message>
        <source>Words for a hand step or a note</source>
        <comment>FIELD_RECORD_WORDS</comment>
        <translation>Worte zu einem Handgriff oder einer Notiz</translation>
    </message>
    <message>
        <source>Words, for a hand step or a note</source>
        <comment>RECORD_WORDS_HINT</comment>
        <translation>Worte, zu einem Handgriff oder einer Notiz</translation>
    </message>
    <message>
        <source>Keep note</source>
        <comment>RECORD_NOTE</comment>
        <translation>Notiz behalten</translation>
    </message>
    <message>
        <source>Keep correction</source>
        <comment>RECORD_CORRECTION</comment>
        <translation>Berichtigung behalten</translation>
    </message>
    <message>
        <source>Timeline</source>
        <comment>RECORD_TIMELINE</comment>
        <translation>Zeitleiste</translation>
    </message>
    <message>
        <source>Findings</source>
        <comment>RECORD_FINDINGS</comment>
        <translation>Befunde</translation>
    </message>
    <message>
        <source>Costs</source>
        <comment>RECORD_COSTS</comment>
        <translation>Kosten</translation>
    </message>
    <message>
        <source>Waiting</source>
        <comment>RECORD_WAITING</comment>
        <translation>Warten</translation>
    </message>
    <message>
        <source>Files</source>
        <comment>RECORD_PICTURES</comment>
        <translation>Dateien</translation>
    </message>
    <message>
        <source>Add files …</source>
        <comment>FILES_ADD</comment>
        <translation>Dateien hinzufügen …</translation>
    </message>
    <message>
        <source>Choose photos and files to keep with the job</source>
        <comment>FILES_ADD_NAME</comment>
        <translation>Fotos und Dateien auswählen, die beim Auftrag bleiben</translation>
    </message>
    <message>
        <source>No photo or file is kept with this job yet.</source>
        <comment>FILES_NONE</comment>
        <translation>Bei diesem Auftrag liegt noch kein Foto und keine Datei.</translation>
    </message>
    <message>
        <source>Drop photos and files here, or paste them (Ctrl+V).</source>
        <comment>FILES_HINT</comment>
        <translation>Legen Sie Fotos und Dateien hier ab, oder fügen Sie sie ein (Strg+V).</translation>
    </message>
    <message>
        <source>Photos and files of the job</source>
        <comment>FILES_NAME</comment>
        <translation>Fotos und Dateien des Auftrags</translation>
    </message>
    <message>
        <source>What is seen on the next one</source>
        <comment>CAPTION_HINT</comment>
        <translation>Was auf dem nächsten zu sehen ist</translation>
    </message>
    <message>
        <source>Caption of the next photo or file</source>
        <comment>CAPTION_NAME</comment>
        <translation>Bildunterschrift des nächsten Fotos oder der nächsten Datei</translation>
    </message>
    <message>
        <source>While the output may be on no file is chosen here; drop it or paste it.</source>
        <comment>FILES_WAIT_FOR_OFF</comment>
        <translation>Solange der Ausgang an sein kann, wird hier keine Datei ausgewählt; legen Sie sie ab, oder fügen Sie sie ein.</translation>
    </message>
    <message>
        <source>Reading {count} …</source>
        <comment>FILES_READING</comment>
        <translation>{count} werden gelesen …</translation>
    </message>
    <message>
        <source>There is no picture or file to paste.</source>
        <comment>NOTHING_PASTED</comment>
        <translation>Es gibt kein Bild und keine Datei zum Einfügen.</translation>
    </message>
    <message>
        <source>{name}: could not be kept ({what})</source>
        <comment>FILE_NOT_KEPT</comment>
        <translation>{name}: konnte nicht behalten werden ({what})</translation>
    </message>
    <message>
        <source>In the running record: {text}</source>
        <comment>RECORD_IN_RUN</comment>
        <translation>Im laufenden Protokoll: {text}</translation>
    </message>
    <message>
        <source>What was being typed under “Record and costs” when the program last ended is there again.</source>
        <comment>RECORD_DRAFT_FOUND</comment>
        <translation>Was unter „Protokoll und Kosten“ gerade getippt wurde, als das Programm zuletzt endete, steht wieder da.</translation>
    </message>
    <message>
        <source>Say who works, at the top of this page.</source>
        <comment>NEEDS_WHO</comment>
        <translation>Geben Sie oben auf dieser Seite an, wer arbeitet.</translation>
    </message>
    <message>
        <source>What happened with this job, newest first</source>
        <comment>TIMELINE_NAME</comment>
        <translation>Was mit diesem Auftrag geschah, das Neueste zuerst</translation>
    </message>
    <message>
        <source>Nothing is kept with this job yet: runs, notes, findings and costs come here as they are made.</source>
        <comment>TIMELINE_NONE</comment>
        <translation>Bei diesem Auftrag steht noch nichts: Läufe, Notizen, Befunde und Kosten kommen hierher, sobald es sie gibt.</translation>
    </message>
    <message>
        <source>note</source>
        <comment>LINE_NOTE</comment>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>by hand</source>
        <comment>LINE_HAND</comment>
        <translation>von Hand</translation>
    </message>
    <message>
        <source>run</source>
        <comment>LINE_RUN</comment>
        <translation>Lauf</translation>
    </message>
    <message>
        <source>finding</source>
        <comment>LINE_FINDING</comment>
        <translation>Befund</translation>
    </message>
    <message>
        <source>cost</source>
        <comment>LINE_CHARGE</comment>
        <translation>Kosten</translation>
    </message>
    <message>
        <source>file</source>
        <comment>LINE_FILE</comment>
        <translation>Datei</translation>
    </message>
    <message>
        <source>change</source>
        <comment>LINE_EDIT</comment>
        <translation>Änderung</translation>
    </message>
    <message>
        <source>unlocked</source>
        <comment>LINE_UNLOCK</comment>
        <translation>freigegeben</translation>
    </message>
    <message>
        <source>note</source>
        <comment>LINE_KINDS</comment>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>made safe</source>
        <comment>LINE_KINDS</comment>
        <translation>gesichert</translation>
    </message>
    <message>
        <source>state</source>
        <comment>LINE_KINDS</comment>
        <translation>Stand</translation>
    </message>
    <message>
        <source>correction</source>
        <comment>LINE_KINDS</comment>
        <translation>Berichtigung</translation>
    </message>
    <message>
        <source>yes</source>
        <comment>YES</comment>
        <translation>ja</translation>
    </message>
    <message>
        <source>no</source>
        <comment>NO</comment>
        <translation>nein</translation>
    </message>
    <message>
        <source>run {run}, {field}</source>
        <comment>EDIT_OF_RUN</comment>
        <translation>Lauf {run}, {field}</translation>
    </message>
    <message>
        <source>taken back</source>
        <comment>EDIT_UNDONE</comment>
        <translation>zurückgenommen</translation>
    </message>
    <message>
        <source>marked {marking}</source>
        <comment>FINDING_MARKED</comment>
        <translation>Aufdruck {marking}</translation>
    </message>
    <message>
        <source>replaced since</source>
        <comment>FINDING_REPLACED</comment>
        <translation>seither ersetzt</translation>
    </message>
    <message>
        <source>in place of an earlier one</source>
        <comment>FINDING_CORRECTS</comment>
        <translation>anstelle eines früheren</translation>
    </message>
    <message>
        <source>{count} min</source>
        <comment>CHARGED_MINUTES</comment>
        <translation>{count} min</translation>
    </message>
    <message>
        <source>taken back since</source>
        <comment>CHARGE_TAKEN_BACK</comment>
        <translation>seither zurückgenommen</translation>
    </message>
    <message>
        <source>Part</source>
        <comment>FIELD_PART</comment>
        <translation>Teil</translation>
    </message>
    <message>
        <source>R7, gate resistor, …</source>
        <comment>PART_HINT</comment>
        <translation>R7, Gate-Widerstand, …</translation>
    </message>
    <message>
        <source>Where</source>
        <comment>FIELD_PLACE</comment>
        <translation>Wo</translation>
    </message>
    <message>
        <source>at the driver, …</source>
        <comment>PLACE_HINT</comment>
        <translation>am Treiber, …</translation>
    </message>
    <message>
        <source>Marking</source>
        <comment>FIELD_MARKING</comment>
        <translation>Aufdruck</translation>
    </message>
    <message>
        <source>4K7, 152, 01B, …</source>
        <comment>MARKING_HINT</comment>
        <translation>4K7, 152, 01B, …</translation>
    </message>
    <message>
        <source>on a capacitor</source>
        <comment>FIELD_CAPACITOR</comment>
        <translation>auf einem Kondensator</translation>
    </message>
    <message>
        <source>What it seems to do</source>
        <comment>FIELD_PURPOSE</comment>
        <translation>Was es zu tun scheint</translation>
    </message>
    <message>
        <source>holds the gate down</source>
        <comment>PURPOSE_HINT</comment>
        <translation>hält das Gate unten</translation>
    </message>
    <message>
        <source>Value</source>
        <comment>FIELD_VALUE</comment>
        <translation>Wert</translation>
    </message>
    <message>
        <source>1.5 kΩ, cracked, …</source>
        <comment>VALUE_HINT</comment>
        <translation>1,5 kΩ, gerissen, …</translation>
    </message>
    <message>
        <source>A finding</source>
        <comment>FINDING_NEW</comment>
        <translation>Ein Befund</translation>
    </message>
    <message>
        <source>A correction: it stands in place of the earlier one</source>
        <comment>FINDING_CORRECTING</comment>
        <translation>Eine Berichtigung: Sie steht anstelle des früheren</translation>
    </message>
    <message>
        <source>Keep</source>
        <comment>FINDING_KEEP</comment>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Keep it</source>
        <comment>FINDING_KEEP_CORRECTION</comment>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Leave it</source>
        <comment>FINDING_GIVE_UP</comment>
        <translation>Verwerfen</translation>
    </message>
    <message>
        <source>Correct</source>
        <comment>FINDING_CORRECT</comment>
        <translation>Berichtigen</translation>
    </message>
    <message>
        <source>Correct the finding about {part}</source>
        <comment>FINDING_CORRECT_NAME</comment>
        <translation>Den Befund zu {part} berichtigen</translation>
    </message>
    <message>
        <source>Say which part it is.</source>
        <comment>NEEDS_PART</comment>
        <translation>Geben Sie an, welches Teil es ist.</translation>
    </message>
    <message>
        <source>Reading {number} of the marking</source>
        <comment>READING_NAME</comment>
        <translation>Lesart {number} des Aufdrucks</translation>
    </message>
    <message>
        <source>Take {value} as the value. {about}</source>
        <comment>READING_TAKE</comment>
        <translation>{value} als Wert nehmen. {about}</translation>
    </message>
    <message>
        <source>Calculate</source>
        <comment>CALCULATE</comment>
        <translation>Rechnen</translation>
    </message>
    <message>
        <source>What to calculate</source>
        <comment>CALCULATOR_WHICH</comment>
        <translation>Was zu rechnen ist</translation>
    </message>
    <message>
        <source>Into the value</source>
        <comment>CALCULATOR_TAKE</comment>
        <translation>Als Wert übernehmen</translation>
    </message>
    <message>
        <source>supply</source>
        <comment>CALCULATOR_NAMES</comment>
        <translation>Versorgung</translation>
    </message>
    <message>
        <source>lower</source>
        <comment>CALCULATOR_NAMES</comment>
        <translation>unterer</translation>
    </message>
    <message>
        <source>charge</source>
        <comment>CALCULATOR_NAMES</comment>
        <translation>Ladung</translation>
    </message>
    <message>
        <source>draw</source>
        <comment>CALCULATOR_NAMES</comment>
        <translation>Verbrauch</translation>
    </message>
    <message>
        <source>{cents} so far; no limit agreed</source>
        <comment>COST_NO_LIMIT</comment>
        <translation>bisher {cents}; keine Grenze vereinbart</translation>
    </message>
    <message>
        <source>{cents} of at most {limit}; {left} left</source>
        <comment>COST_STANDS</comment>
        <translation>{cents} von höchstens {limit}; {left} übrig</translation>
    </message>
    <message>
        <source>{cents} of at most {limit}; only {left} left</source>
        <comment>COST_NEAR</comment>
        <translation>{cents} von höchstens {limit}; nur {left} übrig</translation>
    </message>
    <message>
        <source>{cents} of {limit}</source>
        <comment>COST_SHORT</comment>
        <translation>{cents} von {limit}</translation>
    </message>
    <message>
        <source>{cents}: {left} above the {limit} allowed</source>
        <comment>COST_PASSED</comment>
        <translation>{cents}: {left} über den erlaubten {limit}</translation>
    </message>
    <message>
        <source>costs {words}</source>
        <comment>COST_NO_CURRENCY</comment>
        <translation>Kosten {words}</translation>
    </message>
    <message>
        <source>The settings name no currency.</source>
        <comment>CURRENCY_UNKNOWN</comment>
        <translation>Die Einstellungen nennen keine Währung.</translation>
    </message>
    <message>
        <source>Minutes of work</source>
        <comment>FIELD_MINUTES</comment>
        <translation>Arbeitsminuten</translation>
    </message>
    <message>
        <source>min</source>
        <comment>MINUTES_HINT</comment>
        <translation>min</translation>
    </message>
    <message>
        <source>What was done</source>
        <comment>FIELD_DONE</comment>
        <translation>Was getan wurde</translation>
    </message>
    <message>
        <source>what was done</source>
        <comment>DONE_HINT</comment>
        <translation>was getan wurde</translation>
    </message>
    <message>
        <source>on the bench: {count} min</source>
        <comment>MINUTES_PROPOSED</comment>
        <translation>auf der Werkbank: {count} min</translation>
    </message>
    <message>
        <source>Take the {count} minutes that the job was on the bench</source>
        <comment>MINUTES_PROPOSED_NAME</comment>
        <translation>Die {count} Minuten übernehmen, die der Auftrag auf der Werkbank war</translation>
    </message>
    <message>
        <source>An hour costs {cents}.</source>
        <comment>HOUR_COSTS</comment>
        <translation>Eine Stunde kostet {cents}.</translation>
    </message>
    <message>
        <source>The owner’s settings give no price of an hour: minutes cost nothing.</source>
        <comment>HOUR_UNKNOWN</comment>
        <translation>In den Einstellungen des Inhabers steht kein Preis für die Stunde: Minuten kosten nichts.</translation>
    </message>
    <message>
        <source>Part from stock</source>
        <comment>FIELD_STOCK</comment>
        <translation>Teil aus dem Lager</translation>
    </message>
    <message>
        <source>How many pieces</source>
        <comment>FIELD_COUNT</comment>
        <translation>Wie viele Stück</translation>
    </message>
    <message>
        <source>choose a part</source>
        <comment>NO_STOCK</comment>
        <translation>Teil auswählen</translation>
    </message>
    <message>
        <source>{name} · {price} · {stock} there</source>
        <comment>STOCK_LINE</comment>
        <translation>{name} · {price} · {stock} da</translation>
    </message>
    <message>
        <source>Stock …</source>
        <comment>STOCK_OPEN</comment>
        <translation>Lager …</translation>
    </message>
    <message>
        <source>Put a part into the stock, or change one</source>
        <comment>STOCK_OPEN_NAME</comment>
        <translation>Ein Teil ins Lager legen oder eines ändern</translation>
    </message>
    <message>
        <source>A part for the stock; one of the same name and number gets its price and count anew.</source>
        <comment>STOCK_SAY</comment>
        <translation>Ein Teil für das Lager; eines mit gleichem Namen und gleicher Nummer oder Größe bekommt Preis und Anzahl neu.</translation>
    </message>
    <message>
        <source>Name of a part for the stock</source>
        <comment>FIELD_STOCK_NAME</comment>
        <translation>Name eines Teils für das Lager</translation>
    </message>
    <message>
        <source>name</source>
        <comment>STOCK_NAME_HINT</comment>
        <translation>Name</translation>
    </message>
    <message>
        <source>Its number or size</source>
        <comment>FIELD_STOCK_NUMBER</comment>
        <translation>Seine Nummer oder Größe</translation>
    </message>
    <message>
        <source>size</source>
        <comment>STOCK_NUMBER_HINT</comment>
        <translation>Größe</translation>
    </message>
    <message>
        <source>Price of a piece</source>
        <comment>FIELD_STOCK_PRICE</comment>
        <translation>Preis eines Stücks</translation>
    </message>
    <message>
        <source>price</source>
        <comment>STOCK_PRICE_HINT</comment>
        <translation>Preis</translation>
    </message>
    <message>
        <source>How many are there</source>
        <comment>FIELD_STOCK_THERE</comment>
        <translation>Wie viele da sind</translation>
    </message>
    <message>
        <source>how many</source>
        <comment>STOCK_THERE_HINT</comment>
        <translation>wie viele</translation>
    </message>
    <message>
        <source>Keep</source>
        <comment>STOCK_KEEP</comment>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Say what part it is.</source>
        <comment>NEEDS_STOCK_NAME</comment>
        <translation>Geben Sie an, was für ein Teil es ist.</translation>
    </message>
    <message>
        <source>How many are there: a whole number.</source>
        <comment>WRONG_STOCK</comment>
        <translation>Wie viele da sind: eine ganze Zahl.</translation>
    </message>
    <message>
        <source>Anything else</source>
        <comment>FIELD_OTHER</comment>
        <translation>Etwas anderes</translation>
    </message>
    <message>
        <source>what for</source>
        <comment>OTHER_HINT</comment>
        <translation>wofür</translation>
    </message>
    <message>
        <source>Its price</source>
        <comment>FIELD_PRICE</comment>
        <translation>Sein Preis</translation>
    </message>
    <message>
        <source>Charge</source>
        <comment>CHARGE</comment>
        <translation>Buchen</translation>
    </message>
    <message>
        <source>Charge the minutes</source>
        <comment>CHARGE_MINUTES</comment>
        <translation>Die Minuten berechnen</translation>
    </message>
    <message>
        <source>Charge the part</source>
        <comment>CHARGE_PART</comment>
        <translation>Das Teil berechnen</translation>
    </message>
    <message>
        <source>Charge it with its price</source>
        <comment>CHARGE_OTHER</comment>
        <translation>Es mit seinem Preis berechnen</translation>
    </message>
    <message>
        <source>Minutes: a whole number above zero.</source>
        <comment>WRONG_MINUTES</comment>
        <translation>Minuten: eine ganze Zahl über null.</translation>
    </message>
    <message>
        <source>Pieces: a whole number above zero.</source>
        <comment>WRONG_COUNT</comment>
        <translation>Stück: eine ganze Zahl über null.</translation>
    </message>
    <message>
        <source>Choose a part first.</source>
        <comment>NEEDS_STOCK</comment>
        <translation>Wählen Sie zuerst ein Teil.</translation>
    </message>
    <message>
        <source>Say what it is for.</source>
        <comment>NEEDS_OTHER</comment>
        <translation>Geben Sie an, wofür es ist.</translation>
    </message>
    <message>
        <source>Give its price.</source>
        <comment>NEEDS_PRICE</comment>
        <translation>Geben Sie den Preis an.</translation>
    </message>
    <message>
        <source>Stop or ask: with this the job would come to {cents}; its owner allows {limit}.</source>
        <comment>OVER_SAY</comment>
        <translation>Halten Sie ein oder fragen Sie: Damit käme der Auftrag auf {cents}; der Eigentümer erlaubt {limit}.</translation>
    </message>
    <message>
        <source>Who agreed to more</source>
        <comment>FIELD_AGREED</comment>
        <translation>Wer mehr zugestimmt hat</translation>
    </message>
    <message>
        <source>Agreed: charge it</source>
        <comment>OVER_KEEP</comment>
        <translation>Zugestimmt: berechnen</translation>
    </message>
    <message>
        <source>Stop: leave it out</source>
        <comment>OVER_STOP</comment>
        <translation>Halt: weglassen</translation>
    </message>
    <message>
        <source>Take back</source>
        <comment>TAKE_BACK</comment>
        <translation>Zurücknehmen</translation>
    </message>
    <message>
        <source>Take back the line {line}</source>
        <comment>TAKE_BACK_NAME</comment>
        <translation>Die Zeile {line} zurücknehmen</translation>
    </message>
    <message>
        <source>Take back “{line}”?</source>
        <comment>BACK_SAY</comment>
        <translation>„{line}“ zurücknehmen?</translation>
    </message>
    <message>
        <source>Why</source>
        <comment>FIELD_BACK_WHY</comment>
        <translation>Warum</translation>
    </message>
    <message>
        <source>Take it back</source>
        <comment>BACK_KEEP</comment>
        <translation>Zurücknehmen</translation>
    </message>
    <message>
        <source>Leave it</source>
        <comment>BACK_STOP</comment>
        <translation>So lassen</translation>
    </message>
    <message>
        <source>waits for approval</source>
        <comment>WAITING_WORDS</comment>
        <translation>wartet auf Zustimmung</translation>
    </message>
    <message>
        <source>waits for a part</source>
        <comment>WAITING_WORDS</comment>
        <translation>wartet auf ein Teil</translation>
    </message>
    <message>
        <source>waits for its owner</source>
        <comment>WAITING_WORDS</comment>
        <translation>wartet auf den Eigentümer</translation>
    </message>
    <message>
        <source>Wait for approval</source>
        <comment>WAITING_BUTTONS</comment>
        <translation>Auf Zustimmung warten</translation>
    </message>
    <message>
        <source>Wait for a part</source>
        <comment>WAITING_BUTTONS</comment>
        <translation>Auf ein Teil warten</translation>
    </message>
    <message>
        <source>Wait for its owner</source>
        <comment>WAITING_BUTTONS</comment>
        <translation>Auf den Eigentümer warten</translation>
    </message>
    <message>
        <source>Work goes on</source>
        <comment>WAITING_BUTTONS</comment>
        <translation>Arbeit geht weiter</translation>
    </message>
    <message>
        <source>{waiting} (since {day})</source>
        <comment>WAITING_SINCE</comment>
        <translation>{waiting} (seit {day})</translation>
    </message>
    <message>
        <source>Work goes on.</source>
        <comment>WORK_GOES_ON</comment>
        <translation>Die Arbeit geht weiter.</translation>
    </message>
    <message>
        <source>What for</source>
        <comment>FIELD_WAITING</comment>
        <translation>Worauf</translation>
    </message>
    <message>
        <source>more than was agreed, shaft seal, …</source>
        <comment>WAITING_HINT</comment>
        <translation>mehr als vereinbart, Wellendichtung, …</translation>
    </message>
    <message>
        <source>Jobs</source>
        <comment>PAGE_JOBS</comment>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>What they came to</source>
        <comment>PAGE_NUMBERS</comment>
        <translation>Was dabei herauskam</translation>
    </message>
    <message>
        <source>Search everything kept: serial, owner, complaint, cause, parts, notes</source>
        <comment>SEARCH_ALL_HINT</comment>
        <translation>Alles durchsuchen: Seriennummer, Eigentümer, Beanstandung, Ursache, Teile, Notizen</translation>
    </message>
    <message>
        <source>Only of this kind</source>
        <comment>FILTER_KIND</comment>
        <translation>Nur von dieser Art</translation>
    </message>
    <message>
        <source>Only of this cause</source>
        <comment>FILTER_CAUSE</comment>
        <translation>Nur mit dieser Ursache</translation>
    </message>
    <message>
        <source>Only where the last run ended so</source>
        <comment>FILTER_OUTCOME</comment>
        <translation>Nur wo der letzte Lauf so endete</translation>
    </message>
    <message>
        <source>Only those that stand so</source>
        <comment>FILTER_STATE</comment>
        <translation>Nur die, die so stehen</translation>
    </message>
    <message>
        <source>Only taken in by</source>
        <comment>FILTER_WHO</comment>
        <translation>Nur angenommen von</translation>
    </message>
    <message>
        <source>In what order</source>
        <comment>FILTER_ORDER</comment>
        <translation>In welcher Reihenfolge</translation>
    </message>
    <message>
        <source>Taken in on this day or later, as 2026-11-25</source>
        <comment>FILTER_SINCE</comment>
        <translation>Angenommen an diesem Tag oder später, etwa 2026-11-25</translation>
    </message>
    <message>
        <source>Taken in on this day or earlier, as 2026-11-25</source>
        <comment>FILTER_UNTIL</comment>
        <translation>Angenommen an diesem Tag oder früher, etwa 2026-11-25</translation>
    </message>
    <message>
        <source>from day</source>
        <comment>SINCE_HINT</comment>
        <translation>ab Tag</translation>
    </message>
    <message>
        <source>to day</source>
        <comment>UNTIL_HINT</comment>
        <translation>bis Tag</translation>
    </message>
    <message>
        <source>Taken in within that month.</source>
        <comment>MONTHS_HINT</comment>
        <translation>In diesem Monat angenommen.</translation>
    </message>
    <message>
        <source>this month</source>
        <comment>MONTHS</comment>
        <translation>dieser Monat</translation>
    </message>
    <message>
        <source>last month</source>
        <comment>MONTHS</comment>
        <translation>letzter Monat</translation>
    </message>
    <message>
        <source>“{said}” is no day, so the list is not narrowed to days: write 2026-11-25 or 25.11.2026.</source>
        <comment>NOT_A_DAY</comment>
        <translation>„{said}“ ist kein Tag, die Liste ist also nicht nach Tagen eingegrenzt: 2026-11-25 oder 25.11.2026 schreiben.</translation>
    </message>
    <message>
        <source>any kind</source>
        <comment>ANY_KIND</comment>
        <translation>alle Arten</translation>
    </message>
    <message>
        <source>any cause</source>
        <comment>ANY_CAUSE</comment>
        <translation>jede Ursache</translation>
    </message>
    <message>
        <source>any outcome</source>
        <comment>ANY_OUTCOME</comment>
        <translation>jedes Ende</translation>
    </message>
    <message>
        <source>any state</source>
        <comment>ANY_STATE</comment>
        <translation>alle Stände</translation>
    </message>
    <message>
        <source>anybody</source>
        <comment>ANY_WHO</comment>
        <translation>alle</translation>
    </message>
    <message>
        <source>waiting for anything</source>
        <comment>STATE_WAITING</comment>
        <translation>wartet auf irgendetwas</translation>
    </message>
    <message>
        <source>open</source>
        <comment>STATE_WORDS</comment>
        <translation>offen</translation>
    </message>
    <message>
        <source>waits: approval</source>
        <comment>STATE_WORDS</comment>
        <translation>wartet: Zustimmung</translation>
    </message>
    <message>
        <source>waits: part</source>
        <comment>STATE_WORDS</comment>
        <translation>wartet: Teil</translation>
    </message>
    <message>
        <source>waits: owner</source>
        <comment>STATE_WORDS</comment>
        <translation>wartet: Eigentümer</translation>
    </message>
    <message>
        <source>closed</source>
        <comment>STATE_WORDS</comment>
        <translation>abgeschlossen</translation>
    </message>
    <message>
        <source>newest first</source>
        <comment>ORDERS</comment>
        <translation>neueste</translation>
    </message>
    <message>
        <source>oldest first</source>
        <comment>ORDERS</comment>
        <translation>älteste</translation>
    </message>
    <message>
        <source>last changed first</source>
        <comment>ORDERS</comment>
        <translation>zuletzt geändert</translation>
    </message>
    <message>
        <source>Job</source>
        <comment>JOB_COLUMNS</comment>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Taken in</source>
        <comment>JOB_COLUMNS</comment>
        <translation>Angenommen</translation>
    </message>
    <message>
        <source>What</source>
        <comment>JOB_COLUMNS</comment>
        <translation>Was</translation>
    </message>
    <message>
        <source>Model · serial</source>
        <comment>JOB_COLUMNS</comment>
        <translation>Modell · Seriennummer</translation>
    </message>
    <message>
        <source>Complaint</source>
        <comment>JOB_COLUMNS</comment>
        <translation>Beanstandung</translation>
    </message>
    <message>
        <source>How it ended</source>
        <comment>JOB_COLUMNS</comment>
        <translation>Wie er endete</translation>
    </message>
    <message>
        <source>Stands</source>
        <comment>JOB_COLUMNS</comment>
        <translation>Stand</translation>
    </message>
    <message>
        <source>{count} jobs or more</source>
        <comment>JOBS_COUNT_OVER</comment>
        <translation>{count} Aufträge oder mehr</translation>
    </message>
    <message>
        <source>{jobs}, {count} of them measuring</source>
        <comment>COUNT_MEASURING</comment>
        <translation>{jobs}, davon {count} zum Messen</translation>
    </message>
    <message>
        <source>measuring</source>
        <comment>MEASURING</comment>
        <translation>Messen</translation>
    </message>
    <message>
        <source>A check of a supply against a resistor or with open leads, no repair: no motor was on it.</source>
        <comment>SUPPLY_CHECK_ABOUT</comment>
        <translation>Die Prüfung eines Netzgeräts an einem Widerstand oder mit offenen Leitungen, keine Reparatur: Kein Motor hing daran.</translation>
    </message>
    <message>
        <source>A measuring job, no repair: its starts are under “Curves”, and no rate of the history counts it.</source>
        <comment>MEASURING_ABOUT</comment>
        <translation>Ein Messauftrag, keine Reparatur: Seine Anläufe stehen unter „Kurven“, und keine Quote im Verlauf zählt ihn mit.</translation>
    </message>
    <message>
        <source>All jobs</source>
        <comment>ALL_JOBS</comment>
        <translation>Alle Aufträge</translation>
    </message>
    <message>
        <source>Only the job that was asked for.</source>
        <comment>ONLY_ONE</comment>
        <translation>Nur der Auftrag, nach dem gefragt wurde.</translation>
    </message>
    <message>
        <source>The jobs behind: {words}</source>
        <comment>ONLY_BEHIND</comment>
        <translation>Die Aufträge hinter: {words}</translation>
    </message>
    <message>
        <source>No job is kept yet.</source>
        <comment>EMPTY_LEDGER</comment>
        <translation>Noch ist kein Auftrag da.</translation>
    </message>
    <message>
        <source>The first one begins at the bench, with what its label says.</source>
        <comment>EMPTY_LEDGER</comment>
        <translation>Der erste beginnt an der Werkbank, mit dem, was auf dem Schild steht.</translation>
    </message>
    <message>
        <source>No job has “{text}” anywhere.</source>
        <comment>EMPTY_TEXT</comment>
        <translation>In keinem Auftrag steht „{text}“.</translation>
    </message>
    <message>
        <source>Every word must be in the job, from its beginning; fewer words, or one without its ending, find more.</source>
        <comment>EMPTY_TEXT</comment>
        <translation>Jedes Wort muss im Auftrag stehen, von seinem Anfang an; weniger Wörter oder eines ohne seine Endung finden mehr.</translation>
    </message>
    <message>
        <source>No job fits all that is chosen above.</source>
        <comment>EMPTY_FILTERED</comment>
        <translation>Kein Auftrag passt zu allem, was oben gewählt ist.</translation>
    </message>
    <message>
        <source>A job must fit the words, every choice and both days. Take one away, or begin again with all jobs.</source>
        <comment>EMPTY_FILTERED</comment>
        <translation>Ein Auftrag muss zu den Wörtern, zu jeder Auswahl und zu beiden Tagen passen. Nehmen Sie etwas weg, oder beginnen Sie neu mit allen Aufträgen.</translation>
    </message>
    <message>
        <source>Correct</source>
        <comment>CORRECT</comment>
        <translation>Berichtigen</translation>
    </message>
    <message>
        <source>Paper</source>
        <comment>PAPER</comment>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Export</source>
        <comment>EXPORT</comment>
        <translation>Export</translation>
    </message>
    <message>
        <source>Look at the job sheet</source>
        <comment>PAPERS</comment>
        <translation>Auftragsblatt ansehen</translation>
    </message>
    <message>
        <source>Job sheet as PDF</source>
        <comment>PAPERS</comment>
        <translation>Auftragsblatt als PDF</translation>
    </message>
    <message>
        <source>Job sheet as HTML</source>
        <comment>PAPERS</comment>
        <translation>Auftragsblatt als HTML</translation>
    </message>
    <message>
        <source>Tag as PDF</source>
        <comment>PAPERS</comment>
        <translation>Etikett als PDF</translation>
    </message>
    <message>
        <source>This run’s trace as CSV, for programs</source>
        <comment>EXPORTS</comment>
        <translation>Aufzeichnung dieses Laufs als CSV, für Programme</translation>
    </message>
    <message>
        <source>This run’s trace as CSV, for a spreadsheet</source>
        <comment>EXPORTS</comment>
        <translation>Aufzeichnung dieses Laufs als CSV, für eine Tabellenkalkulation</translation>
    </message>
    <message>
        <source>All jobs found, as CSV</source>
        <comment>EXPORTS</comment>
        <translation>Alle gefundenen Aufträge, als CSV</translation>
    </message>
    <message>
        <source>Where to keep the job sheet</source>
        <comment>SAVE_TITLES</comment>
        <translation>Wohin mit dem Auftragsblatt</translation>
    </message>
    <message>
        <source>Where to keep the tag</source>
        <comment>SAVE_TITLES</comment>
        <translation>Wohin mit dem Etikett</translation>
    </message>
    <message>
        <source>Where to keep the trace</source>
        <comment>SAVE_TITLES</comment>
        <translation>Wohin mit der Aufzeichnung</translation>
    </message>
    <message>
        <source>Where to keep the list of jobs</source>
        <comment>SAVE_TITLES</comment>
        <translation>Wohin mit der Liste der Aufträge</translation>
    </message>
    <message>
        <source>Written: {path}</source>
        <comment>WRITTEN</comment>
        <translation>Geschrieben: {path}</translation>
    </message>
    <message>
        <source>Another run laid under this one, dashed</source>
        <comment>UNDER</comment>
        <translation>Ein anderer Lauf, gestrichelt unter diesen gelegt</translation>
    </message>
    <message>
        <source>nothing laid under it</source>
        <comment>UNDER_NONE</comment>
        <translation>nichts daruntergelegt</translation>
    </message>
    <message>
        <source>under it: {run}</source>
        <comment>UNDER_THIS</comment>
        <translation>darunter: {run}</translation>
    </message>
    <message>
        <source>under it: job {number:04d}, {run}</source>
        <comment>UNDER_JOB</comment>
        <translation>darunter: Auftrag {number:04d}, {run}</translation>
    </message>
    <message>
        <source>job {number:04d}</source>
        <comment>UNDER_NAME_JOB</comment>
        <translation>Auftrag {number:04d}</translation>
    </message>
    <message>
        <source>A correction stands beside what was said before.</source>
        <comment>CORRECT_SAY</comment>
        <translation>Eine Berichtigung steht neben dem, was vorher gesagt wurde.</translation>
    </message>
    <message>
        <source>What to correct</source>
        <comment>CORRECT_FIELD</comment>
        <translation>Was zu berichtigen ist</translation>
    </message>
    <message>
        <source>What is right</source>
        <comment>CORRECT_NEW</comment>
        <translation>Was richtig ist</translation>
    </message>
    <message>
        <source>Who corrects it</source>
        <comment>CORRECT_WHO</comment>
        <translation>Wer berichtigt</translation>
    </message>
    <message>
        <source>Why</source>
        <comment>CORRECT_WHY</comment>
        <translation>Warum</translation>
    </message>
    <message>
        <source>It says: {was}</source>
        <comment>CORRECT_WAS</comment>
        <translation>Da steht: {was}</translation>
    </message>
    <message>
        <source>The run stays as it is; this is kept beside it.</source>
        <comment>CORRECT_RUN_STAYS</comment>
        <translation>Der Lauf bleibt, wie er ist; dies steht daneben.</translation>
    </message>
    <message>
        <source>Keep the correction</source>
        <comment>CORRECT_KEEP</comment>
        <translation>Berichtigung behalten</translation>
    </message>
    <message>
        <source>Leave it</source>
        <comment>CORRECT_LEAVE</comment>
        <translation>So lassen</translation>
    </message>
    <message>
        <source>Say who, and why.</source>
        <comment>CORRECT_NEEDS</comment>
        <translation>Geben Sie an, wer und warum.</translation>
    </message>
    <message>
        <source>Say what is right.</source>
        <comment>CORRECT_NEEDS_NEW</comment>
        <translation>Geben Sie an, was richtig ist.</translation>
    </message>
    <message>
        <source>This can’t be empty.</source>
        <comment>CORRECT_EMPTY</comment>
        <translation>Das kann nicht leer sein.</translation>
    </message>
    <message>
        <source>That is what it says already.</source>
        <comment>CORRECT_SAME</comment>
        <translation>Das steht da schon.</translation>
    </message>
    <message>
        <source>One of: {words}.</source>
        <comment>CORRECT_RESULT</comment>
        <translation>Eines von: {words}.</translation>
    </message>
    <message>
        <source>Kept with job {number:04d}, beside what it said before.</source>
        <comment>CORRECTED</comment>
        <translation>Bei Auftrag {number:04d} vermerkt, neben dem, was vorher dastand.</translation>
    </message>
    <message>
        <source>{run}: a remark</source>
        <comment>RUN_FIELDS</comment>
        <translation>{run}: eine Bemerkung</translation>
    </message>
    <message>
        <source>{run}: how it ended</source>
        <comment>RUN_FIELDS</comment>
        <translation>{run}: wie er endete</translation>
    </message>
    <message>
        <source>{run}: why it ended so</source>
        <comment>RUN_FIELDS</comment>
        <translation>{run}: warum er so endete</translation>
    </message>
    <message>
        <source>{run}: load state</source>
        <comment>RUN_FIELDS</comment>
        <translation>{run}: Belastung</translation>
    </message>
    <message>
        <source>{run}: rated volts</source>
        <comment>RUN_FIELDS</comment>
        <translation>{run}: Nennspannung</translation>
    </message>
    <message>
        <source>{run}: resistance</source>
        <comment>RUN_FIELDS</comment>
        <translation>{run}: Widerstand</translation>
    </message>
    <message>
        <source>Put together by</source>
        <comment>FIGURES_BY</comment>
        <translation>Zusammengefasst nach</translation>
    </message>
    <message>
        <source>what it is</source>
        <comment>FIGURE_KEYS</comment>
        <translation>was es ist</translation>
    </message>
    <message>
        <source>make and model</source>
        <comment>FIGURE_KEYS</comment>
        <translation>Hersteller und Modell</translation>
    </message>
    <message>
        <source>cause</source>
        <comment>FIGURE_KEYS</comment>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>what did it</source>
        <comment>FIGURE_KEYS</comment>
        <translation>was geholfen hat</translation>
    </message>
    <message>
        <source>rung that freed it</source>
        <comment>FIGURE_KEYS</comment>
        <translation>Stufe, die es löste</translation>
    </message>
    <message>
        <source>What the jobs came to; Enter opens the jobs behind a number</source>
        <comment>FIGURES_TABLE</comment>
        <translation>Was bei den Aufträgen herauskam; Enter öffnet die Aufträge hinter einer Zahl</translation>
    </message>
    <message>
        <source>Group</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Gruppe</translation>
    </message>
    <message>
        <source>Jobs</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Zahl</translation>
    </message>
    <message>
        <source>Came free</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Kam frei</translation>
    </message>
    <message>
        <source>Kicks</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Anstöße</translation>
    </message>
    <message>
        <source>Minutes</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Minuten</translation>
    </message>
    <message>
        <source>Back by 30 days</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Zurück bis 30 Tage</translation>
    </message>
    <message>
        <source>Back by 90 days</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Zurück bis 90 Tage</translation>
    </message>
    <message>
        <source>Charged</source>
        <comment>CHARGED</comment>
        <translation>Berechnet</translation>
    </message>
    <message>
        <source>Charged, {currency}</source>
        <comment>CHARGED_IN</comment>
        <translation>Berechnet, {currency}</translation>
    </message>
    <message>
        <source>What</source>
        <comment>RUNG_COLUMNS</comment>
        <translation>Was</translation>
    </message>
    <message>
        <source>Rung</source>
        <comment>RUNG_COLUMNS</comment>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>Of those that came free</source>
        <comment>RUNG_COLUMNS</comment>
        <translation>Von denen, die frei kamen</translation>
    </message>
    <message>
        <source>Of {count} repairs found. Middle (middle half); 95 % limits. An underlined number opens its jobs: click or Enter.</source>
        <comment>FIGURES_ABOUT</comment>
        <translation>Von {count} gefundenen Reparaturen. Mitte (mittlere Hälfte); Grenzen mit 95 %. Eine unterstrichene Zahl öffnet ihre Aufträge: Klick oder Enter.</translation>
    </message>
    <message>
        <source>Of 1 repair found. 95 % limits. An underlined number opens its job: click or Enter.</source>
        <comment>FIGURES_ABOUT_ONE</comment>
        <translation>Von 1 gefundenen Reparatur. Grenzen mit 95 %. Eine unterstrichene Zahl öffnet ihren Auftrag: Klick oder Enter.</translation>
    </message>
    <message>
        <source>No repair fits what is chosen above, so there is nothing to count.</source>
        <comment>FIGURES_EMPTY</comment>
        <translation>Zu dem, was oben gewählt ist, passt keine Reparatur; es gibt also nichts zu zählen.</translation>
    </message>
    <message>
        <source>Not counted while an output may be on. Come back to this page when it is off.</source>
        <comment>FIGURES_LATER</comment>
        <translation>Wird nicht gezählt, solange ein Ausgang an sein kann. Kommen Sie auf diese Seite zurück, wenn er aus ist.</translation>
    </message>
    <message>
        <source>Opens 1 job.</source>
        <comment>OPENS_ONE</comment>
        <translation>Öffnet 1 Auftrag.</translation>
    </message>
    <message>
        <source>Opens {count} jobs.</source>
        <comment>OPENS_MANY</comment>
        <translation>Öffnet {count} Aufträge.</translation>
    </message>
    <message>
        <source>No job behind it.</source>
        <comment>OPENS_NONE</comment>
        <translation>Kein Auftrag dahinter.</translation>
    </message>
    <message>
        <source>Came free</source>
        <comment>INTERVALS_TITLE</comment>
        <translation>Kam frei</translation>
    </message>
    <message>
        <source>Came free at this rung</source>
        <comment>RUNGS_TITLE</comment>
        <translation>Kam auf dieser Stufe frei</translation>
    </message>
    <message>
        <source>Share that came free, with 95 % limits: {told}</source>
        <comment>INTERVALS_NAME</comment>
        <translation>Anteil, der frei kam, mit Grenzen zu 95 %: {told}</translation>
    </message>
    <message>
        <source>{count} more in the table</source>
        <comment>INTERVALS_MORE</comment>
        <translation>{count} weitere in der Tabelle</translation>
    </message>
    <message>
        <source>none was kicked and closed</source>
        <comment>NEVER_TRIED</comment>
        <translation>keiner bekam Anstöße und wurde abgeschlossen</translation>
    </message>
    <message>
        <source>Not back yet</source>
        <comment>NOT_BACK_TITLE</comment>
        <translation>Noch nicht zurück</translation>
    </message>
    <message>
        <source>Not back yet: {label}</source>
        <comment>NOT_BACK_OF</comment>
        <translation>Noch nicht zurück: {label}</translation>
    </message>
    <message>
        <source>Share not back yet after days: {told}</source>
        <comment>NOT_BACK_NAME</comment>
        <translation>Anteil, der nach Tagen noch nicht zurück ist: {told}</translation>
    </message>
    <message>
        <source>not back</source>
        <comment>NOT_BACK_LINE</comment>
        <translation>nicht zurück</translation>
    </message>
    <message>
        <source>95 % limit</source>
        <comment>NOT_BACK_LIMIT</comment>
        <translation>Grenze mit 95 %</translation>
    </message>
    <message>
        <source>Pick a group in the table.</source>
        <comment>NOT_BACK_PICK</comment>
        <translation>Wählen Sie eine Gruppe in der Tabelle.</translation>
    </message>
    <message>
        <source>None went out working with a serial to know it again by.</source>
        <comment>NOT_BACK_NONE</comment>
        <translation>Keiner ging laufend hinaus mit einer Seriennummer, an der er zu erkennen wäre.</translation>
    </message>
    <message>
        <source>{count} went out working; {ended} came back. What is still out counts until today, and no longer.</source>
        <comment>NOT_BACK_ABOUT</comment>
        <translation>{count} gingen laufend hinaus; {ended} kamen zurück. Was noch draußen ist, zählt bis heute und nicht weiter.</translation>
    </message>
    <message>
        <source>{count} without a serial can’t be recognised.</source>
        <comment>NOT_BACK_UNSEEN</comment>
        <translation>Ohne Seriennummer und daher nicht wiederzuerkennen: {count}.</translation>
    </message>
    <message>
        <source>Hardly ever comes free</source>
        <comment>HOPELESS_TITLE</comment>
        <translation>Kommt fast nie frei</translation>
    </message>
    <message>
        <source>No group: too few tried, or enough came free.</source>
        <comment>HOPELESS_NONE</comment>
        <translation>Keine Gruppe: zu wenige versucht, oder genug kamen frei.</translation>
    </message>
    <message>
        <source>What waits</source>
        <comment>WAITS_TITLE</comment>
        <translation>Was wartet</translation>
    </message>
    <message>
        <source>None of these jobs waits for anything.</source>
        <comment>WAITS_NONE</comment>
        <translation>Keiner dieser Aufträge wartet auf etwas.</translation>
    </message>
    <message>
        <source>{state}: 1 job, for {days}</source>
        <comment>WAITS_ONE</comment>
        <translation>{state}: 1 Auftrag, {days} lang</translation>
    </message>
    <message>
        <source>{state}: {count} jobs, the longest for {days}</source>
        <comment>WAITS_MANY</comment>
        <translation>{state}: {count} Aufträge, der längste {days} lang</translation>
    </message>
    <message>
        <source>1 day</source>
        <comment>DAYS_ONE</comment>
        <translation>1 Tag</translation>
    </message>
    <message>
        <source>{days} days</source>
        <comment>DAYS_MANY</comment>
        <translation>{days} Tage</translation>
    </message>
    <message>
        <source>Look at it</source>
        <comment>OPEN_ONE</comment>
        <translation>Ansehen</translation>
    </message>
    <message>
        <source>Look at the {count}</source>
        <comment>OPEN_MANY</comment>
        <translation>Die {count} ansehen</translation>
    </message>
    <message>
        <source>Back up now</source>
        <comment>BACK_UP</comment>
        <translation>Jetzt sichern</translation>
    </message>
    <message>
        <source>A backup is being made …</source>
        <comment>BACKING_UP</comment>
        <translation>Eine Sicherung wird gemacht …</translation>
    </message>
    <message>
        <source>Last good backup: {day} {at}, {jobs} jobs</source>
        <comment>LAST_BACKUP</comment>
        <translation>Letzte gute Sicherung: {day} {at}, {jobs} Aufträge</translation>
    </message>
    <message>
        <source>Last good backup: {day} {at}, 1 job</source>
        <comment>LAST_BACKUP_ONE</comment>
        <translation>Letzte gute Sicherung: {day} {at}, 1 Auftrag</translation>
    </message>
    <message>
        <source>No good backup of this ledger yet.</source>
        <comment>NO_BACKUP</comment>
        <translation>Noch keine gute Sicherung dieses Auftragsbuchs.</translation>
    </message>
    <message>
        <source>No backup was made: {what}</source>
        <comment>BACKUP_NOT_MADE</comment>
        <translation>Es wurde keine Sicherung gemacht: {what}</translation>
    </message>
    <message>
        <source>The backup is made, but {what}</source>
        <comment>BACKUP_MADE_LACKS</comment>
        <translation>Die Sicherung ist gemacht, aber {what}</translation>
    </message>
    <message>
        <source>First seen to turn: {when}.</source>
        <comment>MEASURED_MOVES</comment>
        <translation>Zum ersten Mal drehend gesehen: {when}.</translation>
    </message>
    <message>
        <source>Mind: {cautions}.</source>
        <comment>MEASURED_CAUTIONS</comment>
        <translation>Zu beachten: {cautions}.</translation>
    </message>
    <message>
        <source>To the bench</source>
        <comment>KEY_WORDS</comment>
        <translation>Zur Werkbank</translation>
    </message>
    <message>
        <source>To the curves</source>
        <comment>KEY_WORDS</comment>
        <translation>Zu den Kurven</translation>
    </message>
    <message>
        <source>To the history</source>
        <comment>KEY_WORDS</comment>
        <translation>Zum Verlauf</translation>
    </message>
    <message>
        <source>To the settings</source>
        <comment>KEY_WORDS</comment>
        <translation>Zu den Einstellungen</translation>
    </message>
    <message>
        <source>Help about this page; once more, back to it</source>
        <comment>KEY_WORDS</comment>
        <translation>Hilfe zu dieser Seite; noch einmal, zurück zu ihr</translation>
    </message>
    <message>
        <source>Back from help, settings or paper</source>
        <comment>KEY_WORDS</comment>
        <translation>Zurück von Hilfe, Einstellungen oder Papier</translation>
    </message>
    <message>
        <source>Put this job aside and begin another</source>
        <comment>KEY_WORDS</comment>
        <translation>Diesen Auftrag beiseitelegen und einen anderen beginnen</translation>
    </message>
    <message>
        <source>Search the history</source>
        <comment>KEY_WORDS</comment>
        <translation>Den Verlauf durchsuchen</translation>
    </message>
    <message>
        <source>The sheet of the job that is shown, as it would be printed</source>
        <comment>KEY_WORDS</comment>
        <translation>Das Blatt des gezeigten Auftrags, wie es gedruckt würde</translation>
    </message>
    <message>
        <source>Keep what is half typed now; it is kept by itself anyway</source>
        <comment>KEY_WORDS</comment>
        <translation>Halb Getipptes jetzt behalten; es wird ohnehin von selbst behalten</translation>
    </message>
    <message>
        <source>Keep a copied picture or file with the job, where no field takes it</source>
        <comment>KEY_WORDS</comment>
        <translation>Ein kopiertes Bild oder eine Datei beim Auftrag behalten, wo kein Feld es annimmt</translation>
    </message>
    <message>
        <source>Whole screen, and back</source>
        <comment>KEY_WORDS</comment>
        <translation>Ganzer Bildschirm, und zurück</translation>
    </message>
    <message>
        <source>Close the window: output off first</source>
        <comment>KEY_WORDS</comment>
        <translation>Das Fenster schließen: zuerst Ausgang aus</translation>
    </message>
    <message>
        <source>Esc, Pause</source>
        <comment>OTHER_KEYS</comment>
        <translation>Esc, Pause</translation>
    </message>
    <message>
        <source>Output off, anywhere and always</source>
        <comment>OTHER_KEYS</comment>
        <translation>Ausgang aus, überall und immer</translation>
    </message>
    <message>
        <source>Space, held</source>
        <comment>OTHER_KEYS</comment>
        <translation>Leertaste, gehalten</translation>
    </message>
    <message>
        <source>Current flows, with the hand on the shaft</source>
        <comment>OTHER_KEYS</comment>
        <translation>Strom fließt, mit der Hand an der Welle</translation>
    </message>
    <message>
        <source>M</source>
        <comment>OTHER_KEYS</comment>
        <translation>M</translation>
    </message>
    <message>
        <source>It moved, while it is being freed</source>
        <comment>OTHER_KEYS</comment>
        <translation>Es hat sich bewegt, während es gelöst wird</translation>
    </message>
    <message>
        <source>Ctrl+Z</source>
        <comment>OTHER_KEYS</comment>
        <translation>Strg+Z</translation>
    </message>
    <message>
        <source>Take back the last change, on the intake page and in the settings</source>
        <comment>OTHER_KEYS</comment>
        <translation>Die letzte Änderung zurücknehmen, bei der Annahme und in den Einstellungen</translation>
    </message>
    <message>
        <source>Space</source>
        <comment>OTHER_KEYS</comment>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>In the curves: begin, after a serial and Enter</source>
        <comment>OTHER_KEYS</comment>
        <translation>In den Kurven: beginnen, nach Seriennummer und Enter</translation>
    </message>
    <message>
        <source>+  −  ←  →  Home</source>
        <comment>OTHER_KEYS</comment>
        <translation>+  −  ←  →  Pos1</translation>
    </message>
    <message>
        <source>On a chart: closer, wider, along, back to the whole</source>
        <comment>OTHER_KEYS</comment>
        <translation>Im Diagramm: näher, weiter, verschieben, zurück zum Ganzen</translation>
    </message>
    <message>
        <source>C</source>
        <comment>OTHER_KEYS</comment>
        <translation>C</translation>
    </message>
    <message>
        <source>On the chart of a run: two cursors; the arrows move one, X or Tab takes the other</source>
        <comment>OTHER_KEYS</comment>
        <translation>Im Diagramm eines Laufs: zwei Cursor; die Pfeile bewegen einen, X oder Tab nimmt den anderen</translation>
    </message>
    <message>
        <source>Ctrl+C</source>
        <comment>OTHER_KEYS</comment>
        <translation>Strg+C</translation>
    </message>
    <message>
        <source>On a chart: copy it as a picture</source>
        <comment>OTHER_KEYS</comment>
        <translation>Im Diagramm: als Bild kopieren</translation>
    </message>
    <message>
        <source>Enter</source>
        <comment>OTHER_KEYS</comment>
        <translation>Enter</translation>
    </message>
    <message>
        <source>Opens what is picked, or keeps what is typed</source>
        <comment>OTHER_KEYS</comment>
        <translation>Öffnet, was ausgewählt ist, oder behält, was getippt ist</translation>
    </message>
    <message>
        <source>Tab</source>
        <comment>OTHER_KEYS</comment>
        <translation>Tab</translation>
    </message>
    <message>
        <source>From field to field, through everything that can be pressed</source>
        <comment>OTHER_KEYS</comment>
        <translation>Von Feld zu Feld, durch alles, was gedrückt werden kann</translation>
    </message>
    <message>
        <source>Everything that was entered is kept. What is half typed is kept as a draft.</source>
        <comment>KEPT_ALREADY</comment>
        <translation>Alles, was eingegeben wurde, ist behalten. Halb Getipptes bleibt als Entwurf.</translation>
    </message>
    <message>
        <source>Everything is kept by itself, also while a run is on: its readings are on disk before they are shown.</source>
        <comment>KEPT_WHILE_ON</comment>
        <translation>Alles wird von selbst behalten, auch während ein Lauf an ist: Seine Messwerte sind auf der Platte, bevor sie zu sehen sind.</translation>
    </message>
    <message>
        <source>No job is shown whose sheet could be made: take one to the bench, or pick one in the history.</source>
        <comment>NO_JOB_FOR_PAPER</comment>
        <translation>Es ist kein Auftrag zu sehen, dessen Blatt gemacht werden könnte: Nehmen Sie einen auf die Werkbank, oder wählen Sie einen im Verlauf.</translation>
    </message>
    <message>
        <source>How this window looks and sounds.</source>
        <comment>SETTINGS_SAY</comment>
        <translation>Wie dieses Fenster aussieht und klingt.</translation>
    </message>
    <message>
        <source>Everything here applies at once, but size and language at the next start. Nothing here can switch anything on, or raise a ceiling.</source>
        <comment>SETTINGS_WHY</comment>
        <translation>Alles hier gilt sofort, nur Größe und Sprache erst beim nächsten Start. Nichts hier kann etwas einschalten oder einen Grenzwert erhöhen.</translation>
    </message>
    <message>
        <source>Back</source>
        <comment>BACK_FROM_HERE</comment>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Back to where you were. Key: Alt and left</source>
        <comment>BACK_NAME</comment>
        <translation>Zurück, wo Sie waren. Taste: Alt und links</translation>
    </message>
    <message>
        <source>Take back the last change</source>
        <comment>SETTING_UNDO</comment>
        <translation>Letzte Änderung zurücknehmen</translation>
    </message>
    <message>
        <source>Nothing was changed since this window was opened.</source>
        <comment>SETTING_NOTHING_CHANGED</comment>
        <translation>Seit das Fenster offen ist, wurde nichts geändert.</translation>
    </message>
    <message>
        <source>Taken back.</source>
        <comment>SETTING_UNDONE</comment>
        <translation>Zurückgenommen.</translation>
    </message>
    <message>
        <source>Takes effect at the next start.</source>
        <comment>NEXT_START</comment>
        <translation>Gilt ab dem nächsten Start.</translation>
    </message>
    <message>
        <source>Look</source>
        <comment>CARD_LOOK</comment>
        <translation>Aussehen</translation>
    </message>
    <message>
        <source>Sound</source>
        <comment>CARD_SOUND</comment>
        <translation>Ton</translation>
    </message>
    <message>
        <source>Taught keys</source>
        <comment>CARD_KEYS</comment>
        <translation>Angelernte Tasten</translation>
    </message>
    <message>
        <source>Colours</source>
        <comment>FIELD_COLOURS</comment>
        <translation>Farben</translation>
    </message>
    <message>
        <source>Size</source>
        <comment>FIELD_SIZE</comment>
        <translation>Größe</translation>
    </message>
    <message>
        <source>Language</source>
        <comment>FIELD_LANGUAGE</comment>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>As the desktop</source>
        <comment>COLOUR_NAMES</comment>
        <translation>Wie das System</translation>
    </message>
    <message>
        <source>Light</source>
        <comment>COLOUR_NAMES</comment>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Dark</source>
        <comment>COLOUR_NAMES</comment>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>Colours: {name}</source>
        <comment>COLOUR_CHOICE</comment>
        <translation>Farben: {name}</translation>
    </message>
    <message>
        <source>Size: {name}</source>
        <comment>SIZE_CHOICE</comment>
        <translation>Größe: {name}</translation>
    </message>
    <message>
        <source>High contrast</source>
        <comment>FIELD_CONTRAST</comment>
        <translation>Hoher Kontrast</translation>
    </message>
    <message>
        <source>As the desktop</source>
        <comment>LANGUAGE_NAMES</comment>
        <translation>Wie das System</translation>
    </message>
    <message>
        <source>English</source>
        <comment>LANGUAGE_NAMES</comment>
        <translation>English</translation>
    </message>
    <message>
        <source>Deutsch</source>
        <comment>LANGUAGE_NAMES</comment>
        <translation>Deutsch</translation>
    </message>
    <message>
        <source>Beep at kicks, when current begins to flow by hand, and at pass or fail</source>
        <comment>FIELD_BEEP</comment>
        <translation>Ton bei Anstößen, wenn von Hand Strom zu fließen beginnt, und beim Urteil</translation>
    </message>
    <message>
        <source>A foot switch, or any key: press “Teach”, then that key. Esc and Pause are Output off always, whatever is taught.</source>
        <comment>KEYS_WHY</comment>
        <translation>Ein Fußschalter oder irgendeine Taste: Drücken Sie „Anlernen“, dann diese Taste. Esc und Pause sind immer „Ausgang aus“, was auch angelernt ist.</translation>
    </message>
    <message>
        <source>none</source>
        <comment>KEY_NONE</comment>
        <translation>keine</translation>
    </message>
    <message>
        <source>Teach</source>
        <comment>KEY_TEACH</comment>
        <translation>Anlernen</translation>
    </message>
    <message>
        <source>Teach a key for: {role}</source>
        <comment>KEY_TEACH_NAME</comment>
        <translation>Eine Taste anlernen für: {role}</translation>
    </message>
    <message>
        <source>Forget</source>
        <comment>KEY_FORGET</comment>
        <translation>Vergessen</translation>
    </message>
    <message>
        <source>Forget the key for: {role}</source>
        <comment>KEY_FORGET_NAME</comment>
        <translation>Die Taste vergessen für: {role}</translation>
    </message>
    <message>
        <source>Press the key now …</source>
        <comment>KEY_PRESS_NOW</comment>
        <translation>Drücken Sie jetzt die Taste …</translation>
    </message>
    <message>
        <source>Not while a run is on: a key that is pressed could mean something else then.</source>
        <comment>KEY_NOT_WHILE_ON</comment>
        <translation>Nicht, während ein Lauf an ist: Eine gedrückte Taste könnte dann etwas anderes bedeuten.</translation>
    </message>
    <message>
        <source>No key is taught for this.</source>
        <comment>KEY_NONE_TO_FORGET</comment>
        <translation>Hierfür ist keine Taste angelernt.</translation>
    </message>
    <message>
        <source>Ceilings of the owner</source>
        <comment>CARD_LIMITS</comment>
        <translation>Grenzwerte des Inhabers</translation>
    </message>
    <message>
        <source>Read from the owner’s file at every run, and shown here only: this program never writes it.</source>
        <comment>LIMITS_WHY</comment>
        <translation>Wird bei jedem Lauf aus der Datei des Inhabers gelesen und hier nur gezeigt: Dieses Programm schreibt sie nie.</translation>
    </message>
    <message>
        <source>The file gives no ceiling: the program’s own, the supply’s, the motor’s and the job’s hold.</source>
        <comment>LIMITS_NONE</comment>
        <translation>Die Datei nennt keinen Grenzwert: Es gelten die des Programms, des Netzgeräts, des Motors und des Auftrags.</translation>
    </message>
    <message>
        <source>For every job: {limits}.</source>
        <comment>LIMITS_USUAL</comment>
        <translation>Für jeden Auftrag: {limits}.</translation>
    </message>
    <message>
        <source>With an unlock, for one job and 12 hours: {limits}.</source>
        <comment>LIMITS_UNLOCKED</comment>
        <translation>Mit Freigabe, für einen Auftrag und 12 Stunden: {limits}.</translation>
    </message>
    <message>
        <source>Nothing can be unlocked.</source>
        <comment>LIMITS_NO_UNLOCK</comment>
        <translation>Nichts lässt sich freigeben.</translation>
    </message>
    <message>
        <source>The file can’t be taken, so no run is begun: {what}.</source>
        <comment>LIMITS_WRONG</comment>
        <translation>Die Datei ist nicht zu gebrauchen, darum wird kein Lauf begonnen: {what}.</translation>
    </message>
    <message>
        <source>Where things are</source>
        <comment>CARD_PLACES</comment>
        <translation>Wo die Dinge liegen</translation>
    </message>
    <message>
        <source>Ledger</source>
        <comment>PLACE_NAMES</comment>
        <translation>Auftragsbuch</translation>
    </message>
    <message>
        <source>Backups</source>
        <comment>PLACE_NAMES</comment>
        <translation>Sicherungen</translation>
    </message>
    <message>
        <source>Photos and originals</source>
        <comment>PLACE_NAMES</comment>
        <translation>Fotos und Originale</translation>
    </message>
    <message>
        <source>Runs not filed yet</source>
        <comment>PLACE_NAMES</comment>
        <translation>Noch nicht abgelegte Läufe</translation>
    </message>
    <message>
        <source>Owner’s settings</source>
        <comment>PLACE_NAMES</comment>
        <translation>Einstellungen des Inhabers</translation>
    </message>
    <message>
        <source>Settings of this window</source>
        <comment>PLACE_NAMES</comment>
        <translation>Einstellungen dieses Fensters</translation>
    </message>
    <message>
        <source>Logs</source>
        <comment>PLACE_NAMES</comment>
        <translation>Protokolldateien</translation>
    </message>
    <message>
        <source>not there yet</source>
        <comment>PLACE_NOT_THERE</comment>
        <translation>noch nicht da</translation>
    </message>
    <message>
        <source>Copy path</source>
        <comment>COPY_PATH</comment>
        <translation>Pfad kopieren</translation>
    </message>
    <message>
        <source>Copy the path of: {name}</source>
        <comment>COPY_PATH_NAME</comment>
        <translation>Den Pfad kopieren von: {name}</translation>
    </message>
    <message>
        <source>Open folder</source>
        <comment>OPEN_FOLDER</comment>
        <translation>Ordner öffnen</translation>
    </message>
    <message>
        <source>Open the folder of: {name}</source>
        <comment>OPEN_FOLDER_NAME</comment>
        <translation>Den Ordner öffnen von: {name}</translation>
    </message>
    <message>
        <source>While the output may be on no other window is opened in front of this one.</source>
        <comment>FOLDER_NOT_WHILE_ON</comment>
        <translation>Solange der Ausgang an sein kann, wird kein anderes Fenster vor diesem geöffnet.</translation>
    </message>
    <message>
        <source>There is no such folder yet.</source>
        <comment>FOLDER_NOT_THERE</comment>
        <translation>Einen solchen Ordner gibt es noch nicht.</translation>
    </message>
    <message>
        <source>The desktop did not open it. The path is copied instead.</source>
        <comment>FOLDER_NOT_OPENED</comment>
        <translation>Das System hat ihn nicht geöffnet. Stattdessen ist der Pfad kopiert.</translation>
    </message>
    <message>
        <source>Copied: {what}</source>
        <comment>COPIED</comment>
        <translation>Kopiert: {what}</translation>
    </message>
    <message>
        <source>For whoever helps when something is wrong</source>
        <comment>CARD_BUNDLE</comment>
        <translation>Für den, der hilft, wenn etwas nicht stimmt</translation>
    </message>
    <message>
        <source>One file with what this program is and runs on, its logs and the ledger’s form and size. Not in it: jobs, owners, complaints, photos, traces. Look into it before you give it away; nothing is sent by this program.</source>
        <comment>BUNDLE_WHY</comment>
        <translation>Eine Datei mit dem, was dieses Programm ist und worauf es läuft, seinen Protokolldateien und Form und Größe des Auftragsbuchs. Nicht darin: Aufträge, Eigentümer, Beanstandungen, Fotos, Aufzeichnungen. Sehen Sie hinein, bevor Sie sie weitergeben; dieses Programm verschickt nichts.</translation>
    </message>
    <message>
        <source>Make the file …</source>
        <comment>BUNDLE_MAKE</comment>
        <translation>Die Datei machen …</translation>
    </message>
    <message>
        <source>Where to keep the file</source>
        <comment>BUNDLE_TITLE</comment>
        <translation>Wohin mit der Datei</translation>
    </message>
    <message>
        <source>Not while the output may be on: making it takes a moment that a run may need.</source>
        <comment>BUNDLE_NOT_WHILE_ON</comment>
        <translation>Nicht, solange der Ausgang an sein kann: Das Machen dauert einen Augenblick, den ein Lauf brauchen kann.</translation>
    </message>
    <message>
        <source>Made: {path}. Look into it before you give it away.</source>
        <comment>BUNDLE_MADE</comment>
        <translation>Gemacht: {path}. Sehen Sie hinein, bevor Sie sie weitergeben.</translation>
    </message>
    <message>
        <source>The file could not be made: {what}.</source>
        <comment>BUNDLE_FAILED</comment>
        <translation>Die Datei konnte nicht gemacht werden: {what}.</translation>
    </message>
    <message>
        <source>Licences</source>
        <comment>CARD_LICENCES</comment>
        <translation>Lizenzen</translation>
    </message>
    <message>
        <source>The open libraries that this program stands on, with their licences.</source>
        <comment>LICENCES_WHY</comment>
        <translation>Die freien Bibliotheken, auf denen dieses Programm steht, mit ihren Lizenzen.</translation>
    </message>
    <message>
        <source>Licences of the libraries, one below the other</source>
        <comment>LICENCES_NAME</comment>
        <translation>Lizenzen der Bibliotheken, eine unter der anderen</translation>
    </message>
    <message>
        <source>Topics of the help</source>
        <comment>HELP_TOPICS</comment>
        <translation>Themen der Hilfe</translation>
    </message>
    <message>
        <source>Search the help</source>
        <comment>HELP_SEARCH</comment>
        <translation>Die Hilfe durchsuchen</translation>
    </message>
    <message>
        <source>Help: {title}</source>
        <comment>HELP_PAGE</comment>
        <translation>Hilfe: {title}</translation>
    </message>
    <message>
        <source>Nothing in the help has all these words. Fewer or shorter words find more.</source>
        <comment>HELP_NOTHING</comment>
        <translation>Nichts in der Hilfe hat alle diese Wörter. Weniger oder kürzere Wörter finden mehr.</translation>
    </message>
    <message>
        <source>Intake</source>
        <comment>HELP_TITLES</comment>
        <translation>Annahme</translation>
    </message>
    <message>
        <source>Make safe</source>
        <comment>HELP_TITLES</comment>
        <translation>Sichern</translation>
    </message>
    <message>
        <source>Probe</source>
        <comment>HELP_TITLES</comment>
        <translation>Messen</translation>
    </message>
    <message>
        <source>Free</source>
        <comment>HELP_TITLES</comment>
        <translation>Lösen</translation>
    </message>
    <message>
        <source>Prove</source>
        <comment>HELP_TITLES</comment>
        <translation>Nachweis</translation>
    </message>
    <message>
        <source>Close</source>
        <comment>HELP_TITLES</comment>
        <translation>Abschluss</translation>
    </message>
    <message>
        <source>Record and costs</source>
        <comment>HELP_TITLES</comment>
        <translation>Protokoll und Kosten</translation>
    </message>
    <message>
        <source>Curves</source>
        <comment>HELP_TITLES</comment>
        <translation>Kurven</translation>
    </message>
    <message>
        <source>History</source>
        <comment>HELP_TITLES</comment>
        <translation>Verlauf</translation>
    </message>
    <message>
        <source>Settings</source>
        <comment>HELP_TITLES</comment>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Safety</source>
        <comment>HELP_TITLES</comment>
        <translation>Sicherheit</translation>
    </message>
    <message>
        <source>The supply</source>
        <comment>HELP_TITLES</comment>
        <translation>Das Netzgerät</translation>
    </message>
    <message>
        <source>All keys</source>
        <comment>HELP_TITLES</comment>
        <translation>Alle Tasten</translation>
    </message>
    <message>
        <source>Words used here</source>
        <comment>HELP_TITLES</comment>
        <translation>Die Wörter hier</translation>
    </message>
    <message>
        <source>Take a job in first.</source>
        <comment>NEEDS_JOB</comment>
        <translation>Nehmen Sie zuerst einen Auftrag an.</translation>
    </message>
    <message>
        <source>The job is closed. What it says is corrected in the history.</source>
        <comment>JOB_IS_CLOSED</comment>
        <translation>Der Auftrag ist abgeschlossen. Was darin steht, wird im Verlauf berichtigt.</translation>
    </message>
    <message>
        <source>Not yet: first {stage}.</source>
        <comment>COMES_AFTER</comment>
        <translation>Noch nicht: zuerst {stage}.</translation>
    </message>
    <message>
        <source>1 line is not answered yet.</source>
        <comment>SAFE_OPEN_ONE</comment>
        <translation>1 Zeile ist noch nicht beantwortet.</translation>
    </message>
    <message>
        <source>{count} lines are not answered yet.</source>
        <comment>SAFE_OPEN_MANY</comment>
        <translation>{count} Zeilen sind noch nicht beantwortet.</translation>
    </message>
    <message>
        <source>Kept with the job; what was said is not taken back.</source>
        <comment>SAFE_KEPT</comment>
        <translation>Beim Auftrag vermerkt; was gesagt wurde, wird nicht zurückgenommen.</translation>
    </message>
    <message>
        <source>Nothing was changed that could be taken back.</source>
        <comment>NOTHING_TO_UNDO</comment>
        <translation>Es wurde nichts geändert, das sich zurücknehmen ließe.</translation>
    </message>
    <message>
        <source>Supplies are being looked for. Wait until that is over.</source>
        <comment>STILL_LOOKING</comment>
        <translation>Es wird gerade nach Netzgeräten gesucht. Warten Sie, bis das zu Ende ist.</translation>
    </message>
    <message>
        <source>Give what is asked for first.</source>
        <comment>NOTHING_CALCULATED</comment>
        <translation>Geben Sie zuerst an, was gefragt ist.</translation>
    </message>
    <message>
        <source>The job was not on the bench since minutes were last charged.</source>
        <comment>NO_MINUTES</comment>
        <translation>Der Auftrag war nicht auf der Werkbank, seit zuletzt Minuten berechnet wurden.</translation>
    </message>
    <message>
        <source>Work goes on already.</source>
        <comment>GOES_ON_ALREADY</comment>
        <translation>Die Arbeit geht schon weiter.</translation>
    </message>
    <message>
        <source>No run can be begun now.</source>
        <comment>RUN_NOT_NOW</comment>
        <translation>Jetzt kann kein Lauf begonnen werden.</translation>
    </message>
    <message>
        <source>Go on with:</source>
        <comment>RECENT_TITLE</comment>
        <translation>Weiter mit:</translation>
    </message>
    <message>
        <source>Go on with job {job}</source>
        <comment>RECENT_NAME</comment>
        <translation>Weiter mit Auftrag {job}</translation>
    </message>
    <message>
        <source>That is a ledger: it is opened when the program starts (benchlog window --ledger FILE). Nothing was taken.</source>
        <comment>DROPPED_LEDGER</comment>
        <translation>Das ist ein Auftragsbuch: Es wird beim Start des Programms geöffnet (benchlog window --ledger DATEI). Es wurde nichts übernommen.</translation>
    </message>
    <message>
        <source>That is a table: a capture is laid over a start in the curves room, another trace is laid on a run by “benchlog import-trace”. Nothing was taken.</source>
        <comment>DROPPED_TABLE</comment>
        <translation>Das ist eine Tabelle: Eine Aufnahme wird im Raum der Kurven über einen Anlauf gelegt, eine andere Aufzeichnung mit „benchlog import-trace“ auf einen Lauf. Es wurde nichts übernommen.</translation>
    </message>
    <message>
        <source>No job is on the bench to keep it with: take one in, or take one up from the history. Nothing was taken.</source>
        <comment>DROPPED_NO_JOB</comment>
        <translation>Auf der Werkbank ist kein Auftrag, bei dem es bleiben könnte: Nehmen Sie einen an, oder holen Sie einen aus dem Verlauf. Es wurde nichts übernommen.</translation>
    </message>
    <message>
        <source>First take job {number:04d} to the bench, so that it is kept with the right job. Nothing was taken.</source>
        <comment>DROPPED_ELSEWHERE</comment>
        <translation>Nehmen Sie zuerst Auftrag {number:04d} auf die Werkbank, damit es beim richtigen Auftrag bleibt. Es wurde nichts übernommen.</translation>
    </message>
    <message>
        <source>{name} is kept with job {number:04d}.</source>
        <comment>DROPPED_KEPT</comment>
        <translation>{name} ist bei Auftrag {number:04d} behalten.</translation>
    </message>
    <message>
        <source>The pages of the sheet; the arrow keys and Page Down go through them</source>
        <comment>PAPER_PAGES</comment>
        <translation>Die Seiten des Blatts; Pfeiltasten und Bild ab gehen hindurch</translation>
    </message>
    <message>
        <source>Sheet of job {number:04d} · {kind}</source>
        <comment>PAPER_SAY</comment>
        <translation>Blatt von Auftrag {number:04d} · {kind}</translation>
    </message>
    <message>
        <source>Page {number} of {count} of the sheet</source>
        <comment>PAPER_PAGE</comment>
        <translation>Seite {number} von {count} des Blatts</translation>
    </message>
    <message>
        <source>Print</source>
        <comment>PAPER_PRINT</comment>
        <translation>Drucken</translation>
    </message>
    <message>
        <source>Print on the printer that this computer uses</source>
        <comment>PAPER_PRINT_NAME</comment>
        <translation>Auf dem Drucker drucken, den dieser Rechner benutzt</translation>
    </message>
    <message>
        <source>Keep as PDF …</source>
        <comment>PAPER_SAVE</comment>
        <translation>Als PDF behalten …</translation>
    </message>
    <message>
        <source>This computer knows no printer. Keep the sheet as PDF, and print that.</source>
        <comment>PAPER_NO_PRINTER</comment>
        <translation>Dieser Rechner kennt keinen Drucker. Behalten Sie das Blatt als PDF, und drucken Sie das.</translation>
    </message>
    <message>
        <source>Given to the printer {name}.</source>
        <comment>PAPER_PRINTED</comment>
        <translation>An den Drucker {name} gegeben.</translation>
    </message>
</context>
<context>
    <name>ui.curve_texts</name>
    <message>
        <source>Starts over one another, from their trigger on</source>
        <comment>OVERLAY_NAME</comment>
        <translation>Anläufe übereinander, von ihrem Trigger an</translation>
    </message>
    <message>
        <source>Wheel or + and −: closer or wider in time, the wheel with Ctrl in amps. Drag or arrows: along; a drag with Shift: a box to look into. Double click or Home: back to the whole. Arrows move a cursor; X or Tab: the other one. Ctrl+C: copies the picture.</source>
        <comment>OVERLAY_HINT</comment>
        <translation>Rad oder + und −: näher oder weiter in der Zeit, das Rad mit Strg in Ampere. Ziehen oder Pfeile: verschieben; Ziehen mit Umschalt: ein Feld zum Hineinsehen. Doppelklick oder Pos1: zurück zum Ganzen. Pfeile bewegen einen Cursor; X oder Tab: der andere. Strg+C: kopiert das Bild.</translation>
    </message>
    <message>
        <source>picture of {day} {at}</source>
        <comment>PICTURED</comment>
        <translation>Bild vom {day} {at}</translation>
    </message>
    <message>
        <source>Looking closer at the amps.</source>
        <comment>LEVELS_LOOKED</comment>
        <translation>Die Ampere näher angesehen.</translation>
    </message>
    <message>
        <source>Nothing captured yet</source>
        <comment>OVERLAY_EMPTY</comment>
        <translation>Noch nichts aufgenommen</translation>
    </message>
    <message>
        <source>trigger: {word}</source>
        <comment>TRIGGER_LINE</comment>
        <translation>Trigger: {word}</translation>
    </message>
    <message>
        <source>output on</source>
        <comment>TRIGGER_WORDS</comment>
        <translation>Ausgang an</translation>
    </message>
    <message>
        <source>amps rise</source>
        <comment>TRIGGER_WORDS</comment>
        <translation>Ampere steigen</translation>
    </message>
    <message>
        <source>volts rise</source>
        <comment>TRIGGER_WORDS</comment>
        <translation>Volt steigen</translation>
    </message>
    <message>
        <source>Δt {seconds}</source>
        <comment>CURSOR_TIME</comment>
        <translation>Δt {seconds}</translation>
    </message>
    <message>
        <source>{name}:  {first}   {second}   Δt {seconds}, ΔV {volts}, ΔI {amps}</source>
        <comment>CURSOR_ALL</comment>
        <translation>{name}:  {first}   {second}   Δt {seconds}, ΔV {volts}, ΔI {amps}</translation>
    </message>
    <message>
        <source>{first}   {second}   Δt {seconds}, ΔV {volts}, ΔI {amps}</source>
        <comment>CURSOR_UNNAMED</comment>
        <translation>{first}   {second}   Δt {seconds}, ΔV {volts}, ΔI {amps}</translation>
    </message>
    <message>
        <source>A</source>
        <comment>CURSOR_LETTERS</comment>
        <translation>A</translation>
    </message>
    <message>
        <source>B</source>
        <comment>CURSOR_LETTERS</comment>
        <translation>B</translation>
    </message>
    <message>
        <source>amps</source>
        <comment>AMPS_PANE</comment>
        <translation>Ampere</translation>
    </message>
    <message>
        <source>volts at the terminals</source>
        <comment>VOLTS_PANE</comment>
        <translation>Volt an den Klemmen</translation>
    </message>
    <message>
        <source>volts at the motor</source>
        <comment>VOLTS_MOTOR_PANE</comment>
        <translation>Volt am Motor</translation>
    </message>
    <message>
        <source>1 start</source>
        <comment>STARTS_ONE</comment>
        <translation>1 Anlauf</translation>
    </message>
    <message>
        <source>{count} starts</source>
        <comment>STARTS_MANY</comment>
        <translation>{count} Anläufe</translation>
    </message>
    <message>
        <source>unit {number}</source>
        <comment>UNIT_NAME</comment>
        <translation>Prüfling {number}</translation>
    </message>
    <message>
        <source>run {run}</source>
        <comment>RUN_NAME</comment>
        <translation>Lauf {run}</translation>
    </message>
    <message>
        <source>{name}, start {number}</source>
        <comment>START_OF</comment>
        <translation>{name}, Anlauf {number}</translation>
    </message>
    <message>
        <source>before: run {run}</source>
        <comment>BEFORE_NAME</comment>
        <translation>vorher: Lauf {run}</translation>
    </message>
    <message>
        <source>Not filled in: {why}.</source>
        <comment>NOT_FILLED_IN</comment>
        <translation>Nicht aufgefüllt: {why}.</translation>
    </message>
    <message>
        <source>mean of {count}</source>
        <comment>MEAN_NAME</comment>
        <translation>Mittel aus {count}</translation>
    </message>
    <message>
        <source>band of {units} known good ({coverage} % of units, {confidence} % sure)</source>
        <comment>BAND_NAME</comment>
        <translation>Band aus {units} Gutmustern ({coverage} % der Prüflinge, zu {confidence} % sicher)</translation>
    </message>
    <message>
        <source>{count} starts together, a point every {interval}</source>
        <comment>FILLED_IN_NAME</comment>
        <translation>{count} Anläufe zusammen, ein Punkt alle {interval}</translation>
    </message>
    <message>
        <source>the supply’s own array, every {interval}</source>
        <comment>DENSE_NAME</comment>
        <translation>eigene Messreihe des Netzgeräts, alle {interval}</translation>
    </message>
    <message>
        <source>PASS</source>
        <comment>PASS</comment>
        <translation>GUT</translation>
    </message>
    <message>
        <source>FAIL</source>
        <comment>FAIL</comment>
        <translation>SCHLECHT</translation>
    </message>
    <message>
        <source>NOT JUDGED</source>
        <comment>NOT_JUDGED</comment>
        <translation>OHNE URTEIL</translation>
    </message>
    <message>
        <source>NOT MEASURED</source>
        <comment>NOT_MEASURED</comment>
        <translation>NICHT GEMESSEN</translation>
    </message>
    <message>
        <source>Measure a unit, or pick one.</source>
        <comment>NO_VERDICT_WHY</comment>
        <translation>Prüfling messen oder auswählen.</translation>
    </message>
    <message>
        <source>{serial} comes next.</source>
        <comment>NEXT_VERDICT_WHY</comment>
        <translation>Als Nächstes kommt {serial}.</translation>
    </message>
    <message>
        <source>{outside} of {count} figures outside</source>
        <comment>OUTSIDE_OF</comment>
        <translation>{outside} von {count} Kennwerten außerhalb</translation>
    </message>
    <message>
        <source>the curve is outside, {share} of it</source>
        <comment>CURVE_OUTSIDE</comment>
        <translation>die Kurve ist außerhalb, zu {share}</translation>
    </message>
    <message>
        <source>all {count} figures inside</source>
        <comment>ALL_INSIDE</comment>
        <translation>alle {count} Kennwerte innerhalb</translation>
    </message>
    <message>
        <source>there are no limits yet</source>
        <comment>NO_LIMITS_YET</comment>
        <translation>noch gibt es keine Grenzen</translation>
    </message>
    <message>
        <source>Figure</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Kennwert</translation>
    </message>
    <message>
        <source>Limits</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Grenzen</translation>
    </message>
    <message>
        <source>Result</source>
        <comment>FIGURE_COLUMNS</comment>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>Figures against their limits: {told}</source>
        <comment>FIGURES_NAME</comment>
        <translation>Kennwerte gegen ihre Grenzen: {told}</translation>
    </message>
    <message>
        <source>Mean of {count}</source>
        <comment>FIGURE_MEAN</comment>
        <translation>Mittel aus {count}</translation>
    </message>
    <message>
        <source>Start {number}</source>
        <comment>FIGURE_START</comment>
        <translation>Anlauf {number}</translation>
    </message>
    <message>
        <source>Value</source>
        <comment>FIGURE_NONE</comment>
        <translation>Wert</translation>
    </message>
    <message>
        <source>in</source>
        <comment>INSIDE</comment>
        <translation>in</translation>
    </message>
    <message>
        <source>{low} to {high}</source>
        <comment>LIMITS_FROM_TO</comment>
        <translation>{low} bis {high}</translation>
    </message>
    <message>
        <source>{rate} pass.</source>
        <comment>LOT_RATE</comment>
        <translation>{rate} sind gut.</translation>
    </message>
    <message>
        <source>{rate} pass; {left} not judged.</source>
        <comment>LOT_RATE_LEFT</comment>
        <translation>{rate} sind gut; {left} nicht beurteilt.</translation>
    </message>
    <message>
        <source>No unit is judged yet.</source>
        <comment>LOT_NONE_JUDGED</comment>
        <translation>Noch kein Prüfling beurteilt.</translation>
    </message>
    <message>
        <source>No limits yet: they take five known good units.</source>
        <comment>LOT_NO_LIMITS</comment>
        <translation>Noch keine Grenzen: Sie brauchen fünf Gutmuster.</translation>
    </message>
    <message>
        <source>No limits yet. They take five known good units: {count} are measured.</source>
        <comment>LOT_CAN_LIMIT</comment>
        <translation>Noch keine Grenzen. Sie brauchen fünf Gutmuster: {count} sind gemessen.</translation>
    </message>
    <message>
        <source>Make limits</source>
        <comment>TO_LIMITS</comment>
        <translation>Grenzen bilden</translation>
    </message>
    <message>
        <source>To the units, from which limits are made</source>
        <comment>TO_LIMITS_NAME</comment>
        <translation>Zu den Prüflingen, aus denen Grenzen gebildet werden</translation>
    </message>
    <message>
        <source>Judged by limits {id}, from {n} known good.</source>
        <comment>LOT_JUDGED_BY</comment>
        <translation>Beurteilt nach Grenzen {id}, aus {n} Gutmustern.</translation>
    </message>
    <message>
        <source>{count} with captured starts.</source>
        <comment>JOB_RUNS</comment>
        <translation>{count} mit aufgenommenen Anläufen.</translation>
    </message>
    <message>
        <source>No captured starts yet.</source>
        <comment>JOB_NO_RUNS</comment>
        <translation>Noch keine aufgenommenen Anläufe.</translation>
    </message>
    <message>
        <source>{name} {value}, limits {limits}, {outside}</source>
        <comment>FIGURES_TOLD</comment>
        <translation>{name} {value}, Grenzen {limits}, {outside}</translation>
    </message>
    <message>
        <source>Serial of the next unit; scan or type it, then Enter</source>
        <comment>SERIAL_NAME</comment>
        <translation>Seriennummer des nächsten Prüflings; scannen oder tippen, dann Enter</translation>
    </message>
    <message>
        <source>Serial, Enter</source>
        <comment>SERIAL_HINT</comment>
        <translation>Nummer, Enter</translation>
    </message>
    <message>
        <source>Start</source>
        <comment>START</comment>
        <translation>Anlauf</translation>
    </message>
    <message>
        <source>Start to measure this unit. Key: Space</source>
        <comment>START_NAME</comment>
        <translation>Anlauf: diesen Prüfling messen. Taste: Leertaste</translation>
    </message>
    <message>
        <source>Space</source>
        <comment>START_KEY</comment>
        <translation>Leer</translation>
    </message>
    <message>
        <source>Hands, hair and blades clear before each start</source>
        <comment>CLEAR_TICK</comment>
        <translation>Hände, Haare und Flügel frei vor jedem Anlauf</translation>
    </message>
    <message>
        <source>Passed {at}: {checks}</source>
        <comment>CHECK_PASSED</comment>
        <translation>Bestanden {at}: {checks}</translation>
    </message>
    <message>
        <source>Check due: {kinds}</source>
        <comment>CHECK_DUE</comment>
        <translation>Fällig: {kinds}</translation>
    </message>
    <message>
        <source>zero</source>
        <comment>CHECK_KINDS</comment>
        <translation>Nullpunkt</translation>
    </message>
    <message>
        <source>leads</source>
        <comment>CHECK_KINDS</comment>
        <translation>Leitungen</translation>
    </message>
    <message>
        <source>Check</source>
        <comment>CHECK_NOW</comment>
        <translation>Prüfen</translation>
    </message>
    <message>
        <source>Join the two clips, without a motor, and measure the leads and the zero</source>
        <comment>CHECK_NOW_NAME</comment>
        <translation>Die beiden Klemmen zusammenklemmen, ohne Motor, und Leitungen und Nullpunkt messen</translation>
    </message>
    <message>
        <source>Join the two clips, with no motor between them: at most 1 A at 1 V. Without it no unit is judged.</source>
        <comment>CHECK_HINT</comment>
        <translation>Klemmen Sie die beiden Klemmen zusammen, ohne Motor dazwischen: höchstens 1 A bei 1 V. Ohne das wird kein Prüfling beurteilt.</translation>
    </message>
    <message>
        <source>The {kinds} check did not pass: {told}. No unit is judged until it does.</source>
        <comment>CHECK_FAILED</comment>
        <translation>Die Prüfung ({kinds}) wurde nicht bestanden: {told}. Bis sie bestanden ist, wird kein Prüfling beurteilt.</translation>
    </message>
    <message>
        <source>Clips joined, with no motor between them?</source>
        <comment>CHECK_ASK</comment>
        <translation>Klemmen verbunden, ohne Motor dazwischen?</translation>
    </message>
    <message>
        <source>Joined: measure</source>
        <comment>CHECK_BEGIN</comment>
        <translation>Verbunden: messen</translation>
    </message>
    <message>
        <source>Not now</source>
        <comment>CHECK_LEAVE</comment>
        <translation>Jetzt nicht</translation>
    </message>
    <message>
        <source>The clips are joined: measure the leads and the zero, at most 1 A at 1 V</source>
        <comment>CHECK_BEGIN_NAME</comment>
        <translation>Die Klemmen sind verbunden: Leitungen und Nullpunkt messen, höchstens 1 A bei 1 V</translation>
    </message>
    <message>
        <source>Demo: join the clips, and later hang a fan on them, with the DEMO button at the top.</source>
        <comment>CHECK_DEMO</comment>
        <translation>Demo: Klemmen verbinden, und später einen Lüfter daran hängen, mit der Taste DEMO oben.</translation>
    </message>
    <message>
        <source>First say whether the clips are joined, or leave the check.</source>
        <comment>NEEDS_JOINED</comment>
        <translation>Sagen Sie erst, ob die Klemmen verbunden sind, oder lassen Sie die Prüfung.</translation>
    </message>
    <message>
        <source>A run is on: what is typed or scanned now is not kept. Scan the next unit when it is over.</source>
        <comment>NEXT_NOT_KEPT</comment>
        <translation>Ein Lauf ist im Gang: Was jetzt getippt oder gescannt wird, wird nicht behalten. Scannen Sie den nächsten Prüfling danach.</translation>
    </message>
    <message>
        <source>First tick that fingers, hair and blades are clear.</source>
        <comment>NEEDS_CLEAR</comment>
        <translation>Haken Sie zuerst an, dass Finger, Haare und Flügel frei sind.</translation>
    </message>
    <message>
        <source>First scan or type the unit’s serial.</source>
        <comment>NEEDS_SERIAL</comment>
        <translation>Scannen oder tippen Sie zuerst die Seriennummer des Prüflings.</translation>
    </message>
    <message>
        <source>Press Enter in the serial’s field first: only then does the space bar start this unit.</source>
        <comment>NEEDS_ENTER</comment>
        <translation>Drücken Sie zuerst Enter im Feld der Seriennummer: Erst dann lässt die Leertaste diesen Prüfling anlaufen.</translation>
    </message>
    <message>
        <source>First choose or define a test.</source>
        <comment>NEEDS_TEST</comment>
        <translation>Wählen oder bestimmen Sie zuerst eine Prüfung.</translation>
    </message>
    <message>
        <source>Lot {name}</source>
        <comment>LOT_TITLE</comment>
        <translation>Los {name}</translation>
    </message>
    <message>
        <source>Job {number:04d}</source>
        <comment>JOB_TITLE</comment>
        <translation>Auftrag {number:04d}</translation>
    </message>
    <message>
        <source>1 run</source>
        <comment>RUNS_ONE</comment>
        <translation>1 Lauf</translation>
    </message>
    <message>
        <source>{count} runs</source>
        <comment>RUNS_MANY</comment>
        <translation>{count} Läufe</translation>
    </message>
    <message>
        <source>What is shown: a lot, or the job on the bench</source>
        <comment>SHOWN_NAME</comment>
        <translation>Was gezeigt wird: ein Los oder der Auftrag auf der Werkbank</translation>
    </message>
    <message>
        <source>Choose a lot …</source>
        <comment>SHOWN_NOTHING</comment>
        <translation>Ein Los auswählen …</translation>
    </message>
    <message>
        <source>Job {number:04d} on the bench</source>
        <comment>SHOWN_JOB</comment>
        <translation>Auftrag {number:04d} auf der Werkbank</translation>
    </message>
    <message>
        <source>Lot {name} · {kind} · {count}</source>
        <comment>SHOWN_LOT</comment>
        <translation>Los {name} · {kind} · {count}</translation>
    </message>
    <message>
        <source>Curves</source>
        <comment>PAGES</comment>
        <translation>Kurven</translation>
    </message>
    <message>
        <source>Units</source>
        <comment>PAGES</comment>
        <translation>Prüflinge</translation>
    </message>
    <message>
        <source>Tests</source>
        <comment>PAGES</comment>
        <translation>Prüfungen</translation>
    </message>
    <message>
        <source>Run-in</source>
        <comment>PAGES</comment>
        <translation>Einlauf</translation>
    </message>
    <message>
        <source>New lot</source>
        <comment>NEW_LOT</comment>
        <translation>Neues Los</translation>
    </message>
    <message>
        <source>Lot {name} · {kind}</source>
        <comment>HEADER_LOT</comment>
        <translation>Los {name} · {kind}</translation>
    </message>
    <message>
        <source>unit {number} of {count} · serial {serial}</source>
        <comment>HEADER_UNIT</comment>
        <translation>Prüfling {number} von {count} · Seriennummer {serial}</translation>
    </message>
    <message>
        <source>unit {number} · serial {serial}</source>
        <comment>HEADER_NEXT</comment>
        <translation>Prüfling {number} · Seriennummer {serial}</translation>
    </message>
    <message>
        <source>{count}, test “{test}”, version {version}</source>
        <comment>HEADER_LOT_ABOUT</comment>
        <translation>{count}, Prüfung „{test}“, Fassung {version}</translation>
    </message>
    <message>
        <source>1 unit</source>
        <comment>UNITS_ONE</comment>
        <translation>1 Prüfling</translation>
    </message>
    <message>
        <source>{count} units</source>
        <comment>UNITS_MANY</comment>
        <translation>{count} Prüflinge</translation>
    </message>
    <message>
        <source>How does a motor start, and does it start as the good ones do?</source>
        <comment>EMPTY_SAY</comment>
        <translation>Wie läuft ein Motor an, und läuft er an wie die guten?</translation>
    </message>
    <message>
        <source>The same motor many times, many motors of a kind, before and after a repair: every start from rest by one locked test, laid over one another, with its figures against limits from known good ones.</source>
        <comment>EMPTY_WHY</comment>
        <translation>Derselbe Motor viele Male, viele Motoren einer Art, vor und nach einer Reparatur: jeder Anlauf aus dem Stillstand nach einer festgelegten Prüfung, übereinandergelegt, mit seinen Kennwerten gegen die Grenzen der Gutmuster.</translation>
    </message>
    <message>
        <source>Define a test</source>
        <comment>EMPTY_STEPS</comment>
        <translation>Eine Prüfung bestimmen</translation>
    </message>
    <message>
        <source>Volts, time and number of starts. Locked, it never changes: what differs is a new version.</source>
        <comment>EMPTY_STEPS</comment>
        <translation>Volt, Zeit und Zahl der Anläufe. Einmal festgelegt, ändert sie sich nie: Was abweicht, ist eine neue Fassung.</translation>
    </message>
    <message>
        <source>Open a lot</source>
        <comment>EMPTY_STEPS</comment>
        <translation>Ein Los eröffnen</translation>
    </message>
    <message>
        <source>What its units are, who measures with which leads. Or take the job on the bench.</source>
        <comment>EMPTY_STEPS</comment>
        <translation>Was seine Prüflinge sind, wer mit welchen Leitungen misst. Oder nehmen Sie den Auftrag auf der Werkbank.</translation>
    </message>
    <message>
        <source>Scan, connect, press Space</source>
        <comment>EMPTY_STEPS</comment>
        <translation>Scannen, anschließen, Leertaste drücken</translation>
    </message>
    <message>
        <source>Pass or fail is seen and heard; every start is filed. Then the next unit.</source>
        <comment>EMPTY_STEPS</comment>
        <translation>Gut oder schlecht ist zu sehen und zu hören; jeder Anlauf wird abgelegt. Dann der nächste Prüfling.</translation>
    </message>
    <message>
        <source>Define a test</source>
        <comment>EMPTY_TEST</comment>
        <translation>Eine Prüfung bestimmen</translation>
    </message>
    <message>
        <source>Open a new lot</source>
        <comment>EMPTY_LOT</comment>
        <translation>Ein neues Los eröffnen</translation>
    </message>
    <message>
        <source>Starts of the job on the bench</source>
        <comment>EMPTY_JOB</comment>
        <translation>Anläufe des Auftrags auf der Werkbank</translation>
    </message>
    <message>
        <source>Nothing captured yet.</source>
        <comment>NOTHING_YET_SAY</comment>
        <translation>Noch nichts aufgenommen.</translation>
    </message>
    <message>
        <source>Scan the first unit’s serial at the right, connect the unit, and press Space. Test {test}.</source>
        <comment>NOTHING_YET_LOT</comment>
        <translation>Scannen Sie rechts die Seriennummer des ersten Prüflings, schließen Sie ihn an und drücken Sie die Leertaste. Prüfung {test}.</translation>
    </message>
    <message>
        <source>Choose a locked test at the right, or define one under “Tests”; then press Space.</source>
        <comment>NOTHING_YET_NO_TEST</comment>
        <translation>Wählen Sie rechts eine festgelegte Prüfung, oder bestimmen Sie eine unter „Prüfungen“; dann die Leertaste drücken.</translation>
    </message>
    <message>
        <source>“{name}”, version {version}</source>
        <comment>TEST_CALLED</comment>
        <translation>„{name}“, Fassung {version}</translation>
    </message>
    <message>
        <source>{name}: {starts} at {volts}, {on_s} each</source>
        <comment>TEST_LINE</comment>
        <translation>{name}: {starts} mit {volts}, je {on_s}</translation>
    </message>
    <message>
        <source>before / after</source>
        <comment>BEFORE_AFTER</comment>
        <translation>vorher / nachher</translation>
    </message>
    <message>
        <source>Lay the same motor’s starts before these under them, dashed</source>
        <comment>BEFORE_AFTER_NAME</comment>
        <translation>Frühere Anläufe desselben Motors gestrichelt darunterlegen</translation>
    </message>
    <message>
        <source>There are no earlier starts of this motor: none in this job, and none of its serial elsewhere.</source>
        <comment>NO_BEFORE</comment>
        <translation>Von diesem Motor gibt es keine früheren Anläufe: in diesem Auftrag keine und anderswo keine mit seiner Seriennummer.</translation>
    </message>
    <message>
        <source>Nothing is captured yet that earlier starts could be laid under.</source>
        <comment>BEFORE_NOTHING</comment>
        <translation>Es ist noch nichts aufgenommen, unter das frühere Anläufe gelegt werden könnten.</translation>
    </message>
    <message>
        <source>Nothing is captured yet that a capture could be laid over.</source>
        <comment>OVER_NOTHING</comment>
        <translation>Es ist noch nichts aufgenommen, über das eine Aufnahme gelegt werden könnte.</translation>
    </message>
    <message>
        <source>cursors</source>
        <comment>CURSORS</comment>
        <translation>Cursor</translation>
    </message>
    <message>
        <source>Two cursors with the time, volts and amps between them</source>
        <comment>CURSORS_NAME</comment>
        <translation>Zwei Cursor mit der Zeit, den Volt und den Ampere dazwischen</translation>
    </message>
    <message>
        <source>volts</source>
        <comment>VOLTS</comment>
        <translation>Volt</translation>
    </message>
    <message>
        <source>Volts in a pane below the amps</source>
        <comment>VOLTS_NAME</comment>
        <translation>Volt in einem Feld unter den Ampere</translation>
    </message>
    <message>
        <source>V at the motor</source>
        <comment>AT_MOTOR</comment>
        <translation>V am Motor</translation>
    </message>
    <message>
        <source>Volts at the motor: what the leads drop is taken out</source>
        <comment>AT_MOTOR_NAME</comment>
        <translation>Volt am Motor: Was an den Leitungen abfällt, ist herausgerechnet</translation>
    </message>
    <message>
        <source>The leads of this run were not measured: nothing is taken out.</source>
        <comment>NO_LEADS</comment>
        <translation>Die Leitungen dieses Laufs wurden nicht gemessen: Es wird nichts herausgerechnet.</translation>
    </message>
    <message>
        <source>lay a capture over</source>
        <comment>LAY_OVER</comment>
        <translation>Aufnahme darüberlegen</translation>
    </message>
    <message>
        <source>Lay an oscilloscope’s capture over the start that is picked out</source>
        <comment>LAY_OVER_NAME</comment>
        <translation>Die Aufnahme eines Oszilloskops über den ausgewählten Anlauf legen</translation>
    </message>
    <message>
        <source>take the capture off</source>
        <comment>LAY_OFF</comment>
        <translation>Aufnahme abnehmen</translation>
    </message>
    <message>
        <source>copy picture</source>
        <comment>COPY</comment>
        <translation>Bild kopieren</translation>
    </message>
    <message>
        <source>Copy this chart as a picture. Key: Ctrl+C</source>
        <comment>COPY_NAME</comment>
        <translation>Dieses Diagramm als Bild kopieren. Taste: Strg+C</translation>
    </message>
    <message>
        <source>export</source>
        <comment>EXPORT</comment>
        <translation>Export</translation>
    </message>
    <message>
        <source>Write curves, figures and bands, or a picture, to a file</source>
        <comment>EXPORT_NAME</comment>
        <translation>Kurven, Kennwerte und Bänder oder ein Bild in eine Datei schreiben</translation>
    </message>
    <message>
        <source>The locked test by which the job on the bench is measured</source>
        <comment>CHOOSE_TEST_NAME</comment>
        <translation>Die festgelegte Prüfung, nach der der Auftrag auf der Werkbank gemessen wird</translation>
    </message>
    <message>
        <source>Choose a test …</source>
        <comment>CHOOSE_TEST</comment>
        <translation>Eine Prüfung auswählen …</translation>
    </message>
    <message>
        <source>{test}; a readback every {middle} ({low} to {high}), mean of {window}.</source>
        <comment>WHY_TEST</comment>
        <translation>{test}; eine Rückmessung alle {middle} ({low} bis {high}), Mittel über {window}.</translation>
    </message>
    <message>
        <source>Start {number} of {count} is being captured.</source>
        <comment>CAPTURING_SAY</comment>
        <translation>Anlauf {number} von {count} wird aufgenommen.</translation>
    </message>
    <message>
        <source>Hands off. The drawn curve is readback, as it comes; its figures follow when it is over.</source>
        <comment>CAPTURING_WHY</comment>
        <translation>Hände weg. Die gezeichnete Kurve ist die Rückmessung, wie sie kommt; ihre Kennwerte folgen, wenn sie zu Ende ist.</translation>
    </message>
    <message>
        <source>Looking for the supply.</source>
        <comment>BEGINNING</comment>
        <translation>Das Netzgerät wird gesucht.</translation>
    </message>
    <message>
        <source>Nothing is switched on before its output was read back as off. Hands off.</source>
        <comment>BEGINNING</comment>
        <translation>Nichts wird eingeschaltet, bevor sein Ausgang als aus rückgelesen ist. Hände weg.</translation>
    </message>
    <message>
        <source>{count} captured.</source>
        <comment>CAPTURED_SAY</comment>
        <translation>{count} aufgenommen.</translation>
    </message>
    <message>
        <source>Ended after {count}.</source>
        <comment>CUT_SHORT_SAY</comment>
        <translation>Beendet nach: {count}.</translation>
    </message>
    <message>
        <source>Every start is filed.</source>
        <comment>FILED_WHY</comment>
        <translation>Jeder Anlauf ist abgelegt.</translation>
    </message>
    <message>
        <source>Units of lot {name}</source>
        <comment>UNITS_SAY</comment>
        <translation>Prüflinge von Los {name}</translation>
    </message>
    <message>
        <source>Enter, or a double click, shows a unit’s starts.</source>
        <comment>UNITS_WHY</comment>
        <translation>Enter oder ein Doppelklick zeigt die Anläufe eines Prüflings.</translation>
    </message>
    <message>
        <source>Units of the lot; Enter shows the starts of one</source>
        <comment>UNITS_TABLE</comment>
        <translation>Prüflinge des Loses; Enter zeigt die Anläufe von einem</translation>
    </message>
    <message>
        <source>No unit is measured yet. Scan the first serial at the right, connect the unit, and press Space.</source>
        <comment>UNITS_NONE</comment>
        <translation>Noch ist kein Prüfling gemessen. Rechts die erste Seriennummer scannen, den Prüfling anschließen und die Leertaste drücken.</translation>
    </message>
    <message>
        <source>No start of this job is captured yet.</source>
        <comment>RUNS_NONE</comment>
        <translation>Von diesem Auftrag ist noch kein Anlauf aufgenommen.</translation>
    </message>
    <message>
        <source>No.</source>
        <comment>UNIT_COLUMNS</comment>
        <translation>Nr.</translation>
    </message>
    <message>
        <source>Serial</source>
        <comment>UNIT_COLUMNS</comment>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <source>Verdict</source>
        <comment>UNIT_COLUMNS</comment>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>Nearest its limit</source>
        <comment>UNIT_COLUMNS</comment>
        <translation>Am nächsten an der Grenze</translation>
    </message>
    <message>
        <source>Margin, of band</source>
        <comment>UNIT_COLUMNS</comment>
        <translation>Abstand, vom Band</translation>
    </message>
    <message>
        <source>Starts</source>
        <comment>UNIT_COLUMNS</comment>
        <translation>Anläufe</translation>
    </message>
    <message>
        <source>Measured</source>
        <comment>UNIT_COLUMNS</comment>
        <translation>Gemessen</translation>
    </message>
    <message>
        <source>Captured starts of job {number:04d}</source>
        <comment>RUNS_SAY</comment>
        <translation>Aufgenommene Anläufe von Auftrag {number:04d}</translation>
    </message>
    <message>
        <source>Enter, or a double click, shows the starts of a run.</source>
        <comment>RUNS_WHY</comment>
        <translation>Enter oder ein Doppelklick zeigt die Anläufe eines Laufs.</translation>
    </message>
    <message>
        <source>by number</source>
        <comment>BY_NUMBER</comment>
        <translation>nach Nummer</translation>
    </message>
    <message>
        <source>worst first</source>
        <comment>WORST_FIRST</comment>
        <translation>schlechteste zuerst</translation>
    </message>
    <message>
        <source>Units in the order in which they came</source>
        <comment>ORDER_NAMES</comment>
        <translation>Prüflinge in der Reihenfolge, in der sie kamen</translation>
    </message>
    <message>
        <source>The unit nearest to its limits, or farthest outside, first</source>
        <comment>ORDER_NAMES</comment>
        <translation>Der Prüfling zuerst, der seinen Grenzen am nächsten oder am weitesten außerhalb ist</translation>
    </message>
    <message>
        <source>Make limits from these</source>
        <comment>MAKE_LIMITS</comment>
        <translation>Daraus Grenzen bilden</translation>
    </message>
    <message>
        <source>Limits from all units that turned and never failed, as known good ones</source>
        <comment>MAKE_LIMITS_NAME</comment>
        <translation>Grenzen aus allen Prüflingen, die drehten und nie durchfielen, als Gutmuster</translation>
    </message>
    <message>
        <source>Known good are the {good} of {count} that turned and never failed.</source>
        <comment>LIMITS_OF</comment>
        <translation>Als gut gelten die {good} von {count}, die sich drehten und nie durchfielen.</translation>
    </message>
    <message>
        <source>Report …</source>
        <comment>LOT_REPORT</comment>
        <translation>Bericht …</translation>
    </message>
    <message>
        <source>The lot’s report as PDF: its units, their verdicts, limits and curves</source>
        <comment>LOT_REPORT_NAME</comment>
        <translation>Der Bericht des Loses als PDF: seine Prüflinge, ihre Urteile, Grenzen und Kurven</translation>
    </message>
    <message>
        <source>Who says that these are good</source>
        <comment>WHO_GOOD</comment>
        <translation>Wer sagt, dass diese gut sind</translation>
    </message>
    <message>
        <source>name</source>
        <comment>WHO_GOOD_HINT</comment>
        <translation>Name</translation>
    </message>
    <message>
        <source>Who says they are good</source>
        <comment>WHO_GOOD_LABEL</comment>
        <translation>Wer sagt, dass sie gut sind</translation>
    </message>
    <message>
        <source>Say who says that these units are good.</source>
        <comment>NEEDS_WHO_GOOD</comment>
        <translation>Geben Sie an, wer sagt, dass diese Prüflinge gut sind.</translation>
    </message>
    <message>
        <source>Limits {id} from {n} known good units judge the lot from now on: {judged} of {count} judged{due}.</source>
        <comment>LIMITS_MADE</comment>
        <translation>Ab jetzt beurteilen die Grenzen {id} aus {n} bekannt guten Prüflingen das Los: {judged} von {count} beurteilt{due}.</translation>
    </message>
    <message>
        <source>, check due: {kinds}</source>
        <comment>LIMITS_DUE</comment>
        <translation>, Prüfung fällig: {kinds}</translation>
    </message>
    <message>
        <source>No limits from these: {why}.</source>
        <comment>LIMITS_NOT</comment>
        <translation>Keine Grenzen aus diesen: {why}.</translation>
    </message>
    <message>
        <source>pass</source>
        <comment>UNIT_PASS</comment>
        <translation>gut</translation>
    </message>
    <message>
        <source>FAIL</source>
        <comment>UNIT_FAIL</comment>
        <translation>SCHLECHT</translation>
    </message>
    <message>
        <source>not judged</source>
        <comment>UNIT_OPEN</comment>
        <translation>ohne Urteil</translation>
    </message>
    <message>
        <source>not measured</source>
        <comment>UNIT_NEW</comment>
        <translation>nicht gemessen</translation>
    </message>
    <message>
        <source>{verdict}, failed before</source>
        <comment>UNIT_BEFORE</comment>
        <translation>{verdict}, früher schlecht</translation>
    </message>
    <message>
        <source>passed</source>
        <comment>STANDS</comment>
        <translation>bestand</translation>
    </message>
    <message>
        <source>failed</source>
        <comment>STANDS</comment>
        <translation>durchgefallen</translation>
    </message>
    <message>
        <source>It {verdict} in run {judged}; run {run} has no verdict.</source>
        <comment>STANDS_OF</comment>
        <translation>In Lauf {judged}: {verdict}; Lauf {run} hat kein Urteil.</translation>
    </message>
    <message>
        <source>sound</source>
        <comment>SOUND</comment>
        <translation>Ton</translation>
    </message>
    <message>
        <source>A sound when a unit is done: one for pass, two for fail</source>
        <comment>SOUND_NAME</comment>
        <translation>Ein Ton, wenn ein Prüfling fertig ist: einer für gut, zwei für schlecht</translation>
    </message>
    <message>
        <source>How starts are captured.</source>
        <comment>TESTS_SAY</comment>
        <translation>Wie Anläufe aufgenommen werden.</translation>
    </message>
    <message>
        <source>A locked test never changes, so that starts under one name and version were measured the same way. A change is another version.</source>
        <comment>TESTS_WHY</comment>
        <translation>Eine festgelegte Prüfung ändert sich nie, damit Anläufe unter einem Namen und einer Fassung gleich gemessen wurden. Eine Änderung ist eine andere Fassung.</translation>
    </message>
    <message>
        <source>Locked tests</source>
        <comment>TEST_CHOOSE</comment>
        <translation>Festgelegte Prüfungen</translation>
    </message>
    <message>
        <source>A new test</source>
        <comment>TEST_NEW</comment>
        <translation>Eine neue Prüfung</translation>
    </message>
    <message>
        <source>Name</source>
        <comment>TEST_NAME</comment>
        <translation>Name</translation>
    </message>
    <message>
        <source>cold start 3.0 V</source>
        <comment>TEST_NAME_HINT</comment>
        <translation>Kaltstart 3,0 V</translation>
    </message>
    <message>
        <source>Version</source>
        <comment>TEST_VERSION</comment>
        <translation>Fassung</translation>
    </message>
    <message>
        <source>Volts</source>
        <comment>TEST_VOLTS</comment>
        <translation>Volt</translation>
    </message>
    <message>
        <source>Current limit</source>
        <comment>TEST_AMPS</comment>
        <translation>Strombegrenzung</translation>
    </message>
    <message>
        <source>Held for</source>
        <comment>TEST_ON</comment>
        <translation>Gehalten für</translation>
    </message>
    <message>
        <source>Starts</source>
        <comment>TEST_STARTS</comment>
        <translation>Anläufe</translation>
    </message>
    <message>
        <source>as the winding needs</source>
        <comment>TEST_AMPS_HINT</comment>
        <translation>nach der Wicklung</translation>
    </message>
    <message>
        <source>Rest before each</source>
        <comment>TEST_REST</comment>
        <translation>Pause vor jedem</translation>
    </message>
    <message>
        <source>Wait until still, at most</source>
        <comment>TEST_STILL</comment>
        <translation>Auf Stillstand warten, höchstens</translation>
    </message>
    <message>
        <source>Kept before the trigger</source>
        <comment>TEST_BEFORE</comment>
        <translation>Vor dem Trigger behalten</translation>
    </message>
    <message>
        <source>Trigger</source>
        <comment>TEST_TRIGGER</comment>
        <translation>Trigger</translation>
    </message>
    <message>
        <source>Level</source>
        <comment>TEST_LEVEL</comment>
        <translation>Schwelle</translation>
    </message>
    <message>
        <source>Hysteresis</source>
        <comment>TEST_HYSTERESIS</comment>
        <translation>Hysterese</translation>
    </message>
    <message>
        <source>Wait for it, at most</source>
        <comment>TEST_ARM</comment>
        <translation>Darauf warten, höchstens</translation>
    </message>
    <message>
        <source>Interleave</source>
        <comment>TEST_INTERLEAVE</comment>
        <translation>Verschränken</translation>
    </message>
    <message>
        <source>no</source>
        <comment>INTERLEAVES</comment>
        <translation>nein</translation>
    </message>
    <message>
        <source>2 starts</source>
        <comment>INTERLEAVES</comment>
        <translation>2 Anläufe</translation>
    </message>
    <message>
        <source>3 starts</source>
        <comment>INTERLEAVES</comment>
        <translation>3 Anläufe</translation>
    </message>
    <message>
        <source>4 starts</source>
        <comment>INTERLEAVES</comment>
        <translation>4 Anläufe</translation>
    </message>
    <message>
        <source>5 starts</source>
        <comment>INTERLEAVES</comment>
        <translation>5 Anläufe</translation>
    </message>
    <message>
        <source>Repeated starts are read in turn a little later, so that together they fill in one denser curve. That takes the same start each time, which is tested from their spread.</source>
        <comment>INTERLEAVE_HINT</comment>
        <translation>Wiederholte Anläufe werden der Reihe nach ein wenig später gelesen, sodass sie zusammen eine dichtere Kurve füllen. Dazu muss es jedes Mal derselbe Anlauf sein; das wird an ihrer Streuung geprüft.</translation>
    </message>
    <message>
        <source>output on</source>
        <comment>TRIGGERS</comment>
        <translation>Ausgang an</translation>
    </message>
    <message>
        <source>amps rise through</source>
        <comment>TRIGGERS</comment>
        <translation>Ampere steigen über</translation>
    </message>
    <message>
        <source>volts rise through</source>
        <comment>TRIGGERS</comment>
        <translation>Volt steigen über</translation>
    </message>
    <message>
        <source>Who locks it</source>
        <comment>TEST_WHO</comment>
        <translation>Wer sie festlegt</translation>
    </message>
    <message>
        <source>Lock</source>
        <comment>TEST_LOCK</comment>
        <translation>Festlegen</translation>
    </message>
    <message>
        <source>New version</source>
        <comment>TEST_NEXT</comment>
        <translation>Neue Fassung</translation>
    </message>
    <message>
        <source>Locked {day} by {who}. What it says can’t be changed.</source>
        <comment>TEST_LOCKED</comment>
        <translation>Festgelegt am {day} von {who}. Was darin steht, lässt sich nicht ändern.</translation>
    </message>
    <message>
        <source>Locked {day}. What it says can’t be changed.</source>
        <comment>TEST_LOCKED_NOBODY</comment>
        <translation>Festgelegt am {day}. Was darin steht, lässt sich nicht ändern.</translation>
    </message>
    <message>
        <source>Not locked yet: nothing is measured by it.</source>
        <comment>TEST_OPEN</comment>
        <translation>Noch nicht festgelegt: Es wird nichts danach gemessen.</translation>
    </message>
    <message>
        <source>Use this test</source>
        <comment>TEST_USE</comment>
        <translation>Diese Prüfung nehmen</translation>
    </message>
    <message>
        <source>A locked test never changes. A change is another version.</source>
        <comment>TEST_IS_LOCKED</comment>
        <translation>Eine festgelegte Prüfung ändert sich nie. Eine Änderung ist eine andere Fassung.</translation>
    </message>
    <message>
        <source>Only where amps or volts rising through a level trigger.</source>
        <comment>ONLY_WITH_LEVEL</comment>
        <translation>Nur wo Ampere oder Volt auslösen, die über eine Schwelle steigen.</translation>
    </message>
    <message>
        <source>Only where the output going on triggers.</source>
        <comment>ONLY_AT_ON</comment>
        <translation>Nur wo das Einschalten des Ausgangs auslöst.</translation>
    </message>
    <message>
        <source>{name}: a whole number.</source>
        <comment>WRONG_COUNT</comment>
        <translation>{name}: eine ganze Zahl.</translation>
    </message>
    <message>
        <source>{name}: not a number above zero in {unit}.</source>
        <comment>WRONG_FIELD</comment>
        <translation>{name}: keine Zahl über null in {unit}.</translation>
    </message>
    <message>
        <source>First say who locks it: a locked test never changes.</source>
        <comment>NEEDS_WHO_LOCKS</comment>
        <translation>Sagen Sie erst, wer sie festlegt: Eine festgelegte Prüfung ändert sich nie.</translation>
    </message>
    <message>
        <source>Test {test} is locked.</source>
        <comment>LOCKED_NOW</comment>
        <translation>Prüfung {test} ist festgelegt.</translation>
    </message>
    <message>
        <source>A new lot</source>
        <comment>LOT_SAY</comment>
        <translation>Ein neues Los</translation>
    </message>
    <message>
        <source>Units of one kind, measured one after the other in the same way. Leads and zero are checked once a shift.</source>
        <comment>LOT_WHY</comment>
        <translation>Prüflinge einer Art, nacheinander auf dieselbe Weise gemessen. Leitungen und Nullpunkt werden einmal je Schicht geprüft.</translation>
    </message>
    <message>
        <source>Lot</source>
        <comment>LOT_NAME</comment>
        <translation>Los</translation>
    </message>
    <message>
        <source>What its units are</source>
        <comment>LOT_KIND</comment>
        <translation>Was seine Prüflinge sind</translation>
    </message>
    <message>
        <source>Make</source>
        <comment>LOT_MAKE</comment>
        <translation>Hersteller</translation>
    </message>
    <message>
        <source>Model</source>
        <comment>LOT_MODEL</comment>
        <translation>Modell</translation>
    </message>
    <message>
        <source>Rated volts</source>
        <comment>LOT_RATED</comment>
        <translation>Nennspannung</translation>
    </message>
    <message>
        <source>Test</source>
        <comment>LOT_TEST</comment>
        <translation>Prüfung</translation>
    </message>
    <message>
        <source>Who measures</source>
        <comment>LOT_OPERATOR</comment>
        <translation>Wer misst</translation>
    </message>
    <message>
        <source>Leads</source>
        <comment>LOT_LEADS</comment>
        <translation>Leitungen</translation>
    </message>
    <message>
        <source>Fixture</source>
        <comment>LOT_FIXTURE</comment>
        <translation>Vorrichtung</translation>
    </message>
    <message>
        <source>Ambient</source>
        <comment>LOT_AMBIENT</comment>
        <translation>Umgebung</translation>
    </message>
    <message>
        <source>Load state</source>
        <comment>LOT_LOAD</comment>
        <translation>Belastung</translation>
    </message>
    <message>
        <source>Supply address</source>
        <comment>LOT_SUPPLY</comment>
        <translation>Adresse des Netzgeräts</translation>
    </message>
    <message>
        <source>1 m, 1.5 mm²</source>
        <comment>LEADS_HINT</comment>
        <translation>1 m, 1,5 mm²</translation>
    </message>
    <message>
        <source>clamped, shaft free</source>
        <comment>FIXTURE_HINT</comment>
        <translation>eingespannt, Welle frei</translation>
    </message>
    <message>
        <source>who measures</source>
        <comment>OPERATOR_HINT</comment>
        <translation>wer misst</translation>
    </message>
    <message>
        <source>Open the lot</source>
        <comment>LOT_OPEN</comment>
        <translation>Das Los eröffnen</translation>
    </message>
    <message>
        <source>No test is locked yet: define one first.</source>
        <comment>LOT_NO_TEST</comment>
        <translation>Noch ist keine Prüfung festgelegt: Bestimmen Sie zuerst eine.</translation>
    </message>
    <message>
        <source>{name}: say what it is.</source>
        <comment>NEEDS_LOT</comment>
        <translation>{name}: Geben Sie an, was es ist.</translation>
    </message>
    <message>
        <source>Ambient: a temperature in °C.</source>
        <comment>WRONG_AMBIENT</comment>
        <translation>Umgebung: eine Temperatur in °C.</translation>
    </message>
    <message>
        <source>Limits take five known good units or more; {there} measured here, turned at each start and never failed.</source>
        <comment>TOO_FEW_GOOD</comment>
        <translation>Grenzen brauchen fünf Gutmuster oder mehr; hier gemessen, bei jedem Anlauf gedreht und nie durchgefallen: {there}.</translation>
    </message>
    <message>
        <source>none is</source>
        <comment>TOO_FEW_NONE</comment>
        <translation>keines</translation>
    </message>
    <message>
        <source>1 is</source>
        <comment>TOO_FEW_ONE</comment>
        <translation>1</translation>
    </message>
    <message>
        <source>{count} are</source>
        <comment>TOO_FEW_MANY</comment>
        <translation>{count}</translation>
    </message>
    <message>
        <source>start {number}</source>
        <comment>LIVE_NAME</comment>
        <translation>Anlauf {number}</translation>
    </message>
    <message>
        <source>{name}: {count} captured.</source>
        <comment>CAPTURED_OF</comment>
        <translation>{name}: {count} aufgenommen.</translation>
    </message>
    <message>
        <source>{name}: {said} {count} captured.</source>
        <comment>ENDED_OF</comment>
        <translation>{name}: {said} {count} aufgenommen.</translation>
    </message>
    <message>
        <source>This lot is closed: no unit comes any more.</source>
        <comment>LOT_CLOSED</comment>
        <translation>Dieses Los ist abgeschlossen: Es kommt kein Prüfling mehr dazu.</translation>
    </message>
    <message>
        <source>Unit {number}, {serial}: connect it.</source>
        <comment>CONNECT_SAY</comment>
        <translation>Prüfling {number}, {serial}: anschließen.</translation>
    </message>
    <message>
        <source>Hands off, fingers and blades clear; then press Space.</source>
        <comment>CONNECT_WHY</comment>
        <translation>Hände weg, Finger und Flügel frei; dann die Leertaste drücken.</translation>
    </message>
    <message>
        <source>Pick a start out first: a capture is laid over one.</source>
        <comment>NEEDS_PICK</comment>
        <translation>Wählen Sie zuerst einen Anlauf aus: Eine Aufnahme wird über einen gelegt.</translation>
    </message>
    <message>
        <source>Which capture to lay over the start</source>
        <comment>CAPTURE_TITLE</comment>
        <translation>Welche Aufnahme über den Anlauf gelegt wird</translation>
    </message>
    <message>
        <source>Comma-separated values (*.csv *.txt *.tsv)</source>
        <comment>CAPTURE_FILTERS</comment>
        <translation>Durch Komma getrennte Werte (*.csv *.txt *.tsv)</translation>
    </message>
    <message>
        <source>All files (*)</source>
        <comment>CAPTURE_FILTERS</comment>
        <translation>Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Which columns of {name} are what?</source>
        <comment>CAPTURE_SAY</comment>
        <translation>Welche Spalten von {name} sind was?</translation>
    </message>
    <message>
        <source>Guessed from their heads; put right what is wrong. The file itself is kept with the job as it is.</source>
        <comment>CAPTURE_WHY</comment>
        <translation>Aus den Spaltenköpfen geraten; berichtigen Sie, was falsch ist. Die Datei selbst bleibt beim Auftrag, wie sie ist.</translation>
    </message>
    <message>
        <source>Columns of the file, with their first values</source>
        <comment>CAPTURE_TABLE</comment>
        <translation>Spalten der Datei, mit ihren ersten Werten</translation>
    </message>
    <message>
        <source>No.</source>
        <comment>CAPTURE_COLUMNS</comment>
        <translation>Nr.</translation>
    </message>
    <message>
        <source>Head</source>
        <comment>CAPTURE_COLUMNS</comment>
        <translation>Kopf</translation>
    </message>
    <message>
        <source>Unit</source>
        <comment>CAPTURE_COLUMNS</comment>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>First values</source>
        <comment>CAPTURE_COLUMNS</comment>
        <translation>Erste Werte</translation>
    </message>
    <message>
        <source>Time</source>
        <comment>CAPTURE_QUANTITIES</comment>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>Volts</source>
        <comment>CAPTURE_QUANTITIES</comment>
        <translation>Volt</translation>
    </message>
    <message>
        <source>Amps</source>
        <comment>CAPTURE_QUANTITIES</comment>
        <translation>Ampere</translation>
    </message>
    <message>
        <source>Unit of {name}</source>
        <comment>CAPTURE_UNIT</comment>
        <translation>Einheit für {name}</translation>
    </message>
    <message>
        <source>as its head says</source>
        <comment>CAPTURE_UNIT_HEAD</comment>
        <translation>wie im Kopf steht</translation>
    </message>
    <message>
        <source>none</source>
        <comment>CAPTURE_NONE</comment>
        <translation>keine</translation>
    </message>
    <message>
        <source>column {number}: {name}</source>
        <comment>CAPTURE_COLUMN</comment>
        <translation>Spalte {number}: {name}</translation>
    </message>
    <message>
        <source>Seconds a line, without a column of time</source>
        <comment>CAPTURE_INTERVAL</comment>
        <translation>Sekunden je Zeile, ohne Zeitspalte</translation>
    </message>
    <message>
        <source>10 µs</source>
        <comment>CAPTURE_INTERVAL_HINT</comment>
        <translation>10 µs</translation>
    </message>
    <message>
        <source>Volts times</source>
        <comment>CAPTURE_SCALE</comment>
        <translation>Volt mal</translation>
    </message>
    <message>
        <source>Amps per volt of a probe</source>
        <comment>CAPTURE_PROBE</comment>
        <translation>Ampere je Volt eines Tastkopfs</translation>
    </message>
    <message>
        <source>10 for 100 mV/A</source>
        <comment>CAPTURE_PROBE_HINT</comment>
        <translation>10 für 100 mV/A</translation>
    </message>
    <message>
        <source>Lay it over</source>
        <comment>CAPTURE_LAY</comment>
        <translation>Darüberlegen</translation>
    </message>
    <message>
        <source>Leave it</source>
        <comment>CAPTURE_LEAVE</comment>
        <translation>So lassen</translation>
    </message>
    <message>
        <source>Choose a column of time, or say how many seconds a line is; one of the two.</source>
        <comment>CAPTURE_TIME</comment>
        <translation>Wählen Sie eine Zeitspalte, oder geben Sie an, wie viele Sekunden eine Zeile dauert; eines von beiden.</translation>
    </message>
    <message>
        <source>Choose a column of volts, of amps, or both.</source>
        <comment>CAPTURE_VALUES</comment>
        <translation>Wählen Sie eine Spalte für Volt, für Ampere oder beide.</translation>
    </message>
    <message>
        <source>Real peak {real}; the readback saw {seen}, {share} % of it.</source>
        <comment>PEAKS</comment>
        <translation>Wirkliche Spitze {real}; die Rückmessung sah {seen}, {share} % davon.</translation>
    </message>
    <message>
        <source>Each reading is the mean of {window}. {words}</source>
        <comment>PEAKS_WHY</comment>
        <translation>Jeder Messwert ist das Mittel über {window}. {words}</translation>
    </message>
    <message>
        <source>No amps were chosen: peaks can’t be compared.</source>
        <comment>PEAKS_NO_AMPS</comment>
        <translation>Es wurden keine Ampere gewählt: Spitzen lassen sich nicht vergleichen.</translation>
    </message>
    <message>
        <source>It does not cover this start.</source>
        <comment>PEAKS_NOT_SAME</comment>
        <translation>Sie deckt diesen Anlauf nicht ab.</translation>
    </message>
    <message>
        <source>{name}, every {pace}</source>
        <comment>CAPTURE_NAME</comment>
        <translation>{name}, alle {pace}</translation>
    </message>
    <message>
        <source>Where to keep the curves</source>
        <comment>EXPORT_TITLE</comment>
        <translation>Wohin mit den Kurven</translation>
    </message>
    <message>
        <source>Tables with their description (*.csv)</source>
        <comment>EXPORT_FILTERS</comment>
        <translation>Tabellen mit ihrer Beschreibung (*.csv)</translation>
    </message>
    <message>
        <source>Report of the lot (*.pdf)</source>
        <comment>EXPORT_FILTERS</comment>
        <translation>Bericht zum Los (*.pdf)</translation>
    </message>
    <message>
        <source>NumPy arrays (*.npz)</source>
        <comment>EXPORT_FILTERS</comment>
        <translation>NumPy-Felder (*.npz)</translation>
    </message>
    <message>
        <source>HDF5 (*.h5)</source>
        <comment>EXPORT_FILTERS</comment>
        <translation>HDF5 (*.h5)</translation>
    </message>
    <message>
        <source>Picture, to any size (*.svg)</source>
        <comment>EXPORT_FILTERS</comment>
        <translation>Bild, in jeder Größe (*.svg)</translation>
    </message>
    <message>
        <source>Picture (*.png)</source>
        <comment>EXPORT_FILTERS</comment>
        <translation>Bild (*.png)</translation>
    </message>
    <message>
        <source>Write a name that ends in {suffixes}</source>
        <comment>EXPORT_SUFFIX</comment>
        <translation>Schreiben Sie einen Namen, der auf {suffixes} endet</translation>
    </message>
    <message>
        <source>A report is of a lot; the job on the bench has its sheet in the history.</source>
        <comment>EXPORT_NO_LOT</comment>
        <translation>Einen Bericht gibt es zu einem Los; der Auftrag auf der Werkbank hat sein Blatt im Verlauf.</translation>
    </message>
    <message>
        <source>There is no captured start to write.</source>
        <comment>EXPORT_NOTHING</comment>
        <translation>Es gibt keinen aufgenommenen Anlauf zu schreiben.</translation>
    </message>
    <message>
        <source>Run it for hours, and see what its current does.</source>
        <comment>RUN_IN_SAY</comment>
        <translation>Lassen Sie es Stunden laufen, und sehen Sie, was sein Strom tut.</translation>
    </message>
    <message>
        <source>Falling and then flat is what a run-in is for; rising is friction or heat. Once a minute a short look shows whether it turns.</source>
        <comment>RUN_IN_WHY</comment>
        <translation>Fallend und dann flach: Dafür ist ein Einlauf da; steigend heißt Reibung oder Hitze. Einmal in der Minute zeigt ein kurzer Blick, ob es dreht.</translation>
    </message>
    <message>
        <source>Stay near it: nobody here sees smoke, smells heat or hears a bearing.</source>
        <comment>RUN_IN_STAY</comment>
        <translation>Bleiben Sie in der Nähe: Hier sieht niemand Rauch, riecht Hitze oder hört ein Lager.</translation>
    </message>
    <message>
        <source>Volts</source>
        <comment>RUN_IN_VOLTS</comment>
        <translation>Volt</translation>
    </message>
    <message>
        <source>Hours, at most</source>
        <comment>RUN_IN_HOURS</comment>
        <translation>Stunden, höchstens</translation>
    </message>
    <message>
        <source>From reading to reading</source>
        <comment>RUN_IN_PACE</comment>
        <translation>Von Messwert zu Messwert</translation>
    </message>
    <message>
        <source>Grams</source>
        <comment>RUN_IN_MASS</comment>
        <translation>Gramm</translation>
    </message>
    <message>
        <source>of the motor alone</source>
        <comment>RUN_IN_MASS_HINT</comment>
        <translation>des Motors allein</translation>
    </message>
    <message>
        <source>End once the current has stayed for 10 minutes</source>
        <comment>RUN_IN_FLAT</comment>
        <translation>Enden, sobald der Strom 10 Minuten lang gleich geblieben ist</translation>
    </message>
    <message>
        <source>A warm start at its end</source>
        <comment>RUN_IN_RESTART</comment>
        <translation>Ein warmer Anlauf am Ende</translation>
    </message>
    <message>
        <source>Run it in</source>
        <comment>RUN_IN_START</comment>
        <translation>Einlaufen lassen</translation>
    </message>
    <message>
        <source>Take a job to the bench first: a run-in belongs to one.</source>
        <comment>RUN_IN_NO_JOB</comment>
        <translation>Nehmen Sie zuerst einen Auftrag auf die Werkbank: Ein Einlauf gehört zu einem.</translation>
    </message>
    <message>
        <source>From reading to reading: 1 s at the most, above zero.</source>
        <comment>RUN_IN_WRONG_PACE</comment>
        <translation>Von Messwert zu Messwert: höchstens 1 s, über null.</translation>
    </message>
    <message>
        <source>cut off</source>
        <comment>CUT_OFF</comment>
        <translation>abgeschaltet</translation>
    </message>
    <message>
        <source>It is cold now: start it once more, since “it starts only when warm” is not repaired.</source>
        <comment>COLD_NOW</comment>
        <translation>Es ist jetzt kalt: Lassen Sie es noch einmal anlaufen, denn „läuft nur warm an“ ist nicht repariert.</translation>
    </message>
    <message>
        <source>Start it once more when it is cold, from {at} on: “it starts only when warm” is not repaired.</source>
        <comment>COLD_LATER</comment>
        <translation>Lassen Sie es noch einmal anlaufen, wenn es kalt ist, ab {at}: „läuft nur warm an“ ist nicht repariert.</translation>
    </message>
</context>
<context>
    <name>ui.help_texts</name>
    <message>
        <source>
Here a job begins: what has stopped moving, what its label says, and what the bench may do to it.

## What to fill in

- **What it is** and **rated volts** are all that is needed to begin. The rated volts stay as they are once the job is
  taken in, because every run is made with them.
- **Serial**: a thing that was here before is recognised by it, and its earlier job is offered.
- **Complaint**: the owner’s own words. They help the next one like it more than a diagnosis.
- **Volts ceiling** starts as the rated volts. Give more only where this job really may have more. **Amps ceiling**
  may stay empty: then the supply’s own range and the measured winding decide.
- **Thermal class**: as the label says, A where it says nothing. It decides how warm the winding may get.
- **Owner**, **may cost at most** and the owner’s consent: what a line of costs is held against later.

## The supply

Type its address, or press **Look for supplies**. Nothing that is found gets a message; a plain socket is never found
by looking. **Ask it** asks by questions only: nothing is set or switched.

## Later

What is typed is kept as a draft while you type. While the job is open everything but its rated volts can be put
right; **Take back the last change** (Ctrl+Z) undoes it. Each change is kept beside what was there.

## What can go wrong

- “above the 42.4 V that this program never goes beyond”: this is for low voltage only, and no setting changes that.
- A number is not taken: write it as 0.5, 0,5, 500m or 500 mA.
</source>
        <comment>INTAKE</comment>
        <translation>Hier beginnt ein Auftrag: was sich nicht mehr bewegt, was auf seinem Schild steht und was die Werkbank damit tun darf.

## Was auszufüllen ist

- **Was es ist** und die **Nennspannung** genügen zum Beginnen. Die Nennspannung bleibt, sobald der Auftrag angenommen ist, denn jeder Lauf wird mit ihr gemacht.
- **Seriennummer**: Was schon hier war, wird daran erkannt, und sein früherer Auftrag wird angeboten.
- **Beanstandung**: die eigenen Worte des Eigentümers. Sie helfen beim nächsten dieser Art mehr als eine Diagnose.
- **Grenzwert Volt** beginnt mit der Nennspannung. Geben Sie nur mehr, wo dieser Auftrag wirklich mehr haben darf. **Grenzwert Ampere** darf leer bleiben: Dann entscheiden der eigene Bereich des Netzgeräts und die gemessene Wicklung.
- **Wärmeklasse**: wie auf dem Schild, A, wenn dort nichts steht. Sie entscheidet, wie warm die Wicklung werden darf.
- **Eigentümer**, **darf höchstens kosten** und die Zustimmung des Eigentümers: woran eine Zeile Kosten später gemessen wird.

## Das Netzgerät

Geben Sie seine Adresse ein, oder drücken Sie **Netzgeräte suchen**. Nichts, was gefunden wird, bekommt eine Nachricht; ein einfacher Socket wird beim Suchen nie gefunden. **Fragen** stellt nur Fragen: Nichts wird eingestellt oder geschaltet.

## Später

Was getippt wird, bleibt als Entwurf, während Sie tippen. Solange der Auftrag offen ist, lässt sich alles außer der Nennspannung berichtigen; **Letzte Änderung zurücknehmen** (Strg+Z) macht es rückgängig. Jede Änderung steht neben dem, was vorher dastand.

## Was schiefgehen kann

- „über 42.4 V; darüber geht dieses Programm nie“: Dies ist nur für Kleinspannung, und keine Einstellung ändert das.
- Eine Zahl wird nicht angenommen: Schreiben Sie 0.5, 0,5, 500m oder 500 mA.</translation>
    </message>
    <message>
        <source>
Before a lead is clipped on, six lines say what must be so. Press **done** where it is so, or **does not apply**; none
is left open. What was said is kept with the job and is not taken back.

- **Unplugged from the mains.** What was mains-powered goes back together under local rules, by a licensed person.
- **Cell out of circuit, its tabs insulated.** A swollen cell is not worked on here at all.
- **Capacitors discharged through a resistor, and measured.** Never with a screwdriver.
- **Liquid drained, and dry.** A pump that was wet may run dry for seconds only; its seal needs the liquid.
- **Motor leads free of the driver board.** Lift at least one: a board in the way is damaged, or answers in the
  motor’s place.
- **Fingers, hair and blades clear; eye protection on.** A stuck motor that comes free starts at once.

## Not with this

Mains motors, medical devices, life-safety gear, gas appliances, pressure vessels, swollen cells. If it is one of
these, stop here and close the job.
</source>
        <comment>MAKE_SAFE</comment>
        <translation>Bevor eine Leitung angeklemmt wird, sagen sechs Zeilen, was so sein muss. Drücken Sie **erledigt**, wo es so ist, oder **trifft nicht zu**; keine bleibt offen. Was gesagt wurde, bleibt beim Auftrag und wird nicht zurückgenommen.

- **Vom Stromnetz getrennt.** Was am Stromnetz hing, wird nach örtlichen Vorschriften von einer Fachkraft wieder zusammengesetzt.
- **Zelle aus dem Stromkreis, ihre Fahnen isoliert.** An einer aufgeblähten Zelle wird hier gar nicht gearbeitet.
- **Kondensatoren über einen Widerstand entladen und nachgemessen.** Nie mit einem Schraubendreher.
- **Flüssigkeit abgelassen, alles trocken.** Eine Pumpe, die nass war, darf nur Sekunden trocken laufen; ihre Dichtung braucht die Flüssigkeit.
- **Motorleitungen frei von der Treiberplatine.** Lösen Sie mindestens eine: Eine Platine im Weg wird beschädigt, oder sie antwortet an Stelle des Motors.
- **Finger, Haare und Flügel frei; Augenschutz auf.** Ein festgefahrener Motor, der frei kommt, läuft sofort an.

## Hiermit nicht

Motoren für Netzspannung, medizinische Geräte, Rettungsmittel, Gasgeräte, Druckbehälter, aufgeblähte Zellen. Ist es eines davon, hören Sie hier auf und schließen Sie den Auftrag ab.</translation>
    </message>
    <message>
        <source>
The probe finds out whether there is a winding, what its resistance is, and whether a diode or electronics are in the
way. It takes a few small currents, half a joule at the most.

## What to do

- Clip the motor’s own two leads on, and press **Probe**.
- You may be asked to turn the shaft a little by hand: the contact of the brushes differs with the angle, and the
  lowest resistance counts.
- With the leads swapped, when you are asked, a diode across the motor is found.
- **Measure the leads** first where the winding has only a few ohms: join the two clips with no motor between them. It
  takes at most 1 A at 1 V, for a second, and is taken out of what is found later.

## What it may say

- **A winding**, with its resistance and an interval. Next is Free.
- **Open**: no current flows. Tap the housing or look at the brushes, then probe again.
- **Shorted**: all current and hardly any volts. Kicks would only heat it.
- **A diode is in the way**: lift one end of it. Never swap the leads of a motor with a diode across it under power.
- **Electronics**: reach the motor’s own leads behind the board.
- **Undecided**: turn the shaft a little and probe again. A free motor may turn already at the probe’s current; then
  its resistance is unknown, not wrong.
</source>
        <comment>PROBE</comment>
        <translation>Die Messung findet heraus, ob eine Wicklung da ist, welchen Widerstand sie hat und ob eine Diode oder Elektronik im Weg ist. Sie braucht einige kleine Ströme, höchstens ein halbes Joule.

## Was zu tun ist

- Klemmen Sie die eigenen zwei Leitungen des Motors an, und drücken Sie **Messen**.
- Vielleicht werden Sie gebeten, die Welle ein wenig von Hand zu drehen: Der Kontakt der Bürsten ändert sich mit der Stellung, und der niedrigste Widerstand zählt.
- Mit getauschten Leitungen, wenn danach gefragt wird, wird eine Diode parallel zum Motor gefunden.
- **Leitungen messen** Sie zuerst, wenn die Wicklung nur wenige Ohm hat: Klemmen Sie die beiden Klemmen zusammen, ohne Motor dazwischen. Es braucht höchstens 1 A bei 1 V, eine Sekunde lang, und wird aus dem herausgerechnet, was später gefunden wird.

## Was sie sagen kann

- **Eine Wicklung**, mit ihrem Widerstand und einem Bereich. Als Nächstes kommt Lösen.
- **Unterbrochen**: Es fließt kein Strom. Klopfen Sie ans Gehäuse oder sehen Sie nach den Bürsten, dann messen Sie erneut.
- **Kurzgeschlossen**: voller Strom und kaum Volt. Anstöße würden es nur erhitzen.
- **Eine Diode ist im Weg**: Löten Sie ein Ende davon ab. Tauschen Sie nie unter Strom die Leitungen eines Motors mit einer Diode darüber.
- **Elektronik**: Gehen Sie an die eigenen Leitungen des Motors hinter der Platine.
- **Unentschieden**: Drehen Sie die Welle ein wenig und messen Sie erneut. Ein freier Motor kann schon mit dem Strom der Messung drehen; dann ist sein Widerstand unbekannt, nicht falsch.</translation>
    </message>
    <message>
        <source>
Here a stuck motor gets short kicks under hard ceilings, rung by rung, with hand work between. Electrical kicks alone
seldom win: kick, soak, warm, kick, by hand, kick is what works.

## How it goes

1. The winding is measured with small currents, in every run again, also with the hand on the shaft.
2. A gentle start at half the rated volts. What turns here was not stuck.
3. Kicks at 60, 80 and 100 % of the rated volts, 0.2 s each, with rests that keep the winding cool. More than the
   rated volts only where this job was given more.
4. After every kick a look: the current is dropped to almost nothing. Only a turning rotor makes a voltage of its own
   then; a hot winding, a bad contact or an opened protector does not.

**Freed** means: seen to turn twice, held, and started again from rest. Where volts and amps can’t tell, it says
**undetermined**, and why.

## What to press

- **Start** begins the ladder. It stops by itself at a ceiling, when it turns, or when it needs your hands.
- **It moved (M)**: you felt or saw it move, even a little. The ladder stays at that rung for up to two more rounds. A
  small movement that stops again is progress, and not yet freed.
- **Done by hand**: turned, tapped, soaked, warmed, oiled. It lands in the same record and on the chart.
- **Hand on the shaft**: while you hold the space bar, or a foot switch that types it, at most a quarter of the stall
  current flows, and you turn the shaft with the other hand. Letting go is off; so is another window in front.
- **Same as last time**, where it is offered, takes over the ceilings and the ladder that freed one like it.

## On the chart

Volts over amps on one time axis, both as the supply read them back. Pale bands are steps with their names, thick grey
lines are ceilings, small marks are events. The wheel goes closer or wider; a drag goes along; a double click shows
the whole again.

## Mind

- Keep fingers clear of blades and gears: it may start at any kick.
- Limited by current, more volts change nothing. A limit that is too low looks like a seizure.
- Plastic gears strip: uncouple the motor, or lower the amps ceiling.
- A winding that heats very fast (over 60 K/s at stall, extremely thin wire) is not covered by the bound on its
  temperature: lower the ceiling yourself.
</source>
        <comment>FREE</comment>
        <translation>Hier bekommt ein festgefahrener Motor kurze Anstöße unter harten Grenzwerten, Stufe für Stufe, dazwischen Handarbeit. Elektrische Anstöße allein gewinnen selten: Anstoßen, einweichen, wärmen, anstoßen, von Hand, anstoßen, das hilft.

## Wie es geht

1. Die Wicklung wird mit kleinen Strömen gemessen, in jedem Lauf aufs Neue, auch mit der Hand an der Welle.
2. Ein sanfter Anlauf mit der halben Nennspannung. Was hier dreht, saß nicht fest.
3. Anstöße mit 60, 80 und 100 % der Nennspannung, je 0,2 s, mit Pausen, die die Wicklung kühl halten. Mehr als die Nennspannung nur, wo dieser Auftrag mehr bekommen hat.
4. Nach jedem Anstoß ein Blick: Der Strom wird auf fast nichts gesenkt. Nur ein drehender Läufer macht dann eine eigene Spannung; eine heiße Wicklung, ein schlechter Kontakt oder ein ausgelöster Schutz nicht.

**Gelöst** heißt: zweimal drehend gesehen, gehalten und aus dem Stillstand wieder angelaufen. Wo Volt und Ampere es nicht sagen können, steht **unentschieden** da, und warum.

## Was zu drücken ist

- **Beginnen** beginnt die Leiter. Sie hört von selbst auf: an einem Grenzwert, wenn es dreht, oder wenn sie Ihre Hände braucht.
- **Es hat sich bewegt (M)**: Sie haben eine Bewegung gespürt oder gesehen, und sei sie klein. Die Leiter bleibt bis zu zwei weitere Runden auf dieser Stufe. Eine kleine Bewegung, die wieder aufhört, ist Fortschritt und noch nicht gelöst.
- **Von Hand getan**: gedreht, geklopft, eingeweicht, erwärmt, geölt. Es steht im selben Protokoll und im Diagramm.
- **Hand an der Welle**: Solange Sie die Leertaste halten, oder einen Fußschalter, der sie tippt, fließt höchstens ein Viertel des Blockierstroms, und Sie drehen die Welle mit der anderen Hand. Loslassen ist aus; ein anderes Fenster davor auch.
- **Wie beim letzten Mal**, wo es angeboten wird, übernimmt die Grenzwerte und die Leiter, die einen dieser Art gelöst haben.

## Im Diagramm

Volt über Ampere auf einer Zeitachse, beides, wie das Netzgerät es zurückgelesen hat. Blasse Bänder sind Schritte mit ihrem Namen, dicke graue Linien sind Grenzwerte, kleine Zeichen sind Ereignisse. Das Rad geht näher oder weiter; Ziehen verschiebt; ein Doppelklick zeigt wieder das Ganze.

## Zu beachten

- Finger weg von Flügeln und Zahnrädern: Es kann bei jedem Anstoß anlaufen.
- Durch Strom begrenzt ändern mehr Volt nichts. Eine zu niedrige Grenze sieht aus wie ein festgefahrener Motor.
- Zahnräder aus Kunststoff brechen aus: Kuppeln Sie den Motor aus, oder senken Sie den Grenzwert Ampere.
- Eine Wicklung, die sehr schnell heiß wird (über 60 K/s beim Blockieren, äußerst dünner Draht), ist von der Schranke für ihre Temperatur nicht abgedeckt: Senken Sie den Grenzwert selbst.</translation>
    </message>
    <message>
        <source>
One start is luck; several are a repair. First the winding is measured with small currents. Then the motor starts from
rest again and again, and once more, held until its current is steady. Each start is at the rated volts, or at fewer:
the look whether it turns needs room above them, so a start is at no more than the lowest volts ceiling divided by 1.4.
The page says the volts, and which ceiling it is, before the press.

- Choose how often: 3, 5 or 10 starts. Then **Start the proof**.
- The last start gives the steady current and the run-up, each with an interval, or says why they can’t be told.
- They are held against the proof before, or against known good ones of the same model. The same volts, leads, warmth
  and load, else they can’t be compared, and that is said.

“It starts only when warm” is not repaired. Start it once more when it is cold, later or the next day. A run-in of
hours is in the curves room.

## Mind

- What was freed starts at once: it must be held, its blades clear.
- A pump that needs its liquid may run dry for seconds only.
</source>
        <comment>PROVE</comment>
        <translation>Ein Anlauf ist Glück; mehrere sind eine Reparatur. Zuerst wird die Wicklung mit kleinen Strömen gemessen. Dann läuft der Motor wieder und wieder aus dem Stillstand an, und noch einmal, gehalten, bis sein Strom stetig ist. Jeder Anlauf ist mit der Nennspannung oder mit weniger: Der Blick, ob er dreht, braucht Raum darüber, und so ist ein Anlauf mit höchstens dem niedrigsten Volt-Grenzwert geteilt durch 1,4. Die Seite sagt die Volt, und welcher Grenzwert es ist, vor dem Druck auf den Knopf.

- Wählen Sie, wie oft: 3, 5 oder 10 Anläufe. Dann **Nachweis beginnen**.
- Der letzte Anlauf gibt den stetigen Strom und den Hochlauf, je mit einem Bereich, oder sagt, warum sie nicht zu nennen sind.
- Sie werden gegen den Nachweis davor gehalten, oder gegen Gutmuster desselben Modells. Dieselben Volt, Leitungen, Wärme und Last, sonst sind sie nicht vergleichbar, und das wird gesagt.

„Läuft nur warm an“ ist nicht repariert. Lassen Sie es noch einmal anlaufen, wenn es kalt ist, später oder am nächsten Tag. Ein Einlauf über Stunden ist im Raum der Kurven.

## Zu beachten

- Was gelöst ist, läuft sofort an: Es muss festgehalten sein, seine Flügel frei.
- Eine Pumpe, die ihre Flüssigkeit braucht, darf nur Sekunden trocken laufen.</translation>
    </message>
    <message>
        <source>
What was wrong, what was done, how long it will last. An honest word here is what the next one like it starts from.

- **Cause** and **it came to** are needed; “not found” is a cause too.
- **What did it**: kicks, by hand, cleaned, a part. The history counts by it.
- **Prognosis**: what you would tell its owner.
- The first run, the one that freed it and the last stand side by side above the form.

A job may be closed whatever came of it, also not repaired. A closed job is only corrected, in the history, by
somebody and for a reason; what was there stays beside it. Every run stays as it was.
</source>
        <comment>CLOSE</comment>
        <translation>Was los war, was getan wurde, wie lange es halten wird. Was hier ehrlich steht, hilft beim nächsten dieser Art.

- **Ursache** und **Ergebnis** sind nötig; „nicht gefunden“ ist auch eine Ursache.
- **Was geholfen hat**: Anstöße, von Hand, gereinigt, ein Teil. Der Verlauf zählt danach.
- **Aussicht**: was Sie dem Eigentümer sagen würden.
- Der erste Lauf, der lösende und der letzte stehen nebeneinander über dem Formular.

Ein Auftrag darf abgeschlossen werden, was auch herauskam, auch nicht repariert. Ein abgeschlossener Auftrag wird nur noch berichtigt, im Verlauf, von jemandem und aus einem Grund; was dastand, bleibt daneben. Jeder Lauf bleibt, wie er war.</translation>
    </message>
    <message>
        <source>
Everything that happens around the runs, while you work: what happened, newest first, beside the forms; where it is
narrow it is a page of its own, **Timeline**.

- **Who** works: said once, kept with every line.
- **Done by hand** and notes: into the running record while a run is on, else into the job’s own.
- **Findings**: parts looked at on a board, their place, marking and value. A marking is read for you where it can be;
  **Calculate** does divider, LED, gate and charger. A finding is never edited: a correction stands in place of the
  earlier one.
- **Costs**: minutes, parts from stock, anything else, against what the owner allows. A line that would pass that is
  not kept until you say who agreed.
- **Waiting**: for approval, for a part, for the owner; or work goes on.
- **Files**: photos and other files, dropped, pasted (Ctrl+V) or chosen. The original is kept byte for byte beside the
  ledger. The place where a photo was taken is not passed on when a sheet leaves the shop.

What is half typed is kept as a draft. While the output may be on no file is chosen from a dialog here; drop it or
paste it.
</source>
        <comment>RECORD</comment>
        <translation>Alles, was um die Läufe herum geschieht, während Sie arbeiten: was geschah, das Neueste zuerst, neben den Formularen; wo es schmal ist, als eigene Seite, **Zeitleiste**.

- **Wer** arbeitet: einmal gesagt, bei jeder Zeile vermerkt.
- **Von Hand getan** und Notizen: ins laufende Protokoll, solange ein Lauf an ist, sonst in das des Auftrags.
- **Befunde**: angesehene Teile auf einer Platine, ihr Ort, Aufdruck und Wert. Ein Aufdruck wird für Sie gelesen, wo das geht; **Rechnen** kann Spannungsteiler, LED, Gate und Lader. Ein Befund wird nie geändert: Eine Berichtigung steht anstelle des früheren.
- **Kosten**: Minuten, Teile aus dem Lager, alles andere, gegen das, was der Eigentümer erlaubt. Eine Zeile, die darüber ginge, wird erst behalten, wenn Sie sagen, wer zugestimmt hat.
- **Warten**: auf Zustimmung, auf ein Teil, auf den Eigentümer; oder die Arbeit geht weiter.
- **Dateien**: Fotos und andere Dateien, abgelegt, eingefügt (Strg+V) oder ausgewählt. Das Original bleibt Byte für Byte neben dem Auftragsbuch. Wo ein Foto aufgenommen wurde, geht nicht mit hinaus, wenn ein Blatt die Werkstatt verlässt.

Halb Getipptes bleibt als Entwurf. Solange der Ausgang an sein kann, wird hier keine Datei in einem Dialog ausgewählt; legen Sie sie ab, oder fügen Sie sie ein.</translation>
    </message>
    <message>
        <source>
This room captures how motors start, from rest, as often as a locked test says, and lays the starts over one another.
The same ceilings hold as everywhere, and each start is looked at whether it turned.

## Three steps

1. **A test**: volts, current limit, time, number of starts, rest, and what triggers. Locked under a name and a
   version, it never changes.
2. **A lot**: units of one kind. Leads and zero are checked each shift of eight hours; without that nothing is judged.
3. **A unit**: scan or type its serial, press Enter, connect it, press Space. Pass or fail is seen and heard; then the
   next.

The job on the bench can be measured as well, without a lot.

## Limits

They come from five known good units or more, with how many of such units they hold and with how much confidence. With
five of them they are wide: about every fifth motor with twice the friction still passes. Where the spread of one
motor swamps that between motors, that is said: then the test can’t tell units apart.

**Report …** beside the units writes the lot as PDF: its units, verdicts, limits and curves.

## Readback

What is drawn is readback: the mean over what the supply averages, some 20 ms, read every so often. The real inrush is
shorter and can’t be seen so. Lay an oscilloscope’s capture over it where you have one.

## Keys on the chart

Plus and minus: closer, wider. Left and right: along. Home: the whole again. Up and down: another start. C: cursors,
moved with left and right; X the other one. Ctrl+C: copies the picture.

## Run-in

Hours at a slow pace with a short look every minute. It ends where the current stays for ten minutes, or rises.
Somebody stays near: nobody here sees smoke, smells heat or hears a bearing.
</source>
        <comment>CURVES</comment>
        <translation>Dieser Raum nimmt auf, wie Motoren aus dem Stillstand anlaufen, so oft eine festgelegte Prüfung es sagt, und legt die Anläufe übereinander. Dieselben Grenzwerte gelten wie überall, und bei jedem Anlauf wird nachgesehen, ob es drehte.

## Drei Schritte

1. **Eine Prüfung**: Volt, Strombegrenzung, Zeit, Zahl der Anläufe, Pause und was auslöst. Unter einem Namen und einer Fassung festgelegt, ändert sie sich nie.
2. **Ein Los**: Prüflinge einer Art. Leitungen und Nullpunkt werden in jeder Schicht von acht Stunden geprüft; ohne das wird nichts beurteilt.
3. **Ein Prüfling**: Scannen oder tippen Sie seine Seriennummer, drücken Sie Enter, schließen Sie ihn an, drücken Sie die Leertaste. Gut oder schlecht ist zu sehen und zu hören; dann der nächste.

Auch der Auftrag auf der Werkbank lässt sich messen, ohne Los.

## Grenzen

Sie kommen aus fünf Gutmustern oder mehr, mit der Angabe, wie viele solcher Prüflinge sie halten und wie sicher das ist. Aus fünf sind sie weit: Etwa jeder fünfte Motor mit doppelter Reibung besteht noch. Wo die Streuung eines Motors die zwischen den Motoren überdeckt, wird das gesagt: Dann kann die Prüfung Prüflinge nicht unterscheiden.

**Bericht …** neben den Prüflingen schreibt das Los als PDF: seine Prüflinge, Urteile, Grenzen und Kurven.

## Rückmessung

Gezeichnet ist die Rückmessung: das Mittel über das, was das Netzgerät mittelt, etwa 20 ms, alle paar Augenblicke gelesen. Der wirkliche Einschaltstrom ist kürzer und so nicht zu sehen. Legen Sie die Aufnahme eines Oszilloskops darüber, wenn Sie eine haben.

## Tasten im Diagramm

Plus und minus: näher, weiter. Links und rechts: verschieben. Pos1: wieder das Ganze. Auf und ab: ein anderer Anlauf. C: Cursor, mit links und rechts bewegt; X der andere. Strg+C: kopiert das Bild.

## Einlauf

Stunden in langsamem Takt mit einem kurzen Blick in jeder Minute. Er endet, wo der Strom zehn Minuten lang gleich bleibt oder steigt. Jemand bleibt in der Nähe: Hier sieht niemand Rauch, riecht Hitze oder hört ein Lager.</translation>
    </message>
    <message>
        <source>
Every job that was ever kept. This room can switch nothing on.

- **The line at the top** searches everything that was said of a job: serial, owner, complaint, cause, parts, notes,
  names of files. Every word must be somewhere in the job, from its beginning; fewer or shorter words find more.
  Ctrl+F comes here from anywhere.
- **The choices below it** narrow it down; a job must fit all of them.
- **A picked job** shows its record and its runs as they were. Another run can be laid under one, dashed, to compare.
- **Take to the bench** goes on with an open job where it was left.
- **Correct**: a closed job or a run is corrected beside what it said, by somebody and for a reason.
- **Paper**: the job’s sheet as PDF or HTML, or its tag. Ctrl+P shows the sheet first. **Export**: a trace or the list
  of jobs as CSV.

## What they came to

Counts with intervals, as “7 of 9 (45 to 94 %)”: with few jobs the truth may be anywhere between. A job that is still
out counts as still out, not as a success. An underlined number opens the jobs behind it.

## Backups

They make themselves: on the first start of a day and before a change of the ledger’s form. **Back up now** makes
the day’s anew. Each is checked; 7 days, 4 weeks and 12 months are kept, beside the ledger.

No file is written and nothing is counted while an output may be on: it takes a moment that a run may need.
</source>
        <comment>HISTORY</comment>
        <translation>Jeder Auftrag, der je behalten wurde. Dieser Raum kann nichts einschalten.

- **Die Zeile oben** durchsucht alles, was zu einem Auftrag gesagt wurde: Seriennummer, Eigentümer, Beanstandung, Ursache, Teile, Notizen, Namen von Dateien. Jedes Wort muss von seinem Anfang an irgendwo im Auftrag stehen; weniger oder kürzere Wörter finden mehr. Strg+F führt von überall hierher.
- **Die Auswahl darunter** engt es ein; ein Auftrag muss zu allem passen.
- **Ein ausgewählter Auftrag** zeigt sein Protokoll und seine Läufe, wie sie waren. Ein anderer Lauf lässt sich zum Vergleich gestrichelt darunterlegen.
- **Auf die Werkbank** macht mit einem offenen Auftrag weiter, wo er verlassen wurde.
- **Berichtigen**: Ein abgeschlossener Auftrag oder ein Lauf wird neben dem berichtigt, was dastand, von jemandem und aus einem Grund.
- **Papier**: das Blatt des Auftrags als PDF oder HTML, oder sein Etikett. Strg+P zeigt das Blatt zuerst. **Export**: eine Aufzeichnung oder die Liste der Aufträge als CSV.

## Was dabei herauskam

Anzahlen mit Grenzen, wie „7 von 9 (45 bis 94 %)“: Bei wenigen Aufträgen kann die Wahrheit irgendwo dazwischen liegen. Ein Auftrag, der noch draußen ist, zählt als noch draußen, nicht als Erfolg. Eine unterstrichene Zahl öffnet die Aufträge dahinter.

## Sicherungen

Sie machen sich selbst: beim ersten Start eines Tages und bevor sich die Form des Auftragsbuchs ändert. **Jetzt sichern** macht die des Tages neu. Jede wird geprüft; 7 Tage, 4 Wochen und 12 Monate bleiben neben dem Auftragsbuch.

Solange ein Ausgang an sein kann, wird keine Datei geschrieben und nichts gezählt: Das dauert einen Augenblick, den ein Lauf brauchen kann.</translation>
    </message>
    <message>
        <source>
How this window looks and sounds. Everything applies at once, but size and language, which wait for the next start.
**Take back the last change** (Ctrl+Z) undoes one press.

- **Taught keys**: press **Teach**, then the key; a foot switch is a key as well. Keys that type, or have a meaning of
  their own here, are refused. Esc and Pause are Output off always.
- **Ceilings of the owner** are shown here only. They are in the owner’s file, which this program reads at every run
  and never writes; they can be raised only there. A file that can’t be understood refuses every run: a doubtful
  ceiling is none.
- **Where things are**: the ledger, its backups, photos and originals, logs. All of it is on this computer.
- **For whoever helps**: one file about this program and what it runs on, with nothing of any job. Look into it before
  you give it away.

Nothing in this room can switch anything on or raise a ceiling.
</source>
        <comment>SETTINGS</comment>
        <translation>Wie dieses Fenster aussieht und klingt. Alles gilt sofort, außer Größe und Sprache, die bis zum nächsten Start warten. **Letzte Änderung zurücknehmen** (Strg+Z) macht einen Druck rückgängig.

- **Angelernte Tasten**: Drücken Sie **Anlernen**, dann die Taste; ein Fußschalter ist auch eine Taste. Tasten, die schreiben oder hier eine eigene Bedeutung haben, werden abgelehnt. Esc und Pause sind immer „Ausgang aus“.
- **Grenzwerte des Inhabers** sind hier nur zu sehen. Sie stehen in der Datei des Inhabers, die dieses Programm bei jedem Lauf liest und nie schreibt; nur dort lassen sie sich erhöhen. Eine Datei, die nicht zu verstehen ist, lässt jeden Lauf ablehnen: Ein zweifelhafter Grenzwert ist keiner.
- **Wo die Dinge liegen**: das Auftragsbuch, seine Sicherungen, Fotos und Originale, Protokolldateien. Alles liegt auf diesem Rechner.
- **Für den, der hilft**: eine Datei über dieses Programm und worauf es läuft, mit nichts aus irgendeinem Auftrag. Sehen Sie hinein, bevor Sie sie weitergeben.

Nichts in diesem Raum kann etwas einschalten oder einen Grenzwert erhöhen.</translation>
    </message>
    <message>
        <source>
## “Output off” is not an emergency stop

It is a command over a cable. In danger use what always works: **the supply’s own output key, the lead, or the mains
switch**. Know where they are before you begin.

## What is known about off

- **commanded**: it was sent.
- **confirmed by read-back**: the supply said that it is off, at the time that is shown.
- **NOT CONFIRMED: switch the supply off by hand.** That stays, also when the program is closed and started again,
  until a person says that they switched it off.

## What watches

A second process holds the supply and switches off when this window is gone, frozen or silent for half a second. A
third waits to switch off when that one dies. **If the whole computer dies, or all of them at once, the supply stays
as it is**: for that its own over-voltage and over-current limits are set before every run. A supply without them has
one net less, and the run says so.

## Sleep

During a run the computer does not go to sleep by itself. Under Linux with a login manager the output is switched off
before any other sleep, also when the lid is closed. **Elsewhere nothing does that**: leave the lid open, and don’t send
the computer to sleep. Where a system offers none of this, switch its sleep off while you work at the bench. A run that
was slept through ends only when the computer is awake again.

## Who must not do this

- Nobody works on mains motors, medical devices, life-safety gear, gas appliances, pressure vessels or swollen cells
  with this.
- What was mains-powered is put back together by a licensed person, under local rules.
- Nobody works here who does not know where the supply’s output key and the mains switch are.

Local rules and licensed practice come before anything that this program says.

## What holds

- Low voltage only: above 42.4 V DC the program refuses.
- The lowest ceiling holds: the program’s own, the owner’s, the supply’s range, the motor’s thermal class, the job’s,
  the step’s. What is above one is refused, never cut down to fit.
- An unlock is for one job and 12 hours, by name and reason, up to what the owner’s file allows, and stays in the
  record.
- The winding’s temperature is an upper bound for motors that heat by no more than 60 K/s at stall. Thinner wire is
  not covered: lower the ceiling yourself.
- Fingers, hair and blades clear; eye protection on; liquids drained; cells out of circuit; capacitors discharged.
</source>
        <comment>SAFETY</comment>
        <translation>## „Ausgang aus“ ist kein Not-Halt

Es ist ein Befehl über ein Kabel. Benutzen Sie bei Gefahr, was immer wirkt: **die eigene Ausgangstaste des Netzgeräts, die Leitung oder den Netzschalter**. Wissen Sie, wo sie sind, bevor Sie beginnen.

## Was über „aus“ bekannt ist

- **befohlen**: Es wurde gesendet.
- **durch Rücklesen bestätigt**: Das Netzgerät sagte, dass es aus ist, zu der Zeit, die dasteht.
- **NICHT BESTÄTIGT: Netzgerät von Hand ausschalten.** Das bleibt stehen, auch wenn das Programm geschlossen und neu gestartet wird, bis jemand sagt, dass er es von Hand ausgeschaltet hat.

## Was wacht

Ein zweiter Prozess hält das Netzgerät und schaltet ab, wenn dieses Fenster weg, eingefroren oder eine halbe Sekunde lang still ist. Ein dritter wartet darauf abzuschalten, wenn jener stirbt. **Stirbt der ganze Rechner, oder alle auf einmal, bleibt das Netzgerät, wie es ist**: Dafür werden vor jedem Lauf seine eigenen Grenzen für Überspannung und Überstrom gesetzt. Ein Netzgerät ohne sie hat ein Netz weniger, und der Lauf sagt es.

## Schlafen

Während eines Laufs geht der Rechner nicht von selbst schlafen. Unter Linux mit einem Login-Manager wird der Ausgang vor jedem anderen Schlafen ausgeschaltet, auch wenn der Deckel zugeht. **Anderswo tut das nichts**: Lassen Sie den Deckel offen, und schicken Sie den Rechner nicht schlafen. Wo ein System nichts davon bietet, schalten Sie sein Schlafen aus, solange Sie an der Werkbank arbeiten. Ein verschlafener Lauf endet erst, wenn der Rechner wieder wach ist.

## Wer das nicht tun darf

- Niemand arbeitet hiermit an Motoren für Netzspannung, medizinischen Geräten, Rettungsmitteln, Gasgeräten, Druckbehältern oder aufgeblähten Zellen.
- Was am Stromnetz hing, wird von einer Fachkraft nach örtlichen Vorschriften wieder zusammengesetzt.
- Hier arbeitet niemand, der nicht weiß, wo die Ausgangstaste des Netzgeräts und der Netzschalter sind.

Örtliche Vorschriften und die Arbeit von Fachkräften gehen allem vor, was dieses Programm sagt.

## Was gilt

- Nur Kleinspannung: Über 42.4 V Gleichspannung lehnt das Programm ab.
- Der niedrigste Grenzwert gilt: der des Programms, des Inhabers, des Bereichs des Netzgeräts, der Wärmeklasse des Motors, des Auftrags, des Schritts. Was über einem liegt, wird abgelehnt, nie passend gekürzt.
- Eine Freigabe gilt für einen Auftrag und 12 Stunden, mit Namen und Grund, bis zu dem, was die Datei des Inhabers erlaubt, und bleibt im Protokoll.
- Die Temperatur der Wicklung ist eine obere Schranke für Motoren, die beim Blockieren um höchstens 60 K/s wärmer werden. Dünnerer Draht ist nicht abgedeckt: Senken Sie den Grenzwert selbst.
- Finger, Haare und Flügel frei; Augenschutz auf; Flüssigkeiten abgelassen; Zellen aus dem Stromkreis; Kondensatoren entladen.</translation>
    </message>
    <message>
        <source>
At the right, in every room: volts, amps, what it is doing, how much of each ceiling is used, and Output off.

- **TURNING, LOCKED, CREEPING, NOT KNOWN**: what volts and amps say of the motor. **NOT DRIVEN**: no current is driven
  through it; its shaft may still coast.
- **CV**: the voltage is held. **CC**: the current limit is held; more volts then change nothing.
- **Ceilings used**: each bar names the layer that sets the ceiling.

## Which supplies

Any that answers to SCPI commands and reads back its setpoints and its output. It is asked once what it is, by
questions only; what it is without is said before anything is switched on. Without a read-back it is refused.

## Its address

- A plain socket: TCPIP::192.168.0.5::5025::SOCKET. The port is in the supply’s manual; looking never finds it.
- VXI-11 and HiSLIP: TCPIP::192.168.0.5::INSTR, TCPIP::192.168.0.5::hislip0::INSTR.
- Serial: ASRL/dev/ttyUSB0,115200::INSTR or ASRL3,115200::INSTR; 9600 without a number.
- USB: USB0::…::INSTR. On Linux it wants a rule for udev; “benchlog supplies --udev-rule” prints one.

## What can go wrong

- **The supply was lost**: look at the cable and at the supply’s own display; press its output key if it is on.
- **A setpoint differs from what was sent**: somebody turned a knob. The run stops.
- **Volts there before the output is on**: a charged capacitor, a cell, another source. Refused; find it first.
- **In use**: one supply has one user at a time.
</source>
        <comment>SUPPLY</comment>
        <translation>Rechts, in jedem Raum: Volt, Ampere, was es tut, wie viel von jedem Grenzwert genutzt ist, und „Ausgang aus“.

- **DREHT, BLOCKIERT, KRIECHT, UNBEKANNT**: was Volt und Ampere über den Motor sagen. **OHNE ANTRIEB**: Es wird kein Strom durch ihn getrieben; seine Welle kann noch auslaufen.
- **CV**: Die Spannung wird gehalten. **CC**: Die Strombegrenzung wird gehalten; mehr Volt ändern dann nichts.
- **Grenzwerte, genutzt**: Jeder Balken nennt, was den Grenzwert setzt.

## Welche Netzgeräte

Jedes, das auf SCPI-Befehle antwortet und seine Sollwerte und seinen Ausgang zurücklesen lässt. Es wird einmal gefragt, was es ist, nur mit Fragen; was ihm fehlt, wird gesagt, bevor etwas eingeschaltet wird. Ohne Rücklesen wird es abgelehnt.

## Seine Adresse

- Ein einfacher Socket: TCPIP::192.168.0.5::5025::SOCKET. Der Port steht im Handbuch des Netzgeräts; beim Suchen wird er nie gefunden.
- VXI-11 und HiSLIP: TCPIP::192.168.0.5::INSTR, TCPIP::192.168.0.5::hislip0::INSTR.
- Seriell: ASRL/dev/ttyUSB0,115200::INSTR oder ASRL3,115200::INSTR; 9600 ohne Zahl.
- USB: USB0::…::INSTR. Unter Linux braucht es eine Regel für udev; „benchlog supplies --udev-rule“ gibt eine aus.

## Was schiefgehen kann

- **Das Netzgerät ging verloren**: Sehen Sie nach dem Kabel und nach der Anzeige des Netzgeräts; drücken Sie seine Ausgangstaste, wenn es an ist.
- **Ein Sollwert ist anders, als gesendet wurde**: Jemand hat an einem Knopf gedreht. Der Lauf hört auf.
- **Volt da, bevor der Ausgang an ist**: ein geladener Kondensator, eine Zelle, eine andere Quelle. Abgelehnt; finden Sie sie zuerst.
- **In Gebrauch**: Ein Netzgerät hat zu einer Zeit einen Benutzer.</translation>
    </message>
    <message>
        <source>
Esc and Pause switch the output off from anywhere, also while something is being typed. Of the keys below only Space
begins anything, and only where the button that is shown says so or is marked. A field that is being typed into keeps
copy, paste and undo for itself.
</source>
        <comment>KEYS</comment>
        <translation>Esc und Pause schalten den Ausgang von überall aus, auch während etwas getippt wird. Von den Tasten unten beginnt nur die Leertaste etwas, und nur dort, wo es auf der gezeigten Taste steht oder diese markiert ist. Ein Feld, in das getippt wird, behält Kopieren, Einfügen und Rückgängig für sich.</translation>
    </message>
    <message>
        <source>
Keys that you taught, a foot switch say, are in the settings.
</source>
        <comment>KEYS_AFTER</comment>
        <translation>Tasten, die Sie angelernt haben, etwa für einen Fußschalter, stehen in den Einstellungen.</translation>
    </message>
    <message>
        <source>The same word is on the screen, in the ledger, in files and on paper.</source>
        <comment>WORDS_ABOUT</comment>
        <translation>Dasselbe Wort steht auf dem Bildschirm und in der Hilfe; im Auftragsbuch, in Dateien und auf Papier steht das englische.</translation>
    </message>
    <message>
        <source>ceiling</source>
        <comment>WORDS</comment>
        <translation>Grenzwert</translation>
    </message>
    <message>
        <source>what may not be passed: volts, amps, winding temperature, locked time, energy, on-time, kicks. The lowest of its layers holds.</source>
        <comment>WORDS</comment>
        <translation>was nicht überschritten werden darf: Volt, Ampere, Wicklungstemperatur, Blockierzeit, Energie, Ein-Zeit, Anstöße. Der niedrigste seiner Ursprünge gilt.</translation>
    </message>
    <message>
        <source>closed</source>
        <comment>WORDS</comment>
        <translation>abgeschlossen</translation>
    </message>
    <message>
        <source>a job that is done; it is only corrected from then on.</source>
        <comment>WORDS</comment>
        <translation>ein Auftrag, der erledigt ist; von da an wird er nur noch berichtigt.</translation>
    </message>
    <message>
        <source>comeback</source>
        <comment>WORDS</comment>
        <translation>Rückkehrer</translation>
    </message>
    <message>
        <source>a thing that was here before, known by its serial.</source>
        <comment>WORDS</comment>
        <translation>ein Gerät, das schon hier war, an seiner Seriennummer erkannt.</translation>
    </message>
    <message>
        <source>creeping</source>
        <comment>WORDS</comment>
        <translation>kriecht</translation>
    </message>
    <message>
        <source>it moves a little and stops again.</source>
        <comment>WORDS</comment>
        <translation>es bewegt sich ein wenig und bleibt wieder stehen.</translation>
    </message>
    <message>
        <source>diode</source>
        <comment>WORDS</comment>
        <translation>Diode</translation>
    </message>
    <message>
        <source>a part across the motor that conducts one way only.</source>
        <comment>WORDS</comment>
        <translation>ein Bauteil über dem Motor, das nur in einer Richtung leitet.</translation>
    </message>
    <message>
        <source>electronic</source>
        <comment>WORDS</comment>
        <translation>Elektronik</translation>
    </message>
    <message>
        <source>a driver or board between the leads and the motor.</source>
        <comment>WORDS</comment>
        <translation>ein Treiber oder eine Platine zwischen den Leitungen und dem Motor.</translation>
    </message>
    <message>
        <source>freed</source>
        <comment>WORDS</comment>
        <translation>gelöst</translation>
    </message>
    <message>
        <source>seen to turn twice, held, and started again from rest after it was stuck.</source>
        <comment>WORDS</comment>
        <translation>zweimal drehend gesehen, gehalten und aus dem Stillstand wieder angelaufen, nachdem es festsaß.</translation>
    </message>
    <message>
        <source>hand step</source>
        <comment>WORDS</comment>
        <translation>Handgriff</translation>
    </message>
    <message>
        <source>something done by hand: turned, tapped, soaked, warmed, oiled. It is on record like a kick.</source>
        <comment>WORDS</comment>
        <translation>etwas von Hand Getanes: gedreht, geklopft, eingeweicht, erwärmt, geölt. Es steht im Protokoll wie ein Anstoß.</translation>
    </message>
    <message>
        <source>job</source>
        <comment>WORDS</comment>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>one thing on its way from intake to close, with all its runs.</source>
        <comment>WORDS</comment>
        <translation>ein Gerät auf seinem Weg von der Annahme bis zum Abschluss, mit allen seinen Läufen.</translation>
    </message>
    <message>
        <source>kick</source>
        <comment>WORDS</comment>
        <translation>Anstoß</translation>
    </message>
    <message>
        <source>one short push of current, 0.2 s or less.</source>
        <comment>WORDS</comment>
        <translation>ein kurzer Stromstoß, 0,2 s oder weniger.</translation>
    </message>
    <message>
        <source>ladder, rung</source>
        <comment>WORDS</comment>
        <translation>Leiter, Stufe</translation>
    </message>
    <message>
        <source>kicks in rising steps; a rung is one of them, with its tries.</source>
        <comment>WORDS</comment>
        <translation>Anstöße in steigenden Schritten; eine Stufe ist einer davon, mit ihren Versuchen.</translation>
    </message>
    <message>
        <source>ledger</source>
        <comment>WORDS</comment>
        <translation>Auftragsbuch</translation>
    </message>
    <message>
        <source>the file with all jobs. One window writes it; a second one only shows it.</source>
        <comment>WORDS</comment>
        <translation>die Datei mit allen Aufträgen. Ein Fenster schreibt sie; ein zweites zeigt sie nur.</translation>
    </message>
    <message>
        <source>locked</source>
        <comment>WORDS</comment>
        <translation>blockiert</translation>
    </message>
    <message>
        <source>current flows and the shaft stands still. All of the power is heat.</source>
        <comment>WORDS</comment>
        <translation>Strom fließt, und die Welle steht. Alle Leistung wird Hitze.</translation>
    </message>
    <message>
        <source>look</source>
        <comment>WORDS</comment>
        <translation>Blick</translation>
    </message>
    <message>
        <source>almost no current for a moment, to see whether a rotor makes a voltage of its own.</source>
        <comment>WORDS</comment>
        <translation>für einen Augenblick fast kein Strom, um zu sehen, ob ein Läufer eine eigene Spannung macht.</translation>
    </message>
    <message>
        <source>lot</source>
        <comment>WORDS</comment>
        <translation>Los</translation>
    </message>
    <message>
        <source>units of one kind, measured one after the other in the same way.</source>
        <comment>WORDS</comment>
        <translation>Prüflinge einer Art, nacheinander auf dieselbe Weise gemessen.</translation>
    </message>
    <message>
        <source>moved</source>
        <comment>WORDS</comment>
        <translation>bewegt</translation>
    </message>
    <message>
        <source>a small movement that stopped again: progress, and not freed.</source>
        <comment>WORDS</comment>
        <translation>eine kleine Bewegung, die wieder aufhörte: Fortschritt, und nicht gelöst.</translation>
    </message>
    <message>
        <source>open</source>
        <comment>WORDS</comment>
        <translation>unterbrochen</translation>
    </message>
    <message>
        <source>no current flows: the winding or a brush is interrupted.</source>
        <comment>WORDS</comment>
        <translation>es fließt kein Strom: Die Wicklung oder eine Bürste ist unterbrochen.</translation>
    </message>
    <message>
        <source>readback</source>
        <comment>WORDS</comment>
        <translation>Rückmessung</translation>
    </message>
    <message>
        <source>volts and amps as the supply measured them: a mean over some 20 ms, not the true peak.</source>
        <comment>WORDS</comment>
        <translation>Volt und Ampere, wie das Netzgerät sie gemessen hat: ein Mittel über etwa 20 ms, nicht die wahre Spitze.</translation>
    </message>
    <message>
        <source>run</source>
        <comment>WORDS</comment>
        <translation>Lauf</translation>
    </message>
    <message>
        <source>one go of the supply: probe, recovery, by hand, proof, start-up or run-in. Its record is never edited.</source>
        <comment>WORDS</comment>
        <translation>ein Gang des Netzgeräts: Messung, Lösen, von Hand, Nachweis, Anlauf oder Einlauf. Sein Protokoll wird nie geändert.</translation>
    </message>
    <message>
        <source>runs</source>
        <comment>WORDS</comment>
        <translation>läuft</translation>
    </message>
    <message>
        <source>it turned at half its rated volts before any kick: it was not stuck.</source>
        <comment>WORDS</comment>
        <translation>es drehte mit der halben Nennspannung vor jedem Anstoß: Es saß nicht fest.</translation>
    </message>
    <message>
        <source>short</source>
        <comment>WORDS</comment>
        <translation>Kurzschluss</translation>
    </message>
    <message>
        <source>all current and hardly any volts: a part of the winding or a lead is bridged.</source>
        <comment>WORDS</comment>
        <translation>voller Strom und kaum Volt: Ein Teil der Wicklung oder eine Leitung ist überbrückt.</translation>
    </message>
    <message>
        <source>stall current</source>
        <comment>WORDS</comment>
        <translation>Blockierstrom</translation>
    </message>
    <message>
        <source>what a locked motor draws at its rated volts.</source>
        <comment>WORDS</comment>
        <translation>was ein blockierter Motor mit seiner Nennspannung zieht.</translation>
    </message>
    <message>
        <source>still stuck</source>
        <comment>WORDS</comment>
        <translation>sitzt noch fest</translation>
    </message>
    <message>
        <source>the ladder was climbed and it did not turn.</source>
        <comment>WORDS</comment>
        <translation>die Leiter wurde durchstiegen, und es drehte nicht.</translation>
    </message>
    <message>
        <source>trace</source>
        <comment>WORDS</comment>
        <translation>Aufzeichnung</translation>
    </message>
    <message>
        <source>the readings of a run, with its events.</source>
        <comment>WORDS</comment>
        <translation>die Messwerte eines Laufs, mit seinen Ereignissen.</translation>
    </message>
    <message>
        <source>undetermined</source>
        <comment>WORDS</comment>
        <translation>unentschieden</translation>
    </message>
    <message>
        <source>volts and amps could not tell. Why is said.</source>
        <comment>WORDS</comment>
        <translation>Volt und Ampere konnten es nicht sagen. Warum, steht dabei.</translation>
    </message>
    <message>
        <source>unlock</source>
        <comment>WORDS</comment>
        <translation>Freigabe</translation>
    </message>
    <message>
        <source>more for one job and 12 hours, by name and reason, up to what the owner’s file allows.</source>
        <comment>WORDS</comment>
        <translation>mehr für einen Auftrag und 12 Stunden, mit Namen und Grund, bis zu dem, was die Datei des Inhabers erlaubt.</translation>
    </message>
</context>
<context>
    <name>record</name>
    <message>
        <source>output off was pressed</source>
        <translation>„Ausgang aus“ wurde gedrückt</translation>
    </message>
    <message>
        <source>the window was closed</source>
        <translation>das Fenster wurde geschlossen</translation>
    </message>
    <message>
        <source>the system is ending the session</source>
        <translation>das System beendet die Sitzung</translation>
    </message>
    <message>
        <source>a fault in the window</source>
        <translation>ein Fehler im Fenster</translation>
    </message>
    <message>
        <source>the computer is going to sleep</source>
        <translation>der Rechner geht schlafen</translation>
    </message>
    <message>
        <source>dry</source>
        <translation>trocken</translation>
    </message>
    <message>
        <source>wet</source>
        <translation>nass</translation>
    </message>
    <message>
        <source>coupled</source>
        <translation>gekuppelt</translation>
    </message>
    <message>
        <source>uncoupled</source>
        <translation>ausgekuppelt</translation>
    </message>
    <message>
        <source>taken in; ceilings %1, %2; supply %3</source>
        <translation>angenommen; Grenzwerte %1, %2; Netzgerät %3</translation>
    </message>
    <message>
        <source>no amps ceiling of its own</source>
        <translation>kein eigener Grenzwert für Ampere</translation>
    </message>
    <message>
        <source>Unplugged from the mains</source>
        <translation>Vom Stromnetz getrennt</translation>
    </message>
    <message>
        <source>Cell out of circuit, its tabs insulated</source>
        <translation>Zelle aus dem Stromkreis, ihre Fahnen isoliert</translation>
    </message>
    <message>
        <source>Capacitors discharged through a resistor, and measured</source>
        <translation>Kondensatoren über einen Widerstand entladen und nachgemessen</translation>
    </message>
    <message>
        <source>Liquid drained, and dry</source>
        <translation>Flüssigkeit abgelassen, alles trocken</translation>
    </message>
    <message>
        <source>Motor leads free of the driver board</source>
        <translation>Motorleitungen frei von der Treiberplatine</translation>
    </message>
    <message>
        <source>Fingers, hair and blades clear; eye protection on</source>
        <translation>Finger, Haare und Flügel frei; Augenschutz auf</translation>
    </message>
    <message>
        <source>done</source>
        <translation>erledigt</translation>
    </message>
    <message>
        <source>does not apply</source>
        <translation>trifft nicht zu</translation>
    </message>
    <message>
        <source>turned</source>
        <translation>gedreht</translation>
    </message>
    <message>
        <source>tapped</source>
        <translation>geklopft</translation>
    </message>
    <message>
        <source>soaked</source>
        <translation>eingeweicht</translation>
    </message>
    <message>
        <source>warmed</source>
        <translation>erwärmt</translation>
    </message>
    <message>
        <source>oiled</source>
        <translation>geölt</translation>
    </message>
    <message>
        <source>by hand: %1</source>
        <translation>von Hand: %1</translation>
    </message>
    <message>
        <source>note: %1</source>
        <translation>Notiz: %1</translation>
    </message>
    <message>
        <source>the operator felt or saw it move</source>
        <translation>der Bediener spürte oder sah eine Bewegung</translation>
    </message>
    <message>
        <source>kicks</source>
        <translation>Anstöße</translation>
    </message>
    <message>
        <source>kicks and by hand</source>
        <translation>Anstöße und Handarbeit</translation>
    </message>
    <message>
        <source>by hand</source>
        <translation>von Hand</translation>
    </message>
    <message>
        <source>cleaned</source>
        <translation>gereinigt</translation>
    </message>
    <message>
        <source>part replaced</source>
        <translation>Teil ersetzt</translation>
    </message>
    <message>
        <source>electrical repair</source>
        <translation>elektrische Reparatur</translation>
    </message>
    <message>
        <source>nothing helped</source>
        <translation>nichts half</translation>
    </message>
    <message>
        <source>Each motor out of its circuit; fingers, hair and blades clear; eye protection on.</source>
        <translation>Jeder Motor außerhalb seiner Schaltung; Finger, Haare und Flügel frei; Augenschutz auf.</translation>
    </message>
    <message>
        <source>Said for every start to come: %1</source>
        <translation>Für jeden kommenden Anlauf bestätigt: %1</translation>
    </message>
    <message>
        <source>Its time 0 is %1 from the trigger, within %2 (95 %), by its %3. Kept with the job.</source>
        <translation>Ihre Zeit 0 liegt %1 vom Trigger, auf %2 genau (95 %), nach %3. Beim Auftrag vermerkt.</translation>
    </message>
    <message>
        <source>Where it belongs can’t be told (%1): its time 0 is drawn at the trigger. Kept with the job.</source>
        <translation>Wohin sie gehört, lässt sich nicht sagen (%1): Ihre Zeit 0 ist am Trigger gezeichnet. Beim Auftrag vermerkt.</translation>
    </message>
    <message>
        <source>run %1, start %2: %3</source>
        <translation>Lauf %1, Anlauf %2: %3</translation>
    </message>
    <message>
        <source>Clamped, blades clear, and somebody stays near</source>
        <translation>Eingespannt, Flügel frei, und jemand bleibt in der Nähe</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/__main__.py</name>
    <message>
        <source>the bench process was told to end</source>
        <translation>dem Werkbankprozess wurde gesagt, dass er enden soll</translation>
    </message>
    <message>
        <source>the window or terminal takes no more frames</source>
        <translation>das Fenster oder Terminal nimmt keine Daten mehr ab</translation>
    </message>
    <message>
        <source>the waiting rescue process is gone</source>
        <translation>der wartende Rettungsprozess ist weg</translation>
    </message>
    <message>
        <source>the window or terminal has not taken a frame for %1 s</source>
        <translation>das Fenster oder Terminal hat seit %1 s keine Daten abgenommen</translation>
    </message>
    <message>
        <source>the rescue process did not start: nothing is switched on without it</source>
        <translation>der Rettungsprozess lief nicht an: Ohne ihn wird nichts eingeschaltet</translation>
    </message>
    <message>
        <source>the record can't be begun: %1</source>
        <translation>das Protokoll kann nicht begonnen werden: %1</translation>
    </message>
    <message>
        <source>the dialect of the supply: %1</source>
        <translation>der Dialekt des Netzgeräts: %1</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/arming.py</name>
    <message>
        <source>the supply's own latches can not be set that high: %1</source>
        <translation>die eigenen Sicherungen des Netzgeräts lassen sich nicht so hoch einstellen: %1</translation>
    </message>
    <message>
        <source>; it tells no range, so set a ceiling of %1 that it has</source>
        <translation>; es nennt keinen Bereich, setzen Sie also einen Grenzwert von %1, den es hat</translation>
    </message>
    <message>
        <source>the supply's %1 latch reads %2 %3, not the %4 %5 that were sent%6</source>
        <translation>die Sicherung (%1) des Netzgeräts steht auf %2 %3, nicht auf %4 %5, wie gesendet%6</translation>
    </message>
    <message>
        <source>the supply reports: %1</source>
        <translation>das Netzgerät meldet: %1</translation>
    </message>
    <message>
        <source>the supply does not go off: it says %1, %2 V</source>
        <translation>das Netzgerät geht nicht aus: Es sagt %1, %2 V</translation>
    </message>
    <message>
        <source>the supply's current limit reads %1 A where 0 A was sent</source>
        <translation>die Strombegrenzung des Netzgeräts steht auf %1 A, gesendet waren 0 A</translation>
    </message>
    <message>
        <source>This supply has no %1 latch that could be set: one ceiling less.</source>
        <translation>Dieses Netzgerät hat keine einstellbare Sicherung (%1): ein Grenzwert weniger.</translation>
    </message>
    <message>
        <source>the supply's own output timer reads %1, not the %2 s that were sent</source>
        <translation>die eigene Schaltuhr des Ausgangs steht auf %1, nicht auf %2 s, wie gesendet</translation>
    </message>
    <message>
        <source>Its own output timer switches off after %1 s of silence.</source>
        <translation>Seine eigene Schaltuhr schaltet den Ausgang nach %1 s Stille ab.</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/conduct.py</name>
    <message>
        <source>a fault in this program ended the run</source>
        <translation>ein Fehler in diesem Programm hat den Lauf beendet</translation>
    </message>
    <message>
        <source>no supply was reached, nothing was switched on</source>
        <translation>es wurde kein Netzgerät erreicht und nichts eingeschaltet</translation>
    </message>
    <message>
        <source>the record can't be kept: %1</source>
        <translation>das Protokoll kann nicht weitergeführt werden: %1</translation>
    </message>
    <message>
        <source>Ceilings %1.</source>
        <translation>Grenzwerte %1.</translation>
    </message>
    <message>
        <source>%1; the end of the record could not be kept: %2</source>
        <translation>%1; das Ende des Protokolls konnte nicht festgehalten werden: %2</translation>
    </message>
    <message>
        <source>a check of a supply without the resistor's value</source>
        <translation>eine Prüfung des Netzgeräts ohne den Wert des Widerstands</translation>
    </message>
    <message>
        <source>a %1 run says what it is to be; this one does not</source>
        <translation>ein Lauf (%1) sagt, was er werden soll; dieser nicht</translation>
    </message>
    <message>
        <source>Ceilings: %1 V (from the %2), %3 A (from the %4).</source>
        <translation>Grenzwerte: %1 V (durch: %2), %3 A (durch: %4).</translation>
    </message>
    <message>
        <source>%1 Its own latches: %2, read back.</source>
        <translation>%1 Seine eigenen Sicherungen: %2, zurückgelesen.</translation>
    </message>
    <message>
        <source>Leads of %1 are taken out of resistances.</source>
        <translation>Leitungen von %1 werden aus den Widerständen herausgerechnet.</translation>
    </message>
    <message>
        <source>Supply: %1.</source>
        <translation>Netzgerät: %1.</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/dialect_words.py</name>
    <message>
        <source>chosen by %1</source>
        <translation>mit %1 gewählt</translation>
    </message>
    <message>
        <source>each named in its units</source>
        <translation>jeder in seinen Befehlen genannt</translation>
    </message>
    <message>
        <source>one output</source>
        <translation>ein Ausgang</translation>
    </message>
    <message>
        <source>%1 outputs, %2</source>
        <translation>%1 Ausgänge, %2</translation>
    </message>
    <message>
        <source>several units in one message</source>
        <translation>mehrere Befehle in einer Nachricht</translation>
    </message>
    <message>
        <source>one unit a message</source>
        <translation>ein Befehl je Nachricht</translation>
    </message>
    <message>
        <source>CR LF</source>
        <translation>CR LF</translation>
    </message>
    <message>
        <source>nothing at all</source>
        <translation>gar nichts</translation>
    </message>
    <message>
        <source>messages end with %1, replies with %2</source>
        <translation>Nachrichten enden mit %1, Antworten mit %2</translation>
    </message>
    <message>
        <source>left alone for %1 in between</source>
        <translation>dazwischen %1 in Ruhe gelassen</translation>
    </message>
    <message>
        <source>echoes what it hears</source>
        <translation>wiederholt, was es hört</translation>
    </message>
    <message>
        <source>units behind some of its numbers</source>
        <translation>Einheiten hinter manchen seiner Zahlen</translation>
    </message>
    <message>
        <source>units behind its numbers</source>
        <translation>Einheiten hinter seinen Zahlen</translation>
    </message>
    <message>
        <source>one client at a time</source>
        <translation>nur ein Benutzer zu einer Zeit</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/frames.py</name>
    <message>
        <source>dry, uncoupled</source>
        <translation>trocken, ausgekuppelt</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/lease.py</name>
    <message>
        <source>a second request came while a run was on</source>
        <translation>eine zweite Anforderung kam, während ein Lauf an war</translation>
    </message>
    <message>
        <source>the window or terminal was silent for %1 s</source>
        <translation>das Fenster oder Terminal hat sich %1 s lang nicht gemeldet</translation>
    </message>
    <message>
        <source>an order could not be read</source>
        <translation>ein Befehl war nicht lesbar</translation>
    </message>
    <message>
        <source>the window or terminal is gone</source>
        <translation>das Fenster oder Terminal ist weg</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/link.py</name>
    <message>
        <source>NOT CONFIRMED: switch the supply off by hand (no word from the rescue process).</source>
        <translation>NICHT BESTÄTIGT: Netzgerät von Hand ausschalten (kein Wort vom Rettungsprozess).</translation>
    </message>
    <message>
        <source>Output off, confirmed by read-back.</source>
        <translation>Ausgang aus, durch Rücklesen bestätigt.</translation>
    </message>
    <message>
        <source>the bench process ended before the run did. %1</source>
        <translation>der Werkbankprozess endete vor dem Lauf. %1</translation>
    </message>
    <message>
        <source>a process that the window or terminal then started</source>
        <translation>ein Prozess, den das Fenster oder Terminal dann startete,</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/looking_around.py</name>
    <message>
        <source>serial port</source>
        <translation>serieller Anschluss</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/loop.py</name>
    <message>
        <source>The supply's own array was not started: %1.</source>
        <translation>Die eigene Messreihe des Netzgeräts wurde nicht gestartet: %1.</translation>
    </message>
    <message>
        <source>No dense curve of start %1: %2.</source>
        <translation>Keine dichte Kurve von Anlauf %1: %2.</translation>
    </message>
    <message>
        <source>stopped: the computer slept, or its clock jumped %1 s</source>
        <translation>gestoppt: Der Rechner schlief, oder seine Uhr sprang um %1 s</translation>
    </message>
    <message>
        <source>stopped: %1</source>
        <translation>gestoppt: %1</translation>
    </message>
    <message>
        <source>the supply's own %1 latch tripped</source>
        <translation>die eigene Sicherung (%1) des Netzgeräts hat ausgelöst</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/opening.py</name>
    <message>
        <source>"%1" answers where "%2" did when it was asked what it is: ask it anew, then begin again</source>
        <translation>„%1“ antwortet, wo „%2“ war, als es gefragt wurde, was es ist: Fragen Sie es neu, dann beginnen Sie erneut</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/rescue.py</name>
    <message>
        <source>the waiting process</source>
        <translation>der wartende Prozess</translation>
    </message>
    <message>
        <source>known off</source>
        <translation>bekanntermaßen aus</translation>
    </message>
    <message>
        <source>was silent</source>
        <translation>schwieg</translation>
    </message>
    <message>
        <source>is gone</source>
        <translation>ist weg</translation>
    </message>
    <message>
        <source>NOT CONFIRMED: switch the supply off by hand (%1).</source>
        <translation>NICHT BESTÄTIGT: Netzgerät von Hand ausschalten (%1).</translation>
    </message>
    <message>
        <source>The bench process %1; %2 switched off. %3</source>
        <translation>Der Werkbankprozess %1; %2 schaltete ab. %3</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/supply_lock.py</name>
    <message>
        <source>a new job</source>
        <translation>ein neuer Auftrag</translation>
    </message>
    <message>
        <source>job %1</source>
        <translation>Auftrag %1</translation>
    </message>
    <message>
        <source>a run of %1 on output %2</source>
        <translation>ein Lauf zu %1 an Ausgang %2</translation>
    </message>
    <message>
        <source>whether another program uses the supply can't be told (%1: %2): nothing was sent to it</source>
        <translation>ob ein anderes Programm das Netzgerät benutzt, lässt sich nicht sagen (%1: %2): Es wurde ihm nichts gesendet</translation>
    </message>
    <message>
        <source>another program of yours</source>
        <translation>ein anderes Ihrer Programme</translation>
    </message>
    <message>
        <source>%1 (process %2, since %3 UTC)</source>
        <translation>%1 (Prozess %2, seit %3 UTC)</translation>
    </message>
    <message>
        <source>its outputs can't be used by two at once</source>
        <translation>seine Ausgänge können nicht von zweien zugleich benutzt werden</translation>
    </message>
    <message>
        <source>that output is taken</source>
        <translation>dieser Ausgang ist belegt</translation>
    </message>
    <message>
        <source>the supply is in use by %1; %2. Nothing was sent to it. Wait for its end, or stop it first</source>
        <translation>das Netzgerät ist in Gebrauch: %1; %2. Es wurde ihm nichts gesendet. Warten Sie das Ende ab, oder beenden Sie das andere zuerst</translation>
    </message>
</context>
<context>
    <name>benchlog/bench/switching_off.py</name>
    <message>
        <source>no reply</source>
        <translation>keine Antwort</translation>
    </message>
    <message>
        <source>the supply still says %1, %2 V, %3 A</source>
        <translation>das Netzgerät sagt noch immer %1, %2 V, %3 A</translation>
    </message>
</context>
<context>
    <name>benchlog/board/calculators.py</name>
    <message>
        <source>%1: %2; from %3</source>
        <translation>%1: %2; aus %3</translation>
    </message>
    <message>
        <source>calculate: "%1" is none of %2</source>
        <translation>Rechnen: „%1“ ist keines von %2</translation>
    </message>
    <message>
        <source>%1: "%2" is none of its inputs: %3</source>
        <translation>%1: „%2“ ist keine seiner Eingaben: %3</translation>
    </message>
    <message>
        <source>%1: %2 is missing (%3, %4)</source>
        <translation>%1: %2 fehlt (%3, %4)</translation>
    </message>
    <message>
        <source>%1: %2: %3 is not within %4</source>
        <translation>%1: %2: %3 liegt nicht in %4</translation>
    </message>
    <message>
        <source>led: the supply's %1 is not above the LED's %2</source>
        <translation>LED: %1 der Versorgung liegt nicht über %2 der LED</translation>
    </message>
    <message>
        <source>Rate the resistor for %1 or more: twice its power (common practice, no source)</source>
        <translation>Nehmen Sie einen Widerstand für %1 oder mehr: das Doppelte seiner Leistung (gute Praxis, keine Quelle)</translation>
    </message>
    <message>
        <source>It may stay dark: the LED may need all of the supply's volts</source>
        <translation>Sie bleibt womöglich dunkel: Die LED kann alle Volt der Versorgung brauchen</translation>
    </message>
    <message>
        <source>1.5 kΩ is commonly read as about 700 mA (common practice, no source): 12 % below this relation</source>
        <translation>1,5 kΩ wird üblicherweise als etwa 700 mA gelesen (gute Praxis, keine Quelle): 12 % unter diesem Zusammenhang</translation>
    </message>
    <message>
        <source>charge-resistor: up to %1 could flow with %2, above the cell's %3</source>
        <translation>Ladewiderstand: Bis zu %1 könnten fließen mit %2, mehr als die %3 der Zelle</translation>
    </message>
    <message>
        <source>Not compared with the cell: its own largest charge current was not given</source>
        <translation>Nicht mit der Zelle verglichen: Ihr größter Ladestrom wurde nicht angegeben</translation>
    </message>
    <message>
        <source>TOO MUCH for the cell: up to %1 against its %2</source>
        <translation>ZU VIEL für die Zelle: bis zu %1 gegen ihre %2</translation>
    </message>
    <message>
        <source>Within the cell's %1</source>
        <translation>Innerhalb der %1 der Zelle</translation>
    </message>
    <message>
        <source>of the resistors</source>
        <translation>der Widerstände</translation>
    </message>
    <message>
        <source>of the resistor; 0 as measured</source>
        <translation>des Widerstands; 0 wie gemessen</translation>
    </message>
    <message>
        <source>largest charge current by the cell's own data</source>
        <translation>größter Ladestrom nach den Daten der Zelle</translation>
    </message>
    <message>
        <source>A swollen, dented, leaking or warm cell is not charged and not opened: the job is refused</source>
        <translation>Eine aufgeblähte, eingedrückte, auslaufende oder warme Zelle wird nicht geladen und nicht geöffnet: Der Auftrag wird abgelehnt</translation>
    </message>
    <message>
        <source>Never above the charge current and end voltage of the cell's own data, nor outside its temperatures</source>
        <translation>Nie über Ladestrom und Endspannung nach den Daten der Zelle und nie außerhalb ihrer Temperaturen</translation>
    </message>
    <message>
        <source>Local rules and licensed practice come first</source>
        <translation>Örtliche Vorschriften und die Arbeit von Fachkräften gehen vor</translation>
    </message>
    <message>
        <source>relation and ± 10 % as published for the common linear charger with a 1200 V/R program pin, 1.2 to 10 kΩ; other parts have other relations: read the part's own data</source>
        <translation>Zusammenhang und ± 10 % wie veröffentlicht für den verbreiteten Linearlader mit 1200 V/R am Programmieranschluss, 1,2 bis 10 kΩ; andere Bauteile haben andere Zusammenhänge: Lesen Sie deren Datenblatt</translation>
    </message>
    <message>
        <source>across both resistors</source>
        <translation>über beiden Widerständen</translation>
    </message>
    <message>
        <source>from the supply to the output</source>
        <translation>von der Versorgung zum Ausgang</translation>
    </message>
    <message>
        <source>from the output to ground</source>
        <translation>vom Ausgang nach Masse</translation>
    </message>
    <message>
        <source>source resistance</source>
        <translation>Quellwiderstand</translation>
    </message>
    <message>
        <source>output = supply · lower / (upper + lower), nothing drawn from it</source>
        <translation>Ausgang = Versorgung · unterer / (oberer + unterer), ohne entnommenen Strom</translation>
    </message>
    <message>
        <source>Ohm's and Kirchhoff's laws</source>
        <translation>ohmsches Gesetz und kirchhoffsche Regeln</translation>
    </message>
    <message>
        <source>Series resistor of an LED</source>
        <translation>Vorwiderstand einer LED</translation>
    </message>
    <message>
        <source>across LED and resistor, at its highest</source>
        <translation>über LED und Widerstand, höchstens</translation>
    </message>
    <message>
        <source>of the LED, or of all in the chain</source>
        <translation>der LED, oder aller in der Kette</translation>
    </message>
    <message>
        <source>through the LED</source>
        <translation>durch die LED</translation>
    </message>
    <message>
        <source>of the forward voltage; starting value of this project</source>
        <translation>der Flussspannung; Ausgangswert dieses Projekts</translation>
    </message>
    <message>
        <source>next E24 up</source>
        <translation>nächster E24-Wert darüber</translation>
    </message>
    <message>
        <source>current with it</source>
        <translation>Strom damit</translation>
    </message>
    <message>
        <source>power in it</source>
        <translation>Leistung darin</translation>
    </message>
    <message>
        <source>R = (supply − forward) / current; P = (supply − forward)² / R of the next E24 up</source>
        <translation>R = (Versorgung − Fluss) / Strom; P = (Versorgung − Fluss)² / R des nächsten E24-Werts darüber</translation>
    </message>
    <message>
        <source>Ohm's and Kirchhoff's laws; IEC 60063 for E24</source>
        <translation>ohmsches Gesetz und kirchhoffsche Regeln; IEC 60063 für E24</translation>
    </message>
    <message>
        <source>Gate resistor and pulldown</source>
        <translation>Gate-Widerstand und Pulldown</translation>
    </message>
    <message>
        <source>from the driver, on</source>
        <translation>vom Treiber, eingeschaltet</translation>
    </message>
    <message>
        <source>from the driver to the gate</source>
        <translation>vom Treiber zum Gate</translation>
    </message>
    <message>
        <source>from the gate to the source</source>
        <translation>vom Gate zur Source</translation>
    </message>
    <message>
        <source>gate charge at the drive's volts</source>
        <translation>Gate-Ladung bei der Treiberspannung</translation>
    </message>
    <message>
        <source>time constant</source>
        <translation>Zeitkonstante</translation>
    </message>
    <message>
        <source>time constant with the driver open</source>
        <translation>Zeitkonstante bei offenem Treiber</translation>
    </message>
    <message>
        <source>peak current</source>
        <translation>Spitzenstrom</translation>
    </message>
    <message>
        <source>gate = drive · pulldown / (resistor + pulldown); C = charge / drive; τ = C · (resistor ‖ pulldown); driver open: τ = C · pulldown; peak = drive / resistor</source>
        <translation>Gate = Treiber · Pulldown / (Widerstand + Pulldown); C = Ladung / Treiber; τ = C · (Widerstand ‖ Pulldown); Treiber offen: τ = C · Pulldown; Spitze = Treiber / Widerstand</translation>
    </message>
    <message>
        <source>Ohm's and Kirchhoff's laws; one C for all of the charge is an approximation (common practice, no source), and its limits are those of the resistors alone</source>
        <translation>ohmsches Gesetz und kirchhoffsche Regeln; ein C für die ganze Ladung ist eine Näherung (gute Praxis, keine Quelle), und ihre Grenzen sind die der Widerstände allein</translation>
    </message>
    <message>
        <source>Charge current of a linear lithium charger</source>
        <translation>Ladestrom eines linearen Lithiumladers</translation>
    </message>
    <message>
        <source>at the program pin</source>
        <translation>am Programmieranschluss</translation>
    </message>
    <message>
        <source>Program resistor of a linear lithium charger</source>
        <translation>Programmierwiderstand eines linearen Lithiumladers</translation>
    </message>
    <message>
        <source>R = 1200 V / I; I = 1200 V / R ± 10 % with the next E24 up</source>
        <translation>R = 1200 V / I; I = 1200 V / R ± 10 % mit dem nächsten E24-Wert darüber</translation>
    </message>
    <message>
        <source>Days between charges</source>
        <translation>Tage zwischen Ladungen</translation>
    </message>
    <message>
        <source>of the full cell or battery</source>
        <translation>der vollen Zelle oder Batterie</translation>
    </message>
    <message>
        <source>average, day and night</source>
        <translation>Mittel, Tag und Nacht</translation>
    </message>
    <message>
        <source>of the capacity; starting value of this project</source>
        <translation>der Kapazität; Ausgangswert dieses Projekts</translation>
    </message>
    <message>
        <source>of what is held, in 30 days; starting value of this project</source>
        <translation>des Inhalts, in 30 Tagen; Ausgangswert dieses Projekts</translation>
    </message>
    <message>
        <source>of capacity and draw each; starting value of this project</source>
        <translation>von Kapazität und Verbrauch, je; Ausgangswert dieses Projekts</translation>
    </message>
    <message>
        <source>ln(1 + k · usable · capacity / (draw + k · capacity · (1 − usable))) / k, with k = −ln(1 − self-discharge) / 30 days; without self-discharge usable · capacity / draw</source>
        <translation>ln(1 + k · nutzbar · Kapazität / (Verbrauch + k · Kapazität · (1 − nutzbar))) / k, mit k = −ln(1 − Selbstentladung) / 30 Tage; ohne Selbstentladung nutzbar · Kapazität / Verbrauch</translation>
    </message>
    <message>
        <source>charge balance dQ/dt = −draw − k Q, solved in closed form</source>
        <translation>Ladungsbilanz dQ/dt = −Verbrauch − k Q, geschlossen gelöst</translation>
    </message>
    <message>
        <source>A label gives the capacity of a new cell: an old or cold one holds less</source>
        <translation>Ein Aufdruck nennt die Kapazität einer neuen Zelle: Eine alte oder kalte hält weniger</translation>
    </message>
</context>
<context>
    <name>benchlog/board/markings.py</name>
    <message>
        <source>letter code</source>
        <translation>Buchstabencode</translation>
    </message>
    <message>
        <source>printed as such</source>
        <translation>so aufgedruckt</translation>
    </message>
    <message>
        <source>three or four digits, a letter as the point (4K7, R47), or two digits and a letter of EIA-96</source>
        <translation>drei oder vier Ziffern, ein Buchstabe als Komma (4K7, R47), oder zwei Ziffern und ein Buchstabe nach EIA-96</translation>
    </message>
    <message>
        <source>two to four digits or a letter as the point (4n7), each with a tolerance letter behind it or none</source>
        <translation>zwei bis vier Ziffern oder ein Buchstabe als Komma (4n7), je mit einem Toleranzbuchstaben dahinter oder ohne</translation>
    </message>
    <message>
        <source>0 %1 (jumper)</source>
        <translation>0 %1 (Brücke)</translation>
    </message>
    <message>
        <source>on none of %1</source>
        <translation>auf keiner von %1</translation>
    </message>
    <message>
        <source>%1%2 (%3; %4neighbours %5)</source>
        <translation>%1%2 (%3; %4Nachbarn %5)</translation>
    </message>
    <message>
        <source>marking: it has 1 to %1 characters, not %2</source>
        <translation>Aufdruck: Er hat 1 bis %1 Zeichen, nicht %2</translation>
    </message>
    <message>
        <source>marking: "%1" is in no code known here: %2</source>
        <translation>Aufdruck: „%1“ steht in keinem hier bekannten Code: %2</translation>
    </message>
    <message>
        <source>± %1 pF</source>
        <translation>± %1 pF</translation>
    </message>
    <message>
        <source>−%1 to +%2 %</source>
        <translation>−%1 bis +%2 %</translation>
    </message>
</context>
<context>
    <name>benchlog/board/notation.py</name>
    <message>
        <source>"%1" is not a number in %2</source>
        <translation>„%1“ ist keine Zahl in %2</translation>
    </message>
</context>
<context>
    <name>benchlog/board/series.py</name>
    <message>
        <source>%1 lies on no series</source>
        <translation>%1 liegt auf keiner Reihe</translation>
    </message>
</context>
<context>
    <name>benchlog/history/prior.py</name>
    <message>
        <source>None like it was tried before.</source>
        <translation>Von dieser Art wurde noch keines versucht.</translation>
    </message>
    <message>
        <source>Of those like it %1 More kicks are hardly worth it.</source>
        <translation>Von denen dieser Art: %1 Mehr Anstöße lohnen sich kaum.</translation>
    </message>
    <message>
        <source>Of those like it %1 came free</source>
        <translation>Von denen dieser Art kamen %1 frei</translation>
    </message>
    <message>
        <source>, the middle one after %1 %2</source>
        <translation>, in der Mitte nach %1 %2</translation>
    </message>
    <message>
        <source>; most often at "%1": %2</source>
        <translation>; am häufigsten bei „%1“: %2</translation>
    </message>
    <message>
        <source>%1 came free: even the upper limit is below %2 %.</source>
        <translation>%1 kamen frei: Selbst die obere Grenze liegt unter %2 %.</translation>
    </message>
</context>
<context>
    <name>benchlog/history/rates.py</name>
    <message>
        <source>%1 of %2 is no share</source>
        <translation>%1 von %2 ist kein Anteil</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>%1 to %2 %</source>
        <translation>%1 bis %2 %</translation>
    </message>
</context>
<context>
    <name>benchlog/history/survival.py</name>
    <message>
        <source>a time is negative or no number</source>
        <translation>eine Zeit ist negativ oder keine Zahl</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/backups.py</name>
    <message>
        <source>another backup of it is being made</source>
        <translation>es wird gerade eine andere Sicherung davon gemacht</translation>
    </message>
    <message>
        <source>there is a backup of this very instant already</source>
        <translation>von genau diesem Augenblick gibt es schon eine Sicherung</translation>
    </message>
    <message>
        <source>originals of photos or files that are missing: %1</source>
        <translation>Originale von Fotos oder Dateien, die fehlen: %1</translation>
    </message>
    <message>
        <source>backup of the day</source>
        <translation>Sicherung des Tages</translation>
    </message>
    <message>
        <source>no backup today: %1</source>
        <translation>heute keine Sicherung: %1</translation>
    </message>
    <message>
        <source>there is a file of this name already</source>
        <translation>es gibt schon eine Datei dieses Namens</translation>
    </message>
    <message>
        <source>%1 is not what its name says</source>
        <translation>%1 ist nicht, was der Name sagt</translation>
    </message>
    <message>
        <source>another program holds it</source>
        <translation>ein anderes Programm hält sie fest</translation>
    </message>
    <message>
        <source>a copy of it does not pass its check: %1</source>
        <translation>eine Kopie davon besteht ihre Prüfung nicht: %1</translation>
    </message>
    <message>
        <source>a copy of it has other rows than it has itself</source>
        <translation>eine Kopie davon hat andere Zeilen als es selbst</translation>
    </message>
    <message>
        <source>a row of %1 points to a missing row of %2</source>
        <translation>eine Zeile von %1 verweist auf eine fehlende Zeile von %2</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/capture_request.py</name>
    <message>
        <source>unit "%1" is not one of job %2</source>
        <translation>Prüfling „%1“ ist keiner von Auftrag %2</translation>
    </message>
    <message>
        <source>lot %1 is closed</source>
        <translation>Los %1 ist abgeschlossen</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/captured.py</name>
    <message>
        <source>run %1 captured no starts</source>
        <translation>Lauf %1 hat keine Anläufe aufgenommen</translation>
    </message>
    <message>
        <source>start %1, dense</source>
        <translation>Anlauf %1, dicht</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/connection.py</name>
    <message>
        <source>SQLite %1 does not take %2 = %3: it says %4</source>
        <translation>SQLite %1 nimmt %2 = %3 nicht an: Es sagt %4</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/costs.py</name>
    <message>
        <source>this would bring the job above what its owner allows: stop, or ask first</source>
        <translation>damit käme der Auftrag über das, was sein Eigentümer erlaubt: Halten Sie ein, oder fragen Sie zuerst</translation>
    </message>
    <message>
        <source>there is no part with the key %1</source>
        <translation>es gibt kein Teil mit dem Schlüssel %1</translation>
    </message>
    <message>
        <source>what it is for is not said</source>
        <translation>wofür es ist, wurde nicht gesagt</translation>
    </message>
    <message>
        <source>to take a line back, say who does it, and why</source>
        <translation>um eine Zeile zurückzunehmen, sagen Sie, wer es tut und warum</translation>
    </message>
    <message>
        <source>there is no line with the key %1</source>
        <translation>es gibt keine Zeile mit dem Schlüssel %1</translation>
    </message>
    <message>
        <source>this line itself takes one back</source>
        <translation>diese Zeile nimmt selbst eine zurück</translation>
    </message>
    <message>
        <source>this line was taken back already</source>
        <translation>diese Zeile wurde schon zurückgenommen</translation>
    </message>
    <message>
        <source>%1: taken back, %2</source>
        <translation>%1: zurückgenommen, %2</translation>
    </message>
    <message>
        <source>a part needs a name</source>
        <translation>ein Teil braucht einen Namen</translation>
    </message>
    <message>
        <source>a price or count out of range</source>
        <translation>ein Preis oder eine Anzahl außerhalb des Bereichs</translation>
    </message>
    <message>
        <source>a count or price out of range</source>
        <translation>eine Anzahl oder ein Preis außerhalb des Bereichs</translation>
    </message>
    <message>
        <source>job %1 is closed: nothing more is charged to it</source>
        <translation>Auftrag %1 ist abgeschlossen: Es wird nichts mehr dafür berechnet</translation>
    </message>
    <message>
        <source>%1 (above the limit, agreed by %2)</source>
        <translation>%1 (über der Grenze, zugestimmt von %2)</translation>
    </message>
    <message>
        <source>charge %1</source>
        <translation>Kostenzeile %1</translation>
    </message>
    <message>
        <source>part %1</source>
        <translation>Teil %1</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/drafts.py</name>
    <message>
        <source>the draft of %1 can't be read (%2)</source>
        <translation>der Entwurf (%1) ist nicht lesbar (%2)</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/earlier_starts.py</name>
    <message>
        <source>the starts before in this job</source>
        <translation>die Anläufe davor in diesem Auftrag</translation>
    </message>
    <message>
        <source>the last starts of this serial</source>
        <translation>die letzten Anläufe dieser Seriennummer</translation>
    </message>
    <message>
        <source>by which test they were captured is not recorded</source>
        <translation>nach welcher Prüfung sie aufgenommen wurden, ist nicht vermerkt</translation>
    </message>
    <message>
        <source>"%1" version %2 against "%3" version %4</source>
        <translation>„%1“ Fassung %2 gegen „%3“ Fassung %4</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/edits.py</name>
    <message>
        <source>job %1 is closed: a correction needs who makes it, and why</source>
        <translation>Auftrag %1 ist abgeschlossen: Eine Berichtigung braucht, wer sie macht und warum</translation>
    </message>
    <message>
        <source>job %1 can have come back only from an earlier one</source>
        <translation>Auftrag %1 kann nur von einem früheren zurückgekommen sein</translation>
    </message>
    <message>
        <source>job %1 is closed: a correction is a new one, with who and why</source>
        <translation>Auftrag %1 ist abgeschlossen: Eine Berichtigung ist eine neue, mit wer und warum</translation>
    </message>
    <message>
        <source>a correction needs what is right, who says so, and why</source>
        <translation>eine Berichtigung braucht, was richtig ist, wer es sagt und warum</translation>
    </message>
    <message>
        <source>there is no run %1</source>
        <translation>es gibt keinen Lauf %1</translation>
    </message>
    <message>
        <source>"%1" can not be corrected of a run</source>
        <translation>„%1“ lässt sich an einem Lauf nicht berichtigen</translation>
    </message>
    <message>
        <source>"%1" is no way in which a run ends: %2</source>
        <translation>„%1“ ist keine Art, wie ein Lauf endet: %2</translation>
    </message>
    <message>
        <source>"%1" can not be changed of a job</source>
        <translation>„%1“ lässt sich an einem Auftrag nicht ändern</translation>
    </message>
    <message>
        <source>%1: %2 is below zero</source>
        <translation>%1: %2 liegt unter null</translation>
    </message>
    <message>
        <source>a change of %1 can't be read (%2)</source>
        <translation>eine Änderung (%1) ist nicht lesbar (%2)</translation>
    </message>
    <message>
        <source>edit %1</source>
        <translation>Änderung %1</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/files.py</name>
    <message>
        <source>the caption</source>
        <translation>die Bildunterschrift</translation>
    </message>
    <message>
        <source>the name</source>
        <translation>der Name</translation>
    </message>
    <message>
        <source>there is no job with the key %1</source>
        <translation>es gibt keinen Auftrag mit dem Schlüssel %1</translation>
    </message>
    <message>
        <source>the original of %1 %2</source>
        <translation>das Original von %1 %2</translation>
    </message>
    <message>
        <source>the original of %1 was changed</source>
        <translation>das Original von %1 wurde verändert</translation>
    </message>
    <message>
        <source>file %1 is said to be %2, and %3</source>
        <translation>Datei %1 soll %2 sein, und %3</translation>
    </message>
    <message>
        <source>%1: is there already, and stays as it is</source>
        <translation>%1: ist schon da und bleibt, wie sie ist</translation>
    </message>
    <message>
        <source>%1: can't be written (%2)</source>
        <translation>%1: lässt sich nicht schreiben (%2)</translation>
    </message>
    <message>
        <source>it has a file with a name that is never given</source>
        <translation>es hat eine Datei mit einem Namen, der nie vergeben wird</translation>
    </message>
    <message>
        <source>was changed</source>
        <translation>wurde verändert</translation>
    </message>
    <message>
        <source>can't be read (%1)</source>
        <translation>ist nicht lesbar (%1)</translation>
    </message>
    <message>
        <source>there is no file %1</source>
        <translation>es gibt keine Datei %1</translation>
    </message>
    <message>
        <source>file %1 can't be read (%2)</source>
        <translation>Datei %1 ist nicht lesbar (%2)</translation>
    </message>
    <message>
        <source>%1: %2 characters are more than %3</source>
        <translation>%1: %2 Zeichen sind mehr als %3</translation>
    </message>
    <message>
        <source>%1: has characters that can't be shown</source>
        <translation>%1: hat Zeichen, die sich nicht anzeigen lassen</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/filing.py</name>
    <message>
        <source>%1: empty</source>
        <translation>%1: leer</translation>
    </message>
    <message>
        <source>%1: its head does not say when the run began</source>
        <translation>%1: Der Kopf sagt nicht, wann der Lauf begann</translation>
    </message>
    <message>
        <source>%1: %2 samples are more than the %3 of a trace</source>
        <translation>%1: %2 Messpunkte sind mehr als die %3 einer Aufzeichnung</translation>
    </message>
    <message>
        <source>Run %1 was to be of unit %2, which is not one of this job: kept without a unit</source>
        <translation>Lauf %1 sollte zu Prüfling %2 gehören, der keiner dieses Auftrags ist: ohne Prüfling abgelegt</translation>
    </message>
    <message>
        <source>%1: its job, with the key %2, is not in this ledger</source>
        <translation>%1: Sein Auftrag mit dem Schlüssel %2 ist nicht in diesem Auftragsbuch</translation>
    </message>
    <message>
        <source>%1: run %2 was filed from it when it was shorter</source>
        <translation>%1: Lauf %2 wurde daraus abgelegt, als es kürzer war</translation>
    </message>
    <message>
        <source>output confirmed off</source>
        <translation>Ausgang als aus bestätigt</translation>
    </message>
    <message>
        <source>output NOT confirmed off</source>
        <translation>Ausgang NICHT als aus bestätigt</translation>
    </message>
    <message>
        <source>rescue of run %1: %2 (%3)</source>
        <translation>Rettung von Lauf %1: %2 (%3)</translation>
    </message>
    <message>
        <source>no run of this name is in the ledger</source>
        <translation>kein Lauf dieses Namens ist im Auftragsbuch</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/findings.py</name>
    <message>
        <source>a finding needs the part it is about</source>
        <translation>ein Befund braucht das Teil, um das es geht</translation>
    </message>
    <message>
        <source>this job has no finding with the key %1</source>
        <translation>dieser Auftrag hat keinen Befund mit dem Schlüssel %1</translation>
    </message>
    <message>
        <source>that finding was replaced already</source>
        <translation>dieser Befund wurde schon ersetzt</translation>
    </message>
    <message>
        <source>finding %1</source>
        <translation>Befund %1</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/good_runs.py</name>
    <message>
        <source>run %1 is of no known good one: %2</source>
        <translation>Lauf %1 ist von keinem Gutmuster: %2</translation>
    </message>
    <message>
        <source>run %1 has no serial: whether it is another motor can't be told</source>
        <translation>Lauf %1 hat keine Seriennummer: Ob es ein anderer Motor ist, lässt sich nicht sagen</translation>
    </message>
    <message>
        <source>it ended as %1%2</source>
        <translation>er endete als %1%2</translation>
    </message>
    <message>
        <source>it does not say by which start test it was measured</source>
        <translation>er sagt nicht, nach welcher Anlaufprüfung er gemessen wurde</translation>
    </message>
    <message>
        <source>it captured %1 of the %2 starts of its test</source>
        <translation>er hat %1 der %2 Anläufe seiner Prüfung aufgenommen</translation>
    </message>
    <message>
        <source>unit %1 failed</source>
        <translation>Prüfling %1 ist durchgefallen</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/jobs.py</name>
    <message>
        <source>rated volts: %1 is not a number of volts</source>
        <translation>Nennspannung: %1 ist keine Zahl von Volt</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/judging_runs.py</name>
    <message>
        <source>run %1 ended before its first start was captured</source>
        <translation>Lauf %1 endete, bevor sein erster Anlauf aufgenommen war</translation>
    </message>
    <message>
        <source>a test that it does not say</source>
        <translation>einer Prüfung, die er nicht nennt</translation>
    </message>
    <message>
        <source>"%1" version %2</source>
        <translation>„%1“ Fassung %2</translation>
    </message>
    <message>
        <source>run %1 is by %2, limits %3 are of "%4" version %5: not comparable</source>
        <translation>Lauf %1 ist nach %2, die Grenzen %3 sind von „%4“ Fassung %5: nicht vergleichbar</translation>
    </message>
    <message>
        <source>Not judged: not every start turned.</source>
        <translation>Ohne Urteil: Nicht bei jedem Anlauf hat es gedreht.</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/kicks.py</name>
    <message>
        <source>run %1 does not say when it began</source>
        <translation>Lauf %1 sagt nicht, wann er begann</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/known_good.py</name>
    <message>
        <source>limits come from runs of known good ones: none is named</source>
        <translation>Grenzen kommen aus Läufen von Gutmustern: Es ist keiner genannt</translation>
    </message>
    <message>
        <source>these runs are of different things, which have no limits in common: %1</source>
        <translation>diese Läufe sind von verschiedenen Dingen, die keine gemeinsamen Grenzen haben: %1</translation>
    </message>
    <message>
        <source>there are no limits with the key %1</source>
        <translation>es gibt keine Grenzen mit dem Schlüssel %1</translation>
    </message>
    <message>
        <source>a number of these limits is none</source>
        <translation>eine Zahl dieser Grenzen ist keine</translation>
    </message>
    <message>
        <source>limits %1 can't be read (%2)</source>
        <translation>Grenzen %1 sind nicht lesbar (%2)</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/leads.py</name>
    <message>
        <source>test leads</source>
        <translation>Messleitungen</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/likes.py</name>
    <message>
        <source>this serial</source>
        <translation>diese Seriennummer</translation>
    </message>
    <message>
        <source>this model</source>
        <translation>dieses Modell</translation>
    </message>
    <message>
        <source>this kind</source>
        <translation>diese Art</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/lot_checks.py</name>
    <message>
        <source>"%1" is no check of a lot: %2</source>
        <translation>„%1“ ist keine Prüfung eines Loses: %2</translation>
    </message>
    <message>
        <source>%1 check: %2 is no measured value</source>
        <translation>Prüfung (%1): %2 ist kein Messwert</translation>
    </message>
    <message>
        <source>job %1 measures no lot</source>
        <translation>Auftrag %1 misst kein Los</translation>
    </message>
    <message>
        <source>run %1 found no resistance of the leads: %2</source>
        <translation>Lauf %1 fand keinen Widerstand der Leitungen: %2</translation>
    </message>
    <message>
        <source>run %1 has too few readings before the output went on to tell its zero</source>
        <translation>Lauf %1 hat zu wenige Messwerte vor dem Einschalten, um den Nullpunkt zu nennen</translation>
    </message>
    <message>
        <source>a check of a lot does not say when it was made (%1)</source>
        <translation>eine Prüfung eines Loses sagt nicht, wann sie gemacht wurde (%1)</translation>
    </message>
    <message>
        <source>check %1</source>
        <translation>Prüfung %1</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/lot_units.py</name>
    <message>
        <source>Measured before the check: measure it again.</source>
        <translation>Vor der Prüfung gemessen: Messen Sie es erneut.</translation>
    </message>
    <message>
        <source>a serial has 1 to %1 characters that can be read</source>
        <translation>eine Seriennummer hat 1 bis %1 lesbare Zeichen</translation>
    </message>
    <message>
        <source>there is no unit with the key %1</source>
        <translation>es gibt keinen Prüfling mit dem Schlüssel %1</translation>
    </message>
    <message>
        <source>run %1 is not of this unit</source>
        <translation>Lauf %1 ist nicht von diesem Prüfling</translation>
    </message>
    <message>
        <source>lot "%1" has no limits yet that a unit could be judged by</source>
        <translation>Los „%1“ hat noch keine Grenzen, nach denen ein Prüfling beurteilt werden könnte</translation>
    </message>
    <message>
        <source>Check due: %1.</source>
        <translation>Prüfung fällig: %1.</translation>
    </message>
    <message>
        <source>Not judged. %1</source>
        <translation>Ohne Urteil. %1</translation>
    </message>
    <message>
        <source>lot "%1" was closed at %2</source>
        <translation>Los „%1“ wurde %2 abgeschlossen</translation>
    </message>
    <message>
        <source>unit %1</source>
        <translation>Prüfling %1</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/lots.py</name>
    <message>
        <source>a lot needs a name that can be read</source>
        <translation>ein Los braucht einen lesbaren Namen</translation>
    </message>
    <message>
        <source>a lot has no serial, its units have one each: "%1" is of one unit</source>
        <translation>ein Los hat keine Seriennummer, seine Prüflinge haben je eine: „%1“ gehört zu einem Prüfling</translation>
    </message>
    <message>
        <source>there is no start test with the key %1</source>
        <translation>es gibt keine Anlaufprüfung mit dem Schlüssel %1</translation>
    </message>
    <message>
        <source>there is no lot number %1</source>
        <translation>es gibt kein Los mit der Nummer %1</translation>
    </message>
    <message>
        <source>Judged by limits %1 from now on; until now by limits %2</source>
        <translation>Von jetzt an nach Grenzen %1 beurteilt; bisher nach Grenzen %2</translation>
    </message>
    <message>
        <source>Operator from now on: %1; until now %2</source>
        <translation>Von jetzt an misst: %1; bisher %2</translation>
    </message>
    <message>
        <source>Ambient from now on: %1 °C; until now %2 °C</source>
        <translation>Umgebung von jetzt an: %1 °C; bisher %2 °C</translation>
    </message>
    <message>
        <source>lot %1</source>
        <translation>Los %1</translation>
    </message>
    <message>
        <source>ambient: %1 °C is outside -60 to 100 °C</source>
        <translation>Umgebung: %1 °C liegt außerhalb von -60 bis 100 °C</translation>
    </message>
    <message>
        <source>limits %1 are of test "%2", version %3; this lot is measured by "%4", version %5</source>
        <translation>die Grenzen %1 sind von Prüfung „%2“, Fassung %3; dieses Los wird nach „%4“, Fassung %5, gemessen</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/measured.py</name>
    <message>
        <source>the proof before in this job</source>
        <translation>der Nachweis davor in diesem Auftrag</translation>
    </message>
    <message>
        <source>the last proof of this serial</source>
        <translation>der letzte Nachweis dieser Seriennummer</translation>
    </message>
    <message>
        <source>known good ones of this model</source>
        <translation>Gutmuster dieses Modells</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/migrating.py</name>
    <message>
        <source>written by a newer program (revision %1)</source>
        <translation>von einem neueren Programm geschrieben (Stand %1)</translation>
    </message>
    <message>
        <source>rows of %1 are gone</source>
        <translation>Zeilen von %1 sind weg</translation>
    </message>
    <message>
        <source>could not be brought up to date, and is as it was: %1</source>
        <translation>ließ sich nicht auf den neuen Stand bringen und ist, wie es war: %1</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/off_by_hand.py</name>
    <message>
        <source>: its output was not confirmed off; the supply was switched off by hand</source>
        <translation>: Sein Ausgang war nicht als aus bestätigt; das Netzgerät wurde von Hand ausgeschaltet</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/opening.py</name>
    <message>
        <source>of revision %1, and open in an older program: close that one first</source>
        <translation>von Stand %1, und in einem älteren Programm geöffnet: Schließen Sie dieses zuerst</translation>
    </message>
    <message>
        <source>there is no such file</source>
        <translation>es gibt keine solche Datei</translation>
    </message>
    <message>
        <source>written by a newer program: it is of revision %1, this program goes to %2</source>
        <translation>von einem neueren Programm geschrieben: Es hat Stand %1, dieses Programm geht bis %2</translation>
    </message>
    <message>
        <source>a backup, which stays as it is: restore it, or copy it elsewhere to look into it</source>
        <translation>eine Sicherung, die bleibt, wie sie ist: Stellen Sie sie wieder her, oder kopieren Sie sie anderswohin, um hineinzusehen</translation>
    </message>
    <message>
        <source>the ledger is gone, but %1%2 is there: move it away first</source>
        <translation>das Auftragsbuch ist weg, aber %1%2 ist da: Schieben Sie es zuerst beiseite</translation>
    </message>
    <message>
        <source>the ledger is gone, but its backups are there: restore one, or move them away first</source>
        <translation>das Auftragsbuch ist weg, aber seine Sicherungen sind da: Stellen Sie eine wieder her, oder schieben Sie sie zuerst beiseite</translation>
    </message>
    <message>
        <source>not a file</source>
        <translation>keine Datei</translation>
    </message>
    <message>
        <source>not a ledger</source>
        <translation>kein Auftragsbuch</translation>
    </message>
    <message>
        <source>a database, but not a ledger</source>
        <translation>eine Datenbank, aber kein Auftragsbuch</translation>
    </message>
    <message>
        <source>its header is damaged</source>
        <translation>sein Kopf ist beschädigt</translation>
    </message>
    <message>
        <source>it does not say which revision it is of</source>
        <translation>es sagt nicht, welchen Stand es hat</translation>
    </message>
    <message>
        <source>its table %1 has no %2</source>
        <translation>seiner Tabelle %1 fehlt %2</translation>
    </message>
    <message>
        <source>it has a trigger, view or virtual table, %1, that is not this program's</source>
        <translation>es hat einen Auslöser, eine Sicht oder virtuelle Tabelle, %1, die nicht von diesem Programm ist</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/rows.py</name>
    <message>
        <source>run %1</source>
        <translation>Lauf %1</translation>
    </message>
    <message>
        <source>entry %1</source>
        <translation>Eintrag %1</translation>
    </message>
    <message>
        <source>event %1 of run %2 can't be read (%3)</source>
        <translation>Ereignis %1 von Lauf %2 ist nicht lesbar (%3)</translation>
    </message>
    <message>
        <source>event %1 of run %2</source>
        <translation>Ereignis %1 von Lauf %2</translation>
    </message>
    <message>
        <source>the trace of run %1: %2</source>
        <translation>die Aufzeichnung von Lauf %1: %2</translation>
    </message>
    <message>
        <source>curve %1 of run %2: %3</source>
        <translation>Kurve %1 von Lauf %2: %3</translation>
    </message>
    <message>
        <source>%1 can't be read (%2)</source>
        <translation>%1 ist nicht lesbar (%2)</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/run_record.py</name>
    <message>
        <source>the program ended before the run did</source>
        <translation>das Programm endete vor dem Lauf</translation>
    </message>
    <message>
        <source>what the rescue wrote can't be read: %1</source>
        <translation>was die Rettung schrieb, ist nicht lesbar: %1</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/sql_errors.py</name>
    <message>
        <source>another program holds the ledger</source>
        <translation>ein anderes Programm hält das Auftragsbuch fest</translation>
    </message>
    <message>
        <source>another part of the program holds the ledger</source>
        <translation>ein anderer Teil des Programms hält das Auftragsbuch fest</translation>
    </message>
    <message>
        <source>no space is left where the ledger lives</source>
        <translation>wo das Auftragsbuch liegt, ist kein Platz mehr</translation>
    </message>
    <message>
        <source>the file can't be written</source>
        <translation>die Datei lässt sich nicht schreiben</translation>
    </message>
    <message>
        <source>the file or its folder can't be written</source>
        <translation>die Datei oder ihr Ordner lässt sich nicht schreiben</translation>
    </message>
    <message>
        <source>the file is damaged</source>
        <translation>die Datei ist beschädigt</translation>
    </message>
    <message>
        <source>it holds something that its own rules forbid</source>
        <translation>es enthält etwas, das seine eigenen Regeln verbieten</translation>
    </message>
    <message>
        <source>the file was moved or removed while it was open</source>
        <translation>die Datei wurde verschoben oder entfernt, während sie offen war</translation>
    </message>
    <message>
        <source>the disk reported an error</source>
        <translation>der Datenträger meldet einen Fehler</translation>
    </message>
    <message>
        <source>the disk can't be written</source>
        <translation>der Datenträger lässt sich nicht beschreiben</translation>
    </message>
    <message>
        <source>the quota is used up where the ledger lives</source>
        <translation>wo das Auftragsbuch liegt, ist das Kontingent aufgebraucht</translation>
    </message>
    <message>
        <source>the file is damaged (%1)</source>
        <translation>die Datei ist beschädigt (%1)</translation>
    </message>
    <message>
        <source>this can't be kept in the ledger: %1</source>
        <translation>das lässt sich nicht im Auftragsbuch behalten: %1</translation>
    </message>
    <message>
        <source>the file can't be used</source>
        <translation>die Datei lässt sich nicht benutzen</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/start_tests.py</name>
    <message>
        <source>start test "%1", version %2, is locked and says otherwise: what differs is another version, %3 or above</source>
        <translation>Anlaufprüfung „%1“, Fassung %2, ist festgelegt und sagt etwas anderes: Was abweicht, ist eine andere Fassung, %3 oder höher</translation>
    </message>
    <message>
        <source>start test %1</source>
        <translation>Anlaufprüfung %1</translation>
    </message>
    <message>
        <source>%1 is not what was locked</source>
        <translation>%1 ist nicht, was festgelegt wurde</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/store.py</name>
    <message>
        <source>another program has this ledger open for writing, mostly a window: here it can be read, not changed, until that is closed</source>
        <translation>ein anderes Programm hat dieses Auftragsbuch zum Schreiben offen, meist ein Fenster: Hier lässt es sich lesen, nicht ändern, bis jenes geschlossen ist</translation>
    </message>
    <message>
        <source>changed by another program: of revision %1 now, not %2</source>
        <translation>von einem anderen Programm geändert: jetzt von Stand %1, nicht %2</translation>
    </message>
    <message>
        <source>there is no job number %1</source>
        <translation>es gibt keinen Auftrag mit der Nummer %1</translation>
    </message>
    <message>
        <source>warranty: %1 days</source>
        <translation>Gewährleistung: %1 Tage</translation>
    </message>
    <message>
        <source>job %1 was closed at %2; a correction is a new entry</source>
        <translation>Auftrag %1 wurde %2 abgeschlossen; eine Berichtigung ist ein neuer Eintrag</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/supplies.py</name>
    <message>
        <source>not all</source>
        <translation>nicht alle</translation>
    </message>
    <message>
        <source>at output %1</source>
        <translation>an Ausgang %1</translation>
    </message>
    <message>
        <source>Supply checked on %1%2, %3 within what was stated; no calibration.</source>
        <translation>Netzgerät geprüft am %1%2, %3 innerhalb der Angaben; keine Kalibrierung.</translation>
    </message>
    <message>
        <source>what is kept of a supply can't be read: %1</source>
        <translation>was von einem Netzgerät gemerkt ist, ist nicht lesbar: %1</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/unlocks.py</name>
    <message>
        <source>unlocked by %1 until %2 UTC: %3</source>
        <translation>freigegeben von %1 bis %2 UTC: %3</translation>
    </message>
    <message>
        <source>nothing can be unlocked: %1 gives no [unlocked] ceilings</source>
        <translation>nichts lässt sich freigeben: %1 gibt keine Grenzwerte unter [unlocked]</translation>
    </message>
    <message>
        <source>who unlocks</source>
        <translation>wer freigibt</translation>
    </message>
    <message>
        <source>the reason</source>
        <translation>der Grund</translation>
    </message>
    <message>
        <source>the reason: "%1" is one word; say in a few why the usual ceilings don't do</source>
        <translation>der Grund: „%1“ ist ein Wort; sagen Sie in wenigen, warum die üblichen Grenzwerte nicht reichen</translation>
    </message>
    <message>
        <source>job %1 is closed: nothing is run on it that could be unlocked</source>
        <translation>Auftrag %1 ist abgeschlossen: Es läuft nichts mehr, wofür freigegeben werden könnte</translation>
    </message>
    <message>
        <source>unlock %1 can't be read (%2)</source>
        <translation>Freigabe %1 ist nicht lesbar (%2)</translation>
    </message>
    <message>
        <source>unlock %1 has characters that are never written</source>
        <translation>Freigabe %1 hat Zeichen, die nie geschrieben werden</translation>
    </message>
    <message>
        <source>%1: not said; an unlock is kept with it</source>
        <translation>%1: nicht gesagt; eine Freigabe wird damit vermerkt</translation>
    </message>
</context>
<context>
    <name>benchlog/ledger/waiting.py</name>
    <message>
        <source>Work goes on</source>
        <translation>Arbeit geht weiter</translation>
    </message>
    <message>
        <source>Waits for approval</source>
        <translation>Wartet auf Zustimmung</translation>
    </message>
    <message>
        <source>Waits for a part</source>
        <translation>Wartet auf ein Teil</translation>
    </message>
    <message>
        <source>Waits for the owner</source>
        <translation>Wartet auf den Eigentümer</translation>
    </message>
    <message>
        <source>a job is closed with its cause and its outcome</source>
        <translation>ein Auftrag wird mit seiner Ursache und seinem Ergebnis abgeschlossen</translation>
    </message>
    <message>
        <source>job %1 was closed at %2</source>
        <translation>Auftrag %1 wurde %2 abgeschlossen</translation>
    </message>
</context>
<context>
    <name>benchlog/money.py</name>
    <message>
        <source>"%1" is not an amount of money; write it as 12.50</source>
        <translation>„%1“ ist kein Geldbetrag; schreiben Sie ihn wie 12.50</translation>
    </message>
    <message>
        <source>"%1" has more than two decimals: a price is in whole cents</source>
        <translation>„%1“ hat mehr als zwei Nachkommastellen: Ein Preis ist in ganzen Cent</translation>
    </message>
    <message>
        <source>"%1" is above %2</source>
        <translation>„%1“ liegt über %2</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/align.py</name>
    <message>
        <source>the curve and the readback share no edge by which one could be laid on the other</source>
        <translation>die Kurve und die Rückmessung haben keine gemeinsame Flanke, an der die eine auf die andere gelegt werden könnte</translation>
    </message>
    <message>
        <source>a curve of two samples or more, and a window above zero, are needed</source>
        <translation>gebraucht werden eine Kurve aus zwei Punkten oder mehr und ein Fenster über null</translation>
    </message>
    <message>
        <source>within %1 s of the place named</source>
        <translation>höchstens %1 s neben der genannten Stelle</translation>
    </message>
    <message>
        <source>the curve lasts %1 s, and fewer than %2 readings%3 lie within it</source>
        <translation>die Kurve dauert %1 s, und weniger als %2 Messwerte%3 liegen darin</translation>
    </message>
    <message>
        <source>%1 s fits, and %2 s nearly as well; say near which it belongs</source>
        <translation>%1 s passt, und %2 s fast so gut; sagen Sie, wo etwa sie hingehört</translation>
    </message>
    <message>
        <source>the averaging window</source>
        <translation>das Mittelungsfenster</translation>
    </message>
    <message>
        <source>the pace of readings</source>
        <translation>der Takt der Messwerte</translation>
    </message>
    <message>
        <source>between %1 and %2 s, which is wider than %3 of %4 s</source>
        <translation>zwischen %1 und %2 s; das ist breiter als %3 von %4 s</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/compare.py</name>
    <message>
        <source>leads are swapped</source>
        <translation>Leitungen sind getauscht</translation>
    </message>
    <message>
        <source>leads swapped</source>
        <translation>Leitungen getauscht</translation>
    </message>
    <message>
        <source>swapped back</source>
        <translation>zurückgetauscht</translation>
    </message>
    <message>
        <source>which way round the leads were is not recorded</source>
        <translation>wie herum die Leitungen waren, ist nicht vermerkt</translation>
    </message>
    <message>
        <source>warm-up is not known</source>
        <translation>wie warm er war, ist nicht bekannt</translation>
    </message>
    <message>
        <source>resistance changes by 50 to 100 % with the brush angle</source>
        <translation>der Widerstand ändert sich mit der Stellung der Bürsten um 50 bis 100 %</translation>
    </message>
    <message>
        <source>measured start</source>
        <translation>gemessener Anlauf</translation>
    </message>
    <message>
        <source>nothing to compare with</source>
        <translation>nichts zum Vergleichen</translation>
    </message>
    <message>
        <source>steady current</source>
        <translation>stetiger Strom</translation>
    </message>
    <message>
        <source>run-up time constant</source>
        <translation>Zeitkonstante des Hochlaufs</translation>
    </message>
    <message>
        <source>%1 against %2</source>
        <translation>%1 gegen %2</translation>
    </message>
    <message>
        <source>leads of %1 against %2</source>
        <translation>Leitungen von %1 gegen %2</translation>
    </message>
    <message>
        <source>%1 °C against %2 °C</source>
        <translation>%1 °C gegen %2 °C</translation>
    </message>
    <message>
        <source>the leads were swapped in one of the runs</source>
        <translation>die Leitungen waren in einem der Läufe getauscht</translation>
    </message>
    <message>
        <source>winding at %1 times its cold resistance against %2: another warm-up, or another angle of the brushes</source>
        <translation>Wicklung beim %1-Fachen ihres kalten Widerstands gegen das %2-Fache: anders warm, oder eine andere Stellung der Bürsten</translation>
    </message>
    <message>
        <source>driven for %1 s before against %2 s</source>
        <translation>davor %1 s getrieben gegen %2 s</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>Not comparable: %1.</source>
        <translation>Nicht vergleichbar: %1.</translation>
    </message>
    <message>
        <source>The steady current can't be told in one of them: nothing to compare.</source>
        <translation>Der stetige Strom ist in einem davon nicht zu nennen: nichts zum Vergleichen.</translation>
    </message>
    <message>
        <source>as the known good ones</source>
        <translation>wie die Gutmuster</translation>
    </message>
    <message>
        <source>no difference that these readings can show</source>
        <translation>kein Unterschied, den diese Messwerte zeigen können</translation>
    </message>
    <message>
        <source>Steady current %1: %2.</source>
        <translation>Stetiger Strom %1: %2.</translation>
    </message>
    <message>
        <source>The resistance is %1: %2.</source>
        <translation>Der Widerstand ist %1: %2.</translation>
    </message>
    <message>
        <source>Steady current fell, %1, and the resistance is higher: signs of %2.</source>
        <translation>Der stetige Strom fiel, %1, und der Widerstand ist höher: Zeichen für %2.</translation>
    </message>
    <message>
        <source>Steady current fell, %1: it turns more freely, or with less load.%2</source>
        <translation>Der stetige Strom fiel, %1: Er dreht freier, oder mit weniger Last.%2</translation>
    </message>
    <message>
        <source>Weaker: steady current rose, %1, and the resistance is lower: signs of shorted turns.</source>
        <translation>Schwächer: Der stetige Strom stieg, %1, und der Widerstand ist niedriger: Zeichen für Windungsschluss.</translation>
    </message>
    <message>
        <source>Weaker: steady current rose, %1, and the run-up takes longer at the same resistance: signs of a weak magnet. Its speed is not measured.</source>
        <translation>Schwächer: Der stetige Strom stieg, %1, und der Hochlauf dauert bei gleichem Widerstand länger: Zeichen für einen schwachen Magneten. Seine Drehzahl ist nicht gemessen.</translation>
    </message>
    <message>
        <source>Steady current rose, %1: it turns harder, or with more load.%2</source>
        <translation>Der stetige Strom stieg, %1: Er dreht schwerer, oder mit mehr Last.%2</translation>
    </message>
    <message>
        <source>a high resistance in the circuit (brush, lead)</source>
        <translation>einen hohen Widerstand im Stromkreis (Bürste, Leitung)</translation>
    </message>
    <message>
        <source>another angle of the brushes, or %1</source>
        <translation>eine andere Stellung der Bürsten, oder %1</translation>
    </message>
    <message>
        <source>it may be the angle of the brushes</source>
        <translation>es kann die Stellung der Bürsten sein</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/compare_starts.py</name>
    <message>
        <source>No figure is told in both: nothing to compare.</source>
        <translation>Kein Kennwert ist in beiden zu nennen: nichts zum Vergleichen.</translation>
    </message>
    <message>
        <source>No difference that these starts can show.</source>
        <translation>Kein Unterschied, den diese Anläufe zeigen können.</translation>
    </message>
    <message>
        <source>%1 %2, %3 to %4</source>
        <translation>%1 %2, %3 bis %4</translation>
    </message>
    <message>
        <source>It turns %1.</source>
        <translation>Er dreht %1.</translation>
    </message>
    <message>
        <source>harder, or with more load</source>
        <translation>schwerer, oder mit mehr Last</translation>
    </message>
    <message>
        <source>more freely, or with less load</source>
        <translation>freier, oder mit weniger Last</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/curve_limits.py</name>
    <message>
        <source>not every unit has its curves</source>
        <translation>nicht jeder Prüfling hat seine Kurven</translation>
    </message>
    <message>
        <source>the curves have too few readings in common</source>
        <translation>die Kurven haben zu wenige gemeinsame Messwerte</translation>
    </message>
    <message>
        <source>the current reads zero at times: too small for this supply</source>
        <translation>der Strom liest sich zeitweise als null: zu klein für dieses Netzgerät</translation>
    </message>
    <message>
        <source>Where it would be below zero there is no lower limit.</source>
        <translation>Wo sie unter null läge, gibt es keine untere Grenze.</translation>
    </message>
    <message>
        <source>%1 of such motors or more stay inside over the whole curve, %2 sure: readback, the mean of %3 %4, from %5 to %6 after the trigger.%7</source>
        <translation>%1 solcher Motoren oder mehr bleiben über die ganze Kurve darin, zu %2 sicher: Rückmessung, das Mittel über %3 %4, von %5 bis %6 nach dem Trigger.%7</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/drift.py</name>
    <message>
        <source>%1 times and %2 currents do not fit one another</source>
        <translation>%1 Zeiten und %2 Ströme passen nicht zueinander</translation>
    </message>
    <message>
        <source>too little was recorded to tell a drift</source>
        <translation>es ist zu wenig aufgezeichnet, um eine Drift zu nennen</translation>
    </message>
    <message>
        <source>from %1 to %2 in %3</source>
        <translation>von %1 auf %2 in %3</translation>
    </message>
    <message>
        <source>the current fell %1 and has been flat for the last %2</source>
        <translation>der Strom fiel %1 und ist seit %2 flach</translation>
    </message>
    <message>
        <source>the current still falls, %1</source>
        <translation>der Strom fällt noch, %1</translation>
    </message>
    <message>
        <source>the current rises: %1 at its lowest, now %2: binding or brushes</source>
        <translation>der Strom steigt: am niedrigsten %1, jetzt %2: Klemmen oder Bürsten</translation>
    </message>
    <message>
        <source>the current is flat, %1 over %2</source>
        <translation>der Strom ist flach, %1 über %2</translation>
    </message>
    <message>
        <source>whether the current still changes can't be told, %1 at the end</source>
        <translation>ob der Strom sich noch ändert, lässt sich nicht sagen, %1 am Ende</translation>
    </message>
    <message>
        <source>%1 s is before the last reading</source>
        <translation>%1 s liegt vor dem letzten Messwert</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/fit.py</name>
    <message>
        <source>%1 readings are too few</source>
        <translation>%1 Messwerte sind zu wenige</translation>
    </message>
    <message>
        <source>no run-up is seen in the readings: over before the first of them, or none</source>
        <translation>in den Messwerten ist kein Hochlauf zu sehen: vor dem ersten zu Ende, oder keiner</translation>
    </message>
    <message>
        <source>shorter than %1 s</source>
        <translation>kürzer als %1 s</translation>
    </message>
    <message>
        <source>between %1 and %2 s: not identifiable at this sampling</source>
        <translation>zwischen %1 und %2 s: bei diesem Takt nicht zu bestimmen</translation>
    </message>
    <message>
        <source>the record lasts %1 s, the run-up has a time constant of %2 s</source>
        <translation>die Aufzeichnung dauert %1 s, der Hochlauf hat eine Zeitkonstante von %2 s</translation>
    </message>
    <message>
        <source>between %1 and %2 A: not identifiable with this readback</source>
        <translation>zwischen %1 und %2 A: mit dieser Rückmessung nicht zu bestimmen</translation>
    </message>
    <message>
        <source>needs the steady current and the resistance of the probe</source>
        <translation>braucht den stetigen Strom und den Widerstand aus der Messung</translation>
    </message>
    <message>
        <source>needs the resistance of the probe</source>
        <translation>braucht den Widerstand aus der Messung</translation>
    </message>
    <message>
        <source>already turning at the first reading, %1 s after the start</source>
        <translation>drehte schon beim ersten Messwert, %1 s nach dem Anlauf</translation>
    </message>
    <message>
        <source>the current did not leave the line of a locked rotor for good</source>
        <translation>der Strom verließ die Linie eines blockierten Läufers nicht auf Dauer</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/friction.py</name>
    <message>
        <source>the current was steady at no voltage</source>
        <translation>der Strom war bei keiner Spannung stetig</translation>
    </message>
    <message>
        <source>not identifiable from one voltage</source>
        <translation>aus einer Spannung nicht zu bestimmen</translation>
    </message>
    <message>
        <source>between %1 and %2 A of %3 A would flow at no speed: not identifiable with this readback</source>
        <translation>zwischen %1 und %2 A von %3 A würden im Stillstand fließen: mit dieser Rückmessung nicht zu bestimmen</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/insulation.py</name>
    <message>
        <source>thermal class: "%1" is none of %2</source>
        <translation>Wärmeklasse: „%1“ ist keine von %2</translation>
    </message>
    <message>
        <source>the hot spot is 5 K or more above the average</source>
        <translation>die heißeste Stelle liegt 5 K oder mehr über dem Mittel</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/interleave.py</name>
    <message>
        <source>each point is still an average over the supply's window</source>
        <translation>jeder Punkt ist noch immer ein Mittel über das Fenster des Netzgeräts</translation>
    </message>
    <message>
        <source>one delay for each curve</source>
        <translation>eine Verzögerung für jede Kurve</translation>
    </message>
    <message>
        <source>the starts were all read at the same phase: there is nothing to fill in</source>
        <translation>die Anläufe wurden alle zur selben Phase gelesen: Es gibt nichts aufzufüllen</translation>
    </message>
    <message>
        <source>the starts were averaged over different windows</source>
        <translation>die Anläufe wurden über verschiedene Fenster gemittelt</translation>
    </message>
    <message>
        <source>too few readings of a start to tell whether it was the same each time</source>
        <translation>zu wenige Messwerte eines Anlaufs, um zu sagen, ob es jedes Mal derselbe war</translation>
    </message>
    <message>
        <source>the starts differ by %1 of the surge, more than their readings scatter: it was not the same start each time</source>
        <translation>die Anläufe unterscheiden sich um %1 des Stromstoßes, mehr als ihre Messwerte streuen: Es war nicht jedes Mal derselbe Anlauf</translation>
    </message>
    <message>
        <source>%1 starts, the same within what their readings scatter; %2%3</source>
        <translation>%1 Anläufe, gleich im Rahmen ihrer Streuung; %2%3</translation>
    </message>
    <message>
        <source>%1 starts together</source>
        <translation>%1 Anläufe zusammen</translation>
    </message>
    <message>
        <source>; between %1 and %2 none of them was read</source>
        <translation>; zwischen %1 und %2 wurde keiner von ihnen gelesen</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/judging.py</name>
    <message>
        <source>told beside the figures and decides nothing: it changes with the angle of the brushes</source>
        <translation>steht neben den Kennwerten und entscheidet nichts: Es ändert sich mit der Stellung der Bürsten</translation>
    </message>
    <message>
        <source>not told by these starts</source>
        <translation>aus diesen Anläufen nicht zu nennen</translation>
    </message>
    <message>
        <source>no limits: %1</source>
        <translation>keine Grenzen: %1</translation>
    </message>
    <message>
        <source>none were made</source>
        <translation>es wurden keine gebildet</translation>
    </message>
    <message>
        <source>its interval, %1 to %2, reaches over the limit</source>
        <translation>sein Bereich, %1 bis %2, reicht über die Grenze</translation>
    </message>
    <message>
        <source>no curve was captured</source>
        <translation>es wurde keine Kurve aufgenommen</translation>
    </message>
    <message>
        <source>its curve covers too little of the band's time</source>
        <translation>seine Kurve deckt zu wenig von der Zeit des Bands</translation>
    </message>
    <message>
        <source>read every %1, the known good ones every %2</source>
        <translation>alle %1 gelesen, die Gutmuster alle %2</translation>
    </message>
    <message>
        <source>%1 ms without a reading</source>
        <translation>%1 ms ohne Messwert</translation>
    </message>
    <message>
        <source>It can't be judged: there are no limits for any figure.</source>
        <translation>Es lässt sich nicht beurteilen: Es gibt für keinen Kennwert Grenzen.</translation>
    </message>
    <message>
        <source>Not judged: %1.</source>
        <translation>Nicht beurteilt: %1.</translation>
    </message>
    <message>
        <source>the curve (%1)</source>
        <translation>die Kurve (%1)</translation>
    </message>
    <message>
        <source>It can't be told: %1.</source>
        <translation>Es lässt sich nicht sagen: %1.</translation>
    </message>
    <message>
        <source>Inside, but its interval reaches over a limit: %1.</source>
        <translation>Innerhalb, aber das Intervall reicht über eine Grenze: %1.</translation>
    </message>
    <message>
        <source>Judged by %1 of the %2 starts that the limits are about: by wider limits, and without the curve.</source>
        <translation>Beurteilt nach %1 der %2 Anläufe, für die die Grenzen gelten: nach weiteren Grenzen und ohne die Kurve.</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/leads.py</name>
    <message>
        <source>no current flows: join the two clips and measure again</source>
        <translation>es fließt kein Strom: Klemmen Sie die beiden Klemmen zusammen und messen Sie erneut</translation>
    </message>
    <message>
        <source>%1 Ω is too much for leads: is a motor still between them, or a clip loose?</source>
        <translation>%1 Ω ist zu viel für Leitungen: Ist noch ein Motor dazwischen, oder eine Klemme lose?</translation>
    </message>
    <message>
        <source>at %1 A the leads take %2 mV</source>
        <translation>bei %1 A fallen an den Leitungen %2 mV ab</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/limits.py</name>
    <message>
        <source>%1 known good units or more are needed; there are %2</source>
        <translation>%1 Gutmuster oder mehr sind nötig; es sind %2</translation>
    </message>
    <message>
        <source>a known good unit has no start that was captured</source>
        <translation>ein Gutmuster hat keinen aufgenommenen Anlauf</translation>
    </message>
    <message>
        <source>can't be told in %1 of %2 units: %3</source>
        <translation>ist bei %1 von %2 Prüflingen nicht zu nennen: %3</translation>
    </message>
    <message>
        <source>the units read only %1 different values: the readback is too coarse to tell them</source>
        <translation>die Prüflinge lesen sich mit nur %1 verschiedenen Werten: Die Rückmessung ist zu grob, um sie zu unterscheiden</translation>
    </message>
    <message>
        <source>no lower limit: it would be below zero</source>
        <translation>keine untere Grenze: Sie läge unter null</translation>
    </message>
    <message>
        <source>Units were started once: how well one motor repeats is not known.</source>
        <translation>Die Prüflinge liefen einmal an: Wie gut sich ein Motor wiederholt, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>One motor spreads as far as the units do in %1: the test can't tell them apart there.</source>
        <translation>Ein Motor streut bei %1 so weit wie die Prüflinge: Dort kann die Prüfung sie nicht unterscheiden.</translation>
    </message>
    <message>
        <source>Whether units differ by more than one motor's starts is not known in %1.</source>
        <translation>Ob sich Prüflinge mehr unterscheiden als die Anläufe eines Motors, ist bei %1 nicht bekannt.</translation>
    </message>
    <message>
        <source>The limits are wide for %1: more known good units would narrow them.</source>
        <translation>Die Grenzen sind weit bei %1: Mehr Gutmuster würden sie enger machen.</translation>
    </message>
    <message>
        <source>The units were read every %1 to %2.</source>
        <translation>Die Prüflinge wurden alle %1 bis %2 gelesen.</translation>
    </message>
    <message>
        <source>no reason given</source>
        <translation>kein Grund genannt</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/meter.py</name>
    <message>
        <source>zeroing takes two readings or more</source>
        <translation>der Nullabgleich braucht zwei Messwerte oder mehr</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/motion.py</name>
    <message>
        <source>not turning, or creeping</source>
        <translation>dreht nicht oder kriecht</translation>
    </message>
    <message>
        <source>a turning rotor's voltage</source>
        <translation>die Spannung eines drehenden Läufers</translation>
    </message>
    <message>
        <source>open, or a lifted brush</source>
        <translation>unterbrochen, oder eine abgehobene Bürste</translation>
    </message>
    <message>
        <source>too few whole readings to tell</source>
        <translation>zu wenige ganze Messwerte, um es zu sagen</translation>
    </message>
    <message>
        <source>at %1 A the terminals held %2 V: more than a resistance, less than is sure to be a rotor</source>
        <translation>bei %1 A hielten die Klemmen %2 V: mehr als ein Widerstand, weniger als sicher ein Läufer</translation>
    </message>
    <message>
        <source>only %1 A flowed at %2 V, where a standing motor of %3 Ω draws %4 A, and no rotor's voltage was left to be read: a bad contact, an opened protector, or a rotor that stops too fast</source>
        <translation>nur %1 A flossen bei %2 V, wo ein stehender Motor mit %3 Ω %4 A zieht, und keine Spannung eines Läufers war mehr zu lesen: ein schlechter Kontakt, ein ausgelöster Schutz, oder ein Läufer, der zu schnell stehen bleibt</translation>
    </message>
    <message>
        <source>at %1 A the volts fell to %2 V, as a winding or its contacts hold</source>
        <translation>bei %1 A fiel die Spannung auf %2 V, wie eine Wicklung oder ihre Kontakte sie halten</translation>
    </message>
    <message>
        <source>at %1 A the volts climbed to %2 V: an open circuit, not a rotor</source>
        <translation>bei %1 A stiegen die Volt auf %2 V: ein offener Stromkreis, kein Läufer</translation>
    </message>
    <message>
        <source>volts and current before the coast do not belong to one turning motor</source>
        <translation>Volt und Strom vor dem Auslauf gehören nicht zu einem drehenden Motor</translation>
    </message>
    <message>
        <source>at %1 A the terminals still held %2 V: a turning rotor</source>
        <translation>bei %1 A hielten die Klemmen noch %2 V: ein drehender Läufer</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/overlay.py</name>
    <message>
        <source>start %1</source>
        <translation>Anlauf %1</translation>
    </message>
    <message>
        <source>an overlay takes a curve of two readings or more</source>
        <translation>zum Übereinanderlegen braucht es eine Kurve aus zwei Messwerten oder mehr</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/repeatability.py</name>
    <message>
        <source>repeatability takes two motors or more, and one of them started twice or more</source>
        <translation>die Wiederholbarkeit braucht zwei Motoren oder mehr, und einer davon muss zweimal oder öfter angelaufen sein</translation>
    </message>
    <message>
        <source>One motor started %1 times spreads %2 in %3; the units spread %4: %5.</source>
        <translation>Ein Motor, %1-mal angelaufen, streut um %2 bei %3; die Prüflinge streuen um %4: %5.</translation>
    </message>
    <message>
        <source>the test can tell them apart</source>
        <translation>die Prüfung kann sie unterscheiden</translation>
    </message>
    <message>
        <source>the test can't tell them apart</source>
        <translation>die Prüfung kann sie nicht unterscheiden</translation>
    </message>
    <message>
        <source>too few starts or units to say whether the test can tell them apart</source>
        <translation>zu wenige Anläufe oder Prüflinge, um zu sagen, ob die Prüfung sie unterscheiden kann</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/start_figures.py</name>
    <message>
        <source>peak readback</source>
        <translation>Spitze</translation>
    </message>
    <message>
        <source>%1 readings of it alone are too few</source>
        <translation>%1 Messwerte davon allein sind zu wenige</translation>
    </message>
    <message>
        <source>the current was still changing at the end</source>
        <translation>der Strom änderte sich am Ende noch</translation>
    </message>
    <message>
        <source>too few readings of the steady part stand alone</source>
        <translation>zu wenige Messwerte des stetigen Teils stehen für sich</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/start_words.py</name>
    <message>
        <source>more current than a weak magnet with that run-up explains</source>
        <translation>mehr Strom, als ein schwacher Magnet mit diesem Hochlauf erklärt</translation>
    </message>
    <message>
        <source>the steady current is most of the peak</source>
        <translation>der stetige Strom ist der größte Teil der Spitze</translation>
    </message>
    <message>
        <source>It draws much and shows no run-up: it may not have turned.</source>
        <translation>Er zieht viel und zeigt keinen Hochlauf: Vielleicht hat er nicht gedreht.</translation>
    </message>
    <message>
        <source>It draws less from the first reading on: more resistance in the circuit (brush, lead, winding).</source>
        <translation>Er zieht vom ersten Messwert an weniger: mehr Widerstand im Stromkreis (Bürste, Leitung, Wicklung).</translation>
    </message>
    <message>
        <source>It draws more from the first reading on, and keeps it up: signs of shorted turns.</source>
        <translation>Er zieht vom ersten Messwert an mehr und bleibt dabei: Zeichen für Windungsschluss.</translation>
    </message>
    <message>
        <source>It draws more from the first reading on, and keeps it up: friction or shorted turns.</source>
        <translation>Er zieht vom ersten Messwert an mehr und bleibt dabei: Reibung oder Windungsschluss.</translation>
    </message>
    <message>
        <source>It draws more from the first reading on, and starts slowly: signs of shorted turns or a weak magnet.</source>
        <translation>Er zieht vom ersten Messwert an mehr und läuft langsam an: Zeichen für Windungsschluss oder einen schwachen Magneten.</translation>
    </message>
    <message>
        <source>It draws more at first: less resistance in the circuit, or a colder winding.</source>
        <translation>Er zieht zuerst mehr: weniger Widerstand im Stromkreis, oder eine kältere Wicklung.</translation>
    </message>
    <message>
        <source>It starts slowly and then draws what the others do: more to set moving, or a weaker magnet.</source>
        <translation>Er läuft langsam an und zieht dann, was die anderen ziehen: mehr in Bewegung zu setzen, oder ein schwächerer Magnet.</translation>
    </message>
    <message>
        <source>It starts slowly: friction, not the winding.</source>
        <translation>Er läuft langsam an: Reibung, nicht die Wicklung.</translation>
    </message>
    <message>
        <source>It starts slowly: friction or a weak magnet, not the winding.</source>
        <translation>Er läuft langsam an: Reibung oder ein schwacher Magnet, nicht die Wicklung.</translation>
    </message>
    <message>
        <source>It turns harder: friction or load, not the winding.</source>
        <translation>Er dreht schwerer: Reibung oder Last, nicht die Wicklung.</translation>
    </message>
    <message>
        <source>It draws more when it runs: friction, load or a weak magnet, not the winding.</source>
        <translation>Er zieht mehr, wenn er läuft: Reibung, Last oder ein schwacher Magnet, nicht die Wicklung.</translation>
    </message>
    <message>
        <source>It starts slowly and then draws what the others do: more to set moving, more resistance or a weaker magnet.</source>
        <translation>Er läuft langsam an und zieht dann, was die anderen ziehen: mehr in Bewegung zu setzen, mehr Widerstand oder ein schwächerer Magnet.</translation>
    </message>
    <message>
        <source>It draws less when it runs: it turns more freely, or with less load.</source>
        <translation>Er zieht weniger, wenn er läuft: Er dreht freier, oder mit weniger Last.</translation>
    </message>
    <message>
        <source>Its current is rougher: brushes, contact, or something that catches.</source>
        <translation>Sein Strom ist rauer: Bürsten, Kontakt, oder etwas, das hakt.</translation>
    </message>
    <message>
        <source>It takes more energy: friction, load or a slower start.</source>
        <translation>Er braucht mehr Energie: Reibung, Last oder ein langsamerer Anlauf.</translation>
    </message>
    <message>
        <source>It starts like the known good ones.</source>
        <translation>Er läuft an wie die Gutmuster.</translation>
    </message>
    <message>
        <source>All %1 figures that have limits are inside.</source>
        <translation>Alle %1 Kennwerte mit Grenzen sind innerhalb.</translation>
    </message>
    <message>
        <source>Its curve is inside.</source>
        <translation>Seine Kurve ist innerhalb.</translation>
    </message>
    <message>
        <source>Its curve is unlike those of the known good ones.</source>
        <translation>Seine Kurve ist anders als die der Gutmuster.</translation>
    </message>
    <message>
        <source>Its figures are inside; the curve is outside, most at %1.</source>
        <translation>Seine Kennwerte sind innerhalb; die Kurve ist außerhalb, am meisten bei %1.</translation>
    </message>
    <message>
        <source>It is outside in %1.</source>
        <translation>Er ist außerhalb bei %1.</translation>
    </message>
    <message>
        <source>%1 %2 like the others.</source>
        <translation>%1 %2 wie die anderen.</translation>
    </message>
    <message>
        <source>%1 %2 is %3 %4</source>
        <translation>%1 %2 ist %3 %4</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/surge.py</name>
    <message>
        <source>over before the first reading of its own</source>
        <translation>zu Ende vor dem ersten eigenen Messwert</translation>
    </message>
    <message>
        <source>over within %1 s, between two readings</source>
        <translation>zu Ende in %1 s, zwischen zwei Messwerten</translation>
    </message>
    <message>
        <source>the current did not fall</source>
        <translation>der Strom fiel nicht</translation>
    </message>
    <message>
        <source>lost in the ripple</source>
        <translation>in der Welligkeit verloren</translation>
    </message>
    <message>
        <source>not over by the end</source>
        <translation>am Ende noch nicht vorbei</translation>
    </message>
    <message>
        <source>somewhere below %1 s</source>
        <translation>irgendwo unter %1 s</translation>
    </message>
    <message>
        <source>the surge was not seen: %1</source>
        <translation>der Stromstoß war nicht zu sehen: %1</translation>
    </message>
    <message>
        <source>the surge was not seen: most of it was over before the first reading of its own</source>
        <translation>der Stromstoß war nicht zu sehen: Das meiste war vor dem ersten eigenen Messwert vorbei</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/temperature.py</name>
    <message>
        <source>the shaft may have moved</source>
        <translation>die Welle kann sich bewegt haben</translation>
    </message>
    <message>
        <source>two-body model, constants assumed</source>
        <translation>Modell mit zwei Körpern, Konstanten angenommen</translation>
    </message>
    <message>
        <source>nothing steady was read yet</source>
        <translation>es wurde noch nichts Stetiges gelesen</translation>
    </message>
    <message>
        <source>not identifiable: %1, and the motor's heat constants are not known</source>
        <translation>nicht zu bestimmen: %1, und die Wärmekonstanten des Motors sind nicht bekannt</translation>
    </message>
    <message>
        <source>the contact changed by more than heat explains</source>
        <translation>der Kontakt änderte sich mehr, als Wärme erklärt</translation>
    </message>
    <message>
        <source>from resistance, shaft unmoved since %1 s</source>
        <translation>aus dem Widerstand, Welle seit %1 s unbewegt</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/tolerance.py</name>
    <message>
        <source>a spread needs %1 values or more; there are %2</source>
        <translation>eine Streuung braucht %1 Werte oder mehr; es sind %2</translation>
    </message>
    <message>
        <source>%1: %2 is not between 0 and 1</source>
        <translation>%1: %2 liegt nicht zwischen 0 und 1</translation>
    </message>
</context>
<context>
    <name>benchlog/motor/winding.py</name>
    <message>
        <source>neither the volts nor the amps came near their limit: the readings can't be right</source>
        <translation>weder Volt noch Ampere kamen ihrer Grenze nahe: Die Messwerte können nicht stimmen</translation>
    </message>
    <message>
        <source>at %1 A the volts stay at %2 V: less than %3 Ω</source>
        <translation>bei %1 A bleiben die Volt bei %2 V: weniger als %3 Ω</translation>
    </message>
    <message>
        <source>about %1 mA flow already at %2 V: a rotor that turns freely, or a high resistance</source>
        <translation>etwa %1 mA fließen schon bei %2 V: ein Läufer, der frei dreht, oder ein hoher Widerstand</translation>
    </message>
    <message>
        <source>the volts stay at %1 V of %2 V while hardly any current is read: electronics that start and stop</source>
        <translation>die Volt bleiben bei %1 V von %2 V, während kaum Strom gelesen wird: Elektronik, die anläuft und stehen bleibt</translation>
    </message>
    <message>
        <source>up to %1 A flow at %2 V, and nothing did where less was allowed: electronics in the way, or a brush that closed</source>
        <translation>bis zu %1 A fließen bei %2 V, und nichts floss, wo weniger erlaubt war: Elektronik im Weg, oder eine Bürste, die schloss</translation>
    </message>
    <message>
        <source>no current up to %1 V: the circuit is open</source>
        <translation>kein Strom bis %1 V: Der Stromkreis ist offen</translation>
    </message>
    <message>
        <source>a winding of high resistance: its current is too small to measure well</source>
        <translation>eine Wicklung mit hohem Widerstand: Ihr Strom ist zu klein, um ihn gut zu messen</translation>
    </message>
    <message>
        <source>current starts at %1 V and does not follow the volts: electronics in the way</source>
        <translation>Strom beginnt bei %1 V und folgt den Volt nicht: Elektronik im Weg</translation>
    </message>
    <message>
        <source>at %1 V nothing flowed at first, then up to %2 A, unsteady: electronics in the way</source>
        <translation>bei %1 V floss zuerst nichts, dann bis zu %2 A, unruhig: Elektronik im Weg</translation>
    </message>
    <message>
        <source>%1 A gives %2 V and %3 A still %4 V: a diode conducts in this direction</source>
        <translation>%1 A ergeben %2 V und %3 A noch %4 V: In dieser Richtung leitet eine Diode</translation>
    </message>
    <message>
        <source>a winding; no two levels agree on its resistance: it may have turned, or the contact changed</source>
        <translation>eine Wicklung; keine zwei Stufen sind sich über ihren Widerstand einig: Sie kann gedreht haben, oder der Kontakt änderte sich</translation>
    </message>
    <message>
        <source>%1 levels agree</source>
        <translation>%1 Stufen sind sich einig</translation>
    </message>
    <message>
        <source>resistances must be above zero</source>
        <translation>Widerstände müssen über null sein</translation>
    </message>
</context>
<context>
    <name>benchlog/pictures/gif.py</name>
    <message>
        <source>has no picture in it</source>
        <translation>enthält kein Bild</translation>
    </message>
    <message>
        <source>is damaged</source>
        <translation>ist beschädigt</translation>
    </message>
    <message>
        <source>has more than %1 parts</source>
        <translation>hat mehr als %1 Teile</translation>
    </message>
</context>
<context>
    <name>benchlog/pictures/jpeg.py</name>
    <message>
        <source>has %1 scans, more than %2</source>
        <translation>hat %1 Durchgänge, mehr als %2</translation>
    </message>
</context>
<context>
    <name>benchlog/pictures/picture.py</name>
    <message>
        <source>is cut short</source>
        <translation>ist abgeschnitten</translation>
    </message>
</context>
<context>
    <name>benchlog/pictures/recognise.py</name>
    <message>
        <source>TIFF or raw</source>
        <translation>TIFF oder Rohbild</translation>
    </message>
    <message>
        <source>JPEG XL</source>
        <translation>JPEG XL</translation>
    </message>
    <message>
        <source>JPEG 2000</source>
        <translation>JPEG 2000</translation>
    </message>
    <message>
        <source>%1: is empty</source>
        <translation>%1: ist leer</translation>
    </message>
    <message>
        <source>%1: a %2 picture can't be read here; share or save it as JPEG, or set the camera to take JPEG, and attach that</source>
        <translation>%1: Ein Bild als %2 ist hier nicht lesbar; teilen oder speichern Sie es als JPEG, oder stellen Sie die Kamera auf JPEG, und hängen Sie das an</translation>
    </message>
    <message>
        <source>%1: is no picture that can be read, whatever its name says; kept as a plain file</source>
        <translation>%1: ist kein lesbares Bild, was auch der Name sagt; als einfache Datei behalten</translation>
    </message>
    <message>
        <source>%1: is of a kind that is not known here; kept as a plain file</source>
        <translation>%1: ist von einer hier unbekannten Art; als einfache Datei behalten</translation>
    </message>
    <message>
        <source>%1: %2 are more than the %3 that one file may have</source>
        <translation>%1: %2 sind mehr als die %3, die eine Datei haben darf</translation>
    </message>
    <message>
        <source>%1: a %2 picture that %3; copy it again from where it was taken, and attach that</source>
        <translation>%1: ein Bild als %2, das %3; kopieren Sie es erneut von dort, wo es aufgenommen wurde, und hängen Sie das an</translation>
    </message>
    <message>
        <source>%1: says that it is %2 × %3 pixels, more than %4 million; make it smaller, and attach that</source>
        <translation>%1: sagt, es habe %2 × %3 Bildpunkte, mehr als %4 Millionen; machen Sie es kleiner, und hängen Sie das an</translation>
    </message>
    <message>
        <source>%1: a %2 picture of %3 × %4 pixels</source>
        <translation>%1: ein Bild als %2 mit %3 × %4 Bildpunkten</translation>
    </message>
</context>
<context>
    <name>benchlog/pictures/taking.py</name>
    <message>
        <source>%1: could not be decoded here; kept without a small picture</source>
        <translation>%1: ließ sich hier nicht entschlüsseln; ohne kleines Bild behalten</translation>
    </message>
    <message>
        <source>%1: is not a file</source>
        <translation>%1: ist keine Datei</translation>
    </message>
    <message>
        <source>%1: can't be read (%2)</source>
        <translation>%1: ist nicht lesbar (%2)</translation>
    </message>
</context>
<context>
    <name>benchlog/quantities.py</name>
    <message>
        <source>(write it with a point)</source>
        <translation>(schreiben Sie sie mit Punkt)</translation>
    </message>
    <message>
        <source>(write it without a unit: %1)</source>
        <translation>(ohne Einheit schreiben: %1)</translation>
    </message>
    <message>
        <source>%1: "%2" is not a number%3</source>
        <translation>%1: „%2“ ist keine Zahl%3</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/advice.py</name>
    <message>
        <source>%1: %2 %3 is not above zero</source>
        <translation>%1: %2 %3 liegt nicht über null</translation>
    </message>
    <message>
        <source>%1: %2 %3 is above the ceiling of %4 %5</source>
        <translation>%1: %2 %3 liegt über dem Grenzwert von %4 %5</translation>
    </message>
    <message>
        <source>as it was changed by hand</source>
        <translation>wie von Hand geändert</translation>
    </message>
    <message>
        <source>Rest %1 s first, so that the next kick stays within the ceiling for %2.</source>
        <translation>Warten Sie zuerst %1 s, damit der nächste Anstoß unter dem Grenzwert bleibt: %2.</translation>
    </message>
    <message>
        <source>no motor like it was freed before</source>
        <translation>es kam noch kein Motor dieser Art frei</translation>
    </message>
    <message>
        <source>job %1 had %2 %3, above the %4's ceiling of %5 %6</source>
        <translation>Auftrag %1 hatte %2 %3, über dem Grenzwert (%4) von %5 %6</translation>
    </message>
    <message>
        <source>The rated volts.</source>
        <translation>Die Nennspannung.</translation>
    </message>
    <message>
        <source>The %1's ceiling, below the rated volts.</source>
        <translation>Der Grenzwert (%1), unter der Nennspannung.</translation>
    </message>
    <message>
        <source>No rating: puts at most %1 W into %2. Confirm it, or look for a label.</source>
        <translation>Keine Nennangabe: bringt höchstens %1 W in %2. Bestätigen Sie es, oder suchen Sie ein Schild.</translation>
    </message>
    <message>
        <source>No rating and no probe yet: a single cell's volts, for the probe.</source>
        <translation>Keine Nennangabe und noch keine Messung: die Volt einer einzelnen Zelle, für die Messung.</translation>
    </message>
    <message>
        <source>The stall current at %1, from %2: magnets bear no more for sure.</source>
        <translation>Der Blockierstrom bei %1, aus %2: Mehr ertragen Magnete nicht sicher.</translation>
    </message>
    <message>
        <source>The %1's ceiling, below the stall current of %2.</source>
        <translation>Der Grenzwert (%1), unter dem Blockierstrom von %2.</translation>
    </message>
    <message>
        <source>Locked in any minute, while nothing is known of how the motor takes heat.</source>
        <translation>Blockiert in jeder Minute, solange nicht bekannt ist, wie der Motor Wärme verträgt.</translation>
    </message>
    <message>
        <source>The winding's hottest spot stays under its thermal class.</source>
        <translation>Die heißeste Stelle der Wicklung bleibt unter ihrer Wärmeklasse.</translation>
    </message>
    <message>
        <source>%1 Set by the %2.</source>
        <translation>%1 Gesetzt durch: %2.</translation>
    </message>
    <message>
        <source>Begin at rung %1: the last %2 like it came free at %3 of the rated volts or more.</source>
        <translation>Beginnen Sie mit Stufe %1: Die letzten %2 dieser Art kamen bei %3 der Nennspannung oder mehr frei.</translation>
    </message>
    <message>
        <source>Limited by current, not by voltage: at %1 the locked winding takes %2; raising the volts does nothing.</source>
        <translation>Durch Strom begrenzt, nicht durch Spannung: Bei %1 nimmt die blockierte Wicklung %2; mehr Volt bewirken nichts.</translation>
    </message>
    <message>
        <source>The limit of %1 is below what the last ones like it needed to start: %2 at the least of %3.</source>
        <translation>Die Grenze von %1 liegt unter dem, was die letzten dieser Art zum Anlaufen brauchten: %2, das wenigste von %3.</translation>
    </message>
    <message>
        <source>The limit of %1 may be below what this motor needs to start: it is %2 of the stall current. One that runs on 0.5 A can need 1.6 A to start.</source>
        <translation>Die Grenze von %1 kann unter dem liegen, was dieser Motor zum Anlaufen braucht: Sie ist %2 des Blockierstroms. Einer, der mit 0,5 A läuft, kann 1,6 A zum Anlaufen brauchen.</translation>
    </message>
    <message>
        <source>The %1's ceiling of %2 is below the %3 at which the middle one like it came free.</source>
        <translation>Der Grenzwert (%1) von %2 liegt unter den %3, bei denen der mittlere dieser Art frei kam.</translation>
    </message>
    <message>
        <source>Of %1 %2 More kicks are hardly worth it.</source>
        <translation>Von %1: %2 Mehr Anstöße lohnen sich kaum.</translation>
    </message>
    <message>
        <source>Of %1: %2 recoveries ended freed</source>
        <translation>Von %1: %2 Läufe zum Lösen endeten mit „gelöst“</translation>
    </message>
    <message>
        <source>, after %1 kicks</source>
        <translation>, nach %1 Anstößen</translation>
    </message>
    <message>
        <source>, after %1 to %2 kicks</source>
        <translation>, nach %1 bis %2 Anstößen</translation>
    </message>
    <message>
        <source>; before %1 of them: %2</source>
        <translation>; vor %1 davon: %2</translation>
    </message>
    <message>
        <source>%1 kicks today are used up. Now by hand: turn, tap, soak, warm.</source>
        <translation>Die %1 Anstöße für heute sind verbraucht. Jetzt von Hand: drehen, klopfen, einweichen, wärmen.</translation>
    </message>
    <message>
        <source>Now by hand: turn, tap, soak, warm; kicks alone rarely win. Then the ladder again.</source>
        <translation>Jetzt von Hand: drehen, klopfen, einweichen, wärmen; Anstöße allein gewinnen selten. Dann die Leiter erneut.</translation>
    </message>
    <message>
        <source>Volts and amps could not tell: turn the shaft a little, look at it, and try again.</source>
        <translation>Volt und Ampere konnten es nicht sagen: Drehen Sie die Welle ein wenig, sehen Sie hin, und versuchen Sie es erneut.</translation>
    </message>
    <message>
        <source>Open: no kick reaches the motor. Tap the housing, look at brushes and leads, probe again.</source>
        <translation>Unterbrochen: Kein Anstoß erreicht den Motor. Klopfen Sie ans Gehäuse, sehen Sie nach Bürsten und Leitungen, messen Sie erneut.</translation>
    </message>
    <message>
        <source>Short: a kick only heats it. Look for bridged segments or a crushed lead.</source>
        <translation>Kurzschluss: Ein Anstoß erhitzt ihn nur. Suchen Sie nach überbrückten Lamellen oder einer gequetschten Leitung.</translation>
    </message>
    <message>
        <source>A diode conducts: lift one end of it, or swap the leads, then probe again. No kicks now.</source>
        <translation>Eine Diode leitet: Löten Sie ein Ende ab, oder tauschen Sie die Leitungen, dann erneut messen. Jetzt keine Anstöße.</translation>
    </message>
    <message>
        <source>Electronics in the way: no kicks. Reach the motor's own leads behind the board.</source>
        <translation>Elektronik im Weg: keine Anstöße. Gehen Sie an die eigenen Leitungen des Motors hinter der Platine.</translation>
    </message>
    <message>
        <source>The probe could not decide: look at the leads and the supply, and probe again.</source>
        <translation>Die Messung konnte nicht entscheiden: Sehen Sie nach den Leitungen und dem Netzgerät, und messen Sie erneut.</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/array_of_starts.py</name>
    <message>
        <source>%1 V stayed on the terminals with the output off</source>
        <translation>%1 V blieben bei ausgeschaltetem Ausgang auf den Klemmen</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/budget.py</name>
    <message>
        <source>a pulse of %1 s ago</source>
        <translation>ein Stromstoß vor %1 s</translation>
    </message>
    <message>
        <source>locked time</source>
        <translation>Blockierzeit</translation>
    </message>
    <message>
        <source>winding temperature</source>
        <translation>Wicklungstemperatur</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/by_hand.py</name>
    <message>
        <source>it turns</source>
        <translation>es dreht</translation>
    </message>
    <message>
        <source>still stuck</source>
        <translation>sitzt noch fest</translation>
    </message>
    <message>
        <source>Hold the key and turn the shaft by hand, both ways. Let go of the key and the output is off.</source>
        <translation>Halten Sie die Taste und drehen Sie die Welle von Hand, in beide Richtungen. Lassen Sie die Taste los, ist der Ausgang aus.</translation>
    </message>
    <message>
        <source>Hand on the shaft: while the key is held, at most %1.</source>
        <translation>Hand an der Welle: solange die Taste gehalten wird, höchstens %1.</translation>
    </message>
    <message>
        <source>A quarter of the stall current, %1, at most. Keep fingers clear of blades and gears.</source>
        <translation>Höchstens ein Viertel des Blockierstroms, %1. Finger weg von Flügeln und Zahnrädern.</translation>
    </message>
    <message>
        <source>hand on the shaft</source>
        <translation>Hand an der Welle</translation>
    </message>
    <message>
        <source>Resting %1 s, within the ceiling for %2; hold the key again then.</source>
        <translation>Pause von %1 s, um unter dem Grenzwert zu bleiben: %2; halten Sie die Taste danach wieder.</translation>
    </message>
    <message>
        <source>Hold %1.</source>
        <translation>Halten %1.</translation>
    </message>
    <message>
        <source>hold %1</source>
        <translation>Halten %1</translation>
    </message>
    <message>
        <source>Held for %1 s, at most %2.</source>
        <translation>%1 s gehalten, höchstens %2.</translation>
    </message>
    <message>
        <source>A ceiling was near: off before it. Let it rest.</source>
        <translation>Ein Grenzwert war nahe: vorher ausgeschaltet. Lassen Sie es ruhen.</translation>
    </message>
    <message>
        <source>%1 %2 with the hand on the shaft</source>
        <translation>%1 %2 mit der Hand an der Welle</translation>
    </message>
    <message>
        <source>%1: it turns by hand; whether it starts alone is for the proof</source>
        <translation>%1: Es dreht von Hand; ob es allein anläuft, sagt der Nachweis</translation>
    </message>
    <message>
        <source>%1: still stuck</source>
        <translation>%1: sitzt noch fest</translation>
    </message>
    <message>
        <source>%1; nobody said what came of it</source>
        <translation>%1; niemand sagte, was daraus wurde</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/ceilings.py</name>
    <message>
        <source>%1: %2 is not a finite number above zero</source>
        <translation>%1: %2 ist keine endliche Zahl über null</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/checking.py</name>
    <message>
        <source>%1 of %2 figures are within what was stated</source>
        <translation>%1 von %2 Kennwerten sind innerhalb der Angaben</translation>
    </message>
    <message>
        <source>the supply was checked with %1: %2</source>
        <translation>das Netzgerät wurde mit %1 geprüft: %2</translation>
    </message>
    <message>
        <source>more than %1</source>
        <translation>mehr als %1</translation>
    </message>
    <message>
        <source>this looks like %1, not %2: is it the resistor?</source>
        <translation>das sieht nach %1 aus, nicht nach %2: Ist es der Widerstand?</translation>
    </message>
    <message>
        <source>%1 latch at %2.</source>
        <translation>Sicherung (%1) bei %2.</translation>
    </message>
    <message>
        <source>Now %1: it has to trip.</source>
        <translation>Jetzt %1: Sie muss auslösen.</translation>
    </message>
    <message>
        <source>above the latch</source>
        <translation>über der Sicherung</translation>
    </message>
    <message>
        <source>the %1 latch at %2 did not trip at %3 and %4</source>
        <translation>die Sicherung (%1) bei %2 löste bei %3 und %4 nicht aus</translation>
    </message>
    <message>
        <source>where %1 were to be, give or take %2</source>
        <translation>wo %1 sein sollten, auf %2 genau</translation>
    </message>
    <message>
        <source>Mode: it says %1 where it is %2.</source>
        <translation>Betriebsart: Es sagt %1, wo es %2 ist.</translation>
    </message>
    <message>
        <source>Not within what was stated.</source>
        <translation>Nicht innerhalb der Angaben.</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/climbing.py</name>
    <message>
        <source>Did it move, even a little?</source>
        <translation>Hat es sich bewegt, und sei es wenig?</translation>
    </message>
    <message>
        <source>A gentle start at %1.</source>
        <translation>Ein sanfter Anlauf mit %1.</translation>
    </message>
    <message>
        <source>the ceilings leave no room for a gentle start</source>
        <translation>die Grenzwerte lassen keinen Raum für einen sanften Anlauf</translation>
    </message>
    <message>
        <source>no time was left for a look after the gentle start</source>
        <translation>für einen Blick nach dem sanften Anlauf blieb keine Zeit</translation>
    </message>
    <message>
        <source>Gentle start: %1.</source>
        <translation>Sanfter Anlauf: %1.</translation>
    </message>
    <message>
        <source>Rung %1 left out: %2.</source>
        <translation>Stufe %1 ausgelassen: %2.</translation>
    </message>
    <message>
        <source>rung %1 was left out: %2</source>
        <translation>Stufe %1 wurde ausgelassen: %2</translation>
    </message>
    <message>
        <source>Rung %1: %2, %3 of the rated; %4 kicks of %5 ms.</source>
        <translation>Stufe %1: %2, %3 der Nennspannung; %4 Anstöße von %5 ms.</translation>
    </message>
    <message>
        <source>Limited by current, not by voltage: the winding would draw %1, the limit is %2; raising the volts does nothing.</source>
        <translation>Durch Strom begrenzt, nicht durch Spannung: Die Wicklung würde %1 ziehen, die Grenze ist %2; mehr Volt bewirken nichts.</translation>
    </message>
    <message>
        <source>A locked rotor of this winding draws up to %1 at %2.</source>
        <translation>Ein blockierter Läufer dieser Wicklung zieht bis zu %1 bei %2.</translation>
    </message>
    <message>
        <source>It moved: rung %1 again.</source>
        <translation>Es hat sich bewegt: Stufe %1 noch einmal.</translation>
    </message>
    <message>
        <source>A small movement that stops again is progress, not freedom; more volts are not needed yet.</source>
        <translation>Eine kleine Bewegung, die wieder aufhört, ist Fortschritt, keine Freiheit; mehr Volt sind noch nicht nötig.</translation>
    </message>
    <message>
        <source>It moved a little, the operator says.</source>
        <translation>Es hat sich ein wenig bewegt, sagt der Bediener.</translation>
    </message>
    <message>
        <source>a kick of %1 s, the shortest of this supply, at %2</source>
        <translation>ein Anstoß von %1 s, der kürzeste dieses Netzgeräts, mit %2</translation>
    </message>
    <message>
        <source>%1 and its look pass the %2's ceiling of %3 s in a row</source>
        <translation>%1 und der Blick danach überschreiten den Grenzwert (%2) von %3 s am Stück</translation>
    </message>
    <message>
        <source>%1 passes the ceiling for %2, however long it rests before</source>
        <translation>%1 überschreitet den Grenzwert (%2), wie lange vorher auch gewartet wird</translation>
    </message>
    <message>
        <source>%1 has no room under the ceiling for %2 in the time that is left</source>
        <translation>%1 hat unter dem Grenzwert (%2) in der übrigen Zeit keinen Raum</translation>
    </message>
    <message>
        <source>"%1" was skipped</source>
        <translation>„%1“ wurde übersprungen</translation>
    </message>
    <message>
        <source>%1 V is above the %2's ceiling of %3 V</source>
        <translation>%1 V liegen über dem Grenzwert (%2) von %3 V</translation>
    </message>
    <message>
        <source>the kicks of this job and day are used up: now it needs hands</source>
        <translation>die Anstöße dieses Auftrags für heute sind verbraucht: Jetzt braucht es Hände</translation>
    </message>
    <message>
        <source>the %1 s of the sequence are over</source>
        <translation>die %1 s des Ablaufs sind um</translation>
    </message>
    <message>
        <source>Kick %1 at %2: %3.</source>
        <translation>Anstoß %1 mit %2: %3.</translation>
    </message>
    <message>
        <source>A longer look: %1.</source>
        <translation>Ein längerer Blick: %1.</translation>
    </message>
    <message>
        <source>something looked like motion, and no time was left to hold it within the ceilings</source>
        <translation>etwas sah nach Bewegung aus, und es blieb keine Zeit, es innerhalb der Grenzwerte zu halten</translation>
    </message>
    <message>
        <source>Held at %1: %2.</source>
        <translation>Gehalten bei %1: %2.</translation>
    </message>
    <message>
        <source>It seemed to move and stands again.</source>
        <translation>Es schien sich zu bewegen und steht wieder.</translation>
    </message>
    <message>
        <source>It keeps turning. Starting it again from rest.</source>
        <translation>Es dreht weiter. Es soll aus dem Stillstand wieder anlaufen.</translation>
    </message>
    <message>
        <source>Restart: %1.</source>
        <translation>Wiederanlauf: %1.</translation>
    </message>
    <message>
        <source>it turned</source>
        <translation>es drehte</translation>
    </message>
    <message>
        <source>it came free</source>
        <translation>es kam frei</translation>
    </message>
    <message>
        <source>%1, kept turning, and started again from rest (%2)</source>
        <translation>%1, drehte weiter und lief aus dem Stillstand wieder an (%2)</translation>
    </message>
    <message>
        <source>It turned, but did not start again from rest.</source>
        <translation>Es drehte, lief aber aus dem Stillstand nicht wieder an.</translation>
    </message>
    <message>
        <source>Skipped, nobody at the bench: %1.</source>
        <translation>Übersprungen, niemand an der Werkbank: %1.</translation>
    </message>
    <message>
        <source>By hand: %1.</source>
        <translation>Von Hand: %1.</translation>
    </message>
    <message>
        <source>Skipped: %1.</source>
        <translation>Übersprungen: %1.</translation>
    </message>
    <message>
        <source>no kick was given: %1</source>
        <translation>es wurde kein Anstoß gegeben: %1</translation>
    </message>
    <message>
        <source>%1, but %2</source>
        <translation>%1, aber %2</translation>
    </message>
    <message>
        <source>it moved and stopped again;</source>
        <translation>es bewegte sich und blieb wieder stehen;</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/guard.py</name>
    <message>
        <source>a question is put only with the output off</source>
        <translation>eine Frage wird nur bei ausgeschaltetem Ausgang gestellt</translation>
    </message>
    <message>
        <source>leads are swapped only below %1 V on the terminals</source>
        <translation>Leitungen werden nur unter %1 V auf den Klemmen getauscht</translation>
    </message>
    <message>
        <source>the supply's own array is started only at 0 V</source>
        <translation>die eigene Messreihe des Netzgeräts wird nur bei 0 V gestartet</translation>
    </message>
    <message>
        <source>the supply's own array is read only with the output off</source>
        <translation>die eigene Messreihe des Netzgeräts wird nur bei ausgeschaltetem Ausgang gelesen</translation>
    </message>
    <message>
        <source>%1 V, %2 A is not a setpoint</source>
        <translation>%1 V, %2 A ist kein Sollwert</translation>
    </message>
    <message>
        <source>%1 V, %2 A: below zero</source>
        <translation>%1 V, %2 A: unter null</translation>
    </message>
    <message>
        <source>%1 kicks a job and day are used up: now it needs hands</source>
        <translation>%1 Anstöße je Auftrag und Tag sind verbraucht: Jetzt braucht es Hände</translation>
    </message>
    <message>
        <source>the output goes on only after a reading</source>
        <translation>der Ausgang geht erst nach einem Messwert an</translation>
    </message>
    <message>
        <source>%1 V on the terminals with the output off: another source is connected</source>
        <translation>%1 V auf den Klemmen bei ausgeschaltetem Ausgang: Eine andere Quelle ist angeschlossen</translation>
    </message>
    <message>
        <source>the output goes on only at 0 V set, not %1 V</source>
        <translation>der Ausgang geht nur bei 0 V Sollwert an, nicht bei %1 V</translation>
    </message>
    <message>
        <source>a reading of %1 V, %2 A is not a measurement</source>
        <translation>ein Messwert von %1 V, %2 A ist keine Messung</translation>
    </message>
    <message>
        <source>a reading took %1 s</source>
        <translation>ein Messwert dauerte %1 s</translation>
    </message>
    <message>
        <source>readings are out of order</source>
        <translation>Messwerte kommen in falscher Reihenfolge</translation>
    </message>
    <message>
        <source>the output was switched off at the supply</source>
        <translation>der Ausgang wurde am Netzgerät ausgeschaltet</translation>
    </message>
    <message>
        <source>the output is on although off was sent</source>
        <translation>der Ausgang ist an, obwohl Aus gesendet wurde</translation>
    </message>
    <message>
        <source>the supply is set to %1 %2, not the %3 %4 that were sent: a hand on it?</source>
        <translation>das Netzgerät steht auf %1 %2, nicht auf %3 %4, wie gesendet: eine Hand daran?</translation>
    </message>
    <message>
        <source>%1 A flow with the output off</source>
        <translation>%1 A fließen bei ausgeschaltetem Ausgang</translation>
    </message>
    <message>
        <source>%1 A flow at a limit of %2 A</source>
        <translation>%1 A fließen bei einer Begrenzung von %2 A</translation>
    </message>
    <message>
        <source>%1 V and %2 A at a setpoint of %3 V</source>
        <translation>%1 V und %2 A bei einem Sollwert von %3 V</translation>
    </message>
    <message>
        <source>%1 V and rising at a setpoint of %2 V</source>
        <translation>%1 V und steigend bei einem Sollwert von %2 V</translation>
    </message>
    <message>
        <source>only %1 V at a setpoint of %2 V, without a limit</source>
        <translation>nur %1 V bei einem Sollwert von %2 V, ohne Begrenzung</translation>
    </message>
    <message>
        <source>the winding may be at</source>
        <translation>die Wicklung kann sein auf</translation>
    </message>
    <message>
        <source>locked in the last minute:</source>
        <translation>blockiert in der letzten Minute:</translation>
    </message>
    <message>
        <source>energy in the last minute:</source>
        <translation>Energie in der letzten Minute:</translation>
    </message>
    <message>
        <source>driven in a row:</source>
        <translation>am Stück getrieben:</translation>
    </message>
    <message>
        <source>%1 %2 %3, above the %4's ceiling of %5 %6</source>
        <translation>%1 %2 %3, über dem Grenzwert (%4) von %5 %6</translation>
    </message>
    <message>
        <source>%1 %2 is above the %3's ceiling of %4 %5</source>
        <translation>%1 %2 liegt über dem Grenzwert (%3) von %4 %5</translation>
    </message>
    <message>
        <source>the supply does not do as told: %1</source>
        <translation>das Netzgerät tut nicht, was ihm gesagt wurde: %1</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/heeding.py</name>
    <message>
        <source>%1 to %2 °C</source>
        <translation>%1 bis %2 °C</translation>
    </message>
    <message>
        <source>The winding is at some %1 °C (%2).</source>
        <translation>Die Wicklung ist auf etwa %1 °C (%2).</translation>
    </message>
    <message>
        <source>How warm the winding is can't be told; it is %1.</source>
        <translation>Wie warm die Wicklung ist, lässt sich nicht sagen; Stand: %1.</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/holding_starts.py</name>
    <message>
        <source>nothing crossed %1 within %2 s</source>
        <translation>nichts überschritt %1 innerhalb von %2 s</translation>
    </message>
    <message>
        <source>cut short before the ceiling for time in a row</source>
        <translation>abgebrochen vor dem Grenzwert für Zeit am Stück</translation>
    </message>
    <message>
        <source>cut short before the ceiling for %1</source>
        <translation>abgebrochen vor dem Grenzwert: %1</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/looking.py</name>
    <message>
        <source>too slow to see a motor turn, so look at the shaft yourself</source>
        <translation>zu langsam, um einen Motor drehen zu sehen, sehen Sie sich also die Welle selbst an</translation>
    </message>
    <message>
        <source>one reading takes %1 s: %2</source>
        <translation>ein Messwert dauert %1 s: %2</translation>
    </message>
    <message>
        <source>It turns. Holding on to see that it keeps turning.</source>
        <translation>Es dreht. Weiter halten, um zu sehen, ob es weiterdreht.</translation>
    </message>
    <message>
        <source>%1; seen once only: %2</source>
        <translation>%1; nur einmal gesehen: %2</translation>
    </message>
    <message>
        <source>%1; %2; the same again higher up</source>
        <translation>%1; %2; dasselbe noch einmal weiter oben</translation>
    </message>
    <message>
        <source>no surge between the looks, and no winding found right after them</source>
        <translation>kein Stromstoß zwischen den Blicken, und gleich danach keine Wicklung gefunden</translation>
    </message>
    <message>
        <source>a rotor's voltage was seen once, but not all agrees: %1</source>
        <translation>die Spannung eines Läufers war einmal zu sehen, aber nicht alles passt zusammen: %1</translation>
    </message>
    <message>
        <source>the ceiling for %1 leaves no room for a second look</source>
        <translation>der Grenzwert lässt keinen Raum für einen zweiten Blick: %1</translation>
    </message>
    <message>
        <source>the terminals held %1 V at a limit of %2 V, which an open circuit does as well; a ceiling of %3 V would tell</source>
        <translation>die Klemmen hielten %1 V bei einer Grenze von %2 V, was ein offener Stromkreis auch tut; ein Grenzwert von %3 V würde es zeigen</translation>
    </message>
    <message>
        <source>a surge at the step, as a winding draws</source>
        <translation>ein Stromstoß beim Schritt, wie eine Wicklung ihn zieht</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/moves.py</name>
    <message>
        <source>zeroed before anything is measured</source>
        <translation>abgeglichen, bevor etwas gemessen wird</translation>
    </message>
    <message>
        <source>Resting %1 s, so that the next look stays within the ceiling for %2.</source>
        <translation>Pause von %1 s, damit der nächste Blick unter dem Grenzwert bleibt: %2.</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/pacing.py</name>
    <message>
        <source>each kick is</source>
        <translation>jeder Anstoß dauert</translation>
    </message>
    <message>
        <source>each that is asked shorter is</source>
        <translation>jeder kürzer verlangte dauert</translation>
    </message>
    <message>
        <source>This supply can't make a kick shorter than %1 s: %2 that long, with rests to match.</source>
        <translation>Dieses Netzgerät kann keinen Anstoß kürzer als %1 s machen: %2 so lange, mit passenden Pausen.</translation>
    </message>
    <message>
        <source>One reading takes %1 s, a setpoint %2 s to be sent; a kick of which no reading tells anything can't be judged.</source>
        <translation>Ein Messwert dauert %1 s, ein Sollwert %2 s bis zum Senden; ein Anstoß, von dem kein Messwert etwas sagt, lässt sich nicht beurteilen.</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/plan.py</name>
    <message>
        <source>%1 Whether it turns was not tried in this run.</source>
        <translation>%1 Ob es dreht, wurde in diesem Lauf nicht versucht.</translation>
    </message>
    <message>
        <source>every rung of the sequence was tried</source>
        <translation>jede Stufe des Ablaufs wurde versucht</translation>
    </message>
    <message>
        <source>refused without one</source>
        <translation>ohne das abgelehnt</translation>
    </message>
    <message>
        <source>%1 (%2 to %3)</source>
        <translation>%1 (%2 bis %3)</translation>
    </message>
    <message>
        <source>the leads have %1: %2</source>
        <translation>die Leitungen haben %1: %2</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/probing.py</name>
    <message>
        <source>Output on, at 0 V.</source>
        <translation>Ausgang an, bei 0 V.</translation>
    </message>
    <message>
        <source>Probing the winding with small currents.</source>
        <translation>Die Wicklung wird mit kleinen Strömen gemessen.</translation>
    </message>
    <message>
        <source>No current yet: raising the volts at a very small limit.</source>
        <translation>Noch kein Strom: Die Volt werden bei sehr kleiner Begrenzung erhöht.</translation>
    </message>
    <message>
        <source>probe, raised</source>
        <translation>Messung, erhöht</translation>
    </message>
    <message>
        <source>the readback is too coarse to see the %1 A that the winding draws at %2 V</source>
        <translation>die Rückmessung ist zu grob, um die %1 A zu sehen, die die Wicklung bei %2 V zieht</translation>
    </message>
    <message>
        <source>before the start only %1 A flowed at %2 V, where the winding draws %3 A: an opened protector, or a brush</source>
        <translation>vor dem Anlauf flossen nur %1 A bei %2 V, wo die Wicklung %3 A zieht: ein ausgelöster Schutz, oder eine Bürste</translation>
    </message>
    <message>
        <source>the winding there right after, at %1 A</source>
        <translation>gleich danach die Wicklung da, bei %1 A</translation>
    </message>
    <message>
        <source>Turn the shaft a little by hand and say so: the contact of the brushes differs with the angle.</source>
        <translation>Drehen Sie die Welle ein wenig von Hand und sagen Sie es: Der Kontakt der Bürsten ändert sich mit der Stellung.</translation>
    </message>
    <message>
        <source>Or swap the two leads, to look for a diode across the motor.</source>
        <translation>Oder tauschen Sie die beiden Leitungen, um nach einer Diode parallel zum Motor zu sehen.</translation>
    </message>
    <message>
        <source>The lowest of %1 angles so far: %2.</source>
        <translation>Bisher der kleinste Wert aus %1 Stellungen: %2.</translation>
    </message>
    <message>
        <source>Over %1 angles %2 to %3; the lowest counts.</source>
        <translation>Über %1 Stellungen %2 bis %3; der niedrigste zählt.</translation>
    </message>
    <message>
        <source>What is above it is the contact of the brushes at that angle.</source>
        <translation>Was darüber liegt, ist der Kontakt der Bürsten in dieser Stellung.</translation>
    </message>
    <message>
        <source>A diode lies across the motor: never reverse it.</source>
        <translation>Über dem Motor liegt eine Diode: nie umpolen.</translation>
    </message>
    <message>
        <source>No diode seen with the leads swapped.</source>
        <translation>Mit getauschten Leitungen ist keine Diode zu sehen.</translation>
    </message>
    <message>
        <source>Swap the leads back.</source>
        <translation>Tauschen Sie die Leitungen zurück.</translation>
    </message>
    <message>
        <source>Measuring the leads, their clips joined.</source>
        <translation>Die Leitungen werden gemessen, ihre Klemmen zusammen.</translation>
    </message>
    <message>
        <source>Leads measured.</source>
        <translation>Leitungen gemessen.</translation>
    </message>
    <message>
        <source>No lead resistance found.</source>
        <translation>Kein Widerstand der Leitungen gefunden.</translation>
    </message>
    <message>
        <source>A winding of %1 (%2 to %3) at this shaft angle.</source>
        <translation>Eine Wicklung mit %1 (%2 bis %3) in dieser Stellung der Welle.</translation>
    </message>
    <message>
        <source>A winding; its resistance can't be told.</source>
        <translation>Eine Wicklung; ihr Widerstand lässt sich nicht nennen.</translation>
    </message>
    <message>
        <source>Open: no current flows. A tap on the housing may close a brush.</source>
        <translation>Unterbrochen: Es fließt kein Strom. Ein Klopfen ans Gehäuse schließt vielleicht eine Bürste.</translation>
    </message>
    <message>
        <source>Short: the volts hardly rise at any current.</source>
        <translation>Kurzschluss: Die Volt steigen bei keinem Strom nennenswert.</translation>
    </message>
    <message>
        <source>A diode conducts in this direction.</source>
        <translation>In dieser Richtung leitet eine Diode.</translation>
    </message>
    <message>
        <source>An electronic driver lies between the leads and the winding.</source>
        <translation>Zwischen den Leitungen und der Wicklung liegt ein elektronischer Treiber.</translation>
    </message>
    <message>
        <source>The probe could not decide.</source>
        <translation>Die Messung konnte nicht entscheiden.</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/proving.py</name>
    <message>
        <source>Start %1 of %2, from rest.</source>
        <translation>Anlauf %1 von %2, aus dem Stillstand.</translation>
    </message>
    <message>
        <source>Start %1: %2.</source>
        <translation>Anlauf %1: %2.</translation>
    </message>
    <message>
        <source>it started %1 of %2 times from rest</source>
        <translation>es lief bei %1 von %2 Malen aus dem Stillstand an</translation>
    </message>
    <message>
        <source>%1; %2 could not be told</source>
        <translation>%1; %2 ließen sich nicht sagen</translation>
    </message>
    <message>
        <source>it did not come to rest in %1 s</source>
        <translation>es kam in %1 s nicht zum Stillstand</translation>
    </message>
    <message>
        <source>no time was left to start it again within the ceilings</source>
        <translation>es blieb keine Zeit, es innerhalb der Grenzwerte noch einmal anlaufen zu lassen</translation>
    </message>
    <message>
        <source>No measured start: no time was left for it.</source>
        <translation>Kein gemessener Anlauf: Es blieb keine Zeit dafür.</translation>
    </message>
    <message>
        <source>A start to be measured, at %1, until the current is steady.</source>
        <translation>Ein Anlauf zum Messen, mit %1, bis der Strom stetig ist.</translation>
    </message>
    <message>
        <source>Measured start: %1.</source>
        <translation>Gemessener Anlauf: %1.</translation>
    </message>
    <message>
        <source>at the end of the measured start: %1</source>
        <translation>am Ende des gemessenen Anlaufs: %1</translation>
    </message>
    <message>
        <source>The same at %1: friction at a second speed.</source>
        <translation>Dasselbe mit %1: Reibung bei einer zweiten Drehzahl.</translation>
    </message>
    <message>
        <source>lower hold</source>
        <translation>niedriger gehalten</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/running_in.py</name>
    <message>
        <source>the ceilings left no room for a start within %1</source>
        <translation>die Grenzwerte ließen keinen Raum für einen Anlauf innerhalb von %1</translation>
    </message>
    <message>
        <source>warm restart</source>
        <translation>warmer Wiederanlauf</translation>
    </message>
    <message>
        <source>Running in at %1: a start from rest first.</source>
        <translation>Einlaufen mit %1: zuerst ein Anlauf aus dem Stillstand.</translation>
    </message>
    <message>
        <source>it was not run in: %1</source>
        <translation>es wurde nicht eingelaufen: %1</translation>
    </message>
    <message>
        <source>Start: %1.</source>
        <translation>Anlauf: %1.</translation>
    </message>
    <message>
        <source>after %1 %2</source>
        <translation>nach %1 %2</translation>
    </message>
    <message>
        <source>it ran for %1: %2</source>
        <translation>es lief %1: %2</translation>
    </message>
    <message>
        <source>It runs. From here on a reading every %1 s, a short coast every %2, for %3 at most. A ceiling that is passed is noticed within one reading.</source>
        <translation>Es läuft. Von hier an ein Messwert alle %1 s, ein kurzer Auslauf alle %2, höchstens %3 lang. Ein überschrittener Grenzwert fällt innerhalb eines Messwerts auf.</translation>
    </message>
    <message>
        <source>; with the motor's mass given the bound lies closer</source>
        <translation>; mit der angegebenen Masse des Motors liegt die Schranke näher</translation>
    </message>
    <message>
        <source>ended before the ceiling for %1, which a stall would have passed%2</source>
        <translation>beendet vor dem Grenzwert (%1), den ein Blockieren überschritten hätte%2</translation>
    </message>
    <message>
        <source>%1 were asked for</source>
        <translation>verlangt waren %1</translation>
    </message>
    <message>
        <source>every %1 s</source>
        <translation>alle %1 s</translation>
    </message>
    <message>
        <source>as fast as the supply answers</source>
        <translation>so schnell das Netzgerät antwortet</translation>
    </message>
    <message>
        <source>Read %1 from here on: a stall must be noticed before the ceiling for %2.</source>
        <translation>Von hier an Lesen %1: Ein Blockieren muss vor dem Grenzwert auffallen: %2.</translation>
    </message>
    <message>
        <source>the current jumped from %1 to %2</source>
        <translation>der Strom sprang von %1 auf %2</translation>
    </message>
    <message>
        <source>the current fell from %1 to %2 at once</source>
        <translation>der Strom fiel auf einmal von %1 auf %2</translation>
    </message>
    <message>
        <source>%1 flow at a limit of %2</source>
        <translation>%1 fließen bei einer Begrenzung von %2</translation>
    </message>
    <message>
        <source>Looked: %1.</source>
        <translation>Nachgesehen: %1.</translation>
    </message>
    <message>
        <source>Looked, since %1: %2.</source>
        <translation>Nachgesehen, denn %1: %2.</translation>
    </message>
    <message>
        <source>it stopped turning: %1</source>
        <translation>es hörte auf zu drehen: %1</translation>
    </message>
    <message>
        <source>it is no longer sure to turn: %1</source>
        <translation>es dreht nicht mehr sicher: %1</translation>
    </message>
    <message>
        <source>Looked at its end: %1.</source>
        <translation>Am Ende nachgesehen: %1.</translation>
    </message>
    <message>
        <source>%1; at its end %2</source>
        <translation>%1; an seinem Ende %2</translation>
    </message>
    <message>
        <source>it had stopped turning (%1)</source>
        <translation>es hatte aufgehört zu drehen (%1)</translation>
    </message>
    <message>
        <source>it was not sure to turn (%1)</source>
        <translation>es war nicht sicher, dass es dreht (%1)</translation>
    </message>
    <message>
        <source>the current rose by half above its lowest, from %1 to %2: binding or brushes</source>
        <translation>der Strom stieg um die Hälfte über seinen niedrigsten, von %1 auf %2: Klemmen oder Bürsten</translation>
    </message>
    <message>
        <source>the current has been flat for %1</source>
        <translation>der Strom ist seit %1 flach</translation>
    </message>
    <message>
        <source>Still running after %1: %2, %3 looks.</source>
        <translation>Läuft noch nach %1: %2, %3-mal nachgesehen.</translation>
    </message>
    <message>
        <source>Ended after %1: %2.</source>
        <translation>Beendet nach %1: %2.</translation>
    </message>
    <message>
        <source>Once more from rest, while it is warm.</source>
        <translation>Noch einmal aus dem Stillstand, solange es warm ist.</translation>
    </message>
    <message>
        <source>No warm restart: %1.</source>
        <translation>Kein warmer Wiederanlauf: %1.</translation>
    </message>
    <message>
        <source>%1; at its end %2, and it was not started again warm: %3</source>
        <translation>%1; an seinem Ende %2, und es wurde nicht warm wieder angelassen: %3</translation>
    </message>
    <message>
        <source>%1; it was not started again warm: %2</source>
        <translation>%1; es wurde nicht warm wieder angelassen: %2</translation>
    </message>
    <message>
        <source>Warm restart: %1.</source>
        <translation>Warmer Wiederanlauf: %1.</translation>
    </message>
    <message>
        <source>%1; it started again warm</source>
        <translation>%1; es lief warm wieder an</translation>
    </message>
    <message>
        <source>%1; warm it did not start again: %2</source>
        <translation>%1; warm lief es nicht wieder an: %2</translation>
    </message>
    <message>
        <source>%1; its warm restart could not be told: %2</source>
        <translation>%1; sein warmer Wiederanlauf ließ sich nicht sagen: %2</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/sequences/starting-ladder.toml</name>
    <message>
        <source>starting ladder</source>
        <translation>Anfangsleiter</translation>
    </message>
    <message>
        <source>Probe, a gentle start, three rungs the same way, hand work, the leads swapped, then raised volts if allowed.</source>
        <translation>Messung, ein sanfter Anlauf, drei Stufen in derselben Richtung, Handarbeit, die Leitungen getauscht, dann mehr Volt, wenn erlaubt.</translation>
    </message>
    <message>
        <source>gentle start</source>
        <translation>sanfter Anlauf</translation>
    </message>
    <message>
        <source>same way</source>
        <translation>vorwärts</translation>
    </message>
    <message>
        <source>Turn the shaft by hand both ways, tap the housing, let a drop of cleaner soak in.</source>
        <translation>Drehen Sie die Welle von Hand in beide Richtungen, klopfen Sie ans Gehäuse, lassen Sie einen Tropfen Reiniger einziehen.</translation>
    </message>
    <message>
        <source>once more</source>
        <translation>noch einmal</translation>
    </message>
    <message>
        <source>other way</source>
        <translation>rückwärts</translation>
    </message>
    <message>
        <source>raised</source>
        <translation>erhöht</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/settling.py</name>
    <message>
        <source>how quick the supply is was measured with its leads open</source>
        <translation>wie schnell das Netzgerät ist, wurde mit offenen Leitungen gemessen</translation>
    </message>
    <message>
        <source>settled in at most %1</source>
        <translation>eingeschwungen in höchstens %1</translation>
    </message>
    <message>
        <source>not settled after %1</source>
        <translation>nicht eingeschwungen nach %1</translation>
    </message>
    <message>
        <source>, %1 are left</source>
        <translation>, %1 bleiben</translation>
    </message>
    <message>
        <source>The shortest kick of which a reading shows the volts: %1.</source>
        <translation>Der kürzeste Anstoß, dessen Volt ein Messwert zeigt: %1.</translation>
    </message>
    <message>
        <source>No reading showed %1 within %2.</source>
        <translation>Kein Messwert zeigte %1 innerhalb von %2.</translation>
    </message>
    <message>
        <source>Off: volts begin to fall within %1.</source>
        <translation>Aus: Die Volt beginnen innerhalb von %1 zu fallen.</translation>
    </message>
    <message>
        <source>Off: they stay up for %1.</source>
        <translation>Aus: Sie bleiben %1 lang oben.</translation>
    </message>
    <message>
        <source>%1 flow: something is on the terminals; take the leads off and ask again</source>
        <translation>%1 fließen: Etwas ist an den Klemmen; nehmen Sie die Leitungen ab und fragen Sie erneut</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/start_marks.py</name>
    <message>
        <source>This supply reads back every %1, the mean of %2 each:</source>
        <translation>Dieses Netzgerät liest alle %1 zurück, je das Mittel über %2:</translation>
    </message>
    <message>
        <source>the first %1 of a start, its real inrush, can't be seen.</source>
        <translation>die ersten %1 eines Anlaufs, sein wirklicher Einschaltstrom, sind nicht zu sehen.</translation>
    </message>
    <message>
        <source>too slow for the inrush. Its own array keeps %1 samples of each start, one every %2.</source>
        <translation>zu langsam für den Einschaltstrom. Seine eigene Messreihe behält %1 Punkte jedes Anlaufs, einen alle %2.</translation>
    </message>
    <message>
        <source>, read %1 later</source>
        <translation>, %1 später gelesen</translation>
    </message>
    <message>
        <source>Start %1 of %2, from rest, at %3%4.</source>
        <translation>Anlauf %1 von %2, aus dem Stillstand, mit %3%4.</translation>
    </message>
    <message>
        <source>NOT turning</source>
        <translation>dreht NICHT</translation>
    </message>
    <message>
        <source>turning: %1</source>
        <translation>dreht: %1</translation>
    </message>
    <message>
        <source>a reading every %1 ± %2</source>
        <translation>ein Messwert alle %1 ± %2</translation>
    </message>
    <message>
        <source>limited by current, not voltage</source>
        <translation>durch Strom begrenzt, nicht durch Spannung</translation>
    </message>
    <message>
        <source>Start %1 of %2: %3.</source>
        <translation>Anlauf %1 von %2: %3.</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/start_test.py</name>
    <message>
        <source>%1: %2 is outside %3 to %4</source>
        <translation>%1: %2 liegt außerhalb von %3 bis %4</translation>
    </message>
    <message>
        <source>pace_s: %1 readings in %2 s are more than can be filed</source>
        <translation>pace_s: %1 Messwerte in %2 s sind mehr, als abgelegt werden kann</translation>
    </message>
    <message>
        <source>name: a start test has a name that can be read</source>
        <translation>name: Eine Anlaufprüfung hat einen lesbaren Namen</translation>
    </message>
    <message>
        <source>level: a trigger on %1 needs a level above zero</source>
        <translation>level: Ein Trigger auf %1 braucht eine Schwelle über null</translation>
    </message>
    <message>
        <source>hysteresis: %1 is not between zero and the level of %2</source>
        <translation>hysteresis: %1 liegt nicht zwischen null und der Schwelle von %2</translation>
    </message>
    <message>
        <source>interleave: the instant of the start must be the program's own: trigger on output-on</source>
        <translation>interleave: Der Augenblick des Anlaufs muss der des Programms sein: Trigger auf „Ausgang an“</translation>
    </message>
    <message>
        <source>%1.%2: %3 %4 is above the %5's ceiling of %6 %7</source>
        <translation>%1.%2: %3 %4 liegt über dem Grenzwert (%5) von %6 %7</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/starting.py</name>
    <message>
        <source>start %1 was not made: %2</source>
        <translation>Anlauf %1 wurde nicht gemacht: %2</translation>
    </message>
    <message>
        <source>start %1 did not turn: %2</source>
        <translation>Anlauf %1 drehte nicht: %2</translation>
    </message>
    <message>
        <source>start %1: %2</source>
        <translation>Anlauf %1: %2</translation>
    </message>
    <message>
        <source>%1; it drew as a locked motor does</source>
        <translation>%1; er zog, was ein blockierter Motor zieht</translation>
    </message>
    <message>
        <source>it started %1 of %2 times from rest, all captured</source>
        <translation>es lief bei %1 von %2 Malen aus dem Stillstand an, alle aufgenommen</translation>
    </message>
    <message>
        <source>%1 of %2 starts were seen to turn; %3</source>
        <translation>%1 von %2 Anläufen waren drehend zu sehen; %3</translation>
    </message>
    <message>
        <source>s locked</source>
        <translation>s blockiert</translation>
    </message>
    <message>
        <source>%1 s of a start that stays locked are %2 %3, which does not fit below the %4's ceiling of %5 %6</source>
        <translation>%1 s eines Anlaufs, der blockiert bleibt, sind %2 %3; das passt nicht unter den Grenzwert (%4) von %5 %6</translation>
    </message>
    <message>
        <source>the ceilings left no room for it within %1 s</source>
        <translation>die Grenzwerte ließen innerhalb von %1 s keinen Raum dafür</translation>
    </message>
    <message>
        <source>no time for a look below the %1's ceiling of %2 s in a row</source>
        <translation>keine Zeit für einen Blick unter dem Grenzwert (%1) von %2 s am Stück</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/steps.py</name>
    <message>
        <source>swap leads</source>
        <translation>Leitungen tauschen</translation>
    </message>
    <message>
        <source>Swap the two motor leads. Not with a diode or a driver board across the motor.</source>
        <translation>Tauschen Sie die beiden Motorleitungen. Nicht mit einer Diode oder Treiberplatine über dem Motor.</translation>
    </message>
    <message>
        <source>- at `$</source>
        <translation>– bei `$</translation>
    </message>
    <message>
        <source>sequence: not TOML: %1</source>
        <translation>Ablauf: kein TOML: %1</translation>
    </message>
    <message>
        <source>sequence: there is none called "%1"; there are: %2</source>
        <translation>Ablauf: Es gibt keinen namens „%1“; es gibt: %2</translation>
    </message>
    <message>
        <source>steps[%1].%2: %3 V is above the %4's ceiling of %5 V</source>
        <translation>steps[%1].%2: %3 V liegt über dem Grenzwert (%4) von %5 V</translation>
    </message>
    <message>
        <source>steps[%1].on_s: %2 s is above the %3's ceiling of %4 s in a row</source>
        <translation>steps[%1].on_s: %2 s liegt über dem Grenzwert (%3) von %4 s am Stück</translation>
    </message>
    <message>
        <source>steps[%1].current: %2 A is above the %3's ceiling of %4 A</source>
        <translation>steps[%1].current: %2 A liegt über dem Grenzwert (%3) von %4 A</translation>
    </message>
    <message>
        <source>probe.levels_a: at least one level</source>
        <translation>probe.levels_a: mindestens eine Stufe</translation>
    </message>
    <message>
        <source>probe.levels_a[%1]: %2 A is outside 0.001 to 1 A</source>
        <translation>probe.levels_a[%1]: %2 A liegt außerhalb von 0.001 bis 1 A</translation>
    </message>
    <message>
        <source>steps: none</source>
        <translation>steps: keine</translation>
    </message>
    <message>
        <source>steps[%1].only_after: no hand or swap step called "%2" comes before</source>
        <translation>steps[%1].only_after: Davor kommt kein Hand- oder Tauschschritt namens „%2“</translation>
    </message>
    <message>
        <source>steps[%1]: exactly one of %2 and %3_ratio</source>
        <translation>steps[%1]: genau eines von %2 und %3_ratio</translation>
    </message>
    <message>
        <source>%1%2: holds characters that can't be printed</source>
        <translation>%1%2: enthält Zeichen, die sich nicht drucken lassen</translation>
    </message>
    <message>
        <source>%1%2: %3 is outside %4 to %5</source>
        <translation>%1%2: %3 liegt außerhalb von %4 bis %5</translation>
    </message>
</context>
<context>
    <name>benchlog/recovery/trigger.py</name>
    <message>
        <source>armed by a value</source>
        <translation>scharf durch einen Wert</translation>
    </message>
</context>
<context>
    <name>benchlog/reports/foreign_csv.py</name>
    <message>
        <source>the columns chosen have no two lines with numbers in all of them</source>
        <translation>die gewählten Spalten haben keine zwei Zeilen mit Zahlen in allen</translation>
    </message>
    <message>
        <source>line %1: column %2 is blank or no measurement, between lines with numbers</source>
        <translation>Zeile %1: Spalte %2 ist leer oder kein Messwert, zwischen Zeilen mit Zahlen</translation>
    </message>
    <message>
        <source>line %1: its time is not after that of the line before; the times must increase (where they are rounded too far, give the interval in place of the column)</source>
        <translation>Zeile %1: Ihre Zeit liegt nicht nach der der Zeile davor; die Zeiten müssen steigen (wo sie zu grob gerundet sind, geben Sie den Abstand an statt der Spalte)</translation>
    </message>
    <message>
        <source>the file</source>
        <translation>die Datei</translation>
    </message>
    <message>
        <source>it has NUL bytes, so it is no plain text; save it as CSV in UTF-8</source>
        <translation>sie enthält NUL-Bytes, ist also kein einfacher Text; speichern Sie sie als CSV in UTF-8</translation>
    </message>
    <message>
        <source>line %1: is longer than %2 characters</source>
        <translation>Zeile %1: ist länger als %2 Zeichen</translation>
    </message>
    <message>
        <source>a quote is not closed on its line</source>
        <translation>ein Anführungszeichen ist in seiner Zeile nicht geschlossen</translation>
    </message>
    <message>
        <source>it is empty</source>
        <translation>sie ist leer</translation>
    </message>
    <message>
        <source>the separator must be one of , ; | a tab or a space, the decimal mark "." or ","</source>
        <translation>das Trennzeichen muss eines von , ; | Tabulator oder Leerzeichen sein, das Dezimalzeichen „.“ oder „,“</translation>
    </message>
    <message>
        <source>decimal marks are mixed: some numbers have "." and some ","</source>
        <translation>Dezimalzeichen sind gemischt: Manche Zahlen haben „.“ und manche „,“</translation>
    </message>
    <message>
        <source>no two lines of numbers are in its first %1 lines</source>
        <translation>in den ersten %1 Zeilen sind keine zwei Zeilen mit Zahlen</translation>
    </message>
    <message>
        <source>it can be read in two ways: %1, or %2; say which separator and decimal mark</source>
        <translation>sie lässt sich auf zwei Arten lesen: %1, oder %2; sagen Sie, welches Trenn- und Dezimalzeichen</translation>
    </message>
    <message>
        <source>%1 column%2 with "%3" as the decimal mark</source>
        <translation>%1 %2 mit „%3“ als Dezimalzeichen</translation>
    </message>
    <message>
        <source>the line below the names says "%1"</source>
        <translation>die Zeile unter den Namen sagt „%1“</translation>
    </message>
    <message>
        <source>its name says "%1"</source>
        <translation>ihr Name sagt „%1“</translation>
    </message>
    <message>
        <source>its name says that it is %1; no unit is named, so %2 if nothing else is said</source>
        <translation>ihr Name sagt, dass es %1 ist; eine Einheit ist nicht genannt, also %2, wenn nichts anderes gesagt wird</translation>
    </message>
    <message>
        <source>it is the first and increases; no unit is named, so s if nothing else is said</source>
        <translation>sie ist die erste und steigt; eine Einheit ist nicht genannt, also s, wenn nichts anderes gesagt wird</translation>
    </message>
    <message>
        <source>nothing says what it is</source>
        <translation>nichts sagt, was sie ist</translation>
    </message>
    <message>
        <source>a time column or the interval between lines is needed; one of the two</source>
        <translation>gebraucht wird eine Zeitspalte oder der Abstand zwischen den Zeilen; eines von beiden</translation>
    </message>
    <message>
        <source>scale of the volts</source>
        <translation>Maßstab der Volt</translation>
    </message>
    <message>
        <source>amps per volt</source>
        <translation>Ampere je Volt</translation>
    </message>
    <message>
        <source>the %1 can't be %2</source>
        <translation>%1 kann nicht %2 sein</translation>
    </message>
    <message>
        <source>a column of volts or of amps is needed</source>
        <translation>gebraucht wird eine Spalte für Volt oder für Ampere</translation>
    </message>
    <message>
        <source>amps per volt are given, and no column of amps</source>
        <translation>Ampere je Volt sind angegeben, aber keine Spalte für Ampere</translation>
    </message>
    <message>
        <source>there is no column %1; it has %2</source>
        <translation>es gibt keine Spalte %1; sie hat %2</translation>
    </message>
    <message>
        <source>"%1" is not a unit known here; one of %2</source>
        <translation>„%1“ ist keine hier bekannte Einheit; eine von %2</translation>
    </message>
    <message>
        <source>; a current probe's amps per volt are needed</source>
        <translation>; die Ampere je Volt eines Stromtastkopfs sind nötig</translation>
    </message>
    <message>
        <source>column %1 is in %2, which is no unit of %3%4</source>
        <translation>Spalte %1 ist in %2, was keine Einheit von %3 ist%4</translation>
    </message>
    <message>
        <source>it has more than %1 lines</source>
        <translation>sie hat mehr als %1 Zeilen</translation>
    </message>
    <message>
        <source>lines %1 to %2: a quote is not closed on its line</source>
        <translation>Zeilen %1 bis %2: Ein Anführungszeichen ist in seiner Zeile nicht geschlossen</translation>
    </message>
    <message>
        <source>line %1: has %2 cells, the others %3</source>
        <translation>Zeile %1: hat %2 Zellen, die anderen %3</translation>
    </message>
    <message>
        <source>line %1: "%2" in column %3</source>
        <translation>Zeile %1: „%2“ in Spalte %3</translation>
    </message>
    <message>
        <source>%1 has another decimal mark than the "%2" of the others</source>
        <translation>%1 hat ein anderes Dezimalzeichen als das „%2“ der anderen</translation>
    </message>
    <message>
        <source>%1 is not a number</source>
        <translation>%1 ist keine Zahl</translation>
    </message>
</context>
<context>
    <name>benchlog/reports/sheet_pdf.py</name>
    <message>
        <source>a PDF or PNG needs Qt, which does not load here (%1); .html and .svg need none</source>
        <translation>ein PDF oder PNG braucht Qt, das sich hier nicht laden lässt (%1); .html und .svg brauchen keines</translation>
    </message>
    <message>
        <source>a PDF or PNG needs a font, and none is on this computer; .html and .svg need none</source>
        <translation>ein PDF oder PNG braucht eine Schrift, und auf diesem Rechner ist keine; .html und .svg brauchen keine</translation>
    </message>
    <message>
        <source>%1%2 · page %3 of %4</source>
        <translation>%1%2 · Seite %3 von %4</translation>
    </message>
</context>
<context>
    <name>benchlog/reports/start_files.py</name>
    <message>
        <source>HDF5 needs h5py: pip install "benchlog[hdf5]"; .npz and .csv need nothing more</source>
        <translation>HDF5 braucht h5py: pip install "benchlog[hdf5]"; .npz und .csv brauchen nichts weiter</translation>
    </message>
</context>
<context>
    <name>benchlog/settings.py</name>
    <message>
        <source>shop.currency: a short word, such as EUR</source>
        <translation>shop.currency: ein kurzes Wort, etwa EUR</translation>
    </message>
    <message>
        <source>shop.hour: a price in whole cents, 0 to 100000</source>
        <translation>shop.hour: ein Preis in ganzen Cent, 0 bis 100000</translation>
    </message>
    <message>
        <source>shop.warranty_days: 0 to 36500</source>
        <translation>shop.warranty_days: 0 bis 36500</translation>
    </message>
    <message>
        <source>shop.paper: "A4" or "Letter"</source>
        <translation>shop.paper: „A4“ oder „Letter“</translation>
    </message>
    <message>
        <source>unlocked.%1: [ceilings] gives no %2, so there is nothing to unlock</source>
        <translation>unlocked.%1: [ceilings] nennt kein %2, also gibt es nichts freizugeben</translation>
    </message>
    <message>
        <source>unlocked.%1: %2 is below the %3 of [ceilings]</source>
        <translation>unlocked.%1: %2 liegt unter dem %3 von [ceilings]</translation>
    </message>
    <message>
        <source>%1: longer than %2 bytes</source>
        <translation>%1: länger als %2 Bytes</translation>
    </message>
    <message>
        <source>%1: leads to a file that is not there</source>
        <translation>%1: führt zu einer Datei, die nicht da ist</translation>
    </message>
    <message>
        <source>(known are %1)</source>
        <translation>(bekannt sind %1)</translation>
    </message>
    <message>
        <source>("%1,%2": write %3.%4 with a point)</source>
        <translation>("%1,%2": %3.%4 mit Punkt schreiben)</translation>
    </message>
</context>
<context>
    <name>drivers/address.py</name>
    <message>
        <source>serial %1</source>
        <translation>Seriennummer %1</translation>
    </message>
</context>
<context>
    <name>drivers/dialect.py</name>
    <message>
        <source>output %1 of %2</source>
        <translation>Ausgang %1 von %2</translation>
    </message>
</context>
<context>
    <name>drivers/dialect_check.py</name>
    <message>
        <source>name: not a printable text of at most %1 characters</source>
        <translation>name: kein druckbarer Text von höchstens %1 Zeichen</translation>
    </message>
    <message>
        <source>%1: longer than %2 characters</source>
        <translation>%1: länger als %2 Zeichen</translation>
    </message>
    <message>
        <source>%1: %2 is %3</source>
        <translation>%1: %2 ist %3</translation>
    </message>
    <message>
        <source>no query</source>
        <translation>keine Abfrage</translation>
    </message>
    <message>
        <source>a query</source>
        <translation>eine Abfrage</translation>
    </message>
    <message>
        <source>no value</source>
        <translation>kein Wert</translation>
    </message>
    <message>
        <source>%1: %2 is not one program message unit with %3</source>
        <translation>%1: %2 ist keine Programmnachricht mit %3</translation>
    </message>
    <message>
        <source>%1 ends no line</source>
        <translation>%1 beendet keine Zeile</translation>
    </message>
    <message>
        <source>messages that nothing ends need a gap between them</source>
        <translation>Nachrichten, die nichts beendet, brauchen eine Pause dazwischen</translation>
    </message>
    <message>
        <source>several units in one message need something that ends messages and replies</source>
        <translation>mehrere Einheiten in einer Nachricht brauchen etwas, das Nachrichten und Antworten beendet</translation>
    </message>
    <message>
        <source>needed where reply_termination is empty, and only there</source>
        <translation>nötig, wo reply_termination leer ist, und nur dort</translation>
    </message>
    <message>
        <source>needed where it is asked for, and only there</source>
        <translation>nötig, wo danach gefragt wird, und nur dort</translation>
    </message>
    <message>
        <source>%1 chooses no output: it has no {n}</source>
        <translation>%1 wählt keinen Ausgang: Es hat kein {n}</translation>
    </message>
    <message>
        <source>%1 does not say which of %2 outputs is meant</source>
        <translation>%1 sagt nicht, welcher von %2 Ausgängen gemeint ist</translation>
    </message>
    <message>
        <source>one for each of %1 outputs</source>
        <translation>einer für jeden von %1 Ausgängen</translation>
    </message>
    <message>
        <source>a bit for each of %1 outputs</source>
        <translation>ein Bit für jeden von %1 Ausgängen</translation>
    </message>
    <message>
        <source>a byte has the bits 0 to 7</source>
        <translation>ein Byte hat die Bits 0 bis 7</translation>
    </message>
    <message>
        <source>either volts and amps, or both</source>
        <translation>entweder Volt und Ampere, oder beides zusammen</translation>
    </message>
    <message>
        <source>the same as program.on</source>
        <translation>dasselbe wie program.on</translation>
    </message>
    <message>
        <source>needed where readback.condition is asked for, and only there</source>
        <translation>nötig, wo nach readback.condition gefragt wird, und nur dort</translation>
    </message>
    <message>
        <source>readback.output tells it already</source>
        <translation>readback.output sagt es schon</translation>
    </message>
    <message>
        <source>condition, mode and status: one of them tells the regulation</source>
        <translation>condition, mode und status: Eines davon sagt die Regelung</translation>
    </message>
    <message>
        <source>needed where it can be switched on: otherwise nobody could see whether it is</source>
        <translation>nötig, wo es sich einschalten lässt: Sonst könnte niemand sehen, ob es an ist</translation>
    </message>
    <message>
        <source>words for on and for off, or for neither</source>
        <translation>Wörter für an und für aus, oder für keines von beiden</translation>
    </message>
    <message>
        <source>needed unless errors.form is "none"</source>
        <translation>nötig, außer errors.form ist „none“</translation>
    </message>
    <message>
        <source>used only where errors.form is "scpi": its queries are asked behind one for the error queue</source>
        <translation>nur benutzt, wo errors.form „scpi“ ist: Seine Fragen werden hinter einer nach der Fehlerliste gestellt</translation>
    </message>
    <message>
        <source>its long lists need replies that something ends, and no echo</source>
        <translation>seine langen Listen brauchen Antworten, die etwas beendet, und kein Echo</translation>
    </message>
</context>
<context>
    <name>drivers/discovery.py</name>
    <message>
        <source>%1: not finished in time</source>
        <translation>%1: nicht rechtzeitig fertig</translation>
    </message>
    <message>
        <source>%1 there that this user may not open: it takes the udev rule of the README</source>
        <translation>%1 da, die dieser Benutzer nicht öffnen darf: Es braucht die udev-Regel aus der README</translation>
    </message>
    <message>
        <source>libusb is not there (on Linux: the package libusb-1.0-0)</source>
        <translation>libusb ist nicht da (unter Linux: das Paket libusb-1.0-0)</translation>
    </message>
    <message>
        <source>by the system's VISA</source>
        <translation>über das VISA des Systems</translation>
    </message>
    <message>
        <source>there is no network</source>
        <translation>es gibt kein Netz</translation>
    </message>
</context>
<context>
    <name>drivers/exchange.py</name>
    <message>
        <source>"%1" answers where "%2" was</source>
        <translation>„%1“ antwortet, wo „%2“ war</translation>
    </message>
    <message>
        <source>%1 came back where %2 was sent</source>
        <translation>%1 kam zurück, wo %2 gesendet wurde</translation>
    </message>
    <message>
        <source>%1 is no reply of %2 characters</source>
        <translation>%1 ist keine Antwort von %2 Zeichen</translation>
    </message>
    <message>
        <source>the session is suspect after a lost reply</source>
        <translation>die Sitzung ist nach einer verlorenen Antwort zweifelhaft</translation>
    </message>
</context>
<context>
    <name>drivers/finding.py</name>
    <message>
        <source>"%1" answers too slowly: %2 s were not enough to ask what matters</source>
        <translation>„%1“ antwortet zu langsam: %2 s reichten nicht, um das Nötige zu fragen</translation>
    </message>
    <message>
        <source>what "%1" answers makes no whole: %2</source>
        <translation>was „%1“ antwortet, ergibt kein Ganzes: %2</translation>
    </message>
</context>
<context>
    <name>drivers/finding_asking.py</name>
    <message>
        <source>it answers any question with its identification, "%1"</source>
        <translation>es beantwortet jede Frage mit seiner Kennung, „%1“</translation>
    </message>
    <message>
        <source>"%1" answers late by one: each answer belongs to the question before</source>
        <translation>„%1“ antwortet um eins zu spät: Jede Antwort gehört zur Frage davor</translation>
    </message>
    <message>
        <source>"%1" answers a question that no instrument knows with %2: none of its answers means anything</source>
        <translation>„%1“ beantwortet eine Frage, die kein Gerät kennt, mit %2: Keine seiner Antworten bedeutet etwas</translation>
    </message>
    <message>
        <source>something else where its error queue was asked for</source>
        <translation>etwas anderes, wo nach seiner Fehlerliste gefragt wurde</translation>
    </message>
    <message>
        <source>it does not come back to what was asked</source>
        <translation>es kommt nicht auf das zurück, was gefragt wurde</translation>
    </message>
</context>
<context>
    <name>drivers/finding_assembly.py</name>
    <message>
        <source>It answers too slowly for all questions: what is said to be missing may be there. With more time it is found.</source>
        <translation>Es antwortet zu langsam für alle Fragen: Was als fehlend genannt ist, kann da sein. Mit mehr Zeit wird es gefunden.</translation>
    </message>
    <message>
        <source>found by asking: %1</source>
        <translation>durch Fragen gefunden: %1</translation>
    </message>
    <message>
        <source>"%1" has a frequency and no current limit: a generator, no supply</source>
        <translation>„%1“ hat eine Frequenz und keine Strombegrenzung: ein Generator, kein Netzgerät</translation>
    </message>
    <message>
        <source>"%1" tells volts that are set, but no current limit: no supply that can be held within limits</source>
        <translation>„%1“ nennt eingestellte Volt, aber keine Strombegrenzung: kein Netzgerät, das sich in Grenzen halten lässt</translation>
    </message>
    <message>
        <source>"%1" has setpoints, but measures no volts and amps that could be asked for</source>
        <translation>„%1“ hat Sollwerte, misst aber keine Volt und Ampere, die sich abfragen ließen</translation>
    </message>
    <message>
        <source>%1 is a timer of its own that can switch the output off. Does any message feed it, or a word of its own? Until then it is not used.</source>
        <translation>%1 ist eine eigene Schaltuhr, die den Ausgang ausschalten kann. Setzt jede Nachricht sie zurück, oder ein eigenes Wort? Bis dahin wird sie nicht benutzt.</translation>
    </message>
    <message>
        <source>"%1" answers %2 but not %3</source>
        <translation>„%1“ beantwortet %2, aber nicht %3</translation>
    </message>
    <message>
        <source>How many volts and amps can each output give at most? No question to it tells.</source>
        <translation>Wie viele Volt und Ampere kann jeder Ausgang höchstens geben? Keine Frage an das Gerät sagt es.</translation>
    </message>
    <message>
        <source>%1 answers with bits: which of them says</source>
        <translation>%1 antwortet mit Bits: Welches davon sagt</translation>
    </message>
    <message>
        <source>How does it say</source>
        <translation>Wie sagt</translation>
    </message>
    <message>
        <source>%1 that the output is on? Without that it is not used.</source>
        <translation>%1, dass der Ausgang an ist? Ohne das wird es nicht benutzt.</translation>
    </message>
    <message>
        <source>%1 answers with bits: which of them says that the current limit holds, and which that the volts do? Until then the program reckons it from the readings.</source>
        <translation>%1 antwortet mit Bits: Welches davon sagt, dass die Strombegrenzung hält, und welches, dass die Volt halten? Bis dahin rechnet das Programm es aus den Messwerten.</translation>
    </message>
</context>
<context>
    <name>drivers/finding_line.py</name>
    <message>
        <source>nothing that it takes for a question: it answered %1 within %2 s with none of four line ends. It may be off, no instrument, at another speed, or held by another program</source>
        <translation>nichts, was es für eine Frage hält: Es antwortete %1 innerhalb von %2 s auf keines von vier Zeilenenden. Es kann aus sein, kein Gerät, auf anderer Geschwindigkeit oder von einem anderen Programm belegt</translation>
    </message>
    <message>
        <source>it sends back what it is sent and answers nothing (%1 came back as it was): a printer or a terminal does that, no supply</source>
        <translation>es sendet zurück, was es bekommt, und antwortet nichts (%1 kam unverändert zurück): Das tut ein Drucker oder ein Terminal, kein Netzgerät</translation>
    </message>
    <message>
        <source>a web server answers there, no instrument: the port may be another</source>
        <translation>dort antwortet ein Webserver, kein Gerät: Der Port kann ein anderer sein</translation>
    </message>
    <message>
        <source>what answers does not identify itself (%1)</source>
        <translation>was antwortet, nennt sich nicht (%1)</translation>
    </message>
    <message>
        <source>what answers does not identify itself: "%1"</source>
        <translation>was antwortet, nennt sich nicht: „%1“</translation>
    </message>
    <message>
        <source>"%1" identified itself once, and then not three times in a row</source>
        <translation>„%1“ nannte sich einmal und dann nicht dreimal hintereinander</translation>
    </message>
</context>
<context>
    <name>drivers/finding_measured.py</name>
    <message>
        <source>not answered</source>
        <translation>nicht beantwortet</translation>
    </message>
</context>
<context>
    <name>drivers/finding_search.py</name>
    <message>
        <source>"%1" measures, but has no setpoints that could be asked for: a meter, no supply</source>
        <translation>„%1“ misst, hat aber keine abfragbaren Sollwerte: ein Messgerät, kein Netzgerät</translation>
    </message>
    <message>
        <source>"%1" answers none of the questions for setpoints that supplies answer</source>
        <translation>„%1“ beantwortet keine der Fragen nach Sollwerten, die Netzgeräte beantworten</translation>
    </message>
</context>
<context>
    <name>drivers/finding_tried.py</name>
    <message>
        <source>what clears its latches</source>
        <translation>was seine Sicherungen zurücksetzt</translation>
    </message>
    <message>
        <source>%1: it has no error queue that would tell</source>
        <translation>%1: Es hat keine Fehlerliste, die es sagen würde</translation>
    </message>
    <message>
        <source>its output is on: switch it off, then spellings can be tried</source>
        <translation>sein Ausgang ist an: Schalten Sie ihn aus, dann lassen sich Schreibweisen probieren</translation>
    </message>
</context>
<context>
    <name>drivers/foreign.py</name>
    <message>
        <source>longer than %1 characters</source>
        <translation>länger als %1 Zeichen</translation>
    </message>
    <message>
        <source>a line of more than %1 characters</source>
        <translation>eine Zeile von mehr als %1 Zeichen</translation>
    </message>
    <message>
        <source>nested too deep</source>
        <translation>zu tief verschachtelt</translation>
    </message>
</context>
<context>
    <name>drivers/identifying.py</name>
    <message>
        <source>something answers there, but does not identify itself, or another program holds it</source>
        <translation>etwas antwortet dort, nennt sich aber nicht, oder ein anderes Programm hält es fest</translation>
    </message>
    <message>
        <source>"%1" can not be used by the dialect "%2": %3</source>
        <translation>„%1“ ist mit dem Dialekt „%2“ nicht zu benutzen: %3</translation>
    </message>
    <message>
        <source>%1; a turned knob or an output left on would go unseen</source>
        <translation>%1; ein gedrehter Knopf oder ein angelassener Ausgang bliebe ungesehen</translation>
    </message>
    <message>
        <source>"%1" does not answer as a supply of the dialect "%2" does (%3)</source>
        <translation>„%1“ antwortet nicht wie ein Netzgerät des Dialekts „%2“ (%3)</translation>
    </message>
    <message>
        <source>%1, asked for output %2</source>
        <translation>%1, gefragt nach Ausgang %2</translation>
    </message>
    <message>
        <source>it goes on with another one</source>
        <translation>es macht mit einem anderen weiter</translation>
    </message>
    <message>
        <source>"%1" is not as the dialect "%2" says: %3</source>
        <translation>„%1“ ist nicht so, wie der Dialekt „%2“ sagt: %3</translation>
    </message>
</context>
<context>
    <name>drivers/links/by_visa.py</name>
    <message>
        <source>nothing answers at this address</source>
        <translation>an dieser Adresse antwortet nichts</translation>
    </message>
    <message>
        <source>it takes no more messages</source>
        <translation>es nimmt keine Nachrichten mehr an</translation>
    </message>
    <message>
        <source>no reply in time</source>
        <translation>keine Antwort in der Zeit</translation>
    </message>
</context>
<context>
    <name>drivers/links/hislip.py</name>
    <message>
        <source>something answers at this address, but not in HiSLIP</source>
        <translation>an dieser Adresse antwortet etwas, aber nicht in HiSLIP</translation>
    </message>
    <message>
        <source>it wants HiSLIP's overlapped mode, which this program does not speak</source>
        <translation>es will den überlappten Modus von HiSLIP, den dieses Programm nicht spricht</translation>
    </message>
    <message>
        <source>it reports: %1</source>
        <translation>es meldet: %1</translation>
    </message>
</context>
<context>
    <name>drivers/links/in_time.py</name>
    <message>
        <source>in time</source>
        <translation>in der Zeit</translation>
    </message>
    <message>
        <source>an earlier call has not come back</source>
        <translation>ein früherer Aufruf ist nicht zurückgekommen</translation>
    </message>
</context>
<context>
    <name>drivers/links/serial_port.py</name>
    <message>
        <source>the serial port is gone, or its cable was pulled</source>
        <translation>der serielle Anschluss ist weg, oder sein Kabel wurde gezogen</translation>
    </message>
    <message>
        <source>it never stops sending</source>
        <translation>es hört nicht auf zu senden</translation>
    </message>
    <message>
        <source>there is no serial port %1</source>
        <translation>es gibt keinen seriellen Anschluss %1</translation>
    </message>
    <message>
        <source>this user may not open %1, or another program holds it (on Linux: group dialout)</source>
        <translation>dieser Benutzer darf %1 nicht öffnen, oder ein anderes Programm hält ihn fest (unter Linux: Gruppe dialout)</translation>
    </message>
    <message>
        <source>another program holds %1</source>
        <translation>ein anderes Programm hält %1 fest</translation>
    </message>
    <message>
        <source>%1 can not be opened as a serial port</source>
        <translation>%1 lässt sich nicht als serieller Anschluss öffnen</translation>
    </message>
</context>
<context>
    <name>drivers/links/tcp.py</name>
    <message>
        <source>the supply closed the connection</source>
        <translation>das Netzgerät hat die Verbindung geschlossen</translation>
    </message>
    <message>
        <source>nobody says in time where %1 is</source>
        <translation>niemand sagt rechtzeitig, wo %1 ist</translation>
    </message>
    <message>
        <source>there is no %1 on this network</source>
        <translation>in diesem Netz gibt es kein %1</translation>
    </message>
</context>
<context>
    <name>drivers/links/vxi11.py</name>
    <message>
        <source>the device is not accessible</source>
        <translation>das Gerät ist nicht zugänglich</translation>
    </message>
    <message>
        <source>it takes no more links: another program holds it</source>
        <translation>es nimmt keine weiteren Verbindungen an: Ein anderes Programm hält es fest</translation>
    </message>
    <message>
        <source>another program has locked it</source>
        <translation>ein anderes Programm hat es gesperrt</translation>
    </message>
    <message>
        <source>something answers at this address, but not in VXI-11</source>
        <translation>an dieser Adresse antwortet etwas, aber nicht in VXI-11</translation>
    </message>
    <message>
        <source>it took a part of a message only</source>
        <translation>es nahm nur einen Teil einer Nachricht an</translation>
    </message>
    <message>
        <source>there is no VXI-11 at this address</source>
        <translation>an dieser Adresse gibt es kein VXI-11</translation>
    </message>
    <message>
        <source>it reports VXI-11 error %1</source>
        <translation>es meldet den VXI-11-Fehler %1</translation>
    </message>
</context>
<context>
    <name>drivers/scpi.py</name>
    <message>
        <source>%1 says that nothing was measured</source>
        <translation>%1 sagt, dass nichts gemessen wurde</translation>
    </message>
    <message>
        <source>%1 does not end in %2</source>
        <translation>%1 endet nicht auf %2</translation>
    </message>
    <message>
        <source>%1 has no last digit that could be a resolution</source>
        <translation>%1 hat keine letzte Stelle, die eine Auflösung sein könnte</translation>
    </message>
    <message>
        <source>%1 is neither on nor off</source>
        <translation>%1 ist weder an noch aus</translation>
    </message>
    <message>
        <source>%1 is not a register</source>
        <translation>%1 ist kein Register</translation>
    </message>
    <message>
        <source>%1 is not an entry of an error queue</source>
        <translation>%1 ist kein Eintrag einer Fehlerliste</translation>
    </message>
    <message>
        <source>%1 does not begin with an entry of an error queue</source>
        <translation>%1 beginnt nicht mit einem Eintrag einer Fehlerliste</translation>
    </message>
    <message>
        <source>%1 numbers where %2 were asked for</source>
        <translation>%1 Zahlen, wo %2 verlangt waren</translation>
    </message>
    <message>
        <source>%1 is no parameter</source>
        <translation>%1 ist kein Parameter</translation>
    </message>
    <message>
        <source>%1 has more than %2 digits before its point</source>
        <translation>%1 hat mehr als %2 Ziffern vor dem Komma</translation>
    </message>
    <message>
        <source>%1 replies where %2 were asked for</source>
        <translation>%1 Antworten, wo %2 verlangt waren</translation>
    </message>
    <message>
        <source>%1 is not an identification of %2 fields</source>
        <translation>%1 ist keine Kennung aus %2 Feldern</translation>
    </message>
</context>
<context>
    <name>drivers/scpi_array.py</name>
    <message>
        <source>%1 samples every %2 s: from 2 to %3 samples every %4 to %5 s are possible</source>
        <translation>%1 Punkte alle %2 s: Möglich sind 2 bis %3 Punkte alle %4 bis %5 s</translation>
    </message>
    <message>
        <source>%1 samples every %2 s, where %3 were asked for</source>
        <translation>%1 Punkte alle %2 s, wo %3 verlangt waren</translation>
    </message>
    <message>
        <source>the array was not started</source>
        <translation>die Messreihe wurde nicht gestartet</translation>
    </message>
    <message>
        <source>the array is full only %1 s after its start</source>
        <translation>die Messreihe ist erst %1 s nach ihrem Start voll</translation>
    </message>
    <message>
        <source>its measurement array is doubtful: %1</source>
        <translation>seine eigene Messreihe ist zweifelhaft: %1</translation>
    </message>
    <message>
        <source>it does not know how</source>
        <translation>es weiß nicht, wie</translation>
    </message>
    <message>
        <source>its measurement array did not start: %1</source>
        <translation>seine eigene Messreihe lief nicht an: %1</translation>
    </message>
    <message>
        <source>it says nothing</source>
        <translation>es sagt nichts</translation>
    </message>
    <message>
        <source>its measurement array has nothing to give: %1</source>
        <translation>seine eigene Messreihe hat nichts zu geben: %1</translation>
    </message>
</context>
<context>
    <name>drivers/scpi_reading.py</name>
    <message>
        <source>nothing tells whether the output is on</source>
        <translation>nichts sagt, ob der Ausgang an ist</translation>
    </message>
    <message>
        <source>%1 is not one byte</source>
        <translation>%1 ist kein Byte</translation>
    </message>
    <message>
        <source>%1 is no word for a mode</source>
        <translation>%1 ist kein Wort für eine Betriebsart</translation>
    </message>
</context>
<context>
    <name>drivers/scpi_supply.py</name>
    <message>
        <source>output %1</source>
        <translation>Ausgang %1</translation>
    </message>
    <message>
        <source>the dialect "%1" has %2 of them</source>
        <translation>der Dialekt „%1“ hat davon %2</translation>
    </message>
    <message>
        <source>this supply has no choice of sensing</source>
        <translation>dieses Netzgerät hat keine Wahl der Fühlleitungen</translation>
    </message>
    <message>
        <source>no measurement array was found</source>
        <translation>es wurde keine eigene Messreihe gefunden</translation>
    </message>
</context>
<context>
    <name>drivers/supply.py</name>
    <message>
        <source>no over-voltage latch</source>
        <translation>keine Überspannungssicherung</translation>
    </message>
    <message>
        <source>no over-current latch</source>
        <translation>keine Überstromsicherung</translation>
    </message>
    <message>
        <source>no read-back of setpoints</source>
        <translation>kein Rücklesen der Sollwerte</translation>
    </message>
    <message>
        <source>no output state</source>
        <translation>kein Zustand des Ausgangs</translation>
    </message>
    <message>
        <source>no mode</source>
        <translation>keine Betriebsart</translation>
    </message>
    <message>
        <source>no error queue</source>
        <translation>keine Fehlerliste</translation>
    </message>
    <message>
        <source>range not told</source>
        <translation>Bereich nicht genannt</translation>
    </message>
    <message>
        <source>one switch for all outputs</source>
        <translation>ein Schalter für alle Ausgänge</translation>
    </message>
    <message>
        <source>output chosen by a message of its own</source>
        <translation>Ausgang durch eine eigene Nachricht gewählt</translation>
    </message>
    <message>
        <source>choice of output not told</source>
        <translation>Wahl des Ausgangs nicht genannt</translation>
    </message>
</context>
<context>
    <name>drivers/visa.py</name>
    <message>
        <source>libusb (on Linux the package libusb-1.0-0) or</source>
        <translation>libusb (unter Linux das Paket libusb-1.0-0) oder</translation>
    </message>
    <message>
        <source>the adapter's driver with its Python part (linux-gpib or gpib-ctypes) or</source>
        <translation>den Treiber des Adapters mit seinem Python-Teil (linux-gpib oder gpib-ctypes) oder</translation>
    </message>
    <message>
        <source>%1 bytes where %2 were to come</source>
        <translation>%1 Bytes, wo %2 kommen sollten</translation>
    </message>
    <message>
        <source>its reply does not end in time</source>
        <translation>seine Antwort endet nicht rechtzeitig</translation>
    </message>
    <message>
        <source>the session is closed</source>
        <translation>die Sitzung ist geschlossen</translation>
    </message>
    <message>
        <source>a reply of more than %1 bytes</source>
        <translation>eine Antwort von mehr als %1 Bytes</translation>
    </message>
    <message>
        <source>there is a space before or after this address</source>
        <translation>vor oder hinter dieser Adresse ist ein Leerzeichen</translation>
    </message>
    <message>
        <source>there is a space in this address</source>
        <translation>in dieser Adresse ist ein Leerzeichen</translation>
    </message>
    <message>
        <source>this computer can't speak %1 yet: it needs %2a VISA of the system</source>
        <translation>dieser Rechner spricht %1 noch nicht: Dazu braucht es %2ein VISA des Systems</translation>
    </message>
    <message>
        <source>the port of this address is %1, not a number from 1 to 65535</source>
        <translation>der Port dieser Adresse ist %1, keine Zahl von 1 bis 65535</translation>
    </message>
    <message>
        <source>the baud rate of this address is %1, not a number from 50 to 4000000</source>
        <translation>die Baudrate dieser Adresse ist %1, keine Zahl von 50 bis 4000000</translation>
    </message>
    <message>
        <source>this is no VISA address; one looks like %1</source>
        <translation>das ist keine VISA-Adresse; eine sieht aus wie %1</translation>
    </message>
    <message>
        <source>no address</source>
        <translation>keine Adresse</translation>
    </message>
    <message>
        <source>a message or an address that is not ASCII</source>
        <translation>eine Nachricht oder Adresse, die nicht ASCII ist</translation>
    </message>
    <message>
        <source>nothing listens at this address; that of a raw socket ends in ::SOCKET</source>
        <translation>an dieser Adresse hört nichts zu; die eines rohen Sockets endet auf ::SOCKET</translation>
    </message>
    <message>
        <source>nothing listens at this address</source>
        <translation>an dieser Adresse hört nichts zu</translation>
    </message>
    <message>
        <source>there is no such host on this network</source>
        <translation>einen solchen Rechner gibt es in diesem Netz nicht</translation>
    </message>
    <message>
        <source>this user may not open it; on Linux it takes the udev rule of the README</source>
        <translation>dieser Benutzer darf es nicht öffnen; unter Linux braucht es die udev-Regel aus der README</translation>
    </message>
</context>
<context>
    <name>words</name>
    <message>
        <source>above</source>
        <translation>über</translation>
    </message>
    <message>
        <source>after</source>
        <translation>nach</translation>
    </message>
    <message>
        <source>against</source>
        <translation>gegen</translation>
    </message>
    <message>
        <source>ampere</source>
        <translation>Ampere</translation>
    </message>
    <message>
        <source>amps</source>
        <translation>Ampere</translation>
    </message>
    <message>
        <source>and</source>
        <translation>und</translation>
    </message>
    <message>
        <source>below</source>
        <translation>unter</translation>
    </message>
    <message>
        <source>capacitance</source>
        <translation>Kapazität C</translation>
    </message>
    <message>
        <source>capacity</source>
        <translation>Kapazität</translation>
    </message>
    <message>
        <source>ceiling</source>
        <translation>Grenzwert</translation>
    </message>
    <message>
        <source>ceilings</source>
        <translation>Grenzwerte</translation>
    </message>
    <message>
        <source>cell-limit</source>
        <translation>Grenze der Zelle</translation>
    </message>
    <message>
        <source>charge</source>
        <translation>Ladung</translation>
    </message>
    <message>
        <source>charge-current</source>
        <translation>Ladestrom</translation>
    </message>
    <message>
        <source>charge-resistor</source>
        <translation>Ladewiderstand</translation>
    </message>
    <message>
        <source>check</source>
        <translation>Prüfung</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>abgeschlossen</translation>
    </message>
    <message>
        <source>column</source>
        <translation>Spalte</translation>
    </message>
    <message>
        <source>columns</source>
        <translation>Spalten</translation>
    </message>
    <message>
        <source>creeping</source>
        <translation>kriecht</translation>
    </message>
    <message>
        <source>current</source>
        <translation>Strom</translation>
    </message>
    <message>
        <source>days</source>
        <translation>Tage</translation>
    </message>
    <message>
        <source>diode</source>
        <translation>Diode</translation>
    </message>
    <message>
        <source>Divider</source>
        <translation>Spannungsteiler</translation>
    </message>
    <message>
        <source>doubtful</source>
        <translation>zweifelhaft</translation>
    </message>
    <message>
        <source>draw</source>
        <translation>Verbrauch</translation>
    </message>
    <message>
        <source>drift</source>
        <translation>Drift</translation>
    </message>
    <message>
        <source>drive</source>
        <translation>Treiber</translation>
    </message>
    <message>
        <source>electronic</source>
        <translation>Elektronik</translation>
    </message>
    <message>
        <source>energy</source>
        <translation>Energie</translation>
    </message>
    <message>
        <source>exactly</source>
        <translation>genau</translation>
    </message>
    <message>
        <source>fell</source>
        <translation>fiel</translation>
    </message>
    <message>
        <source>flat</source>
        <translation>flach</translation>
    </message>
    <message>
        <source>forward</source>
        <translation>Fluss</translation>
    </message>
    <message>
        <source>forward-spread</source>
        <translation>Streuung der Flussspannung</translation>
    </message>
    <message>
        <source>four-digit</source>
        <translation>vierstellig</translation>
    </message>
    <message>
        <source>freed</source>
        <translation>gelöst</translation>
    </message>
    <message>
        <source>gate</source>
        <translation>Gate</translation>
    </message>
    <message>
        <source>hand</source>
        <translation>von Hand</translation>
    </message>
    <message>
        <source>higher</source>
        <translation>höher</translation>
    </message>
    <message>
        <source>hold</source>
        <translation>Halten</translation>
    </message>
    <message>
        <source>holds</source>
        <translation>Halten</translation>
    </message>
    <message>
        <source>job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>jumper</source>
        <translation>Brücke</translation>
    </message>
    <message>
        <source>kick</source>
        <translation>Anstoß</translation>
    </message>
    <message>
        <source>lasts</source>
        <translation>hält</translation>
    </message>
    <message>
        <source>leads</source>
        <translation>Leitungen</translation>
    </message>
    <message>
        <source>led</source>
        <translation>LED</translation>
    </message>
    <message>
        <source>locked</source>
        <translation>blockiert</translation>
    </message>
    <message>
        <source>longer</source>
        <translation>länger</translation>
    </message>
    <message>
        <source>lower</source>
        <translation>niedriger</translation>
    </message>
    <message>
        <source>measuring</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>motor</source>
        <translation>Motor</translation>
    </message>
    <message>
        <source>move</source>
        <translation>Bewegung</translation>
    </message>
    <message>
        <source>neighbours</source>
        <translation>Nachbarn</translation>
    </message>
    <message>
        <source>network</source>
        <translation>Netz</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>ohms</source>
        <translation>Ohm</translation>
    </message>
    <message>
        <source>open</source>
        <translation>unterbrochen</translation>
    </message>
    <message>
        <source>output</source>
        <translation>Ausgang</translation>
    </message>
    <message>
        <source>over-current</source>
        <translation>Überstrom</translation>
    </message>
    <message>
        <source>over-voltage</source>
        <translation>Überspannung</translation>
    </message>
    <message>
        <source>owner</source>
        <translation>Inhaber</translation>
    </message>
    <message>
        <source>partly</source>
        <translation>läuft teilweise</translation>
    </message>
    <message>
        <source>peak</source>
        <translation>Spitze</translation>
    </message>
    <message>
        <source>probe</source>
        <translation>Messung</translation>
    </message>
    <message>
        <source>program</source>
        <translation>Programm</translation>
    </message>
    <message>
        <source>proof</source>
        <translation>Nachweis</translation>
    </message>
    <message>
        <source>pulldown</source>
        <translation>Pulldown</translation>
    </message>
    <message>
        <source>recovery</source>
        <translation>Lösen</translation>
    </message>
    <message>
        <source>refused</source>
        <translation>abgelehnt</translation>
    </message>
    <message>
        <source>resistance</source>
        <translation>Widerstand</translation>
    </message>
    <message>
        <source>resistor</source>
        <translation>Widerstand</translation>
    </message>
    <message>
        <source>restart</source>
        <translation>Wiederanlauf</translation>
    </message>
    <message>
        <source>resting</source>
        <translation>ruht</translation>
    </message>
    <message>
        <source>ripple</source>
        <translation>Welligkeit</translation>
    </message>
    <message>
        <source>rose</source>
        <translation>stieg</translation>
    </message>
    <message>
        <source>run</source>
        <translation>Lauf</translation>
    </message>
    <message>
        <source>run-in</source>
        <translation>Einlauf</translation>
    </message>
    <message>
        <source>run-up</source>
        <translation>Hochlauf</translation>
    </message>
    <message>
        <source>rung</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>runs</source>
        <translation>läuft</translation>
    </message>
    <message>
        <source>seconds</source>
        <translation>Sekunden</translation>
    </message>
    <message>
        <source>self-discharge</source>
        <translation>Selbstentladung</translation>
    </message>
    <message>
        <source>serial</source>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <source>short</source>
        <translation>Kurzschluss</translation>
    </message>
    <message>
        <source>shorter</source>
        <translation>kürzer</translation>
    </message>
    <message>
        <source>skip</source>
        <translation>überspringen</translation>
    </message>
    <message>
        <source>skipped</source>
        <translation>übersprungen</translation>
    </message>
    <message>
        <source>start</source>
        <translation>Anlauf</translation>
    </message>
    <message>
        <source>start-up</source>
        <translation>Anlauf</translation>
    </message>
    <message>
        <source>starts</source>
        <translation>Anläufe</translation>
    </message>
    <message>
        <source>steady</source>
        <translation>stetig</translation>
    </message>
    <message>
        <source>step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>still-stuck</source>
        <translation>sitzt noch fest</translation>
    </message>
    <message>
        <source>stop</source>
        <translation>Stopp</translation>
    </message>
    <message>
        <source>stopped</source>
        <translation>gestoppt</translation>
    </message>
    <message>
        <source>supply</source>
        <translation>Netzgerät</translation>
    </message>
    <message>
        <source>supply-lost</source>
        <translation>Netzgerät verloren</translation>
    </message>
    <message>
        <source>three-digit</source>
        <translation>dreistellig</translation>
    </message>
    <message>
        <source>tolerance</source>
        <translation>Toleranz</translation>
    </message>
    <message>
        <source>turning</source>
        <translation>dreht</translation>
    </message>
    <message>
        <source>undecided</source>
        <translation>unentschieden</translation>
    </message>
    <message>
        <source>undetermined</source>
        <translation>unentschieden</translation>
    </message>
    <message>
        <source>unknown</source>
        <translation>unbekannt</translation>
    </message>
    <message>
        <source>upper</source>
        <translation>oberer</translation>
    </message>
    <message>
        <source>usable</source>
        <translation>nutzbar</translation>
    </message>
    <message>
        <source>USB</source>
        <translation>USB</translation>
    </message>
    <message>
        <source>volt</source>
        <translation>Volt</translation>
    </message>
    <message>
        <source>volts</source>
        <translation>Volt</translation>
    </message>
    <message>
        <source>winding</source>
        <translation>Wicklung</translation>
    </message>
    <message>
        <source>works</source>
        <translation>läuft</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>zero</source>
        <translation>Nullpunkt</translation>
    </message>
</context>
</TS>

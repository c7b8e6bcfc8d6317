BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0003');
CREATE TABLE charge (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	utc TEXT NOT NULL, 
	who TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	text TEXT NOT NULL, 
	part_id INTEGER, 
	count INTEGER NOT NULL, 
	each_cents BIGINT NOT NULL, 
	cents BIGINT NOT NULL, 
	corrects INTEGER, 
	CONSTRAINT pk_charge PRIMARY KEY (id), 
	CONSTRAINT ck_charge_kind_known CHECK (kind IN ('part', 'minutes', 'other')), 
	CONSTRAINT fk_charge_job_id_job FOREIGN KEY(job_id) REFERENCES job (id), 
	CONSTRAINT fk_charge_part_id_part FOREIGN KEY(part_id) REFERENCES part (id), 
	CONSTRAINT fk_charge_corrects_charge FOREIGN KEY(corrects) REFERENCES charge (id), 
	CONSTRAINT uq_charge_corrects UNIQUE (corrects)
);
INSERT INTO "charge" VALUES(1,1,'2026-01-01T00:01:02.000Z','day bench','part','shaft seal 6 mm',1,1,450,450,NULL);
INSERT INTO "charge" VALUES(2,1,'2026-01-01T00:01:02.000Z','day bench','minutes','taken apart',NULL,25,6000,2500,NULL);
INSERT INTO "charge" VALUES(3,1,'2026-01-01T00:01:02.000Z','day bench','part','shaft seal 6 mm: taken back, not used',1,-1,450,-450,1);
CREATE TABLE draft (
	"key" TEXT NOT NULL, 
	utc TEXT NOT NULL, 
	fields TEXT NOT NULL, 
	CONSTRAINT pk_draft PRIMARY KEY ("key")
);
INSERT INTO "draft" VALUES('close 1','2026-01-01T00:01:02.000Z','{"cause":"rust"}');
CREATE TABLE edit (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	run_id INTEGER, 
	utc TEXT NOT NULL, 
	who TEXT NOT NULL, 
	why TEXT NOT NULL, 
	field TEXT NOT NULL, 
	old TEXT NOT NULL, 
	new TEXT NOT NULL, 
	undone_utc TEXT, 
	CONSTRAINT pk_edit PRIMARY KEY (id), 
	CONSTRAINT fk_edit_job_id_job FOREIGN KEY(job_id) REFERENCES job (id), 
	CONSTRAINT fk_edit_run_id_run FOREIGN KEY(run_id) REFERENCES run (id)
);
INSERT INTO "edit" VALUES(1,1,2,'2026-01-01T00:01:00.000Z','day bench','seen later','note','""','"the hose was still on"',NULL);
INSERT INTO "edit" VALUES(2,1,NULL,'2026-01-01T00:01:00.000Z','','','pumped','"bilge water"','"sea water"',NULL);
INSERT INTO "edit" VALUES(3,1,NULL,'2026-01-01T00:01:01.000Z','','','complaint','"hums, does not turn"','"hums"','2026-01-01T00:01:02.000Z');
CREATE TABLE entry (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	utc TEXT NOT NULL, 
	stage TEXT NOT NULL, 
	text TEXT NOT NULL, 
	who TEXT NOT NULL, kind TEXT DEFAULT 'note' NOT NULL, 
	CONSTRAINT pk_entry PRIMARY KEY (id), 
	CONSTRAINT fk_entry_job_id_job FOREIGN KEY(job_id) REFERENCES job (id)
);
INSERT INTO "entry" VALUES(1,1,'2026-01-01T00:01:00.000Z','make-safe','Liquid drained, and dry: done','','check');
INSERT INTO "entry" VALUES(2,1,'2026-01-01T00:01:02.000Z','free','Waits for a part: shaft seal','day bench','state');
CREATE TABLE event (
	run_id INTEGER NOT NULL, 
	seq INTEGER NOT NULL, 
	t_s DOUBLE NOT NULL, 
	kind TEXT NOT NULL, 
	text TEXT NOT NULL, 
	"values" TEXT NOT NULL, 
	CONSTRAINT pk_event PRIMARY KEY (run_id, seq), 
	CONSTRAINT fk_event_run_id_run FOREIGN KEY(run_id) REFERENCES run (id)
);
INSERT INTO "event" VALUES(1,0,0.9,'step','rung 1','{"name":"same way","rung":1,"volts":7.2}');
INSERT INTO "event" VALUES(1,1,1.0,'kick','kick 1','{"number":1,"volts":12.0}');
INSERT INTO "event" VALUES(1,2,2.5,'kick','kick 2','{"number":2,"volts":12.0}');
INSERT INTO "event" VALUES(2,0,0.9,'step','rung 1','{"name":"same way","rung":1,"volts":7.2}');
INSERT INTO "event" VALUES(2,1,1.0,'kick','kick 1','{"number":1,"volts":12.0}');
INSERT INTO "event" VALUES(2,2,2.5,'kick','kick 2','{"number":2,"volts":12.0}');
INSERT INTO "event" VALUES(3,0,0.9,'step','rung 1','{"name":"same way","rung":1,"volts":7.2}');
INSERT INTO "event" VALUES(3,1,1.0,'kick','kick 1','{"number":1,"volts":12.0}');
INSERT INTO "event" VALUES(3,2,2.5,'kick','kick 2','{"number":2,"volts":12.0}');
CREATE TABLE file (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	utc TEXT NOT NULL, 
	who TEXT NOT NULL, 
	sha256 TEXT NOT NULL, 
	name TEXT NOT NULL, 
	media_type TEXT NOT NULL, 
	size BIGINT NOT NULL, 
	width INTEGER, 
	height INTEGER, 
	caption TEXT NOT NULL, 
	thumbnail BLOB, 
	CONSTRAINT pk_file PRIMARY KEY (id), 
	CONSTRAINT fk_file_job_id_job FOREIGN KEY(job_id) REFERENCES job (id)
);
INSERT INTO "file" VALUES(1,1,'2026-01-01T00:01:02.000Z','day bench','4d5c2408161197908cb19794cf2fffdc508e6d66b9b152fb2355ec755eed3b1f','brushes.txt','text/plain',18,NULL,NULL,'measured',NULL);
CREATE TABLE finding (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	utc TEXT NOT NULL, 
	who TEXT NOT NULL, 
	part TEXT NOT NULL, 
	marking TEXT NOT NULL, 
	place TEXT NOT NULL, 
	purpose TEXT NOT NULL, 
	value TEXT NOT NULL, 
	corrects INTEGER, 
	CONSTRAINT pk_finding PRIMARY KEY (id), 
	CONSTRAINT fk_finding_job_id_job FOREIGN KEY(job_id) REFERENCES job (id), 
	CONSTRAINT fk_finding_corrects_finding FOREIGN KEY(corrects) REFERENCES finding (id), 
	CONSTRAINT uq_finding_corrects UNIQUE (corrects)
);
INSERT INTO "finding" VALUES(1,1,'2026-01-01T00:01:02.000Z','day bench','R1','102','by the plug','series','1 kΩ',NULL);
INSERT INTO "finding" VALUES(2,1,'2026-01-01T00:01:02.000Z','day bench','R1','103','by the plug','series','10 kΩ',1);
CREATE TABLE item (
	id INTEGER NOT NULL, 
	kind TEXT NOT NULL, 
	make TEXT NOT NULL, 
	model TEXT NOT NULL, 
	serial TEXT NOT NULL, 
	CONSTRAINT pk_item PRIMARY KEY (id)
);
INSERT INTO "item" VALUES(1,'bilge pump','','12 V','BP-17');
INSERT INTO "item" VALUES(2,'cabin fan','','','');
CREATE TABLE "job" (
	id INTEGER NOT NULL, 
	number INTEGER NOT NULL, 
	tag TEXT NOT NULL, 
	item_id INTEGER NOT NULL, 
	motor_id INTEGER NOT NULL, 
	opened_utc TEXT NOT NULL, 
	closed_utc TEXT, 
	state TEXT NOT NULL, 
	complaint TEXT NOT NULL, 
	load_state TEXT NOT NULL, 
	cause TEXT NOT NULL, 
	work_done TEXT NOT NULL, 
	prognosis TEXT NOT NULL, 
	searched TEXT NOT NULL, 
	owner TEXT DEFAULT '' NOT NULL, 
	contact TEXT DEFAULT '' NOT NULL, 
	who TEXT DEFAULT '' NOT NULL, 
	opened_before TEXT DEFAULT '' NOT NULL, 
	pumped TEXT DEFAULT '' NOT NULL, 
	waiting_for TEXT DEFAULT '' NOT NULL, 
	result TEXT DEFAULT '' NOT NULL, 
	method TEXT DEFAULT '' NOT NULL, 
	advice TEXT DEFAULT '' NOT NULL, 
	consent BOOLEAN DEFAULT 0 NOT NULL, 
	spending_limit_cents BIGINT, 
	waiting_since_utc TEXT, 
	warranty_days INTEGER, 
	comeback_of INTEGER, 
	last_outcome TEXT, 
	changed_utc TEXT DEFAULT '' NOT NULL, 
	CONSTRAINT pk_job PRIMARY KEY (id), 
	CONSTRAINT fk_job_item_id_item FOREIGN KEY(item_id) REFERENCES item (id), 
	CONSTRAINT fk_job_motor_id_motor FOREIGN KEY(motor_id) REFERENCES motor (id), 
	CONSTRAINT ck_job_number_above_zero CHECK (number > 0), 
	CONSTRAINT uq_job_number UNIQUE (number), 
	CONSTRAINT fk_job_comeback_of_job FOREIGN KEY(comeback_of) REFERENCES job (id), 
	CONSTRAINT ck_job_state_known CHECK (state IN ('open', 'waiting-for-approval', 'waiting-for-part', 'waiting-for-owner', 'closed')), 
	CONSTRAINT ck_job_result_known CHECK (result IN ('', 'works', 'partly', 'not-repaired'))
);
INSERT INTO "job" VALUES(1,1,'H-0001',1,1,'2026-01-01T00:00:00.000Z',NULL,'waiting-for-part','hums, does not turn','dry, uncoupled','','','',' h 0001 ¶ 1 ¶ bilge pump ¶ 12 v ¶ bp 17 ¶ hums does not turn ¶ pilot boat ¶ berth 12 ¶ day bench ¶ nobody ¶ sea water ¶ shaft seal ¶ freed ¶ liquid drained and dry done ¶ waits for a part shaft seal ¶ r1 ¶ 102 ¶ by the plug ¶ series ¶ 1 kω ¶ 103 ¶ 10 kω ¶ shaft seal 6 mm ¶ 6 mm ¶ taken apart ¶ shaft seal 6 mm taken back not used ¶ brushes txt ¶ measured ¶ the hose was still on','pilot boat','berth 12','day bench','nobody','sea water','shaft seal','','','',1,9000,'2026-01-01T00:01:02.000Z',NULL,NULL,'freed','2026-01-01T00:01:02.000Z');
INSERT INTO "job" VALUES(2,2,'H-0002',2,2,'2026-01-01T00:00:00.000Z','2026-01-01T00:01:02.000Z','closed','silent','dry, uncoupled','brush stuck','tapped','fair',' h 0002 ¶ 2 ¶ cabin fan ¶ silent ¶ brush stuck ¶ tapped ¶ kicks ¶ fair ¶ run it monthly ¶ works ¶ freed','','','','','','','works','kicks','run it monthly',0,NULL,NULL,90,NULL,'freed','2026-01-01T00:01:02.000Z');
CREATE TABLE motor (
	id INTEGER NOT NULL, 
	item_id INTEGER NOT NULL, 
	rated_volts DOUBLE NOT NULL, 
	note TEXT NOT NULL, 
	CONSTRAINT pk_motor PRIMARY KEY (id), 
	CONSTRAINT fk_motor_item_id_item FOREIGN KEY(item_id) REFERENCES item (id)
);
INSERT INTO "motor" VALUES(1,1,12.0,'');
INSERT INTO "motor" VALUES(2,2,12.0,'');
CREATE TABLE part (
	id INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	number TEXT NOT NULL, 
	each_cents BIGINT NOT NULL, 
	stock INTEGER NOT NULL, 
	CONSTRAINT pk_part PRIMARY KEY (id), 
	CONSTRAINT uq_part_name_number UNIQUE (name, number)
);
INSERT INTO "part" VALUES(1,'shaft seal','6 mm',450,3);
CREATE TABLE run (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	uid TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	started_utc TEXT NOT NULL, 
	duration_s DOUBLE NOT NULL, 
	resource TEXT NOT NULL, 
	identity TEXT NOT NULL, 
	dialect TEXT NOT NULL, 
	rated_volts DOUBLE NOT NULL, 
	load_state TEXT NOT NULL, 
	sequence_name TEXT NOT NULL, 
	request TEXT NOT NULL, 
	ceilings TEXT NOT NULL, 
	program TEXT NOT NULL, 
	complete BOOLEAN NOT NULL, 
	outcome TEXT NOT NULL, 
	reason TEXT NOT NULL, 
	winding_verdict TEXT NOT NULL, 
	resistance_ohm DOUBLE, 
	resistance_low_ohm DOUBLE, 
	resistance_high_ohm DOUBLE, 
	kicks INTEGER NOT NULL, 
	moved BOOLEAN NOT NULL, 
	max_volts DOUBLE, 
	max_amps DOUBLE, 
	winding_bound_c DOUBLE, 
	locked_s DOUBLE NOT NULL, 
	output_confirmed_off BOOLEAN NOT NULL, freed_rung TEXT DEFAULT '' NOT NULL, 
	CONSTRAINT pk_run PRIMARY KEY (id), 
	CONSTRAINT ck_run_duration_not_negative CHECK (duration_s >= 0), 
	CONSTRAINT ck_run_kicks_not_negative CHECK (kicks >= 0), 
	CONSTRAINT fk_run_job_id_job FOREIGN KEY(job_id) REFERENCES job (id), 
	CONSTRAINT uq_run_uid UNIQUE (uid)
);
INSERT INTO "run" VALUES(1,1,'run-0','recovery','2026-11-25T09:00:00.000Z',4.0,'TCPIP::127.0.0.1::5025::SOCKET','Bench,Supply,1,1.0','plain',12.0,'dry, uncoupled','short','{"type":"request","uid":"run-0","kind":"recovery","resource":"TCPIP::127.0.0.1::5025::SOCKET","rated_volts":12.0,"layers":{},"sequence":{"name":"short","about":"","limit_s":180.0,"probe":{"levels_a":[0.02,0.05,0.1],"compliance_v":2.0,"on_s":0.15,"off_s":1.0},"steps":[{"kind":"kicks","name":"first","voltage":12.0,"voltage_ratio":null,"current":1.0,"current_ratio":null,"on_s":0.1,"off_s":1.0,"tries":3,"if_allowed":false,"only_after":null}]},"journal":"","job":1,"item":null,"complaint":"","load_state":"dry, uncoupled","unattended":false,"kicks_today":0,"ambient_c":25.0,"lead_ohm":0.0,"known_ohm":null,"earlier":[],"starts":5,"unlocked":""}','{"volts":{"value":42.4,"layer":"program"},"amps":{"value":20.0,"layer":"program"},"energy_j":{"value":1000.0,"layer":"program"},"locked_s":{"value":3.0,"layer":"program"},"winding_c":{"value":90.0,"layer":"motor"},"on_s":{"value":3600.0,"layer":"program"},"kicks":{"value":60.0,"layer":"program"}}','benchlog 0.1.0',1,'freed','it turned for 2 s','winding',2.05,2.0,2.1,2,0,12.004,1.002,31.5,0.4,1,'same way, 60 %');
INSERT INTO "run" VALUES(2,1,'run-1','recovery','2026-11-25T10:00:00.000Z',4.0,'TCPIP::127.0.0.1::5025::SOCKET','Bench,Supply,1,1.0','plain',12.0,'dry, uncoupled','short','{"type":"request","uid":"run-1","kind":"recovery","resource":"TCPIP::127.0.0.1::5025::SOCKET","rated_volts":12.0,"layers":{},"sequence":{"name":"short","about":"","limit_s":180.0,"probe":{"levels_a":[0.02,0.05,0.1],"compliance_v":2.0,"on_s":0.15,"off_s":1.0},"steps":[{"kind":"kicks","name":"first","voltage":12.0,"voltage_ratio":null,"current":1.0,"current_ratio":null,"on_s":0.1,"off_s":1.0,"tries":3,"if_allowed":false,"only_after":null}]},"journal":"","job":1,"item":null,"complaint":"","load_state":"dry, uncoupled","unattended":false,"kicks_today":0,"ambient_c":25.0,"lead_ohm":0.0,"known_ohm":null,"earlier":[],"starts":5,"unlocked":""}','{"volts":{"value":42.4,"layer":"program"},"amps":{"value":20.0,"layer":"program"},"energy_j":{"value":1000.0,"layer":"program"},"locked_s":{"value":3.0,"layer":"program"},"winding_c":{"value":90.0,"layer":"motor"},"on_s":{"value":3600.0,"layer":"program"},"kicks":{"value":60.0,"layer":"program"}}','benchlog 0.1.0',1,'freed','it turned for 2 s','winding',2.05,2.0,2.1,2,0,12.004,1.002,31.5,0.4,1,'same way, 60 %');
INSERT INTO "run" VALUES(3,2,'run-2','recovery','2026-11-25T11:00:00.000Z',4.0,'TCPIP::127.0.0.1::5025::SOCKET','Bench,Supply,1,1.0','plain',12.0,'dry, uncoupled','short','{"type":"request","uid":"run-2","kind":"recovery","resource":"TCPIP::127.0.0.1::5025::SOCKET","rated_volts":12.0,"layers":{},"sequence":{"name":"short","about":"","limit_s":180.0,"probe":{"levels_a":[0.02,0.05,0.1],"compliance_v":2.0,"on_s":0.15,"off_s":1.0},"steps":[{"kind":"kicks","name":"first","voltage":12.0,"voltage_ratio":null,"current":1.0,"current_ratio":null,"on_s":0.1,"off_s":1.0,"tries":3,"if_allowed":false,"only_after":null}]},"journal":"","job":2,"item":null,"complaint":"","load_state":"dry, uncoupled","unattended":false,"kicks_today":0,"ambient_c":25.0,"lead_ohm":0.0,"known_ohm":null,"earlier":[],"starts":5,"unlocked":""}','{"volts":{"value":42.4,"layer":"program"},"amps":{"value":20.0,"layer":"program"},"energy_j":{"value":1000.0,"layer":"program"},"locked_s":{"value":3.0,"layer":"program"},"winding_c":{"value":90.0,"layer":"motor"},"on_s":{"value":3600.0,"layer":"program"},"kicks":{"value":60.0,"layer":"program"}}','benchlog 0.1.0',1,'freed','it turned for 2 s','winding',2.05,2.0,2.1,2,0,12.004,1.002,31.5,0.4,1,'same way, 60 %');
CREATE TABLE trace (
	run_id INTEGER NOT NULL, 
	samples INTEGER NOT NULL, 
	format INTEGER NOT NULL, 
	checksum BIGINT NOT NULL, 
	data BLOB NOT NULL, 
	CONSTRAINT pk_trace PRIMARY KEY (run_id), 
	CONSTRAINT ck_trace_samples_not_negative CHECK (samples >= 0), 
	CONSTRAINT fk_trace_run_id_run FOREIGN KEY(run_id) REFERENCES run (id)
);
INSERT INTO "trace" VALUES(1,40,1,958667645,X'00010126000000789C63B974E1DC852B67AE00C90B9780E8D2B90B5004E25EB8700E2872E9DC9573007BA41FC10000011F000000789C1311131113111112819242602E880984626061213131200100407E03230301022F000000789C636266E1E266E266611160646765E1E4E0E36562E6E014606267E76060FDCF00071C0C78003B82090066B801D20301022D000000789C7BC1CCC6C4CAC4CCC0C4C6C0C8C8C0CCC4C6CCC8C0C2CAC10014616478CE0007CC0C7800922400896F021B0001010E000000789CE361C003B8114C00028100180101010E000000789CE362C003D8114C00020500120001010E000000789C6363C00398104C00012E0009');
INSERT INTO "trace" VALUES(2,40,1,958667645,X'00010126000000789C63B974E1DC852B67AE00C90B9780E8D2B90B5004E25EB8700E2872E9DC9573007BA41FC10000011F000000789C1311131113111112819242602E880984626061213131200100407E03230301022F000000789C636266E1E266E266611160646765E1E4E0E36562E6E014606267E76060FDCF00071C0C78003B82090066B801D20301022D000000789C7BC1CCC6C4CAC4CCC0C4C6C0C8C8C0CCC4C6CCC8C0C2CAC10014616478CE0007CC0C7800922400896F021B0001010E000000789CE361C003B8114C00028100180101010E000000789CE362C003D8114C00020500120001010E000000789C6363C00398104C00012E0009');
INSERT INTO "trace" VALUES(3,40,1,958667645,X'00010126000000789C63B974E1DC852B67AE00C90B9780E8D2B90B5004E25EB8700E2872E9DC9573007BA41FC10000011F000000789C1311131113111112819242602E880984626061213131200100407E03230301022F000000789C636266E1E266E266611160646765E1E4E0E36562E6E014606267E76060FDCF00071C0C78003B82090066B801D20301022D000000789C7BC1CCC6C4CAC4CCC0C4C6C0C8C8C0CCC4C6CCC8C0C2CAC10014616478CE0007CC0C7800922400896F021B0001010E000000789CE361C003B8114C00028100180101010E000000789CE362C003D8114C00020500120001010E000000789C6363C00398104C00012E0009');
CREATE TABLE unlock (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	utc TEXT NOT NULL, 
	until_utc TEXT NOT NULL, 
	who TEXT NOT NULL, 
	why TEXT NOT NULL, 
	limits TEXT NOT NULL, 
	CONSTRAINT pk_unlock PRIMARY KEY (id), 
	CONSTRAINT ck_unlock_who_not_blank CHECK (trim(who) <> ''), 
	CONSTRAINT ck_unlock_why_not_blank CHECK (trim(why) <> ''), 
	CONSTRAINT ck_unlock_ends_after_it_begins CHECK (until_utc > utc), 
	CONSTRAINT fk_unlock_job_id_job FOREIGN KEY(job_id) REFERENCES job (id)
);
INSERT INTO "unlock" VALUES(1,1,'2026-01-01T00:01:02.000Z','2026-01-01T12:01:02.000Z','dock foreman','a 24 V thing','{"volts":30.0,"amps":null,"energy_j":null,"locked_s":null,"winding_c":null,"on_s":null,"kicks":null}');
CREATE INDEX ix_item_serial ON item (serial);
CREATE INDEX ix_motor_item_id ON motor (item_id);
CREATE INDEX ix_entry_job_id_utc ON entry (job_id, utc);
CREATE INDEX ix_run_started_utc ON run (started_utc);
CREATE INDEX ix_unlock_job_id_utc ON unlock (job_id, utc);
CREATE INDEX ix_job_motor_id ON job (motor_id);
CREATE INDEX ix_job_item_id ON job (item_id);
CREATE INDEX ix_job_state ON job (state);
CREATE INDEX ix_job_cause ON job (cause);
CREATE INDEX ix_job_last_outcome ON job (last_outcome);
CREATE INDEX ix_job_who ON job (who);
CREATE INDEX ix_job_opened_utc ON job (opened_utc);
CREATE INDEX ix_job_changed_utc ON job (changed_utc);
CREATE INDEX ix_item_kind ON item (kind);
CREATE INDEX ix_run_history ON run (job_id, started_utc, kind, outcome, kicks, duration_s, freed_rung);
CREATE INDEX ix_charge_job_id ON charge (job_id);
CREATE INDEX ix_finding_job_id ON finding (job_id);
CREATE INDEX ix_file_job_id ON file (job_id);
CREATE INDEX ix_file_sha256 ON file (sha256);
CREATE INDEX ix_edit_job_id_utc ON edit (job_id, utc);
COMMIT;

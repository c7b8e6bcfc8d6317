BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0001');
CREATE TABLE entry (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	utc TEXT NOT NULL, 
	stage TEXT NOT NULL, 
	text TEXT NOT NULL, 
	who TEXT NOT NULL, 
	CONSTRAINT pk_entry PRIMARY KEY (id), 
	CONSTRAINT fk_entry_job_id_job FOREIGN KEY(job_id) REFERENCES job (id)
);
INSERT INTO "entry" VALUES(1,1,'2026-01-01T00:00:00.000Z','make-safe','Liquid drained, and dry: done','');
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
INSERT INTO "event" VALUES(1,0,1.0,'kick','kick 1','{"number":1,"volts":12.0}');
INSERT INTO "event" VALUES(1,1,2.5,'kick','kick 2','{"number":2,"volts":12.0}');
INSERT INTO "event" VALUES(2,0,1.0,'kick','kick 1','{"number":1,"volts":12.0}');
INSERT INTO "event" VALUES(2,1,2.5,'kick','kick 2','{"number":2,"volts":12.0}');
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
CREATE TABLE job (
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
	CONSTRAINT pk_job PRIMARY KEY (id), 
	CONSTRAINT ck_job_state_known CHECK (state IN ('open', 'closed')), 
	CONSTRAINT ck_job_number_above_zero CHECK (number > 0), 
	CONSTRAINT fk_job_item_id_item FOREIGN KEY(item_id) REFERENCES item (id), 
	CONSTRAINT fk_job_motor_id_motor FOREIGN KEY(motor_id) REFERENCES motor (id), 
	CONSTRAINT uq_job_number UNIQUE (number)
);
INSERT INTO "job" VALUES(1,1,'H-0001',1,1,'2026-01-01T00:00:00.000Z',NULL,'open','hums, does not turn','dry, uncoupled','','','','h-0001
bilge pump

12 v
bp-17
hums, does not turn

stopped');
INSERT INTO "job" VALUES(2,2,'H-0002',2,2,'2026-01-01T00:00:00.000Z','2026-01-01T00:00:00.000Z','closed','dead since the winter','dry, uncoupled','brush stuck','brush freed','good','h-0002
cabin fan



dead since the winter
brush stuck
');
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
	output_confirmed_off BOOLEAN NOT NULL, 
	CONSTRAINT pk_run PRIMARY KEY (id), 
	CONSTRAINT ck_run_duration_not_negative CHECK (duration_s >= 0), 
	CONSTRAINT ck_run_kicks_not_negative CHECK (kicks >= 0), 
	CONSTRAINT fk_run_job_id_job FOREIGN KEY(job_id) REFERENCES job (id), 
	CONSTRAINT uq_run_uid UNIQUE (uid)
);
INSERT INTO "run" VALUES(1,1,'a','recovery','2026-11-25T10:00:00.000Z',4.0,'TCPIP::127.0.0.1::5025::SOCKET','Bench,Supply,1,1.0','plain',12.0,'dry, uncoupled','short','{"type":"request","uid":"a","kind":"recovery","resource":"TCPIP::127.0.0.1::5025::SOCKET","rated_volts":12.0,"layers":{},"sequence":{"name":"short","about":"","limit_s":180.0,"probe":{"levels_a":[0.02,0.05,0.1],"compliance_v":2.0,"on_s":0.15,"off_s":1.0},"steps":[{"kind":"kicks","name":"first","voltage":12.0,"voltage_ratio":null,"current":1.0,"current_ratio":null,"on_s":0.1,"off_s":1.0,"tries":3,"if_allowed":false,"only_after":null}]},"journal":"","job":1,"load_state":"dry, uncoupled","unattended":false,"kicks_today":0,"ambient_c":25.0,"lead_ohm":0.0,"known_ohm":null,"earlier":[],"starts":5}','{"volts":{"value":42.4,"layer":"program"},"amps":{"value":20.0,"layer":"program"},"energy_j":{"value":1000.0,"layer":"program"},"locked_s":{"value":3.0,"layer":"program"},"winding_c":{"value":90.0,"layer":"program"},"kicks":{"value":60.0,"layer":"program"}}','benchlog 0.1.0',1,'freed','it turned for 2 s','winding',2.05,2.0,2.1,2,0,12.004,1.002,31.5,0.4,1);
INSERT INTO "run" VALUES(2,1,'b','recovery','2026-11-25T10:00:00.000Z',2.5,'TCPIP::127.0.0.1::5025::SOCKET','Bench,Supply,1,1.0','plain',12.0,'dry, uncoupled','short','{"type":"request","uid":"b","kind":"recovery","resource":"TCPIP::127.0.0.1::5025::SOCKET","rated_volts":12.0,"layers":{},"sequence":{"name":"short","about":"","limit_s":180.0,"probe":{"levels_a":[0.02,0.05,0.1],"compliance_v":2.0,"on_s":0.15,"off_s":1.0},"steps":[{"kind":"kicks","name":"first","voltage":12.0,"voltage_ratio":null,"current":1.0,"current_ratio":null,"on_s":0.1,"off_s":1.0,"tries":3,"if_allowed":false,"only_after":null}]},"journal":"","job":1,"load_state":"dry, uncoupled","unattended":false,"kicks_today":0,"ambient_c":25.0,"lead_ohm":0.0,"known_ohm":null,"earlier":[],"starts":5}','{"volts":{"value":42.4,"layer":"program"},"amps":{"value":20.0,"layer":"program"},"energy_j":{"value":1000.0,"layer":"program"},"locked_s":{"value":3.0,"layer":"program"},"winding_c":{"value":90.0,"layer":"program"},"kicks":{"value":60.0,"layer":"program"}}','benchlog 0.1.0',0,'stopped','the program ended before the run did','not-probed',NULL,NULL,NULL,2,0,1.026,0.501,NULL,0.0,0);
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
INSERT INTO "trace" VALUES(1,4,1,815367900,X'0002010C000000789C6339C7C80800028100D50000010C000000789C13111312030000D0005303010210000000789CFBC7C6CDC1CEC0C0000008A8011F0300020F000000789C7BF2EAC90B66200000178C03A70000010C000000789CE3E1E1E10100007C00310100010C000000789CE3E2E2E20200006800290000010C000000789C63636363030000400019');
INSERT INTO "trace" VALUES(2,4,1,815367900,X'0002010C000000789C6339C7C80800028100D50000010C000000789C13111312030000D0005303010210000000789CFBC7C6CDC1CEC0C0000008A8011F0300020F000000789C7BF2EAC90B66200000178C03A70000010C000000789CE3E1E1E10100007C00310100010C000000789CE3E2E2E20200006800290000010C000000789C63636363030000400019');
CREATE INDEX ix_item_serial ON item (serial);
CREATE INDEX ix_motor_item_id ON motor (item_id);
CREATE INDEX ix_job_item_id ON job (item_id);
CREATE INDEX ix_job_motor_id ON job (motor_id);
CREATE INDEX ix_entry_job_id_utc ON entry (job_id, utc);
CREATE INDEX ix_run_job_id_started_utc ON run (job_id, started_utc);
CREATE INDEX ix_run_started_utc ON run (started_utc);
COMMIT;

BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0004');
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
CREATE TABLE dense (
	run_id INTEGER NOT NULL, 
	seq INTEGER NOT NULL, 
	number INTEGER NOT NULL, 
	began_s DOUBLE NOT NULL, 
	u_began_s DOUBLE NOT NULL, 
	interval_s DOUBLE NOT NULL, 
	samples INTEGER NOT NULL, 
	format INTEGER NOT NULL, 
	checksum BIGINT NOT NULL, 
	data BLOB NOT NULL, 
	CONSTRAINT pk_dense PRIMARY KEY (run_id, seq), 
	CONSTRAINT ck_dense_samples_not_negative CHECK (samples >= 0), 
	CONSTRAINT fk_dense_run_id_run FOREIGN KEY(run_id) REFERENCES run (id)
);
CREATE TABLE draft (
	"key" TEXT NOT NULL, 
	utc TEXT NOT NULL, 
	fields TEXT NOT NULL, 
	CONSTRAINT pk_draft PRIMARY KEY ("key")
);
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
INSERT INTO "entry" VALUES(1,1,'2026-01-01T00:00:00.000Z','make-safe','Liquid drained, and dry: done','','check');
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
INSERT INTO "event" VALUES(2,0,1.5,'start','Start 1 of 2','{"number":1,"trigger_s":0.5,"began_s":0.5,"volts":12.0,"turning":"turning","interval_s":0.02,"jitter_s":0.001,"readings":50,"peak_amps":2.0,"peak_amps_low":1.99,"peak_amps_high":2.02,"why_peak_amps":"","run_up_s":null,"run_up_s_low":null,"run_up_s_high":null,"why_run_up_s":"over before the first reading of its own","steady_amps":null,"steady_amps_low":null,"steady_amps_high":null,"why_steady_amps":"","energy_j":null,"energy_j_low":null,"energy_j_high":null,"why_energy_j":"","ripple_amps":null,"ripple_amps_low":null,"ripple_amps_high":null,"why_ripple_amps":""}');
INSERT INTO "event" VALUES(2,1,3.5,'start','Start 2 of 2','{"number":2,"trigger_s":2.5,"began_s":2.5,"volts":12.0,"turning":"turning","interval_s":0.02,"jitter_s":0.001,"readings":50,"peak_amps":2.1,"peak_amps_low":2.0900000000000003,"peak_amps_high":2.12,"why_peak_amps":"","run_up_s":null,"run_up_s_low":null,"run_up_s_high":null,"why_run_up_s":"over before the first reading of its own","steady_amps":null,"steady_amps_low":null,"steady_amps_high":null,"why_steady_amps":"","energy_j":null,"energy_j_low":null,"energy_j_high":null,"why_energy_j":"","ripple_amps":null,"ripple_amps_low":null,"ripple_amps_high":null,"why_ripple_amps":""}');
INSERT INTO "event" VALUES(3,0,1.5,'start','Start 1 of 2','{"number":1,"trigger_s":0.5,"began_s":0.5,"volts":12.0,"turning":"turning","interval_s":0.02,"jitter_s":0.001,"readings":50,"peak_amps":2.0,"peak_amps_low":1.99,"peak_amps_high":2.02,"why_peak_amps":"","run_up_s":null,"run_up_s_low":null,"run_up_s_high":null,"why_run_up_s":"over before the first reading of its own","steady_amps":null,"steady_amps_low":null,"steady_amps_high":null,"why_steady_amps":"","energy_j":null,"energy_j_low":null,"energy_j_high":null,"why_energy_j":"","ripple_amps":null,"ripple_amps_low":null,"ripple_amps_high":null,"why_ripple_amps":""}');
INSERT INTO "event" VALUES(3,1,3.5,'start','Start 2 of 2','{"number":2,"trigger_s":2.5,"began_s":2.5,"volts":12.0,"turning":"turning","interval_s":0.02,"jitter_s":0.001,"readings":50,"peak_amps":2.1,"peak_amps_low":2.0900000000000003,"peak_amps_high":2.12,"why_peak_amps":"","run_up_s":null,"run_up_s_low":null,"run_up_s_high":null,"why_run_up_s":"over before the first reading of its own","steady_amps":null,"steady_amps_low":null,"steady_amps_high":null,"why_steady_amps":"","energy_j":null,"energy_j_low":null,"energy_j_high":null,"why_energy_j":"","ripple_amps":null,"ripple_amps_low":null,"ripple_amps_high":null,"why_ripple_amps":""}');
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
INSERT INTO "item" VALUES(3,'cabin fan','','12 V, 150 mm','');
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
	owner TEXT DEFAULT ('') NOT NULL, 
	contact TEXT DEFAULT ('') NOT NULL, 
	who TEXT DEFAULT ('') NOT NULL, 
	opened_before TEXT DEFAULT ('') NOT NULL, 
	pumped TEXT DEFAULT ('') NOT NULL, 
	waiting_for TEXT DEFAULT ('') NOT NULL, 
	result TEXT DEFAULT ('') NOT NULL, 
	method TEXT DEFAULT ('') NOT NULL, 
	advice TEXT DEFAULT ('') NOT NULL, 
	consent BOOLEAN DEFAULT 0 NOT NULL, 
	spending_limit_cents BIGINT, 
	waiting_since_utc TEXT, 
	warranty_days INTEGER, 
	comeback_of INTEGER, 
	last_outcome TEXT, 
	changed_utc TEXT DEFAULT ('') NOT NULL, 
	purpose TEXT DEFAULT 'repair' NOT NULL, 
	CONSTRAINT pk_job PRIMARY KEY (id), 
	CONSTRAINT fk_job_motor_id_motor FOREIGN KEY(motor_id) REFERENCES motor (id), 
	CONSTRAINT ck_job_result_known CHECK (result IN ('', 'works', 'partly', 'not-repaired')), 
	CONSTRAINT uq_job_number UNIQUE (number), 
	CONSTRAINT ck_job_state_known CHECK (state IN ('open', 'waiting-for-approval', 'waiting-for-part', 'waiting-for-owner', 'closed')), 
	CONSTRAINT fk_job_item_id_item FOREIGN KEY(item_id) REFERENCES item (id), 
	CONSTRAINT ck_job_number_above_zero CHECK (number > 0), 
	CONSTRAINT fk_job_comeback_of_job FOREIGN KEY(comeback_of) REFERENCES job (id), 
	CONSTRAINT ck_job_purpose_known CHECK (purpose IN ('repair', 'measuring'))
);
INSERT INTO "job" VALUES(1,1,'H-0001',1,1,'2026-01-01T00:00:00.000Z',NULL,'open','hums, does not turn','dry, uncoupled','','','',' h 0001 ¶ 1 ¶ bilge pump ¶ 12 v ¶ bp 17 ¶ hums does not turn ¶ freed ¶ liquid drained and dry done','','','','','','','','','',0,NULL,NULL,NULL,NULL,'freed','2026-01-01T00:00:00.000Z','repair');
INSERT INTO "job" VALUES(2,2,'H-0002',2,2,'2026-01-01T00:00:00.000Z',NULL,'open','silent','dry, uncoupled','','','',' h 0002 ¶ 2 ¶ cabin fan ¶ silent','','','','','','','','','',0,NULL,NULL,NULL,NULL,NULL,'2026-01-01T00:00:00.000Z','repair');
INSERT INTO "job" VALUES(3,3,'H-0003',3,3,'2026-01-01T00:01:00.000Z',NULL,'open','fans of spring','dry, uncoupled','','','',' h 0003 ¶ 3 ¶ cabin fan ¶ 12 v 150 mm ¶ fans of spring ¶ day bench ¶ runs ¶ cf 1 ¶ blue 1 m ¶ clamp b','','','day bench','','','','','','',0,NULL,NULL,NULL,NULL,'runs','2026-01-01T00:01:00.000Z','measuring');
CREATE TABLE judged (
	id INTEGER NOT NULL, 
	unit_id INTEGER NOT NULL, 
	run_id INTEGER NOT NULL, 
	limits_id INTEGER NOT NULL, 
	passed BOOLEAN, 
	content TEXT NOT NULL, 
	utc TEXT NOT NULL, 
	CONSTRAINT pk_judged PRIMARY KEY (id), 
	CONSTRAINT fk_judged_unit_id_unit FOREIGN KEY(unit_id) REFERENCES unit (id), 
	CONSTRAINT fk_judged_run_id_run FOREIGN KEY(run_id) REFERENCES run (id), 
	CONSTRAINT fk_judged_limits_id_limits FOREIGN KEY(limits_id) REFERENCES limits (id)
);
INSERT INTO "judged" VALUES(1,1,2,1,NULL,'{"passed":null,"rows":[],"curve_outside_share":null,"curve_outside_at_s":null,"sentence":"Check due: zero and short.","because":"Not judged. It starts as the known good ones do."}','2026-01-01T00:01:00.000Z');
CREATE TABLE limits (
	id INTEGER NOT NULL, 
	test_name TEXT NOT NULL, 
	test_version INTEGER NOT NULL, 
	kind TEXT NOT NULL, 
	make TEXT NOT NULL, 
	model TEXT NOT NULL, 
	n INTEGER NOT NULL, 
	coverage DOUBLE NOT NULL, 
	confidence DOUBLE NOT NULL, 
	content TEXT NOT NULL, 
	utc TEXT NOT NULL, 
	who TEXT NOT NULL, 
	CONSTRAINT pk_limits PRIMARY KEY (id), 
	CONSTRAINT ck_limits_n_above_zero CHECK (n > 0)
);
INSERT INTO "limits" VALUES(1,'quick look',1,'cabin fan','','12 V, 150 mm',5,0.95,0.95,'{"test":"quick look","version":1,"coverage":0.95,"confidence":0.95,"n":5,"starts_each":2,"bands":{"peak_amps":{"low":1.8,"high":2.2,"mean":2.0,"spread":0.04,"n":5,"factor":5.079}},"curve":null,"why":{"run_up_s":"over before the first reading of its own"},"runs":[2,3],"within":{"peak_amps":0.01},"between":{"peak_amps":0.04},"warning":"","interval_s":0.0}','2026-01-01T00:01:00.000Z','');
CREATE TABLE lot (
	job_id INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	test_id INTEGER NOT NULL, 
	limits_id INTEGER, 
	operator TEXT NOT NULL, 
	leads TEXT NOT NULL, 
	fixture TEXT NOT NULL, 
	ambient_c DOUBLE NOT NULL, 
	CONSTRAINT pk_lot PRIMARY KEY (job_id), 
	CONSTRAINT fk_lot_job_id_job FOREIGN KEY(job_id) REFERENCES job (id), 
	CONSTRAINT fk_lot_test_id_start_test FOREIGN KEY(test_id) REFERENCES start_test (id), 
	CONSTRAINT fk_lot_limits_id_limits FOREIGN KEY(limits_id) REFERENCES limits (id)
);
INSERT INTO "lot" VALUES(3,'fans of spring',1,NULL,'day bench','blue, 1 m','clamp B',21.5);
CREATE TABLE lot_check (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	run_id INTEGER, 
	utc TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	value DOUBLE NOT NULL, 
	unit TEXT NOT NULL, 
	passed BOOLEAN NOT NULL, 
	who TEXT NOT NULL, 
	CONSTRAINT pk_lot_check PRIMARY KEY (id), 
	CONSTRAINT ck_lot_check_kind_known CHECK (kind IN ('zero', 'short')), 
	CONSTRAINT fk_lot_check_job_id_lot FOREIGN KEY(job_id) REFERENCES lot (job_id), 
	CONSTRAINT fk_lot_check_run_id_run FOREIGN KEY(run_id) REFERENCES run (id)
);
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
INSERT INTO "motor" VALUES(3,3,12.0,'');
CREATE TABLE part (
	id INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	number TEXT NOT NULL, 
	each_cents BIGINT NOT NULL, 
	stock INTEGER NOT NULL, 
	CONSTRAINT pk_part PRIMARY KEY (id), 
	CONSTRAINT uq_part_name_number UNIQUE (name, number)
);
CREATE TABLE "run" (
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
	freed_rung TEXT DEFAULT ('') NOT NULL, 
	unit_id INTEGER, 
	CONSTRAINT pk_run PRIMARY KEY (id), 
	CONSTRAINT uq_run_uid UNIQUE (uid), 
	CONSTRAINT ck_run_kicks_not_negative CHECK (kicks >= 0), 
	CONSTRAINT fk_run_job_id_job FOREIGN KEY(job_id) REFERENCES job (id), 
	CONSTRAINT ck_run_duration_not_negative CHECK (duration_s >= 0), 
	CONSTRAINT fk_run_unit_id_unit FOREIGN KEY(unit_id) REFERENCES unit (id)
);
INSERT INTO "run" VALUES(1,1,'run-0','recovery','2026-11-25T09:00:00.000Z',4.0,'TCPIP::127.0.0.1::5025::SOCKET','Bench,Supply,1,1.0','plain',12.0,'dry, uncoupled','short','{"type":"request","uid":"run-0","kind":"recovery","resource":"TCPIP::127.0.0.1::5025::SOCKET","rated_volts":12.0,"layers":{},"sequence":{"name":"short","about":"","limit_s":180.0,"probe":{"levels_a":[0.02,0.05,0.1],"compliance_v":2.0,"on_s":0.15,"off_s":1.0},"steps":[{"kind":"kicks","name":"first","voltage":12.0,"voltage_ratio":null,"current":1.0,"current_ratio":null,"on_s":0.1,"off_s":1.0,"tries":3,"if_allowed":false,"only_after":null}]},"journal":"","job":1,"item":null,"complaint":"","load_state":"dry, uncoupled","unattended":false,"kicks_today":0,"ambient_c":25.0,"lead_ohm":0.0,"known_ohm":null,"earlier":[],"starts":5,"unlocked":"","start_test":null,"run_in":null,"unit":null}','{"volts":{"value":42.4,"layer":"program"},"amps":{"value":20.0,"layer":"program"},"energy_j":{"value":1000.0,"layer":"program"},"locked_s":{"value":3.0,"layer":"program"},"winding_c":{"value":90.0,"layer":"motor"},"on_s":{"value":90000.0,"layer":"program"},"kicks":{"value":60.0,"layer":"program"}}','benchlog 0.1.0',1,'freed','it turned for 2 s','winding',2.05,2.0,2.1,2,0,12.004,1.002,31.5,0.4,1,'same way, 60 %',NULL);
INSERT INTO "run" VALUES(2,3,'start-0','start-up','2026-11-25T10:00:00.000Z',4.0,'TCPIP::127.0.0.1::5025::SOCKET','Bench,Supply,1,1.0','plain',12.0,'dry, uncoupled','short','{"type":"request","uid":"start-0","kind":"start-up","resource":"TCPIP::127.0.0.1::5025::SOCKET","rated_volts":12.0,"layers":{},"sequence":{"name":"short","about":"","limit_s":180.0,"probe":{"levels_a":[0.02,0.05,0.1],"compliance_v":2.0,"on_s":0.15,"off_s":1.0},"steps":[{"kind":"kicks","name":"first","voltage":12.0,"voltage_ratio":null,"current":1.0,"current_ratio":null,"on_s":0.1,"off_s":1.0,"tries":3,"if_allowed":false,"only_after":null}]},"journal":"","job":3,"item":{"kind":"cabin fan","make":"","model":"12 V, 150 mm","serial":""},"complaint":"","load_state":"dry, uncoupled","unattended":false,"kicks_today":0,"ambient_c":25.0,"lead_ohm":0.12,"known_ohm":null,"earlier":[],"starts":5,"unlocked":"","start_test":{"name":"quick look","version":1,"volts":12.0,"amps":null,"on_s":1.0,"starts":2,"rest_s":2.0,"still_s":60.0,"trigger":"output-on","level":null,"hysteresis":0.0,"before_s":0.1,"arm_s":30.0,"interleave":1},"run_in":null,"unit":1}','{"volts":{"value":42.4,"layer":"program"},"amps":{"value":20.0,"layer":"program"},"energy_j":{"value":1000.0,"layer":"program"},"locked_s":{"value":3.0,"layer":"program"},"winding_c":{"value":90.0,"layer":"motor"},"on_s":{"value":90000.0,"layer":"program"},"kicks":{"value":60.0,"layer":"program"}}','benchlog 0.1.0',1,'runs','all starts turned','winding',2.05,2.0,2.1,0,0,12.004,1.002,31.5,0.4,1,'',1);
INSERT INTO "run" VALUES(3,3,'start-1','start-up','2026-11-25T10:00:00.000Z',4.0,'TCPIP::127.0.0.1::5025::SOCKET','Bench,Supply,1,1.0','plain',12.0,'dry, uncoupled','short','{"type":"request","uid":"start-1","kind":"start-up","resource":"TCPIP::127.0.0.1::5025::SOCKET","rated_volts":12.0,"layers":{},"sequence":{"name":"short","about":"","limit_s":180.0,"probe":{"levels_a":[0.02,0.05,0.1],"compliance_v":2.0,"on_s":0.15,"off_s":1.0},"steps":[{"kind":"kicks","name":"first","voltage":12.0,"voltage_ratio":null,"current":1.0,"current_ratio":null,"on_s":0.1,"off_s":1.0,"tries":3,"if_allowed":false,"only_after":null}]},"journal":"","job":3,"item":{"kind":"cabin fan","make":"","model":"12 V, 150 mm","serial":""},"complaint":"","load_state":"dry, uncoupled","unattended":false,"kicks_today":0,"ambient_c":25.0,"lead_ohm":0.12,"known_ohm":null,"earlier":[],"starts":5,"unlocked":"","start_test":{"name":"quick look","version":1,"volts":12.0,"amps":null,"on_s":1.0,"starts":2,"rest_s":2.0,"still_s":60.0,"trigger":"output-on","level":null,"hysteresis":0.0,"before_s":0.1,"arm_s":30.0,"interleave":1},"run_in":null,"unit":1}','{"volts":{"value":42.4,"layer":"program"},"amps":{"value":20.0,"layer":"program"},"energy_j":{"value":1000.0,"layer":"program"},"locked_s":{"value":3.0,"layer":"program"},"winding_c":{"value":90.0,"layer":"motor"},"on_s":{"value":90000.0,"layer":"program"},"kicks":{"value":60.0,"layer":"program"}}','benchlog 0.1.0',1,'runs','all starts turned','winding',2.05,2.0,2.1,0,0,12.004,1.002,31.5,0.4,1,'',1);
CREATE TABLE start_test (
	id INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	content TEXT NOT NULL, 
	digest TEXT NOT NULL, 
	utc TEXT NOT NULL, 
	who TEXT NOT NULL, 
	CONSTRAINT pk_start_test PRIMARY KEY (id), 
	CONSTRAINT ck_start_test_version_above_zero CHECK (version > 0), 
	CONSTRAINT uq_start_test_name_version UNIQUE (name, version)
);
INSERT INTO "start_test" VALUES(1,'quick look',1,'{"name":"quick look","version":1,"volts":12.0,"amps":null,"on_s":1.0,"starts":2,"rest_s":2.0,"still_s":60.0,"trigger":"output-on","level":null,"hysteresis":0.0,"before_s":0.1,"arm_s":30.0,"interleave":1}','8e256f956398fc56d596316617e6530baff2af6b2aba7c1751d922b436ef408f','2026-01-01T00:01:00.000Z','');
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
INSERT INTO "trace" VALUES(2,200,1,1984198419,X'00010210000000789C6398303C0003E3F00000843970B80000010C000000789C5BB06078000016277D0100010116000000789C6360C001247049E004E224EBA0A21D0025B2005F03020265000000789C6360C00116EC4F0A7232D35191931011E0E3E2E260616361616061626200411060626004332024103C7F81CB2C5C206375568887959E869C94049F000F07170B1B1B13130BD0022606B0254C8C4C14DBC12F48AA0E66665275080851CD0E00AE210AD200010116000000789C6360C001247049E004E224EBA0A21D0025B2005F0000010C000000789C63631B1E0000D7EF04B100010116000000789CE360C001987049E0048C24EBA0A21D000992000F');
INSERT INTO "trace" VALUES(3,200,1,1984198419,X'00010210000000789C6398303C0003E3F00000843970B80000010C000000789C5BB06078000016277D0100010116000000789C6360C001247049E004E224EBA0A21D0025B2005F03020265000000789C6360C00116EC4F0A7232D35191931011E0E3E2E260616361616061626200411060626004332024103C7F81CB2C5C206375568887959E869C94049F000F07170B1B1B13130BD0022606B0254C8C4C14DBC12F48AA0E66665275080851CD0E00AE210AD200010116000000789C6360C001247049E004E224EBA0A21D0025B2005F0000010C000000789C63631B1E0000D7EF04B100010116000000789CE360C001987049E0048C24EBA0A21D000992000F');
CREATE TABLE unit (
	id INTEGER NOT NULL, 
	job_id INTEGER NOT NULL, 
	number INTEGER NOT NULL, 
	serial TEXT NOT NULL, 
	utc TEXT NOT NULL, 
	CONSTRAINT pk_unit PRIMARY KEY (id), 
	CONSTRAINT ck_unit_number_above_zero CHECK (number > 0), 
	CONSTRAINT ck_unit_serial_not_blank CHECK (trim(serial) <> ''), 
	CONSTRAINT fk_unit_job_id_lot FOREIGN KEY(job_id) REFERENCES lot (job_id), 
	CONSTRAINT uq_unit_job_id_number UNIQUE (job_id, number), 
	CONSTRAINT uq_unit_job_id_serial UNIQUE (job_id, serial)
);
INSERT INTO "unit" VALUES(1,3,1,'CF-1','2026-01-01T00:01:00.000Z');
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
CREATE INDEX ix_item_serial ON item (serial);
CREATE INDEX ix_motor_item_id ON motor (item_id);
CREATE INDEX ix_entry_job_id_utc ON entry (job_id, utc);
CREATE INDEX ix_unlock_job_id_utc ON unlock (job_id, utc);
CREATE INDEX ix_item_kind ON item (kind);
CREATE INDEX ix_charge_job_id ON charge (job_id);
CREATE INDEX ix_finding_job_id ON finding (job_id);
CREATE INDEX ix_file_job_id ON file (job_id);
CREATE INDEX ix_file_sha256 ON file (sha256);
CREATE INDEX ix_edit_job_id_utc ON edit (job_id, utc);
CREATE INDEX ix_job_last_outcome ON job (last_outcome);
CREATE INDEX ix_job_item_id ON job (item_id);
CREATE INDEX ix_job_changed_utc ON job (changed_utc);
CREATE INDEX ix_job_motor_id ON job (motor_id);
CREATE INDEX ix_job_cause ON job (cause);
CREATE INDEX ix_job_opened_utc ON job (opened_utc);
CREATE INDEX ix_job_who ON job (who);
CREATE INDEX ix_job_state ON job (state);
CREATE INDEX ix_job_purpose ON job (purpose);
CREATE INDEX ix_limits_test_name_test_version ON limits (test_name, test_version);
CREATE INDEX ix_unit_serial ON unit (serial);
CREATE INDEX ix_run_started_utc ON run (started_utc);
CREATE INDEX ix_run_history ON run (job_id, started_utc, kind, outcome, kicks, duration_s, freed_rung);
CREATE INDEX ix_run_unit_id ON run (unit_id);
CREATE INDEX ix_lot_check_job_id_utc ON lot_check (job_id, utc);
CREATE INDEX ix_judged_unit_id ON judged (unit_id);
CREATE INDEX ix_judged_run_id ON judged (run_id);
COMMIT;

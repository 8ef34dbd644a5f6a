PRAGMA application_id = 1280797294;
BEGIN TRANSACTION;
CREATE TABLE j_attachment (
    content TEXT NOT NULL PRIMARY KEY, -- hash of bytes, hexadecimal
    size    INTEGER NOT NULL,           -- of bytes
    bytes   BLOB NOT NULL
) STRICT;
CREATE TABLE j_entry (
    seq   INTEGER NOT NULL PRIMARY KEY,
    hash  TEXT NOT NULL, -- of bytes, hexadecimal
    kind  TEXT NOT NULL, -- as in bytes
    bytes TEXT NOT NULL
) STRICT;
INSERT INTO "j_entry" VALUES(1,'b1b47ad2997078448dcaec5091406719e2430780ef628ef91358f26eb22e88fc','journal.opened','{"seq":1,"prev":"0000000000000000000000000000000000000000000000000000000000000000","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["",""],"workstation":"ws-vm","kind":"journal.opened","v":1,"subjects":["fa-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"facility":"Facility","journal":"jn-b4a5864653dd56d46fd564cd5aa0f0a4","timeZone":"Etc/UTC"}}');
INSERT INTO "j_entry" VALUES(2,'94af136c1db0d159a9dbdb656227ff3cc4d936b9b5b3d3ef62866e0e80f0f2ed','staff.recorded','{"seq":2,"prev":"b1b47ad2997078448dcaec5091406719e2430780ef628ef91358f26eb22e88fc","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"staff.recorded","v":1,"subjects":["st-boss"],"reason":"","supersedes":0,"basedOn":0,"body":{"active":true,"badge":"B1","name":"Boss","role":"supervisor"}}');
INSERT INTO "j_entry" VALUES(3,'87587c6e365228c2cf141ea476cfbd97d9216b2f89959e3ca3f5ba56e89dba0f','staff.pin-set','{"seq":3,"prev":"94af136c1db0d159a9dbdb656227ff3cc4d936b9b5b3d3ef62866e0e80f0f2ed","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"staff.pin-set","v":1,"subjects":["st-boss"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
INSERT INTO "j_entry" VALUES(4,'a0b4e5c08df3c84e001a867027a9a84d80fad9642b6841336ae11f9ce4867e1a','facility.recorded','{"seq":4,"prev":"87587c6e365228c2cf141ea476cfbd97d9216b2f89959e3ca3f5ba56e89dba0f","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"facility.recorded","v":1,"subjects":["fa-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"atmosphereKPa":"101.3","name":"Facility","timeZone":"Etc/UTC"}}');
INSERT INTO "j_entry" VALUES(5,'4a9c14904cc2dc8d7a0e5392926a8ba4dc9e15d21e38ff470b488113ca8b4121','policy.recorded','{"seq":5,"prev":"a0b4e5c08df3c84e001a867027a9a84d80fad9642b6841336ae11f9ce4867e1a","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"policy.recorded","v":1,"subjects":["po-764a37b2382a0a47f8896b273a7ed49b"],"reason":"","supersedes":0,"basedOn":0,"body":{"digest":"fa040a8120ab61817dd059db10e29bcc8296c9f21ab710e25471cba3a6e74214","name":"us-hospital","revision":1,"toml":"# The default policy: United States hospital practice.\n# Makers'' instructions for use, facility policy, local codes and licensed practice outrank every value\n# here. The facility''s own policy is a copy of this file with its own id and revision. Every setting must\n# be present; a value milder than this file''s is refused, except where it is named as the milder one.\n# confidence: seen, restated, memory (known, not found in a text), common-practice, facility.\n\npolicy_version = 1\nid = \"us-hospital\"\nrevision = 1\ntitle = \"United States hospital practice\"\n\n# how far the printout''s times may lie from the record''s; allowed: 0 to 5\n[printout.clock_tolerance_minutes]\nvalue = 5\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# later recording than this is said as a note; allowed: 0 to 4\n[acts.late_hours]\nvalue = 4\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# rejected or wet packages that make a process failure of another load; allowed: 1 to 2\n[process.failed_packages]\nvalue = 2\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# rejected packages that need a supervisor; allowed: 1 to 2\n[packages.rejected_for_supervisor]\nvalue = 2\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# wet packages that need a supervisor; allowed: 1 to 2\n[packages.wet_for_supervisor]\nvalue = 2\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# what a positive reaches; allowed: cycle-type, sterilizer\n[scope.by]\nvalue = \"cycle-type\"\nsource = \"CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), Table 12 and text on positive biological indicators\"\nconfidence = \"restated\"\n\n# cycles besides prevacuum that need the test; allowed: any of gravity, steam-flush-pressure-pulse\n[air_removal.also_for]\nvalue = []\nsource = \"CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): vacuum-assisted cycles\"\nconfidence = \"restated\"\n\n# the first test of the period came after the load and passed; an implant load always fails; allowed: fails, review (milder)\n[air_removal.made_after]\nvalue = \"fails\"\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# a reading above its upper limit; allowed: review, fails\n[physical.above_maximum]\nvalue = \"review\"\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# chemical indicator in a process challenge device; allowed: if-placed, required\n[pcd.steam]\nvalue = \"if-placed\"\nsource = \"ANSI/AAMI ST79:2017 as summarised in the trade press\"\nconfidence = \"restated\"\n\n# the same; allowed: if-placed, required\n[pcd.hydrogen_peroxide]\nvalue = \"if-placed\"\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# the same; allowed: if-placed, required\n[pcd.dry_heat]\nvalue = \"if-placed\"\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# ISO 11140-1 types that count in a PCD; allowed: 5, 6 or a part of them\n[pcd.types_steam]\nvalue = [5, 6]\nsource = \"ANSI/AAMI ST79:2017 as summarised in the trade press\"\nconfidence = \"restated\"\n\n# the same, other methods; allowed: 1, 3, 4, 5, 6 or a part of them\n[pcd.types_other]\nvalue = [1, 3, 4, 5, 6]\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# ISO 11140-1 types that count inside a package; allowed: 3, 4, 5, 6 or a part of them\n[internal.types_steam]\nvalue = [3, 4, 5, 6]\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# the same, other methods; allowed: 1, 3, 4, 5, 6 or a part of them\n[internal.types_other]\nvalue = [1, 3, 4, 5, 6]\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# routine biological indicator, per sterilizer and cycle type; allowed: weekly (milder), each-day, every-load\n[bi.steam]\nvalue = \"each-day\"\nsource = \"CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): at least weekly, preferably each day of use\"\nconfidence = \"restated\"\n\n# the same; allowed: weekly (milder), each-day, every-load\n[bi.dry_heat]\nvalue = \"each-day\"\nsource = \"CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008)\"\nconfidence = \"restated\"\n\n# the same; allowed: each-day, every-load\n[bi.hydrogen_peroxide]\nvalue = \"each-day\"\nsource = \"ANSI/AAMI ST58\"\nconfidence = \"memory\"\n\n# the same; allowed: every-load\n[bi.ethylene_oxide]\nvalue = \"every-load\"\nsource = \"ANSI/AAMI ST41\"\nconfidence = \"memory\"\n\n# the readout from which a negative is final; allowed: release, last\n[bi.readout]\nvalue = \"release\"\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# loads wait for the routine biological indicator of the day; allowed: false, true\n[bi.routine_blocks]\nvalue = false\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# what waits for the biological indicator of an implant load; allowed: whole-load, implants-only (milder)\n[implant.hold]\nvalue = \"whole-load\"\nsource = \"CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): every load with an implant, held until negative\"\nconfidence = \"restated\"\n\n# how far one control reaches where its IFU does not say; allowed: day, load\n[control.per]\nvalue = \"day\"\nsource = \"CDC (2003); EN 285: an unexposed control of the same lot beside the test\"\nconfidence = \"seen\"\n\n# control and vial started this far apart still belong together; allowed: 0 to 2\n[control.window_hours]\nvalue = 2\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# program temperature against the device''s allowed cycle; allowed: 0 to 0.5\n[device.temperature_tolerance_kelvin]\nvalue = 0.5\nsource = \"common practice, no source\"\nconfidence = \"common-practice\"\n\n# later reading is said as a note; allowed: 1 to 60\n[bowie_dick.read_within_minutes]\nvalue = 60\nsource = \"CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): read at once; the minutes are common practice\"\nconfidence = \"restated\"\n\n# greatest rate of pressure rise; allowed: 0.1 to 1.3\n[leak.most_mbar_per_minute]\nvalue = 1.3\nsource = \"HTM 2010 / EN 285 practice texts\"\nconfidence = \"restated\"\n\n# settling before the test; allowed: 5 to 60\n[leak.settle_minutes]\nvalue = 5\nsource = \"HTM 2010 / EN 285 practice texts\"\nconfidence = \"restated\"\n\n# length of the test; allowed: 10 to 60\n[leak.test_minutes]\nvalue = 10\nsource = \"HTM 2010 / EN 285 practice texts\"\nconfidence = \"restated\"\n"}}');
INSERT INTO "j_entry" VALUES(6,'b3e892997d713d5620c31cecc753c44850308c5b8de36f8fd35a7d82b16c6886','staff.recorded','{"seq":6,"prev":"4a9c14904cc2dc8d7a0e5392926a8ba4dc9e15d21e38ff470b488113ca8b4121","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"staff.recorded","v":1,"subjects":["st-op"],"reason":"","supersedes":0,"basedOn":0,"body":{"active":true,"name":"Name of st-op","role":"operator"}}');
INSERT INTO "j_entry" VALUES(7,'99730c576fd9d6dc307b19832dbd8b53629d94eaae10af847666f4afcbf88b8e','staff.pin-set','{"seq":7,"prev":"b3e892997d713d5620c31cecc753c44850308c5b8de36f8fd35a7d82b16c6886","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"staff.pin-set","v":1,"subjects":["st-op"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
INSERT INTO "j_entry" VALUES(8,'847ade91b4019bf67042a40a17bb6d8d8377ac532eb32d507b91d4d94b615f2b','staff.recorded','{"seq":8,"prev":"99730c576fd9d6dc307b19832dbd8b53629d94eaae10af847666f4afcbf88b8e","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"staff.recorded","v":1,"subjects":["st-op2"],"reason":"","supersedes":0,"basedOn":0,"body":{"active":true,"name":"Name of st-op2","role":"operator"}}');
INSERT INTO "j_entry" VALUES(9,'b110fd5bdd1b66263848479ce4fe2b5760359109ad4d37438cdb198a0be30146','staff.pin-set','{"seq":9,"prev":"847ade91b4019bf67042a40a17bb6d8d8377ac532eb32d507b91d4d94b615f2b","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"staff.pin-set","v":1,"subjects":["st-op2"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
INSERT INTO "j_entry" VALUES(10,'cba3d77614d0c7d65ab3b27b97123879f60144df97bfb878c5843f4fefd5cec3','staff.recorded','{"seq":10,"prev":"b110fd5bdd1b66263848479ce4fe2b5760359109ad4d37438cdb198a0be30146","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"staff.recorded","v":1,"subjects":["st-lead"],"reason":"","supersedes":0,"basedOn":0,"body":{"active":true,"name":"Name of st-lead","role":"lead"}}');
INSERT INTO "j_entry" VALUES(11,'ab17deb72e00a8cce18a80320fd4f3163d14c7d06b0fe6a8568b9e3bfa462bc5','staff.pin-set','{"seq":11,"prev":"cba3d77614d0c7d65ab3b27b97123879f60144df97bfb878c5843f4fefd5cec3","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"staff.pin-set","v":1,"subjects":["st-lead"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
INSERT INTO "j_entry" VALUES(12,'a43531276bca73b4480034cbaefab78faf819a04f8542d98b02c0e35cfae7c60','sterilizer.recorded','{"seq":12,"prev":"ab17deb72e00a8cce18a80320fd4f3163d14c7d06b0fe6a8568b9e3bfa462bc5","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"sterilizer.recorded","v":1,"subjects":["sz-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"model":"M1","name":"S1","recordsConcentration":true,"recordsHumidity":true,"testMinute":0}}');
INSERT INTO "j_entry" VALUES(13,'44591a4ba9e253047f806aed61dc45b629a741d2b27a447ed9ab9b7b95b0fe60','specification.recorded','{"seq":13,"prev":"a43531276bca73b4480034cbaefab78faf819a04f8542d98b02c0e35cfae7c60","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"specification.recorded","v":1,"subjects":["sp-bd"],"reason":"","supersedes":0,"basedOn":0,"body":{"airRemoval":"prevacuum","cycleType":"T1","extended":false,"method":"steam","name":"bowie-dick","program":"P2","purpose":"bowie-dick","revision":1,"settings":{}}}');
INSERT INTO "j_entry" VALUES(14,'c57e7d0c31840ba755feffe91d1416a7dce94497e55bf0dca8c07fb37b33ded8','product.recorded','{"seq":14,"prev":"44591a4ba9e253047f806aed61dc45b629a741d2b27a447ed9ab9b7b95b0fe60","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"product.recorded","v":1,"subjects":["pr-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"kind":"chemical","methods":["steam"],"name":"external","response":"colour","sheet":{"dryingForbidden":false},"type":1}}');
INSERT INTO "j_entry" VALUES(15,'6209720e2a00a5849de8fa3f0da7206d5a54d7530c25f8192f8157f1ac602704','product.recorded','{"seq":15,"prev":"c57e7d0c31840ba755feffe91d1416a7dce94497e55bf0dca8c07fb37b33ded8","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"product.recorded","v":1,"subjects":["pr-2"],"reason":"","supersedes":0,"basedOn":0,"body":{"kind":"chemical","methods":["steam"],"name":"integrator","response":"moving-front","sheet":{"dryingForbidden":false},"type":5}}');
INSERT INTO "j_entry" VALUES(16,'3d3462983880eb3c818b2df479f027709cae2eb59cef2465729883135c65382b','product.recorded','{"seq":16,"prev":"6209720e2a00a5849de8fa3f0da7206d5a54d7530c25f8192f8157f1ac602704","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"product.recorded","v":1,"subjects":["pr-3"],"reason":"","supersedes":0,"basedOn":0,"body":{"kind":"chemical","methods":["steam"],"name":"sheet","response":"sheet","sheet":{"dryingForbidden":false,"leastCelsiusHundredths":13200,"leastMs":210000,"mostCelsiusHundredths":13400,"mostMs":240000},"type":2}}');
INSERT INTO "j_entry" VALUES(17,'a0cd27b51512e91955f5bdfae775de7597b4a0255f31fb2268cf4d767581bdf0','product.recorded','{"seq":17,"prev":"3d3462983880eb3c818b2df479f027709cae2eb59cef2465729883135c65382b","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"product.recorded","v":1,"subjects":["pr-4"],"reason":"","supersedes":0,"basedOn":0,"body":{"hasProcessIndicator":false,"kind":"biological","methods":["steam"],"name":"vial","needsActivation":true,"releaseMinutes":1440,"response":"growth","species":"geobacillus-stearothermophilus"}}');
INSERT INTO "j_entry" VALUES(18,'ae5b7c19a24fc8ee7d0d272d9bd9ea389f9bd3110dc2724adc84f0d100e99136','product-lot.recorded','{"seq":18,"prev":"a0cd27b51512e91955f5bdfae775de7597b4a0255f31fb2268cf4d767581bdf0","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"product-lot.recorded","v":1,"subjects":["pl-1","pr-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"expires":"2031-12-31","number":"N1"}}');
INSERT INTO "j_entry" VALUES(19,'79ec39ce0f6dcf6b5a926437a3331941327ff00799c069e6cb6f0113ae2cbe52','product-lot.recorded','{"seq":19,"prev":"ae5b7c19a24fc8ee7d0d272d9bd9ea389f9bd3110dc2724adc84f0d100e99136","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"product-lot.recorded","v":1,"subjects":["pl-2","pr-2"],"reason":"","supersedes":0,"basedOn":0,"body":{"expires":"2031-12-31","number":"N2"}}');
INSERT INTO "j_entry" VALUES(20,'9d91ff5ff759379ea53034d432e5d3220c99d3debacb9dd0dd4e5b0b04bd0a7e','product-lot.recorded','{"seq":20,"prev":"79ec39ce0f6dcf6b5a926437a3331941327ff00799c069e6cb6f0113ae2cbe52","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"product-lot.recorded","v":1,"subjects":["pl-3","pr-3"],"reason":"","supersedes":0,"basedOn":0,"body":{"expires":"2031-12-31","number":"N3"}}');
INSERT INTO "j_entry" VALUES(21,'d0894b133b4c44ed8a02b67fa3d05c8f63f4516e457fb78543f7464450463e58','product-lot.recorded','{"seq":21,"prev":"9d91ff5ff759379ea53034d432e5d3220c99d3debacb9dd0dd4e5b0b04bd0a7e","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"product-lot.recorded","v":1,"subjects":["pl-4","pr-4"],"reason":"","supersedes":0,"basedOn":0,"body":{"expires":"2031-12-31","number":"N4"}}');
INSERT INTO "j_entry" VALUES(22,'71385d1d79c33ffc379f534a6dae2bbb756bf0b87a16ad1afeb11a316c635812','packaging.recorded','{"seq":22,"prev":"d0894b133b4c44ed8a02b67fa3d05c8f63f4516e457fb78543f7464450463e58","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"packaging.recorded","v":1,"subjects":["pk-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"form":"wrap","methods":["steam"],"name":"wrap"}}');
INSERT INTO "j_entry" VALUES(23,'8809045805aa4953b06604197f23b1c7350d789864f5f6650370acfe3b4e438f','device.recorded','{"seq":23,"prev":"71385d1d79c33ffc379f534a6dae2bbb756bf0b87a16ad1afeb11a316c635812","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"device.recorded","v":1,"subjects":["dv-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"allowedCycles":[{"airRemoval":"prevacuum","leastMs":240000,"method":"steam","temperature":{"unit":"celsius","value":"132"}}],"name":"device"}}');
INSERT INTO "j_entry" VALUES(24,'cb5ad956f024e31de343ac2044bee52695d247b4fcf7827d1258f42acb040b12','incubator.recorded','{"seq":24,"prev":"8809045805aa4953b06604197f23b1c7350d789864f5f6650370acfe3b4e438f","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"incubator.recorded","v":1,"subjects":["in-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"name":"incubator"}}');
INSERT INTO "j_entry" VALUES(25,'a3a3ba48a1ccf03e42b187696b121235e7b2598482f43fb4646cfe1cf3283743','specification.recorded','{"seq":25,"prev":"cb5ad956f024e31de343ac2044bee52695d247b4fcf7827d1258f42acb040b12","recordedAt":[1930366800000,0],"happenedAt":[1930366800000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"specification.recorded","v":1,"subjects":["sp-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"airRemoval":"prevacuum","cycleType":"steam-prevacuum-132","extended":false,"limits":[{"least":[{"unit":"celsius","value":"132"},{"unit":"fahrenheit","value":"270"}],"parameter":"temperature"},{"least":[{"unit":"minutes","value":"4"}],"parameter":"exposure"},{"least":[{"unit":"minutes","value":"20"}],"parameter":"drying"}],"method":"steam","name":"steam-prevacuum-132-wrapped","program":"P1","purpose":"routine","revision":1,"settings":{"dryingMs":1200000,"exposureMs":240000,"inFahrenheit":{"unit":"fahrenheit","value":"270"},"temperature":{"unit":"celsius","value":"132"}}}}');
INSERT INTO "j_entry" VALUES(26,'de26777dedd5976c8be2eb03e62596ad80610c200d618e61e37359ad8a5bf601','sterilizer.returned','{"seq":26,"prev":"a3a3ba48a1ccf03e42b187696b121235e7b2598482f43fb4646cfe1cf3283743","recordedAt":[1930368600000,0],"happenedAt":[1930368600000,0,"clock"],"actor":["st-boss","supervisor"],"workstation":"ws-vm","kind":"sterilizer.returned","v":1,"subjects":["sz-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"why":"installed"}}');
INSERT INTO "j_entry" VALUES(27,'2265a5f6cfaa6a735993530b408bcbe1fd80f91f4948a059af71bfeccedd3c7e','sterilizer.clock-compared','{"seq":27,"prev":"de26777dedd5976c8be2eb03e62596ad80610c200d618e61e37359ad8a5bf601","recordedAt":[1930368600000,0],"happenedAt":[1930368600000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"sterilizer.clock-compared","v":1,"subjects":["sz-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"from":[1930368600000,0],"seconds":0}}');
INSERT INTO "j_entry" VALUES(28,'0dc34b5c17f4b00fca3a883d1f4f0aa566bbe51c8fd228927761dde1dfce7be9','cycle.reserved','{"seq":28,"prev":"2265a5f6cfaa6a735993530b408bcbe1fd80f91f4948a059af71bfeccedd3c7e","recordedAt":[1930372800000,0],"happenedAt":[1930372800000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"cycle.reserved","v":1,"subjects":["ld-9cc57c10f699b825fa95bae58704d70c","sz-1","sp-1"],"reason":"","supersedes":0,"basedOn":0,"body":{"lot":"1-2031-063-01","purpose":"routine"}}');
INSERT INTO "j_entry" VALUES(29,'f372307d210bd62d6cc478f7c4effa4c5c022826c89b9eab09684583297ba9b6','item.added','{"seq":29,"prev":"0dc34b5c17f4b00fca3a883d1f4f0aa566bbe51c8fd228927761dde1dfce7be9","recordedAt":[1930372800000,0],"happenedAt":[1930372800000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"item.added","v":1,"subjects":["it-6c5a0e30459079a9da9cb16d8705371a","ld-9cc57c10f699b825fa95bae58704d70c","ci-4c6e4b9d45d3cf1f2eb3ed548f83ee77","ci-ff071f1ca835e99ab6eca66b0709021f"],"reason":"","supersedes":0,"basedOn":0,"body":{"devices":["dv-1"],"external":{"id":"ci-4c6e4b9d45d3cf1f2eb3ed548f83ee77","lot":"pl-1","product":"pr-1"},"implant":"no","internalVisible":false,"internals":[{"id":"ci-ff071f1ca835e99ab6eca66b0709021f","lot":"pl-2","place":"top","product":"pr-2"}],"label":"TRAY-7","packaging":"pk-1"}}');
INSERT INTO "j_entry" VALUES(30,'678162c0557e471fde801a606bf56a2a2a09e5c49e988498f520c624556a6f52','pcd.placed','{"seq":30,"prev":"f372307d210bd62d6cc478f7c4effa4c5c022826c89b9eab09684583297ba9b6","recordedAt":[1930372800000,0],"happenedAt":[1930372800000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"pcd.placed","v":1,"subjects":["pd-13dea9e8153a5ff55f573ff4126b7be1","ld-9cc57c10f699b825fa95bae58704d70c","ci-be0f11684d4b76bcd7ae6bd91b82acd1","bv-b30b7d1473c370cacfef8aefa5f77614"],"reason":"","supersedes":0,"basedOn":0,"body":{"indicators":[{"id":"ci-be0f11684d4b76bcd7ae6bd91b82acd1","lot":"pl-2","product":"pr-2"}],"mark":"PCD","vials":[{"id":"bv-b30b7d1473c370cacfef8aefa5f77614","lot":"pl-4","product":"pr-4"}]}}');
INSERT INTO "j_entry" VALUES(31,'b9c8f87b8a16cf4ca6c27d5b2e7ad77b720c8e3277893d1690092efa6fd3f064','cycle.started','{"seq":31,"prev":"678162c0557e471fde801a606bf56a2a2a09e5c49e988498f520c624556a6f52","recordedAt":[1930374000000,0],"happenedAt":[1930374000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"cycle.started","v":1,"subjects":["ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{"clock":"facility","counter":101,"shown":[1930374000000,0]}}');
INSERT INTO "j_entry" VALUES(32,'c0f41d518d9fddd903c8b6e1c43a58252f25375cb4fcd9624664e202a771ecb5','cycle.ended','{"seq":32,"prev":"b9c8f87b8a16cf4ca6c27d5b2e7ad77b720c8e3277893d1690092efa6fd3f064","recordedAt":[1930377000000,0],"happenedAt":[1930377000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"cycle.ended","v":1,"subjects":["ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{"outcome":"ended","shown":[1930377000000,0]}}');
INSERT INTO "j_entry" VALUES(33,'18ffcedc73343ae3d3fb08f643343e555ae8c56681d7c67d92fd7a04982b96e5','cycle.unloaded','{"seq":33,"prev":"c0f41d518d9fddd903c8b6e1c43a58252f25375cb4fcd9624664e202a771ecb5","recordedAt":[1930377000000,0],"happenedAt":[1930377000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"cycle.unloaded","v":1,"subjects":["ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
INSERT INTO "j_entry" VALUES(34,'bda128d74828667327cfd232180fa4988fefcce02b3a257d25487ae6ca3a5a61','printout.recorded','{"seq":34,"prev":"18ffcedc73343ae3d3fb08f643343e555ae8c56681d7c67d92fd7a04982b96e5","recordedAt":[1930377000000,0],"happenedAt":[1930377000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"printout.recorded","v":1,"subjects":["ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{"counter":101,"end":[1930377000000,0],"program":"P1","start":[1930374000000,0],"sterilizer":"S1"}}');
INSERT INTO "j_entry" VALUES(35,'3bebbf5accbb5850e9025a1de2dfae0ec394844d28dba2b382d84a1d059ce935','physical.read','{"seq":35,"prev":"bda128d74828667327cfd232180fa4988fefcce02b3a257d25487ae6ca3a5a61","recordedAt":[1930377000000,0],"happenedAt":[1930377000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"physical.read","v":1,"subjects":["ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{"parameter":"temperature","value":{"typed":"132.4","unit":"celsius"}}}');
INSERT INTO "j_entry" VALUES(36,'3dd8d78ca5be7ace9bd04270ea5b9e1f85495543ee15a7f812c33ab3a5db6d29','physical.read','{"seq":36,"prev":"3bebbf5accbb5850e9025a1de2dfae0ec394844d28dba2b382d84a1d059ce935","recordedAt":[1930377000000,0],"happenedAt":[1930377000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"physical.read","v":1,"subjects":["ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{"parameter":"exposure","value":{"typed":"4","unit":"minutes"}}}');
INSERT INTO "j_entry" VALUES(37,'79de87321e47a79951d34e062041b2a9300be6ded7cef49f47782d03b5cd0e7f','physical.read','{"seq":37,"prev":"3dd8d78ca5be7ace9bd04270ea5b9e1f85495543ee15a7f812c33ab3a5db6d29","recordedAt":[1930377000000,0],"happenedAt":[1930377000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"physical.read","v":1,"subjects":["ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{"parameter":"drying","value":{"typed":"20","unit":"minutes"}}}');
INSERT INTO "j_entry" VALUES(38,'3cbeaf632872262708e2a499a3dbca1eda3674254504e4ca3e88b38091bf9c32','physical.verified','{"seq":38,"prev":"79de87321e47a79951d34e062041b2a9300be6ded7cef49f47782d03b5cd0e7f","recordedAt":[1930377000000,0],"happenedAt":[1930377000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"physical.verified","v":1,"subjects":["ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
INSERT INTO "j_entry" VALUES(39,'906861fb9aed823d89e4eb62f75fbedbacdbd6d281a302ff4f7e5bc2131fd987','chemical.read','{"seq":39,"prev":"3cbeaf632872262708e2a499a3dbca1eda3674254504e4ca3e88b38091bf9c32","recordedAt":[1930377000000,0],"happenedAt":[1930377000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"chemical.read","v":1,"subjects":["ci-4c6e4b9d45d3cf1f2eb3ed548f83ee77","ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{"seen":"end-colour-reached"}}');
INSERT INTO "j_entry" VALUES(40,'cca38acae66eb9a22e914610b80e14cfc7316cae49bfdc795bc7b98ecc684372','chemical.read','{"seq":40,"prev":"906861fb9aed823d89e4eb62f75fbedbacdbd6d281a302ff4f7e5bc2131fd987","recordedAt":[1930377000000,0],"happenedAt":[1930377000000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"chemical.read","v":1,"subjects":["ci-be0f11684d4b76bcd7ae6bd91b82acd1","ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{"seen":"front-in-accept-zone"}}');
INSERT INTO "j_entry" VALUES(41,'d4c7c07b1814edb803a4c2975e9d2be5229f98bca3cbcfe33fd3b3c4948ae703','package.checked','{"seq":41,"prev":"cca38acae66eb9a22e914610b80e14cfc7316cae49bfdc795bc7b98ecc684372","recordedAt":[1930379400000,0],"happenedAt":[1930379400000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"package.checked","v":1,"subjects":["it-6c5a0e30459079a9da9cb16d8705371a","ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{"cooled":true,"dry":true,"intact":true,"labelAgrees":true,"sealed":true}}');
INSERT INTO "j_entry" VALUES(42,'946eb931dca9daa505b20253772be4f814ccaaf9157459dcaef4e499e7e0f42a','control.prepared','{"seq":42,"prev":"d4c7c07b1814edb803a4c2975e9d2be5229f98bca3cbcfe33fd3b3c4948ae703","recordedAt":[1930379700000,0],"happenedAt":[1930379700000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"control.prepared","v":1,"subjects":["bc-e0c5c4205058c54a59378a3b7e0a0e81"],"reason":"","supersedes":0,"basedOn":0,"body":{"lot":"pl-4","product":"pr-4"}}');
INSERT INTO "j_entry" VALUES(43,'454a8ac571a27b13187d2efab97582c3570815ee80237abf5d2735055c7d08ec','biological.activated','{"seq":43,"prev":"946eb931dca9daa505b20253772be4f814ccaaf9157459dcaef4e499e7e0f42a","recordedAt":[1930379700000,0],"happenedAt":[1930379700000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"biological.activated","v":1,"subjects":["bc-e0c5c4205058c54a59378a3b7e0a0e81"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
INSERT INTO "j_entry" VALUES(44,'5d8d117413a06b40f2bed2a8756ee41dc7a02b05ba3dee1b6b88aac8376d60aa','biological.incubated','{"seq":44,"prev":"454a8ac571a27b13187d2efab97582c3570815ee80237abf5d2735055c7d08ec","recordedAt":[1930379700000,0],"happenedAt":[1930379700000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"biological.incubated","v":1,"subjects":["bc-e0c5c4205058c54a59378a3b7e0a0e81","in-1"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
INSERT INTO "j_entry" VALUES(45,'9400d6d38d9d1ae4acae9af838c4cecbc3c487609db4b5005b489c8dcbc5ab01','biological.activated','{"seq":45,"prev":"5d8d117413a06b40f2bed2a8756ee41dc7a02b05ba3dee1b6b88aac8376d60aa","recordedAt":[1930379700000,0],"happenedAt":[1930379700000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"biological.activated","v":1,"subjects":["bv-b30b7d1473c370cacfef8aefa5f77614","ld-9cc57c10f699b825fa95bae58704d70c"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
INSERT INTO "j_entry" VALUES(46,'95afc72cba6183395ef4358e78b127ec46cb03df3ef4da71ebbc186abdaae6f3','biological.incubated','{"seq":46,"prev":"9400d6d38d9d1ae4acae9af838c4cecbc3c487609db4b5005b489c8dcbc5ab01","recordedAt":[1930379700000,0],"happenedAt":[1930379700000,0,"clock"],"actor":["st-op","operator"],"workstation":"ws-vm","kind":"biological.incubated","v":1,"subjects":["bv-b30b7d1473c370cacfef8aefa5f77614","ld-9cc57c10f699b825fa95bae58704d70c","in-1"],"reason":"","supersedes":0,"basedOn":0,"body":{}}');
CREATE TABLE j_lot (
    sterilizer TEXT NOT NULL,
    day        INTEGER NOT NULL, -- local date, days since 1970-01-01
    sequence   INTEGER NOT NULL,
    PRIMARY KEY (sterilizer, day, sequence)
) STRICT, WITHOUT ROWID;
INSERT INTO "j_lot" VALUES('1',22342,1);
CREATE TABLE j_seal (
    number INTEGER NOT NULL PRIMARY KEY,
    line   TEXT NOT NULL
) STRICT;
INSERT INTO "j_seal" VALUES(1,'{"journal":"jn-b4a5864653dd56d46fd564cd5aa0f0a4","seq":5,"head":"4a9c14904cc2dc8d7a0e5392926a8ba4dc9e15d21e38ff470b488113ca8b4121","at":[1930366800000,0],"key":"a844f731c38cc4b734d2a32aeb3d899aaf0206796531edf18fea4c4b24d52147","signature":"f23c39be144239a45d3069bf8c0d92874cf6898afa2df96679ddf95abae66af4a908f412c68579bfaf48978425c97ebec695f79c5bc5160e395dc6037813f40d"}');
CREATE TABLE p_control (
    reason  TEXT NOT NULL, -- id of pl- or ld-
    at      INTEGER NOT NULL,         -- ms when prepared, and each time at which incubated
    control TEXT NOT NULL,
    seq     INTEGER NOT NULL,
    PRIMARY KEY (reason, at, control)
) STRICT, WITHOUT ROWID;
INSERT INTO "p_control" VALUES('pl-4',1930379700000,'bc-e0c5c4205058c54a59378a3b7e0a0e81',42);
CREATE TABLE p_cycle (
    cycle      TEXT NOT NULL PRIMARY KEY,
    sterilizer TEXT NOT NULL, -- empty: not said
    lot        TEXT NOT NULL, -- empty: not said
    purpose    TEXT NOT NULL,           -- a word of ACTS.md; empty: not said
    at         INTEGER NOT NULL,         -- start as shown, ms; before one is said when it was reserved
    counter    INTEGER NOT NULL,         -- -1: not said
    vials      INTEGER NOT NULL,         -- 1: anything was said of a vial of it
    trouble    INTEGER NOT NULL,         -- 1: anything of it may have failed
    ended      INTEGER NOT NULL,         -- 1: an end was said
    disposed   INTEGER NOT NULL,         -- seq of the newest disposition; 0: none
    newest     INTEGER NOT NULL          -- seq of the newest entry about it
) STRICT;
INSERT INTO "p_cycle" VALUES('ld-9cc57c10f699b825fa95bae58704d70c','sz-1','1-2031-063-01','routine',1930374000000,101,1,0,1,0,46);
CREATE TABLE p_cycle_lot (
    lot   TEXT NOT NULL,
    cycle TEXT NOT NULL,
    seq   INTEGER NOT NULL,
    PRIMARY KEY (lot, cycle)
) STRICT, WITHOUT ROWID;
INSERT INTO "p_cycle_lot" VALUES('1-2031-063-01','ld-9cc57c10f699b825fa95bae58704d70c',28);
CREATE TABLE p_head (
    one  INTEGER NOT NULL PRIMARY KEY CHECK (one = 1),
    seq  INTEGER NOT NULL,
    hash TEXT NOT NULL
) STRICT;
INSERT INTO "p_head" VALUES(1,46,'95afc72cba6183395ef4358e78b127ec46cb03df3ef4da71ebbc186abdaae6f3');
CREATE TABLE p_label (
    label TEXT NOT NULL, -- as labels are compared: without blanks, A to Z made small
    item  TEXT NOT NULL,
    cycle TEXT NOT NULL,
    said  TEXT NOT NULL,           -- as written
    seq   INTEGER NOT NULL,
    PRIMARY KEY (label, item, cycle)
) STRICT, WITHOUT ROWID;
INSERT INTO "p_label" VALUES('tray-7','it-6c5a0e30459079a9da9cb16d8705371a','ld-9cc57c10f699b825fa95bae58704d70c','TRAY-7',29);
CREATE TABLE p_lot_number (
    number TEXT NOT NULL,
    lot    TEXT NOT NULL,
    seq    INTEGER NOT NULL,
    PRIMARY KEY (number, lot)
) STRICT, WITHOUT ROWID;
INSERT INTO "p_lot_number" VALUES('N1','pl-1',18);
INSERT INTO "p_lot_number" VALUES('N2','pl-2',19);
INSERT INTO "p_lot_number" VALUES('N3','pl-3',20);
INSERT INTO "p_lot_number" VALUES('N4','pl-4',21);
CREATE TABLE p_mark (
    sterilizer TEXT NOT NULL, -- empty: not said yet
    mark       TEXT NOT NULL,
    at         INTEGER NOT NULL,         -- ms as shown; of the mark "counter" the counter
    cycle      TEXT NOT NULL,
    detail     TEXT NOT NULL,
    said       INTEGER NOT NULL,         -- seq of the entry that says it; 0: does not matter
    time       INTEGER NOT NULL,         -- ms; what of, core/store/indexes/cycle_marks.h says
    seq        INTEGER NOT NULL,
    PRIMARY KEY (sterilizer, mark, at, cycle, detail, said)
) STRICT, WITHOUT ROWID;
INSERT INTO "p_mark" VALUES('sz-1','bound',0,'ld-9cc57c10f699b825fa95bae58704d70c','sp-1@25',0,0,31);
INSERT INTO "p_mark" VALUES('sz-1','counter',101,'ld-9cc57c10f699b825fa95bae58704d70c','',0,0,31);
INSERT INTO "p_mark" VALUES('sz-1','end',1930377000000,'ld-9cc57c10f699b825fa95bae58704d70c','',0,0,32);
INSERT INTO "p_mark" VALUES('sz-1','reserved',1930372800000,'ld-9cc57c10f699b825fa95bae58704d70c','',0,0,28);
INSERT INTO "p_mark" VALUES('sz-1','specification',0,'ld-9cc57c10f699b825fa95bae58704d70c','sp-1',0,0,28);
INSERT INTO "p_mark" VALUES('sz-1','start',1930374000000,'ld-9cc57c10f699b825fa95bae58704d70c','',0,0,31);
INSERT INTO "p_mark" VALUES('sz-1','vials',1930372800000,'ld-9cc57c10f699b825fa95bae58704d70c','',0,0,30);
INSERT INTO "p_mark" VALUES('sz-1','vials',1930374000000,'ld-9cc57c10f699b825fa95bae58704d70c','',0,0,31);
CREATE TABLE p_own (
    subject TEXT NOT NULL,
    seq     INTEGER NOT NULL,
    PRIMARY KEY (subject, seq)
) STRICT, WITHOUT ROWID;
INSERT INTO "p_own" VALUES('dv-1',23);
INSERT INTO "p_own" VALUES('fa-1',1);
INSERT INTO "p_own" VALUES('fa-1',4);
INSERT INTO "p_own" VALUES('in-1',24);
INSERT INTO "p_own" VALUES('pk-1',22);
INSERT INTO "p_own" VALUES('pl-1',18);
INSERT INTO "p_own" VALUES('pl-2',19);
INSERT INTO "p_own" VALUES('pl-3',20);
INSERT INTO "p_own" VALUES('pl-4',21);
INSERT INTO "p_own" VALUES('po-764a37b2382a0a47f8896b273a7ed49b',5);
INSERT INTO "p_own" VALUES('pr-1',14);
INSERT INTO "p_own" VALUES('pr-2',15);
INSERT INTO "p_own" VALUES('pr-3',16);
INSERT INTO "p_own" VALUES('pr-4',17);
INSERT INTO "p_own" VALUES('sp-1',25);
INSERT INTO "p_own" VALUES('sp-bd',13);
INSERT INTO "p_own" VALUES('st-boss',2);
INSERT INTO "p_own" VALUES('st-boss',3);
INSERT INTO "p_own" VALUES('st-lead',10);
INSERT INTO "p_own" VALUES('st-lead',11);
INSERT INTO "p_own" VALUES('st-op',6);
INSERT INTO "p_own" VALUES('st-op',7);
INSERT INTO "p_own" VALUES('st-op2',8);
INSERT INTO "p_own" VALUES('st-op2',9);
INSERT INTO "p_own" VALUES('sz-1',12);
INSERT INTO "p_own" VALUES('sz-1',26);
INSERT INTO "p_own" VALUES('sz-1',27);
CREATE TABLE p_reading (
    sterilizer    TEXT NOT NULL,
    specification TEXT NOT NULL,
    parameter     TEXT NOT NULL,
    unit          TEXT NOT NULL,
    thousandths   INTEGER NOT NULL,
    cycle         TEXT NOT NULL,
    at            INTEGER NOT NULL, -- each time at which the cycle was said to have begun, ms
    seq           INTEGER NOT NULL,
    PRIMARY KEY (sterilizer, specification, parameter, unit, thousandths, cycle, at)
) STRICT, WITHOUT ROWID;
INSERT INTO "p_reading" VALUES('sz-1','sp-1@25','drying','minutes',20000,'ld-9cc57c10f699b825fa95bae58704d70c',1930374000000,37);
INSERT INTO "p_reading" VALUES('sz-1','sp-1@25','exposure','minutes',4000,'ld-9cc57c10f699b825fa95bae58704d70c',1930374000000,36);
INSERT INTO "p_reading" VALUES('sz-1','sp-1@25','temperature','celsius',132400,'ld-9cc57c10f699b825fa95bae58704d70c',1930374000000,35);
CREATE TABLE p_specification_used (
    sterilizer    TEXT NOT NULL,
    specification TEXT NOT NULL,
    seq           INTEGER NOT NULL,
    PRIMARY KEY (sterilizer, specification)
) STRICT, WITHOUT ROWID;
INSERT INTO "p_specification_used" VALUES('sz-1','sp-1@25',31);
CREATE TABLE p_subject (
    seq     INTEGER NOT NULL,
    ordinal INTEGER NOT NULL, -- from 0
    subject TEXT NOT NULL,
    PRIMARY KEY (seq, ordinal)
) STRICT, WITHOUT ROWID;
INSERT INTO "p_subject" VALUES(42,0,'bc-e0c5c4205058c54a59378a3b7e0a0e81');
INSERT INTO "p_subject" VALUES(43,0,'bc-e0c5c4205058c54a59378a3b7e0a0e81');
INSERT INTO "p_subject" VALUES(44,0,'bc-e0c5c4205058c54a59378a3b7e0a0e81');
INSERT INTO "p_subject" VALUES(30,3,'bv-b30b7d1473c370cacfef8aefa5f77614');
INSERT INTO "p_subject" VALUES(45,0,'bv-b30b7d1473c370cacfef8aefa5f77614');
INSERT INTO "p_subject" VALUES(46,0,'bv-b30b7d1473c370cacfef8aefa5f77614');
INSERT INTO "p_subject" VALUES(29,2,'ci-4c6e4b9d45d3cf1f2eb3ed548f83ee77');
INSERT INTO "p_subject" VALUES(39,0,'ci-4c6e4b9d45d3cf1f2eb3ed548f83ee77');
INSERT INTO "p_subject" VALUES(30,2,'ci-be0f11684d4b76bcd7ae6bd91b82acd1');
INSERT INTO "p_subject" VALUES(40,0,'ci-be0f11684d4b76bcd7ae6bd91b82acd1');
INSERT INTO "p_subject" VALUES(29,3,'ci-ff071f1ca835e99ab6eca66b0709021f');
INSERT INTO "p_subject" VALUES(23,0,'dv-1');
INSERT INTO "p_subject" VALUES(1,0,'fa-1');
INSERT INTO "p_subject" VALUES(4,0,'fa-1');
INSERT INTO "p_subject" VALUES(24,0,'in-1');
INSERT INTO "p_subject" VALUES(44,1,'in-1');
INSERT INTO "p_subject" VALUES(46,2,'in-1');
INSERT INTO "p_subject" VALUES(29,0,'it-6c5a0e30459079a9da9cb16d8705371a');
INSERT INTO "p_subject" VALUES(41,0,'it-6c5a0e30459079a9da9cb16d8705371a');
INSERT INTO "p_subject" VALUES(28,0,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(29,1,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(30,1,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(31,0,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(32,0,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(33,0,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(34,0,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(35,0,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(36,0,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(37,0,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(38,0,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(39,1,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(40,1,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(41,1,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(45,1,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(46,1,'ld-9cc57c10f699b825fa95bae58704d70c');
INSERT INTO "p_subject" VALUES(30,0,'pd-13dea9e8153a5ff55f573ff4126b7be1');
INSERT INTO "p_subject" VALUES(22,0,'pk-1');
INSERT INTO "p_subject" VALUES(18,0,'pl-1');
INSERT INTO "p_subject" VALUES(19,0,'pl-2');
INSERT INTO "p_subject" VALUES(20,0,'pl-3');
INSERT INTO "p_subject" VALUES(21,0,'pl-4');
INSERT INTO "p_subject" VALUES(5,0,'po-764a37b2382a0a47f8896b273a7ed49b');
INSERT INTO "p_subject" VALUES(14,0,'pr-1');
INSERT INTO "p_subject" VALUES(18,1,'pr-1');
INSERT INTO "p_subject" VALUES(15,0,'pr-2');
INSERT INTO "p_subject" VALUES(19,1,'pr-2');
INSERT INTO "p_subject" VALUES(16,0,'pr-3');
INSERT INTO "p_subject" VALUES(20,1,'pr-3');
INSERT INTO "p_subject" VALUES(17,0,'pr-4');
INSERT INTO "p_subject" VALUES(21,1,'pr-4');
INSERT INTO "p_subject" VALUES(25,0,'sp-1');
INSERT INTO "p_subject" VALUES(28,2,'sp-1');
INSERT INTO "p_subject" VALUES(13,0,'sp-bd');
INSERT INTO "p_subject" VALUES(2,0,'st-boss');
INSERT INTO "p_subject" VALUES(3,0,'st-boss');
INSERT INTO "p_subject" VALUES(10,0,'st-lead');
INSERT INTO "p_subject" VALUES(11,0,'st-lead');
INSERT INTO "p_subject" VALUES(6,0,'st-op');
INSERT INTO "p_subject" VALUES(7,0,'st-op');
INSERT INTO "p_subject" VALUES(8,0,'st-op2');
INSERT INTO "p_subject" VALUES(9,0,'st-op2');
INSERT INTO "p_subject" VALUES(12,0,'sz-1');
INSERT INTO "p_subject" VALUES(26,0,'sz-1');
INSERT INTO "p_subject" VALUES(27,0,'sz-1');
INSERT INTO "p_subject" VALUES(28,1,'sz-1');
CREATE TABLE p_vial (
    vial      TEXT NOT NULL PRIMARY KEY,
    cycle     TEXT NOT NULL,
    product   TEXT NOT NULL,   -- empty: not said
    incubator TEXT NOT NULL,   -- empty: not said
    incubated INTEGER NOT NULL, -- ms; 0: not said
    finished  INTEGER NOT NULL, -- 1: read without a doubt, lost or voided, and none of that corrected
    newest    INTEGER NOT NULL  -- seq of the newest entry about it
) STRICT;
INSERT INTO "p_vial" VALUES('bv-b30b7d1473c370cacfef8aefa5f77614','ld-9cc57c10f699b825fa95bae58704d70c','pr-4','in-1',1930379700000,0,46);
CREATE TABLE s_index_rules (
    one   INTEGER NOT NULL PRIMARY KEY CHECK (one = 1),
    rules INTEGER NOT NULL
) STRICT;
INSERT INTO "s_index_rules" VALUES(1,1);
CREATE TABLE s_lot_floor (
    day   INTEGER NOT NULL PRIMARY KEY, -- as in j_lot
    floor INTEGER NOT NULL
) STRICT;
CREATE TABLE s_pin (
    staff       TEXT NOT NULL PRIMARY KEY,
    hash        TEXT NOT NULL,
    wrong_tries INTEGER NOT NULL,
    wait_until  INTEGER NOT NULL -- ms of UTC since 1970
) STRICT;
INSERT INTO "s_pin" VALUES('st-boss','$argon2id$v=19$m=65536,t=2,p=1$Hpn9iTpv7xN0Mkwes2uAuQ$9i7bi9N8TwZ9VIEnSCsqqklgwLx90StbIwLLkmLghSE',0,0);
INSERT INTO "s_pin" VALUES('st-op','$argon2id$v=19$m=65536,t=2,p=1$ri9GClM1oJTvB1uuD6UNYw$yEvqzgDv7AcsfSw5DWonuR207aaD9ctP5H7EeNLZ4G0',0,0);
INSERT INTO "s_pin" VALUES('st-op2','$argon2id$v=19$m=65536,t=2,p=1$S7kMTLk/E4bTt8w1/JgP+Q$0Ez40AVjF8IDHQ5ADRi7AfOZPjcwz9EQnrJe70FjaJ4',0,0);
INSERT INTO "s_pin" VALUES('st-lead','$argon2id$v=19$m=65536,t=2,p=1$rco095Ickt15VlHsk7w6wA$l0PU56X8AhQeFjzQm9t1bNcGbe7Fa5B3kBn/F0opcks',0,0);
CREATE TABLE s_schema (
    version    INTEGER NOT NULL PRIMARY KEY,
    applied_at INTEGER NOT NULL -- ms of UTC since 1970
) STRICT;
INSERT INTO "s_schema" VALUES(1,1930366800000);
INSERT INTO "s_schema" VALUES(2,1930366800000);
INSERT INTO "s_schema" VALUES(3,1930366800000);
INSERT INTO "s_schema" VALUES(4,1930366800000);
CREATE TRIGGER j_entry_no_update BEFORE UPDATE ON j_entry BEGIN SELECT RAISE(ABORT, 'j_entry only grows'); END;
CREATE TRIGGER j_entry_no_delete BEFORE DELETE ON j_entry BEGIN SELECT RAISE(ABORT, 'j_entry only grows'); END;
CREATE TRIGGER j_seal_no_update BEFORE UPDATE ON j_seal BEGIN SELECT RAISE(ABORT, 'j_seal only grows'); END;
CREATE TRIGGER j_seal_no_delete BEFORE DELETE ON j_seal BEGIN SELECT RAISE(ABORT, 'j_seal only grows'); END;
CREATE TRIGGER j_lot_no_update BEFORE UPDATE ON j_lot BEGIN SELECT RAISE(ABORT, 'j_lot only grows'); END;
CREATE TRIGGER j_lot_no_delete BEFORE DELETE ON j_lot BEGIN SELECT RAISE(ABORT, 'j_lot only grows'); END;
CREATE TRIGGER j_attachment_no_update BEFORE UPDATE ON j_attachment BEGIN SELECT RAISE(ABORT, 'j_attachment only grows'); END;
CREATE TRIGGER j_attachment_no_delete BEFORE DELETE ON j_attachment BEGIN SELECT RAISE(ABORT, 'j_attachment only grows'); END;
CREATE INDEX p_subject_by_subject ON p_subject (subject, seq);
CREATE INDEX p_cycle_by_time ON p_cycle (at, cycle);
CREATE INDEX p_cycle_by_sterilizer ON p_cycle (sterilizer, at, cycle);
CREATE INDEX p_cycle_open ON p_cycle (at, cycle) WHERE disposed = 0;
CREATE INDEX p_mark_by_cycle ON p_mark (cycle);
CREATE INDEX p_label_by_cycle ON p_label (cycle, label);
CREATE INDEX p_label_by_item ON p_label (item, label);
CREATE INDEX p_control_by_control ON p_control (control, reason);
CREATE INDEX p_lot_number_by_lot ON p_lot_number (lot);
CREATE INDEX p_vial_open ON p_vial (incubated, vial) WHERE finished = 0;
CREATE INDEX p_vial_by_cycle ON p_vial (cycle, vial);
COMMIT;

#include "app/cli/commands.h"
#include "core/words/say.h"

namespace loadwarden::cli {

std::string helpText()
{
    return R"(usage: loadwarden-cli COMMAND

From the evidence of a sterilizer load to release, quarantine or reprocess.

  decide [OPTION]... [FILE]...
      Decides on every load, and judges every test cycle, in the files of evidence: JSON, one record
      or one on each line. No file, or -, is standard input.
        --policy FILE          the facility's policy; else the default one
        --at TIME              the moment for which it is asked, as 2031-03-04T07:14-06:00; else the
                               record's own decideAt, else now
        --planned              the moment may lie ahead; else one that has not come is said
        --specifications DIR   cycle specifications of the facility's own, beside the stored ones
        --json                 one line of JSON for each record
  policy check FILE            says everything that is wrong with a policy, with line and field, or
                               each value that is milder than the default policy's
  policy show                  the default policy, to copy from
  schema [evidence|decision]   the JSON Schema of what decide reads, or of what --json writes
  specifications [--specifications DIR]
                               the names of the stored cycle specifications
  trace FILE... --cycle SPECIFICATION [--map MAP] [--atmosphere KPA] [--specifications DIR]
                               what sterilizers' recorders wrote, as delimited text, against a stored
                               specification, as steam-prevacuum-132-wrapped@1; without --map as
                               the file itself proposes to be read
  trace --propose FILE         that proposal as JSON, to look at, correct, and give with --map
  trace --simulate             the text of a cycle that never was, to try out and teach with
        [--program gravity|prevacuum|steam-flush|leak-test] [--celsius N] [--band-kelvin N]
        [--exposure SECONDS] [--drying SECONDS] [--pulses N] [--every SECONDS] [--seed N]
        [--settle SECONDS (of a leak test)] [--faults KIND=SIZE,...] [--atmosphere KPA]
        [--counter N] [--begins 2031-03-04T07:00]
        [--separator WORD] [--decimal WORD] [--temperature-unit WORD] [--pressure-unit WORD]
        [--pressure-zero absolute|gauge] [--time-form WORD] [--date-order WORD]
        [--defects KIND,...]   a word that there is not lists those that there are
  ask TEXT [--json] [--policy FILE] [--topics FOLDER] [--language en]
                               a question from the floor: the topic that fits best, with what the
                               rules decide, and the two next ones; a facility's own topics, notes
                               and words stand in a folder of theirs
  ask --topic ID | --list      one topic by its id; all of them
  ask --population N --d-minutes D --minutes T
                               log reduction, survivors and chances by the log-linear model

On a journal, the file in which everything that people do is recorded:

  init --facility NAME --zone ZONE --supervisor NAME [--id st-ID] [--badge TEXT] [--atmosphere KPA]
                               begins a journal with its first supervisor and the default policy
  staff list | record ID --name NAME --role viewer|operator|lead|supervisor [--badge TEXT]
        [--inactive] [--change] | pin ID
  sterilizer list | record sz-ID --name NAME [--model NAME] [--test-time HH:MM]
        | return sz-ID --why TEXT | take-out sz-ID --state STATE --why TEXT
        | clock sz-ID --from TIME --seconds N
  specification record sp-ID NAME@REVISION [--program NAME]
                               a stored one, with the sterilizer's own name of its program
  record FILE                  acts of any kind as JSON, one on each line: registers, corrections
                               (core/acts/ACTS.md lists the kinds and what stands in them)
  load reserve --sterilizer sz-ID [--specification sp-ID] [--purpose PURPOSE]
  load add LOT LABEL --implant yes|no|unknown [--packaging pk-ID] [--packaging-expires DATE]
        [--devices dv-ID,…] [--external PRODUCT/LOT] [--internal PRODUCT/LOT/PLACE,…]
  load remove LOT LABEL --why TEXT | move LOT LABEL OTHER-LOT --why TEXT
  load pcd LOT [--mark TEXT] [--indicators PRODUCT/LOT,…] [--vials PRODUCT/LOT,…]
  load sheet TEST --product pr-ID --lot pl-ID
  load start LOT [--counter N] [--clock sterilizer --shown TIME] | end LOT [--aborted PHASE]
        | unload LOT
  load printout LOT [--program NAME] [--sterilizer NAME] [--counter N] [--start-shown TIME]
        [--end-shown TIME] | printout-answer LOT ANSWER [--field FIELD]
  load read LOT PARAMETER NUMBER UNIT | read LOT INDICATOR SEEN
  load check LOT LABEL [--cooled yes|no] [--dry yes|no] [--intact yes|no] [--sealed yes|no]
        [--label-agrees yes|no]
  load verify LOT              the physical record, signed
  load decide LOT | show LOT | history LOT | list [--day DATE | --open]
  load review LOT KEY [--subject TEXT] --answer isolated|not-isolated --why TEXT --seen CODE
  load sign LOT release|quarantine|reprocess --seen CODE
  load emergency LOT LABEL --case TEXT --demanded-by ROLE --why TEXT
        --would-have-prevented TEXT --seen CODE
  load distribute LOT LABEL --to NAME | use LOT LABEL --case TEXT | return LOT LABEL --why TEXT
  trace attach LOT FILE [--map MAP]
                               a recorder's file, kept with what it shows of the load's cycle; without
                               --map as the sterilizer's last one was read
  bi control --product pr-ID --lot pl-ID | due
  bi activate LOT v1 | incubate LOT v1 --incubator in-ID | process-indicator LOT v1 changed|unchanged
        | read LOT v1 growth|no-growth|unclear; of a control bc-ID in the place of LOT v1
  tray LABEL                   may this tray be used? By what is signed and known now: may be used,
                               may not and what to do, or ask the lead
  lot recall NUMBER --why TEXT | lot loads NUMBER
                               a lot that its maker recalls counts nowhere any more; the loads in
                               which it was, each decided anew
  read LOT SEEN | read LOT --front MM
        [--method METHOD] [--used pcd|inside|outside]
                               is an indicator of that product's lot acceptable? By the rules, for no
                               load; MM from where its front starts
  report LABEL FOUND… --place PLACE [--says ROLE] [--note TEXT]
                               what was found on opening: wet, torn, unsealed, label-differs, or
                               what an indicator inside shows; its load is decided anew
  test read TEST SEEN | read TEST leak --settled MIN --minutes MIN --rise-mbar NUMBER
        | conditions TEST [--chamber-empty yes] [--drying-run no] [--minutes N] [--celsius N]
  entry void SEQ --reason TEXT | annotate SEQ --note TEXT --reason TEXT
        | amend SEQ --body JSON [--at TIME] --reason TEXT
                               corrects; "load history" shows the numbers and bodies
  verify [--expect SEQ:HASH,…] the whole journal, its tables and seals
  backup NEW-FILE              while others go on working, read back and verified
  restore BACKUP NEW-FILE [--go-on] [--expect SEQ:HASH,…]
                               to a new file, as a drill, or to go on working in it
  export LOT…                  a load's evidence, as decide reads it
  import FILE [--source NAME] [--skip-bad]
                               loads of the time before the journal, as JSON, one on each line:
                               found and shown, never decided by; a supervisor signs
  paper record LOT | hold LOT | ticket LOT | handover | day sz-ID [--day DATE]
        | blank-load [sz-ID] | blank-bi
        --out FILE.pdf [--page letter|a4] [--unit celsius|fahrenheit]
                               a sheet as PDF: all that is recorded of a load, what is put on a
                               held one, what is to be reprocessed, for the next shift, a
                               sterilizer's day, and blank ones for when there is no computer
  paper answer-card TOPIC | in-service TOPIC
        --out FILE.pdf [--page letter|a4] [--policy FILE] [--topics FOLDER] [--language en]
                               a topic of ask as PDF, without a journal: one page to hang at the
                               sterilizer; one or two to teach a shift, with lines to sign
  journal export | seal | rebuild | new-key --why TEXT
                               every entry as it stands, one on each line; a seal of the newest;
                               the tables beside the entries filled anew; a new key for seals where
                               the old one is lost, recorded with a supervisor's signature

    --file FILE      the journal; else LOADWARDEN_FILE
    --by WHO         badge, id or name of who asks; else LOADWARDEN_BY. The PIN is asked for at the
                     terminal, or stands in LOADWARDEN_PIN (a new one in LOADWARDEN_NEW_PIN)
    --at TIME        when it happened, if not now; of decide, show, list, due and paper: for which moment
    --reason TEXT    why, where a correction needs it
    --paper WHO      typed for somebody who did it and signed on paper
    --json           for programs

A LOT is a lot control number or an id. LOT's parts have short names that "load show" lists: i1 for
items, c1 for chemical indicators, v1 for biological ones. --seen is the code that "load decide"
prints: what is signed is what was seen.

  --version
  --help

decide and load decide end with 0 when everything may be released and every test passed, 1 when not
all; tray with 0 when it may be used, else 1; read with 0 when it is accepted, else 1; lot loads with 1 when any is worse than signed; trace FILE with 0 when all that was asked is met, 1
when something is not or cannot be told, 2 when the text is not usable; verify with 1 when it found
anything; ask with 0 when a topic fits, 1 when none fits well enough to be given as the answer. 2:
input or usage was wrong (decide goes on with the other
records). 3: the desk refused, with the reason; nothing was recorded.

)" + caution()
           + "\n";
}

std::string versionText()
{
    return "loadwarden-cli " LOADWARDEN_VERSION "\n";
}

} // namespace loadwarden::cli

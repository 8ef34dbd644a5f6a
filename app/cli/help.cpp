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
  --version
  --help

Ends with 0 when every load and item may be released and every test passed, 1 when not all,
2 when input or usage was wrong; the other records are still decided.

)" + caution()
           + "\n";
}

std::string versionText()
{
    return "loadwarden-cli " LOADWARDEN_VERSION "\n";
}

} // namespace loadwarden::cli

#include "app/cli/desk/journal_commands.h"

#include <array>

namespace loadwarden::cli {

std::span<const Command> journalCommands()
{
    static constexpr std::array commands = {
        Command{"init", init},
        Command{"staff", staff},
        Command{"sterilizer", sterilizer},
        Command{"specification", specification},
        Command{"record", record},
        Command{"load", load},
        Command{"bi", bi},
        Command{"test", test},
        Command{"lot", productLot},
        Command{"read", readOne},
        Command{"report", report},
        Command{"tray", tray},
        Command{"entry", entry},
        Command{"verify", verify},
        Command{"backup", backup},
        Command{"restore", restore},
        Command{"export", exportEvidence},
        Command{"import", importFile},
        Command{"journal", journal},
    };
    return commands;
}

} // namespace loadwarden::cli

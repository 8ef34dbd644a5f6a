#include "core/store/store_error.h"

#include <utility>

namespace loadwarden {
namespace {

struct Sentences {
    const char* says;
    const char* next;
};

Sentences sentencesOf(StoreFault fault)
{
    switch (fault) {
    case StoreFault::busy:
        return {"Somebody else is writing to the journal and did not finish in time.",
                "Nothing was lost. Try again; if it stays so, look for a program that keeps the "
                "file open, such as a backup or a virus scanner."};
    case StoreFault::inUse:
        return {"The journal is open in another Loadwarden.", "Close it there first."};
    case StoreFault::full:
        return {"The disk is full; this was not recorded. What was recorded before is safe.",
                "Make room on the disk and try again."};
    case StoreFault::readOnly:
        return {"The journal's file or its folder cannot be written.",
                "Ask whoever runs this computer for the right to write both the file and its "
                "folder."};
    case StoreFault::missing:
        return {"There is no journal at this place.", "Check the path, or create a journal there."};
    case StoreFault::exists:
        return {"There is something at this place already.", "Choose another place."};
    case StoreFault::denied:
        return {"This user is not let in to the journal.",
                "Ask whoever runs this computer or the database server for access."};
    case StoreFault::damaged:
        return {"The journal's file is damaged.",
                "Stop working in it. Keep the file as it is, with those beside it that begin with "
                "its name, and restore the newest backup to a new file."};
    case StoreFault::foreign: return {"This is not a journal of Loadwarden.", "Check the path."};
    case StoreFault::newer:
        return {"The journal was written by a newer version of Loadwarden.",
                "Open it with that version; this one would not understand all of it."};
    case StoreFault::older:
        return {"The journal is of an older version of Loadwarden.",
                "Open it once for writing with this version, which brings it up to date."};
    case StoreFault::network:
        return {"The journal lies on a file system of a network, where two computers can write it "
                "at once without noticing.",
                "Move it to a disk of this computer."};
    case StoreFault::unreachable:
        return {"The database server does not answer.",
                "Check the network and the server, then try again. What was not confirmed was not "
                "recorded."};
    case StoreFault::headChanged:
        return {"The journal's newest entry is not what it should be.",
                "Stop working in it and verify the journal."};
    case StoreFault::refused:
        return {"The database refused this by its own rules; nothing was recorded.",
                "Report this with the details: the program should not have asked for it."};
    case StoreFault::device:
        return {"The disk reported an error; this was not recorded.",
                "Stop working on this disk, make a backup to another one and have the disk "
                "examined."};
    case StoreFault::misuse:
        return {"The program asked the database for something that it cannot do.",
                "Report this with the details; nothing was recorded."};
    }
    return {"", ""};
}

std::string joined(const std::string& says, const std::string& next, const std::string& detail)
{
    return says + ' ' + next + (detail.empty() ? "" : " (" + detail + ')');
}

} // namespace

StoreError::StoreError(StoreFault fault, std::string says, std::string next, std::string detail)
    : std::runtime_error(joined(says, next, detail)),
      m_fault(fault),
      m_says(std::move(says)),
      m_next(std::move(next)),
      m_detail(std::move(detail))
{
}

StoreError engineError(StoreFault fault, std::string detail)
{
    const Sentences sentences = sentencesOf(fault);
    return {fault, sentences.says, sentences.next, std::move(detail)};
}

} // namespace loadwarden

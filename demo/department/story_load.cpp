#include "demo/department/story_load.h"

namespace loadwarden::demo {

bool hasImplant(const Load& load)
{
    return load.matter == Matter::implant || load.matter == Matter::controlDead;
}

bool isRecorded(const Load& load)
{
    // Of an aborted cycle the recorder wrote nothing that can be used; some files nobody fetches.
    constexpr int forgotten = 25;
    return load.matter != Matter::aborted && load.number % forgotten != forgotten - 1;
}

std::string vialLot(const Load& load)
{
    // A dead control speaks against every vial of its lot on that day: it has a lot of its own.
    return load.matter == Matter::controlDead ? "pl-vial-old" : "pl-vial";
}

Instant after(Instant moment, int minutes)
{
    return moment + Duration::minutes(minutes);
}

const Worker& onDuty(Instant moment, int day)
{
    return moment < onDay(day, 14, 0) ? morning() : evening();
}

} // namespace loadwarden::demo

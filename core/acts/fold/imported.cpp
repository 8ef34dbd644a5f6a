#include "core/acts/fold/imported.h"

namespace loadwarden {

ImportedLoad importedLoad(const FactBook& book, std::string_view cycle)
{
    ImportedLoad load;
    for (const std::uint32_t index : book.about(cycle)) {
        const Fact& fact = book.facts()[index];
        if (!std::holds_alternative<HistoryImported>(fact.origin->act)) {
            continue;
        }
        load.isImported = true;
        if (load.entry == nullptr && fact.stands()) {
            load.entry = &fact.current();
        }
    }
    return load;
}

} // namespace loadwarden

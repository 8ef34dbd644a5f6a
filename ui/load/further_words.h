#pragma once

#include "core/desk/further_acts.h"
#include "core/desk/to_record.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace loadwarden::ui {

/// What is asked of somebody who records something besides.
struct FurtherWords {
    QString name; ///< as one chooses it
    QString hint; ///< what it means
    QString of;   ///< what `of` of its choice is; empty: of the cycle
    QString how;  ///< what is chosen besides; empty: nothing
    QStringList hows;
    QString detail; ///< what is chosen besides that; empty: nothing
    QStringList details;
    QString number; ///< a mark or number to type; empty: none
    QString reason; ///< why, or what was done; empty: not asked
    QString button;
};

/// `of`: the id that is chosen, on which the answers of an indicator depend.
[[nodiscard]] FurtherWords wordsOf(Further what, const LoadSheet& sheet, std::string_view of);

/// One of what it can be said, as people call it.
[[nodiscard]] QString nameOf(Further what, const Choice& of, const LoadSheet& sheet);

/// What somebody answered.
struct FurtherAnswer {
    Further what{};
    std::string of;
    int how = -1;
    int detail = -1;
    std::string number;
    std::string reason;
};

/// The act; `other` is the cycle whose number was typed, or the id of a new incident.
[[nodiscard]] ToRecord toRecord(const FurtherAnswer& answer, const LoadSheet& sheet,
                                const std::string& other);

/// Whether the number that is asked for is that of another load or test.
[[nodiscard]] bool namesACycle(Further what);

} // namespace loadwarden::ui

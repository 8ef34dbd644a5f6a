#pragma once

#include "core/desk/journal_copy.h"
#include "core/words/say.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace loadwarden::ui {

/// What verification is asked for and what it answers, on the window's thread.
struct Verified {
    VerifyReport report;
    std::vector<SealedBy> keys;
};

/// A verification in plain words: the answer, what was found, what was checked, the seals.
struct VerifiedText {
    bool isGood = false;
    QString answer;
    QStringList lines;
};

[[nodiscard]] VerifiedText verifiedText(const Verified& verified, const HouseStyle& style);

} // namespace loadwarden::ui

#pragma once

#include "core/desk/competence.h"
#include "core/words/say.h"

#include <QFrame>

#include <optional>
#include <vector>

namespace loadwarden::ui {

/// Who has checked how they read, with what result, and how far readers agree; the way to a check.
class ChecksView : public QFrame {
    Q_OBJECT

public:
    /// `canCheck`: there is a product whose indicators can be drawn.
    ChecksView(const std::vector<CheckTaken>& checks, const std::optional<ReadersAgree>& agreement,
               bool canCheck, const HouseStyle& style, QWidget* parent = nullptr);

signals:
    void wantsCheck();
};

} // namespace loadwarden::ui

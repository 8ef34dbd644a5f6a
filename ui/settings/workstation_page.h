#pragma once

#include "ui/shell/area.h"

class QVBoxLayout;

namespace loadwarden::ui {

/// What this workstation is set to: looks, units, lock. Nothing of it is recorded.
class WorkstationPage : public Page {
    Q_OBJECT

public:
    explicit WorkstationPage(Workstation& workstation);

private:
    /// Where the facility's own topics stand.
    [[nodiscard]] QWidget* makeTopics();

    LocalSettings& m_settings;
};

} // namespace loadwarden::ui

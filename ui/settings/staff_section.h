#pragma once

#include "ui/settings/register_section.h"

namespace loadwarden::ui {

/// Who works here, in which role, with which badge, and their PINs.
class StaffSection : public RegisterSection {
    Q_OBJECT

public:
    explicit StaffSection(const Workstation& workstation);

protected:
    std::vector<RegisterLine> lines(const Registers& registers) const override;
    EntryView* makeView(const QString& id) override;
};

} // namespace loadwarden::ui

#pragma once

#include "ui/settings/register_section.h"

namespace loadwarden::ui {

/// Devices, and the cycles that their instructions for use allow.
class DevicesSection : public RegisterSection {
    Q_OBJECT

public:
    explicit DevicesSection(const Workstation& workstation);

protected:
    std::vector<RegisterLine> lines(const Registers& registers) const override;
    EntryView* makeView(const QString& id) override;
};

} // namespace loadwarden::ui

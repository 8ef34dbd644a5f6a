#pragma once

#include "ui/settings/register_section.h"

namespace loadwarden::ui {

/// The sterilizers: their names, test periods, service and clocks.
class SterilizersSection : public RegisterSection {
    Q_OBJECT

public:
    explicit SterilizersSection(const Workstation& workstation);

protected:
    std::vector<RegisterLine> lines(const Registers& registers) const override;
    EntryView* makeView(const QString& id) override;
};

} // namespace loadwarden::ui

#pragma once

#include "ui/settings/register_section.h"

namespace loadwarden::ui {

/// The incubators for biological indicators, and whether they are in range.
class IncubatorsSection : public RegisterSection {
    Q_OBJECT

public:
    explicit IncubatorsSection(const Workstation& workstation);

protected:
    std::vector<RegisterLine> lines(const Registers& registers) const override;
    EntryView* makeView(const QString& id) override;
};

} // namespace loadwarden::ui

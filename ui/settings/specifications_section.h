#pragma once

#include "ui/settings/register_section.h"

namespace loadwarden::ui {

/// The programs of the sterilizers and the limits of their records.
class SpecificationsSection : public RegisterSection {
    Q_OBJECT

public:
    explicit SpecificationsSection(const Workstation& workstation);

protected:
    std::vector<RegisterLine> lines(const Registers& registers) const override;
    EntryView* makeView(const QString& id) override;
};

} // namespace loadwarden::ui

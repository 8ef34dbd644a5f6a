#pragma once

#include "ui/settings/register_section.h"

namespace loadwarden::ui {

/// Packagings by their instructions for use.
class PackagingsSection : public RegisterSection {
    Q_OBJECT

public:
    explicit PackagingsSection(const Workstation& workstation);

protected:
    std::vector<RegisterLine> lines(const Registers& registers) const override;
    EntryView* makeView(const QString& id) override;
};

} // namespace loadwarden::ui

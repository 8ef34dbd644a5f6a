#pragma once

#include "ui/settings/register_section.h"

namespace loadwarden::ui {

/// Indicator products by their instructions for use, and their lots.
class ProductsSection : public RegisterSection {
    Q_OBJECT

public:
    explicit ProductsSection(const Workstation& workstation);

protected:
    std::vector<RegisterLine> lines(const Registers& registers) const override;
    EntryView* makeView(const QString& id) override;
};

} // namespace loadwarden::ui

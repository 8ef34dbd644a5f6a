#pragma once

#include "core/desk/registers.h"
#include "core/exchange/specification_library.h"
#include "ui/settings/register_form.h"

#include <string>

class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class LimitsGrid;

/// A sterilizer's program with the limits of its record: new from a template, or revised.
class SpecificationForm : public RegisterForm {
    Q_OBJECT

public:
    SpecificationForm(const Workstation& workstation, std::string id);

    void show(const Registers& registers);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    [[nodiscard]] bool isNew() const { return m_id.empty(); }
    void takeTemplate();
    void tell();

    std::string m_id;
    SpecificationLibrary m_library;
    CycleSpecification m_recorded;
    QComboBox* m_template;
    QLabel* m_about;
    QLineEdit* m_program;
    LimitsGrid* m_limits;
    Field* m_programField = nullptr;
    Field* m_limitsField = nullptr;
};

/// "steam, prevacuum, routine"
[[nodiscard]] QString specificationText(const CycleSpecification& specification);

} // namespace loadwarden::ui

#pragma once

#include "core/desk/registers.h"
#include "ui/settings/register_form.h"

#include <string>

class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class MethodsEdit;
class NumberEdit;

/// A packaging by its instructions for use: added or revised by a lead.
class PackagingForm : public RegisterForm {
    Q_OBJECT

public:
    /// Without an id something new.
    PackagingForm(const Workstation& workstation, std::string id);

    /// Where nobody has typed, what is recorded.
    void show(const Registers& registers);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    [[nodiscard]] bool isNew() const { return m_id.empty(); }

    std::string m_id;
    PackagingRecorded m_recorded;
    QLineEdit* m_name;
    QComboBox* m_form;
    MethodsEdit* m_methods;
    NumberEdit* m_aeration;
    Field* m_nameField;
    Field* m_methodsField;
    Field* m_aerationField;
};

} // namespace loadwarden::ui

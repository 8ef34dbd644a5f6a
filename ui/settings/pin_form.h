#pragma once

#include "core/desk/registers.h"
#include "ui/settings/register_form.h"

#include <string>

class QLineEdit;

namespace loadwarden::ui {

/// Another PIN for somebody: one's own, or, by a supervisor, anybody's.
class PinForm : public RegisterForm {
    Q_OBJECT

public:
    PinForm(const Workstation& workstation, std::string person);

    void show(const Registers& registers);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;
    [[nodiscard]] Task task() const override;

private:
    std::string m_id;
    Person m_person;
    QLabel* m_now;
    QLineEdit* m_pin;
    QLineEdit* m_again;
    Field* m_pinField;
    Field* m_againField;
};

} // namespace loadwarden::ui

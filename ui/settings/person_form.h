#pragma once

#include "core/desk/registers.h"
#include "ui/settings/register_form.h"

#include <string>

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

/// Somebody of the staff: new with a first PIN, or as the journal has them.
class PersonForm : public RegisterForm {
    Q_OBJECT

public:
    PersonForm(const Workstation& workstation, std::string id);

    void show(const Registers& registers);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    [[nodiscard]] bool isNew() const { return m_id.empty(); }
    bool isPinGood();
    [[nodiscard]] QStringList seen(const StaffRecorded& person) const;

    std::string m_id;
    StaffRecorded m_recorded;
    QLineEdit* m_name;
    QComboBox* m_role;
    QLineEdit* m_badge;
    QCheckBox* m_active;
    QLineEdit* m_pin;
    QLineEdit* m_again;
    Field* m_nameField = nullptr;
    Field* m_pinField = nullptr;
    Field* m_againField = nullptr;
};

/// Says at the fields what is wrong with a PIN that was typed twice; empty texts: nothing is.
struct PinTrouble {
    QString pin;
    QString again;
};

[[nodiscard]] PinTrouble pinTrouble(const QString& pin, const QString& again);

} // namespace loadwarden::ui

#pragma once

#include "core/desk/registers.h"
#include "ui/settings/register_form.h"

#include <string>

class QLineEdit;

namespace loadwarden::ui {

class TimeEdit;

/// What an incubator is called: added or revised by a lead.
class IncubatorForm : public RegisterForm {
    Q_OBJECT

public:
    /// Without an id something new.
    IncubatorForm(const Workstation& workstation, std::string id);

    /// Where nobody has typed, what is recorded.
    void show(const Registers& registers);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    [[nodiscard]] bool isNew() const { return m_id.empty(); }

    std::string m_id;
    IncubatorRecorded m_recorded;
    QLineEdit* m_name;
    Field* m_nameField;
};

/// Since when an incubator is out of range, or in range again.
class RangeForm : public RegisterForm {
    Q_OBJECT

public:
    enum class Says : std::uint8_t { outOfRange, inRange };

    RangeForm(const Workstation& workstation, std::string id, Says says);

    /// It is there to be filled in where it says something new.
    void show(const RegisteredIncubator& incubator);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    std::string m_id;
    Says m_says;
    RegisteredIncubator m_incubator;
    TimeEdit* m_since;
    QString m_date; ///< that nobody typed
    Field* m_sinceField;
};

} // namespace loadwarden::ui

#pragma once

#include "core/desk/registers.h"
#include "ui/settings/register_form.h"

#include <string>

class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class NumberEdit;
class TemperatureEdit;

/// A device with the cycles that its maker's instructions for use allow: added or revised by a
/// lead.
class DeviceForm : public RegisterForm {
    Q_OBJECT

public:
    /// Without an id something new.
    DeviceForm(const Workstation& workstation, std::string id);

    /// Where nobody has typed, what is recorded.
    void show(const Registers& registers);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    /// The fields of one allowed cycle.
    struct CycleFields {
        QWidget* group = nullptr;
        QComboBox* method = nullptr;
        QComboBox* airRemoval = nullptr;
        TemperatureEdit* temperature = nullptr;
        NumberEdit* drying = nullptr;
        NumberEdit* least = nullptr;
        NumberEdit* most = nullptr;
        QLineEdit* program = nullptr;
        QLineEdit* model = nullptr;
        Field* methodField = nullptr;
        Field* temperatureField = nullptr;
        Field* dryingField = nullptr;
        Field* leastField = nullptr;
        Field* mostField = nullptr;
    };

    [[nodiscard]] bool isNew() const { return m_id.empty(); }
    void addCycle();
    /// Those behind it move up by one.
    void takeAway(std::size_t cycle);
    static void put(const CycleFields& fields, const AllowedCycle& cycle);
    /// What stands there, whether or not it is good.
    [[nodiscard]] static AllowedCycle in(const CycleFields& fields);
    bool check(const CycleFields& fields);

    std::string m_id;
    Device m_recorded;
    QLineEdit* m_name;
    NumberEdit* m_aeration;
    Field* m_nameField;
    Field* m_aerationField;
    std::vector<CycleFields> m_cycles;
};

} // namespace loadwarden::ui

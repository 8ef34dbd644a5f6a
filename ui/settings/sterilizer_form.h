#pragma once

#include "core/desk/registers.h"
#include "ui/settings/register_form.h"

#include <string>

class QCheckBox;
class QLineEdit;

namespace loadwarden::ui {

class NumberEdit;

/// A sterilizer as its printout calls it, and when its test period begins.
class SterilizerForm : public RegisterForm {
    Q_OBJECT

public:
    SterilizerForm(const Workstation& workstation, std::string id);

    void show(const Registers& registers);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    [[nodiscard]] bool isNew() const { return m_id.empty(); }
    bool readNumber(std::string& id);
    bool readAeration(SterilizerRecorded& made);

    std::string m_id;
    SterilizerRecorded m_recorded;
    std::vector<std::string> m_taken; ///< ids
    std::string m_free;
    QLineEdit* m_number;
    QLineEdit* m_name;
    QLineEdit* m_model;
    QLineEdit* m_test;
    QCheckBox* m_concentration;
    QCheckBox* m_humidity;
    NumberEdit* m_minutes;
    NumberEdit* m_celsius;
    Field* m_numberField = nullptr;
    Field* m_nameField = nullptr;
    Field* m_testField = nullptr;
    Field* m_minutesField = nullptr;
    Field* m_celsiusField = nullptr;
};

} // namespace loadwarden::ui

#pragma once

#include "core/desk/registers.h"
#include "ui/settings/register_form.h"

#include <string>

class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class NumberEdit;
class TimeEdit;

/// Takes a sterilizer out of service, or says otherwise why it is out.
class TakeOutForm : public RegisterForm {
    Q_OBJECT

public:
    TakeOutForm(const Workstation& workstation, std::string id);
    void show(const RegisteredSterilizer& sterilizer);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    std::string m_id;
    QString m_name;
    QComboBox* m_state;
    QLineEdit* m_why;
    Field* m_whyField;
};

/// Returns it to service, signed.
class ReturnForm : public RegisterForm {
    Q_OBJECT

public:
    ReturnForm(const Workstation& workstation, std::string id);
    void show(const RegisteredSterilizer& sterilizer);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    std::string m_id;
    QString m_name;
    QString m_now;
    QLineEdit* m_why;
    Field* m_whyField;
};

/// How a sterilizer's clock stands to the facility's.
class ClockForm : public RegisterForm {
    Q_OBJECT

public:
    ClockForm(const Workstation& workstation, std::string id);
    void show(const RegisteredSterilizer& sterilizer);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    std::string m_id;
    QString m_name;
    QLabel* m_last;
    NumberEdit* m_seconds;
    QComboBox* m_side;
    TimeEdit* m_from;
    Field* m_secondsField;
    Field* m_fromField;
};

} // namespace loadwarden::ui

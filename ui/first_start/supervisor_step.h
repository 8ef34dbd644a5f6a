#pragma once

#include "ui/first_start/step.h"

namespace loadwarden::ui {

/// The first supervisor, who registers everybody else.
class SupervisorStep : public Step {
    Q_OBJECT

public:
    explicit SupervisorStep(QWidget* parent = nullptr);

    bool check() override;
    void fill(FirstDay& day) const override;

private:
    QLineEdit* m_name;
    QLineEdit* m_badge;
    QLineEdit* m_pin;
    QLineEdit* m_again;
    Field* m_nameField;
    Field* m_badgeField;
    Field* m_pinField;
    Field* m_againField;
};

} // namespace loadwarden::ui

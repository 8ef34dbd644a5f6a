#pragma once

#include "core/desk/policy_exam.h"
#include "ui/settings/register_form.h"
#include "ui/settings/section.h"

#include <optional>

class QLineEdit;
class QVBoxLayout;

namespace loadwarden::ui {

class PolicyTable;

/// A file as a new revision of the policy: it is checked, what it changes is shown, then it is
/// signed. Signed is exactly what was shown, whatever happens to the file meanwhile.
class PolicyForm : public RegisterForm {
    Q_OBJECT

public:
    explicit PolicyForm(const Workstation& workstation);

    void show(const RegistersNow& registers);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    void forget();
    bool check();
    void showErrors(const std::vector<PolicyError>& errors);
    void showExam();

    RegistersNow m_registers;
    std::optional<PolicyExam> m_exam; ///< of the file that is named
    QLineEdit* m_file;
    Field* m_fileField;
    QWidget* m_result;
    QLabel* m_says;
    QVBoxLayout* m_lines;
    PolicyTable* m_table;
};

} // namespace loadwarden::ui

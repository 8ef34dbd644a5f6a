#pragma once

#include "core/desk/registers.h"
#include "ui/settings/register_form.h"

#include <string>

class QLineEdit;

namespace loadwarden::ui {

/// A lot of a product: one more, as its box says, or one whose entry was wrong.
class LotForm : public RegisterForm {
    Q_OBJECT

public:
    LotForm(const Workstation& workstation, std::string product);

    void show(const Registers& registers);
    /// Corrects that lot from now on; false where something else is typed that is not recorded.
    bool revise(const RegisteredLot& lot);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;
    void drop() override;
    [[nodiscard]] bool canDrop() const override { return isTouched() || !m_lot.empty(); }

private:
    std::string m_product;
    std::string m_productName;
    Date m_day{};
    std::string m_lot; ///< that is corrected; empty: one more
    ProductLotRecorded m_recorded;
    QLabel* m_heading;
    QLineEdit* m_number;
    QLineEdit* m_expires;
    Field* m_numberField;
    Field* m_expiresField;
};

} // namespace loadwarden::ui

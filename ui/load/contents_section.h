#pragma once

#include "ui/load/sheet_section.h"

#include <string>

namespace loadwarden::ui {

class ItemForm;

/// What is in the load: each label as it is scanned, with what stays the same from one to the next
/// chosen once.
class ContentsSection : public SheetSection {
    Q_OBJECT

public:
    explicit ContentsSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;
    void goTo(const QString& subject) override;

    /// A label that was scanned while this load is on the page: it goes in with what is chosen.
    void addLabel(const QString& label);

private:
    void showItems(const LoadSheet& sheet);
    void remove(const SheetItem& item, const QString& why);
    [[nodiscard]] QWidget* makeRow(const SheetItem& item, const QString& misfit);
    /// Says of the devices that are chosen whether they may go into this load.
    void lookAtDevices();
    [[nodiscard]] QString misfitText(const std::vector<Finding>& findings);

    QVBoxLayout* m_rows;
    ItemForm* m_form;
    std::string m_removing; ///< it- of the item of which somebody is asked why
};

} // namespace loadwarden::ui

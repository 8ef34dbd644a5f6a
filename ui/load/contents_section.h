#pragma once

#include "ui/load/sheet_section.h"

#include <vector>

class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class Field;

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
    [[nodiscard]] QWidget* makeForm();
    void showItems(const LoadSheet& sheet);
    void showDevices();
    void fillChoices(const Choices& choices);
    void remove(const SheetItem& item, const QString& why);
    [[nodiscard]] QWidget* makeRow(const SheetItem& item);

    QVBoxLayout* m_rows;
    QWidget* m_form;
    QLineEdit* m_label;
    Field* m_labelField;
    ChoiceRow* m_implant;
    QComboBox* m_packaging;
    QLineEdit* m_expires;
    Field* m_expiresField;
    QComboBox* m_device;
    QLabel* m_devices; ///< those that were chosen
    QPushButton* m_noDevices;
    std::vector<std::string> m_deviceIds;
    QComboBox* m_outside;
    QComboBox* m_inside;
    QComboBox* m_insideCount;
    std::size_t m_filled = 0; ///< how many choices the boxes were filled with
    std::string m_removing; ///< it- of the item of which somebody is asked why
};

} // namespace loadwarden::ui

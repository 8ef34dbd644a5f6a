#pragma once

#include "ui/load/sheet_section.h"

class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class Field;

/// The release of one implant before its biological indicator has answered: documented for the
/// patient's record, signed by a supervisor, never a release of the load.
class EmergencyForm : public QFrame {
    Q_OBJECT

public:
    explicit EmergencyForm(CycleDesk& desk, QWidget* parent = nullptr);

    void ask();

private:
    void sign();

    CycleDesk& m_desk;
    QComboBox* m_item;
    QLineEdit* m_case;
    QLineEdit* m_demandedBy;
    QLineEdit* m_why;
    QLineEdit* m_prevented;
    std::vector<Field*> m_fields;
};

} // namespace loadwarden::ui

#pragma once

#include "ui/load/sheet_section.h"

class QLineEdit;

namespace loadwarden::ui {

class Field;

/// Why a load was for immediate use, and for which case.
class ImmediateSection : public SheetSection {
    Q_OBJECT

public:
    explicit ImmediateSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;

private:
    void state();

    Facts* m_facts;
    QWidget* m_form;
    QLineEdit* m_why;
    QLineEdit* m_case;
    ChoiceRow* m_storage;
    Field* m_whyField;
    Field* m_caseField;
    Field* m_storageField;
};

} // namespace loadwarden::ui

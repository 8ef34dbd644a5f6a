#pragma once

#include "ui/first_start/step.h"

#include <vector>

class QCheckBox;
class QComboBox;
class QPushButton;
class QVBoxLayout;

namespace loadwarden::ui {

/// The sterilizers with which the department begins, each from a template. More come in Settings.
class SterilizersStep : public Step {
    Q_OBJECT

public:
    explicit SterilizersStep(QWidget* parent = nullptr);

    bool check() override;
    void fill(FirstDay& day) const override;

private:
    struct Row {
        QWidget* frame;
        QLineEdit* name;
        QLineEdit* model;
        QComboBox* specification;
        QLineEdit* program;
        QCheckBox* inService;
        Field* nameField;
        Field* programField;
    };

    void addRow();
    void removeRow(const QWidget* frame);

    QVBoxLayout* m_column;
    std::vector<Row> m_rows;
};

} // namespace loadwarden::ui

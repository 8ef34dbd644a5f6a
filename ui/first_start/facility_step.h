#pragma once

#include "ui/first_start/step.h"

class QComboBox;

namespace loadwarden::ui {

/// Where the journal goes, and whose it is.
class FacilityStep : public Step {
    Q_OBJECT

public:
    explicit FacilityStep(const QString& file, QWidget* parent = nullptr);

    bool check() override;
    void fill(FirstDay& day) const override;

private:
    void choose();

    QLineEdit* m_file;
    QLineEdit* m_name;
    QComboBox* m_zone;
    QLineEdit* m_atmosphere;
    Field* m_fileField;
    Field* m_nameField;
    Field* m_zoneField;
    Field* m_atmosphereField;
};

} // namespace loadwarden::ui

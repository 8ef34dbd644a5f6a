#pragma once

#include "core/loads/item.h"

#include <QWidget>

class QComboBox;

namespace loadwarden::ui {

/// What hydrogen peroxide must not meet, of one item. Nothing is taken for granted: what is not
/// said stays not known.
class PeroxideForm : public QWidget {
    Q_OBJECT

public:
    explicit PeroxideForm(QWidget* parent = nullptr);

    [[nodiscard]] PeroxideFacts value() const;
    void clear();

private:
    QComboBox* m_cellulose;
    QComboBox* m_liquid;
    QComboBox* m_moist;
    QComboBox* m_lumen;
};

} // namespace loadwarden::ui

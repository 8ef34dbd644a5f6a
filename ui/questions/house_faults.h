#pragma once

#include "core/exchange/toml_error.h"

#include <QFrame>

#include <vector>

class QVBoxLayout;

namespace loadwarden::ui {

/// What is wrong with the facility's own topics, file and line, for whoever mends them. Not to be
/// seen while nothing is.
class HouseFaults : public QFrame {
    Q_OBJECT

public:
    explicit HouseFaults(QWidget* parent = nullptr);

    void show(const std::vector<TomlError>& faults);

private:
    QVBoxLayout* m_column;
    std::vector<TomlError> m_shown;
};

} // namespace loadwarden::ui

#pragma once

#include "core/exchange/policy_rows.h"

#include <QWidget>

#include <vector>

class QVBoxLayout;

namespace loadwarden::ui {

/// A policy in plain words, by sections: each setting with its value, where that comes from and how
/// sure that is. Or where two revisions differ.
class PolicyTable : public QWidget {
    Q_OBJECT

public:
    explicit PolicyTable(QWidget* parent = nullptr);

    void show(const std::vector<PolicyRow>& rows);
    /// Old and new beside each other; `rows` are those of the new one.
    void showDifferences(const std::vector<PolicyDifference>& differences);

private:
    void clear();

    QVBoxLayout* m_column;
};

} // namespace loadwarden::ui

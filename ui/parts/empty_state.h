#pragma once

#include <QWidget>

class QPushButton;

namespace loadwarden::ui {

/// An empty page: what belongs here, and the first step to it.
class EmptyState : public QWidget {
    Q_OBJECT

public:
    /// Without `action` there is no step to take.
    EmptyState(const QString& heading, const QString& says, const QString& action = {},
               QWidget* parent = nullptr);

signals:
    void acted();
};

} // namespace loadwarden::ui

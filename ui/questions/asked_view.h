#pragma once

#include "core/desk/floor.h"

#include <QFrame>
#include <QString>

#include <functional>
#include <vector>

namespace loadwarden::ui {

/// What the floor asked and misread most, by month and place.
class AskedView : public QFrame {
    Q_OBJECT

public:
    /// `questionOf` gives the question of a topic's id as people ask it; empty: not known.
    AskedView(const std::vector<AskedOften>& asked,
              const std::function<QString(const std::string&)>& questionOf,
              QWidget* parent = nullptr);

signals:
    void wantsTopic(const QString& id);
};

} // namespace loadwarden::ui

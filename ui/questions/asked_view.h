#pragma once

#include "core/desk/floor.h"
#include "core/guidance/topic.h"

#include <QFrame>
#include <QString>

#include <functional>
#include <vector>

namespace loadwarden::ui {

/// What the floor asked and misread most, by month and place.
class AskedView : public QFrame {
    Q_OBJECT

public:
    /// `topicOf` gives the topic of an id, or null.
    AskedView(const std::vector<AskedOften>& asked,
              const std::function<const Topic*(const std::string&)>& topicOf,
              QWidget* parent = nullptr);

signals:
    void wantsTopic(const QString& id);
};

} // namespace loadwarden::ui

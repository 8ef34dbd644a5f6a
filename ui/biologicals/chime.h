#pragma once

#include <QObject>

namespace loadwarden::ui {

/// The sound of the program, once at a time; whoever cannot hear it sees why it rang.
class Chime : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    void ring();

signals:
    void rang();
};

} // namespace loadwarden::ui

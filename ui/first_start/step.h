#pragma once

#include "ui/first_start/founding_work.h"

#include <QWidget>

class QLineEdit;

namespace loadwarden::ui {

class Field;

/// One step of the first start: a heading, what it is for, fields.
class Step : public QWidget {
    Q_OBJECT

public:
    Step(const QString& heading, const QString& says, QWidget* parent = nullptr);

    /// Says at the fields what is wrong and takes the keyboard there; true: nothing is.
    virtual bool check() = 0;
    /// Writes what was typed; after check().
    virtual void fill(FirstDay& day) const = 0;

protected:
    void add(QWidget* widget);
    /// A field, and where it is empty an error.
    static bool needs(Field* field, const QLineEdit* line, const QString& otherwise);
};

} // namespace loadwarden::ui

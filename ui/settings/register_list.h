#pragma once

#include "ui/look/look.h"

#include <QListWidget>

#include <vector>

namespace loadwarden::ui {

/// What one line of a register says.
struct RegisterLine {
    QString id; ///< empty: something new that is not recorded yet
    QString name;
    QString says;        ///< beside it, smaller in weight
    bool isPast = false; ///< out of use: `says` tells so, too
};

/// The things of a register, one of which is chosen; by arrows or by pointer.
class RegisterList : public QListWidget {
    Q_OBJECT

public:
    RegisterList(Look& look, const QString& name, QWidget* parent = nullptr);

    /// Keeps what is chosen where it is still there.
    void show(const std::vector<RegisterLine>& lines);
    void choose(const QString& id);
    /// Nothing chosen gives a null text, something new an empty one.
    [[nodiscard]] QString chosenId() const;

signals:
    void chosen(const QString& id);

private:
    void tell();

    bool m_isShowing = false;
    QString m_told;
};

} // namespace loadwarden::ui

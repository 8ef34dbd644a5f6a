#pragma once

#include "ui/look/look.h"

#include <QFrame>

class QLabel;
class QPushButton;

namespace loadwarden::ui {

/// What has happened, across the page and never in the way: it takes no keyboard and stays until it
/// is put away or something newer is said.
class Banner : public QFrame {
    Q_OBJECT

public:
    enum class Tone : std::uint8_t { neutral, good, waiting, bad };

    explicit Banner(QWidget* parent = nullptr);

    /// `next` is what to do about it; may be empty.
    void say(Tone tone, const QString& says, const QString& next = {});
    [[nodiscard]] QString said() const;

public slots:
    void putAway();

private:
    QLabel* m_says;
    QLabel* m_next;
    QPushButton* m_close;
};

} // namespace loadwarden::ui

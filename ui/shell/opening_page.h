#pragma once

#include <QWidget>

class QLabel;
class QPushButton;

namespace loadwarden::ui {

/// While a journal is being opened, and why it could not be.
class OpeningPage : public QWidget {
    Q_OBJECT

public:
    explicit OpeningPage(QWidget* parent = nullptr);

    void opening(const QString& file);
    void failed(const QString& says, const QString& next);

signals:
    void again();
    void other();

private:
    QLabel* m_heading;
    QLabel* m_says;
    QPushButton* m_again;
    QPushButton* m_other;
};

} // namespace loadwarden::ui

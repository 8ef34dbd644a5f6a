#pragma once

#include "ui/shell/session.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QMenu;
class QPushButton;

namespace loadwarden::ui {

class Field;

/// Asks who works here: a badge or a name, and a PIN. It stands before every page until somebody is
/// in, and again when the window was locked or a badge was scanned.
class SignInPage : public QWidget {
    Q_OBJECT

public:
    enum class Why : std::uint8_t { first, locked, change };

    SignInPage(Look& look, DeskLink& desk, Session& session, QWidget* parent = nullptr);

    /// Asks anew, with who is filled in where it is known.
    void ask(Why why, const QString& who = {});

signals:
    /// Somebody thought better of changing the person.
    void left();

private:
    /// Who works here can be chosen, and is completed while it is typed.
    void offerNames();
    void chooseName();
    void enter();
    void refused(const Refusal& refusal);

    DeskLink& m_desk;
    Session& m_session;
    QLabel* m_facility;
    QLabel* m_heading;
    QLabel* m_says;
    QLineEdit* m_who;
    QPushButton* m_choose;
    QMenu* m_names;
    bool m_opensNames = false; ///< once they are read
    QLineEdit* m_pin;
    Field* m_whoField;
    Field* m_pinField;
    QPushButton* m_enter;
    QPushButton* m_leave;
};

} // namespace loadwarden::ui

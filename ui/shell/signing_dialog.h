#pragma once

#include "ui/shell/session.h"

#include <QDialog>
#include <QStringList>

class QLineEdit;
class QPushButton;

namespace loadwarden::ui {

class Field;

/// What somebody is about to sign.
struct ToSign {
    QString what;     ///< in words: "Release load 1-2031-063-02"
    QStringList seen; ///< what the signer has seen of it, a line each
    QString button;   ///< what the button says: "Sign the release"
    Session::Signing signing;
    Session::SigningTwice signingTwice{}; ///< instead of it, for two things at once
};

/// The one modal step: what is signed and what was seen, in words, then the PIN. It closes when it
/// is signed or left; a refusal is said in it, and nothing is signed then.
class SigningDialog : public QDialog {
    Q_OBJECT

public:
    SigningDialog(Look& look, DeskLink& desk, Session& session, ToSign toSign, QWidget* parent);

    /// What was recorded, after accepted().
    [[nodiscard]] const Appended& appended() const { return m_appended; }

private:
    void sign();
    void answered(OrRefusal<Appended> answer);

    DeskLink& m_desk;
    Session& m_session;
    ToSign m_toSign;
    QLineEdit* m_pin;
    Field* m_field;
    QPushButton* m_sign;
    Appended m_appended;
};

} // namespace loadwarden::ui

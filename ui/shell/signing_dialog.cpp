#include "ui/shell/signing_dialog.h"

#include "core/words/say_refusal.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/pin_entry.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int widthOfWords = 480;

/// Everything that was seen: what does not fit is scrolled to, and nothing else gives way for it.
QWidget* makeSeen(const QStringList& lines)
{
    auto* const inside = new QWidget;
    inside->setObjectName(QStringLiteral("rows"));
    auto* const column = new QVBoxLayout(inside);
    column->setContentsMargins(0, 0, space::small, 0);
    column->setSpacing(space::small);
    for (const QString& line : lines) {
        column->addWidget(makeLabel(line));
    }
    column->addStretch();
    auto* const scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidget(inside);
    scroll->setAccessibleName(SigningDialog::tr("What was seen"));
    constexpr int most = 320;
    inside->adjustSize();
    // -1: nothing is said beside the heading.
    scroll->setMinimumHeight(std::clamp(inside->heightForWidth(widthOfWords), 0, most));
    return scroll;
}

} // namespace

SigningDialog::SigningDialog(Look& /*look*/, DeskLink& desk, Session& session, ToSign toSign,
                             QWidget* parent)
    : QDialog(parent),
      m_desk(desk),
      m_session(session),
      m_toSign(std::move(toSign)),
      m_pin(makePinLine()),
      m_field(nullptr),
      m_sign(makeButton(m_toSign.button, ButtonKind::main))
{
    setModal(true);
    setWindowTitle(tr("Sign"));
    setMinimumWidth(760);
    auto* const columns = new QHBoxLayout(this);
    columns->setContentsMargins(space::page, space::page, space::page, space::page);
    columns->setSpacing(space::page);
    auto* const words = new QVBoxLayout;
    words->setSpacing(space::small);
    words->addWidget(makeMuted(tr("You sign")));
    words->addWidget(makeLabel(m_toSign.what, Type::heading));
    words->addSpacing(space::small);
    words->addWidget(makeMuted(tr("having seen")));
    words->addWidget(makeSeen(m_toSign.seen), 1);
    words->addSpacing(space::medium);
    m_field = new Field(tr("&PIN of %1").arg(text(session.person().name)), m_pin);
    words->addWidget(m_field);
    auto* const buttons = new QHBoxLayout;
    auto* const leave = makeButton(tr("Do not sign"));
    buttons->addWidget(m_sign);
    buttons->addWidget(leave);
    buttons->addStretch();
    words->addLayout(buttons);
    columns->addLayout(words, 1);
    columns->addWidget(new PinPad(m_pin), 0, Qt::AlignBottom);
    m_sign->setDefault(true);
    connect(m_sign, &QPushButton::clicked, this, &SigningDialog::sign);
    connect(leave, &QPushButton::clicked, this, &QDialog::reject);
    connect(&session, &Session::locked, this, &QDialog::reject);
    m_pin->setFocus();
}

void SigningDialog::sign()
{
    if (m_pin->text().isEmpty()) {
        m_field->setError(tr("Type your PIN to sign."));
        m_pin->setFocus();
        return;
    }
    m_sign->setEnabled(false);
    const std::string pin = m_pin->text().toStdString();
    const auto done = [this](OrRefusal<Appended> answer) { answered(std::move(answer)); };
    const auto failed = [this] {
        m_sign->setEnabled(true);
        m_field->setError(tr("Nothing was signed: the journal could not be written. The page "
                             "behind says why."));
    };
    if (m_toSign.signingTwice) {
        m_session.signTwice(this, pin, m_toSign.signingTwice, done, failed);
    } else {
        m_session.sign(this, pin, m_toSign.signing, done, failed);
    }
}

void SigningDialog::answered(OrRefusal<Appended> answer)
{
    m_sign->setEnabled(true);
    if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
        const Told told = say(*refusal, m_desk.style());
        m_field->setError(text(told.says) + u' ' + text(told.next));
        m_pin->clear();
        m_pin->setFocus();
        return;
    }
    m_appended = std::get<Appended>(answer);
    accept();
}

} // namespace loadwarden::ui

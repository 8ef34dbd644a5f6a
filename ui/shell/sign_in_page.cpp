#include "ui/shell/sign_in_page.h"

#include "core/desk/people.h"
#include "core/words/say_refusal.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/glyph_view.h"
#include "ui/parts/pin_entry.h"

#include <QCompleter>
#include <QFrame>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QMenu>
#include <QStringListModel>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

/// A line, and a button that fills it.
QWidget* beside(QLineEdit* line, QPushButton* button)
{
    auto* const both = new QWidget;
    auto* const row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::small);
    row->addWidget(line, 1);
    row->addWidget(button);
    both->setFocusProxy(line);
    return both;
}

} // namespace

SignInPage::SignInPage(Look& look, DeskLink& desk, Session& session, QWidget* parent)
    : QWidget(parent),
      m_desk(desk),
      m_session(session),
      m_facility(makeMuted({})),
      m_heading(makeLabel({}, Type::title)),
      m_says(makeMuted({})),
      m_who(new QLineEdit),
      m_choose(makeButton(tr("&Names"))),
      m_names(new QMenu(m_choose)),
      m_pin(makePinLine()),
      m_whoField(new Field(tr("&Badge, id or name"), beside(m_who, m_choose))),
      m_pinField(new Field(tr("&PIN"), m_pin)),
      m_enter(makeButton(tr("&Sign in"), ButtonKind::main)),
      m_leave(makeButton(tr("Go &back")))
{
    setObjectName(QStringLiteral("page"));
    auto* const panel = new QFrame;
    panel->setObjectName(QStringLiteral("panel"));
    panel->setMaximumWidth(860);
    auto* const columns = new QHBoxLayout(panel);
    columns->setContentsMargins(space::page + space::small, space::page, space::page + space::small,
                                space::page);
    columns->setSpacing(space::page + space::medium);
    auto* const words = new QVBoxLayout;
    words->setSpacing(space::small);
    auto* const name = new QHBoxLayout;
    name->setSpacing(space::small);
    name->addWidget(new GlyphView(look, Glyph::loadwarden, ToneOf::neutral, 28));
    name->addWidget(m_facility, 1);
    words->addLayout(name);
    words->addSpacing(space::small);
    words->addWidget(m_heading);
    words->addWidget(m_says);
    words->addSpacing(space::medium);
    words->addWidget(m_whoField);
    words->addWidget(m_pinField);
    auto* const buttons = new QHBoxLayout;
    buttons->setSpacing(space::small);
    buttons->addWidget(m_enter);
    buttons->addWidget(m_leave);
    buttons->addStretch();
    words->addLayout(buttons);
    words->addStretch();
    columns->addLayout(words, 1);
    columns->addWidget(new PinPad(m_pin), 0, Qt::AlignBottom);

    auto* const middle = new QVBoxLayout(this);
    middle->addStretch(2);
    auto* const row = new QHBoxLayout;
    row->addStretch(1);
    row->addWidget(panel, 8);
    row->addStretch(1);
    middle->addLayout(row);
    middle->addStretch(3);

    m_choose->setAccessibleName(tr("Choose among the names of the staff"));
    auto* const completer = new QCompleter(m_who);
    completer->setCompletionMode(QCompleter::InlineCompletion); // no list over what comes next
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    m_who->setCompleter(completer);
    connect(m_choose, &QPushButton::clicked, this, &SignInPage::chooseName);
    connect(m_enter, &QPushButton::clicked, this, &SignInPage::enter);
    connect(m_leave, &QPushButton::clicked, this, &SignInPage::left);
    connect(m_who, &QLineEdit::returnPressed, this, [this] { m_pin->setFocus(); });
    connect(m_pin, &QLineEdit::returnPressed, this, &SignInPage::enter);
    connect(m_who, &QLineEdit::textEdited, this, [this] { m_whoField->setError({}); });
    connect(m_pin, &QLineEdit::textEdited, this, [this] { m_pinField->setError({}); });
    connect(&session, &Session::entered, this, [this] { m_pin->clear(); });
}

void SignInPage::ask(Why why, const QString& who)
{
    m_facility->setText(text(m_desk.about().facility));
    switch (why) {
    case Why::first:
        m_heading->setText(tr("Who works here now?"));
        m_says->setText(tr("Scan your badge, or type or choose who you are; then your PIN."));
        break;
    case Why::locked:
        m_heading->setText(tr("Locked"));
        m_says->setText(tr("What you had typed is still there. Scan your badge or type your PIN."));
        break;
    case Why::change:
        m_heading->setText(tr("Change of person"));
        m_says->setText(tr("The page stays as it is. From now on everything is recorded under the "
                           "new name."));
        break;
    }
    m_leave->setVisible(why == Why::change);
    m_whoField->setError({});
    m_pinField->setError({});
    m_pin->clear();
    m_who->setText(who);
    m_opensNames = false;
    offerNames();
    (who.isEmpty() ? m_who : m_pin)->setFocus();
}

void SignInPage::offerNames()
{
    m_desk.ask(
        this,
        [](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return peopleOf(snapshot);
        },
        [this](const std::vector<Person>& people) {
            QStringList names;
            for (const Person& person : people) {
                if (person.active) {
                    names << text(person.name);
                }
            }
            names.sort(Qt::CaseInsensitive);
            m_who->completer()->setModel(new QStringListModel(names, m_who->completer()));
            m_names->clear();
            for (const QString& name : names) {
                QString shown = name;
                m_names->addAction(shown.replace(u'&', QStringLiteral("&&")), this, [this, name] {
                    m_who->setText(name);
                    m_whoField->setError({});
                    m_pin->setFocus();
                });
            }
            if (m_opensNames) {
                chooseName();
            }
        });
}

void SignInPage::chooseName()
{
    m_opensNames = m_names->isEmpty();
    if (!m_opensNames) {
        m_names->popup(m_choose->mapToGlobal(QPoint(0, m_choose->height())));
        m_names->setActiveAction(m_names->actions().front());
    }
}

void SignInPage::enter()
{
    const QString who = m_who->text().trimmed();
    if (who.isEmpty()) {
        m_whoField->setError(tr("Scan your badge, or type your id or your name."));
        m_who->setFocus();
        return;
    }
    if (m_pin->text().isEmpty()) {
        m_pinField->setError(tr("Type your PIN."));
        m_pin->setFocus();
        return;
    }
    m_session.enter(who.toStdString(), m_pin->text().toStdString(),
                    [this](const Refusal& refusal) { refused(refusal); });
}

void SignInPage::refused(const Refusal& refusal)
{
    const Told told = say(refusal, m_desk.style());
    const QString says = text(told.says) + u' ' + text(told.next);
    const bool isWho =
        refusal.why == RefusalWhy::personUnknown || refusal.why == RefusalWhy::personInactive;
    (isWho ? m_whoField : m_pinField)->setError(says);
    m_pin->clear();
    (isWho ? m_who : m_pin)->setFocus();
    if (isWho) {
        m_who->selectAll();
    }
}

} // namespace loadwarden::ui

#include "ui/load/later_strip.h"

#include "core/desk/people.h"
#include "core/words/say_terms.h"
#include "ui/look/text.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"
#include "ui/parts/time_edit.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

namespace loadwarden::ui {

LaterStrip::LaterStrip(CycleDesk& desk, QWidget* parent)
    : QFrame(parent),
      m_desk(desk),
      m_when(new TimeEdit(desk.style().zone.value_or(*Zone::find("UTC")), desk.now())),
      m_whenField(new Field(tr("When it happened"), m_when, tr("stays for the next entries"))),
      m_by(makeCombo())
{
    setObjectName(QStringLiteral("reading"));
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(space::large, space::small, space::large, 0);
    row->setSpacing(space::large);
    row->addWidget(m_whenField, 0, Qt::AlignTop);
    row->addWidget(new Field(tr("Who did it"), m_by, tr("another only where they signed on paper")),
                   0, Qt::AlignTop);
    row->addWidget(makeMuted(tr("What is recorded on this page is of that time and person. "
                                "Signatures are always yours, and now.")),
                   1, Qt::AlignVCenter);
    auto* const stop = makeButton(tr("Back to now"));
    connect(stop, &QPushButton::clicked, this, &LaterStrip::close);
    row->addWidget(stop, 0, Qt::AlignVCenter);
    connect(m_when, &TimeEdit::edited, this, &LaterStrip::tell);
    connect(m_by, &QComboBox::currentIndexChanged, this, &LaterStrip::tell);
    connect(&desk, &CycleDesk::wrongTime, this, [this](const QString& why) {
        m_whenField->setError(why);
        m_when->setFocus();
    });
    // Who comes next says anew what was earlier, and who did it.
    connect(&desk.workstation().session, &Session::entered, this, [this] {
        if (m_desk.workstation().session.person().id != m_opener) {
            close();
        }
    });
    hide();
}

void LaterStrip::toggle()
{
    if (!isHidden()) {
        close();
        return;
    }
    m_opener = m_desk.workstation().session.person().id;
    m_when->set(m_desk.now());
    m_when->clearTime();
    m_whenField->setError({});
    fillPeople();
    show();
    m_when->timeLine()->setFocus(Qt::OtherFocusReason);
}

void LaterStrip::close()
{
    hide();
    m_desk.setLater({});
}

void LaterStrip::fillPeople()
{
    m_by->clear();
    m_by->addItem(tr("I did"), QString());
    tell();
    m_desk.workstation().desk.ask(
        this,
        [](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return peopleOf(snapshot);
        },
        [this](std::vector<Person> people) {
            m_people = std::move(people);
            for (const Person& person : m_people) {
                if (person.active && person.role != Role::viewer) {
                    m_by->addItem(tr("%1 (%2), on paper", "a person, a role")
                                      .arg(text(person.name), text(say(person.role))),
                                  text(person.id));
                }
            }
        });
}

void LaterStrip::tell()
{
    Later later{.wrong = m_when->isEmpty() ? tr("Type when it happened, or go back to now.")
                                           : m_when->whatIsWrong(),
                .at = {},
                .paper = {}};
    if (later.wrong.isEmpty()) {
        later.at = m_when->value();
    }
    m_whenField->setError(m_when->isEmpty() ? QString() : later.wrong);
    const std::string by = m_by->currentData().toString().toStdString();
    for (const Person& person : m_people) {
        if (person.id == by) {
            later.paper = FromPaper{person.id, person.role};
        }
    }
    m_desk.setLater(later);
}

} // namespace loadwarden::ui

#include "ui/questions/log_form.h"

#include "core/desk/floor.h"
#include "core/desk/recorder.h"
#include "core/words/say_refusal.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/questions/floor_places.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/session.h"

#include <QCheckBox>
#include <QCompleter>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int mostOfName = 64;

} // namespace

LogForm::LogForm(Workstation& workstation, QuestionLogged question, FloorPlaces& places,
                 QWidget* parent)
    : QFrame(parent),
      m_workstation(workstation),
      m_question(std::move(question)),
      m_places(places),
      m_place(new QLineEdit(places.last())),
      m_placeField(new Field(tr("From &where"), m_place, tr("a room or a ward; no patient"))),
      m_by(new QLineEdit(places.lastBy())),
      m_wasMisread(new QCheckBox(tr("Something had been &misread")))
{
    setObjectName(QStringLiteral("reading"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::medium, space::medium, space::medium, space::medium);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("Log this question"), Type::strong));
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::medium);
    m_place->setMaxLength(mostOfName);
    m_by->setMaxLength(mostOfName);
    auto* const known = new QCompleter(places.all(), m_place);
    known->setCaseSensitivity(Qt::CaseInsensitive);
    m_place->setCompleter(known);
    row->addWidget(m_placeField, 1);
    row->addWidget(new Field(tr("Asked b&y"), m_by, tr("by what they do there")), 1);
    column->addLayout(row);
    auto* const last = new QHBoxLayout;
    last->setSpacing(space::medium);
    last->addWidget(m_wasMisread, 1);
    auto* const log = makeButton(tr("Lo&g it"));
    last->addWidget(log);
    column->addLayout(last);
    connect(log, &QPushButton::clicked, this, &LogForm::record);
    connect(m_place, &QLineEdit::returnPressed, this, &LogForm::record);
    connect(m_by, &QLineEdit::returnPressed, this, &LogForm::record);
}

void LogForm::record()
{
    const QString place = m_place->text().trimmed();
    if (place.isEmpty()) {
        m_placeField->setError(tr("Say from where it was asked."));
        m_place->setFocus();
        return;
    }
    if (std::exchange(m_isRecording, true)) {
        return;
    }
    QuestionLogged question = m_question;
    question.place = place.toStdString();
    question.by = m_by->text().trimmed().toStdString();
    question.wasMisread = m_wasMisread->isChecked();
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(), question](Office& office) {
            return Recorder(office).record(
                who, asked(office.place().ids, office.zone().dateOf(office.now()), question));
        },
        [this, place, by = text(question.by)](const OrRefusal<Appended>& answer) {
            m_isRecording = false;
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                const Told said = say(*refusal, m_workstation.desk.style());
                emit says(text(said.says), text(said.next));
                return;
            }
            m_places.remember(place, by);
            emit says(tr("The question from %1 is logged.").arg(place), {});
            emit logged();
        },
        [this] { m_isRecording = false; });
}

} // namespace loadwarden::ui

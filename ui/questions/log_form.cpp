#include "ui/questions/log_form.h"

#include "core/desk/floor.h"
#include "ui/look/look.h"
#include "ui/look/text.h"
#include "ui/questions/floor_desk.h"
#include "ui/questions/floor_from.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QPointer>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>

namespace loadwarden::ui {

LogForm::LogForm(FloorDesk& desk, QuestionLogged question, QWidget* parent)
    : QFrame(parent),
      m_desk(desk),
      m_question(std::move(question)),
      m_from(new FloorFrom(desk, tr("From &where"), tr("Asked b&y"))),
      m_wasMisread(new QCheckBox(tr("Something had been &misread")))
{
    setObjectName(QStringLiteral("reading"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::medium, space::medium, space::medium, space::medium);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("Log this question"), Type::strong));
    column->addWidget(m_from);
    auto* const last = new QHBoxLayout;
    last->setSpacing(space::medium);
    last->addWidget(m_wasMisread, 1);
    auto* const log = makeButton(tr("Lo&g it"));
    last->addWidget(log);
    column->addLayout(last);
    connect(log, &QPushButton::clicked, this, &LogForm::record);
    connect(m_from, &FloorFrom::entered, this, &LogForm::record);
}

void LogForm::record()
{
    const QString place = m_from->place();
    if (place.isEmpty()) {
        m_from->setPlaceError(tr("Say from where it was asked."));
        m_from->focusPlace();
        return;
    }
    m_from->setPlaceError({});
    if (std::exchange(m_isRecording, true)) {
        return;
    }
    QuestionLogged question = m_question;
    question.place = place.toStdString();
    question.by = m_from->by().toStdString();
    question.wasMisread = m_wasMisread->isChecked();
    m_desk.record([question](IdSource& ids, Date day) { return asked(ids, day, question); }, place,
                  m_from->by(), tr("The question from %1 is logged.").arg(place), {},
                  [self = QPointer(this)](bool isDone) {
                      if (self) {
                          self->m_isRecording = false;
                          if (isDone) {
                              emit self->logged();
                          }
                      }
                  });
}

} // namespace loadwarden::ui

#include "ui/biologicals/bi_row.h"

#include "ui/biologicals/bi_text.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/glyph_view.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

struct Mark {
    Glyph glyph;
    ToneOf tone;
};

Mark markOf(const BiTest& test, Instant now)
{
    if (test.isControl && test.control == ControlState::dead) {
        return {Glyph::failed, ToneOf::bad};
    }
    if (test.isControl && test.control == ControlState::grown) {
        return {Glyph::passed, ToneOf::good};
    }
    if (!test.isControl && test.vial.state == VialState::voided) {
        return {Glyph::voided, ToneOf::neutral};
    }
    if (test.step == BiStep::read && !test.isDue(now)) {
        return {Glyph::running, ToneOf::neutral};
    }
    return {Glyph::pending, test.step == BiStep::none ? ToneOf::neutral : ToneOf::waiting};
}

constexpr int widthOfAbout = 210;

/// Of "Growth  G", which names its key.
QString wordOf(const QString& says)
{
    return says.section(QStringLiteral("  "), 0, 0);
}

} // namespace

BiRow::BiRow(Look& look, const BiTest& test, const QString& name,
             const std::vector<NamedId>& incubators, const HouseStyle& style, QWidget* parent)
    : QFrame(parent),
      m_test(test),
      m_name(name),
      m_incubators(incubators),
      m_style(style),
      m_glyph(new GlyphView(look, Glyph::pending, ToneOf::neutral, 26)),
      m_standing(makeMuted({})),
      m_question(nullptr),
      m_asks(makeLabel({}, Type::strong)),
      m_cooled(new QCheckBox(tr("It has &cooled as its directions say"))),
      m_broken(new QCheckBox(tr("The ampoule is &broken and the medium has wetted the carrier"))),
      m_incubator(new QComboBox),
      m_incubatorField(nullptr),
      m_error(makeLabel({})),
      m_record(makeButton({}, ButtonKind::main)),
      m_leave(makeButton(tr("Leave it")))
{
    setObjectName(QStringLiteral("need"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::page, space::small, space::page, space::small);
    column->setSpacing(space::small);
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::medium);
    row->addWidget(m_glyph, 0, Qt::AlignVCenter);
    auto* const words = new QVBoxLayout;
    words->setSpacing(2);
    words->addStretch();
    words->addWidget(makeLabel(m_name, Type::strong));
    words->addWidget(m_standing);
    words->addStretch();
    row->addLayout(words, 1);
    auto* const about = new QWidget;
    about->setFixedWidth(widthOfAbout);
    auto* const lines = new QVBoxLayout(about);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(2);
    lines->addStretch();
    if (!m_test.isControl) {
        lines->addWidget(makeLabel(text(m_test.sterilizer)));
        lines->addWidget(makeMuted(loadText()));
    }
    lines->addStretch();
    row->addWidget(about);
    addButtons(row);
    column->addLayout(row);
    m_question = makeQuestion();
    m_question->hide();
    column->addWidget(m_question);
}

QString BiRow::loadText() const
{
    if (m_test.signedAs) {
        return text(say(*m_test.signedAs));
    }
    if (!m_test.hasImplant) {
        return tr("Not signed yet");
    }
    switch (m_test.vial.state) {
    case VialState::voided:
    case VialState::lost: return tr("Implant, held: this vial cannot free it");
    case VialState::positive:
    case VialState::positiveElsewhere: return tr("Implant, held");
    case VialState::negative: return tr("Implant, not signed yet");
    case VialState::pending: break;
    }
    return tr("Implant, held until read");
}

void BiRow::addButtons(QHBoxLayout* row)
{
    switch (m_test.step) {
    case BiStep::activate: (void)addButton(row, tr("Activated"), BiSaying::activated); break;
    case BiStep::incubate: (void)addButton(row, tr("In the incubator"), BiSaying::incubated); break;
    case BiStep::processIndicator:
        (void)addButton(row, tr("Mark changed"), BiSaying::changed);
        (void)addButton(row, tr("Mark unchanged"), BiSaying::unchanged);
        break;
    case BiStep::read:
        (void)addButton(row, tr("Growth  G", "with the key"), BiSaying::growth);
        (void)addButton(row, tr("No growth  N", "with the key"), BiSaying::noGrowth);
        (void)addButton(row, tr("Unclear  U", "with the key"), BiSaying::unclear);
        break;
    case BiStep::readSecond:
    case BiStep::none: break;
    }
    if (!m_test.isControl) {
        auto* const open = makeButton(tr("Load"), ButtonKind::quiet);
        open->setAccessibleName(tr("Open load %1").arg(text(m_test.lot)));
        connect(open, &QPushButton::clicked, this, &BiRow::wantsCycle);
        row->addWidget(open);
    }
}

QPushButton* BiRow::addButton(QHBoxLayout* row, const QString& says, BiSaying saying)
{
    auto* const button = makeButton(says);
    button->setAccessibleName(tr("%1: %2", "what, of what").arg(wordOf(says), m_name));
    connect(button, &QPushButton::clicked, this, [this, saying] { ask(saying); });
    row->addWidget(button);
    m_buttons.push_back(button);
    m_sayings.push_back(saying);
    return button;
}

QWidget* BiRow::makeQuestion()
{
    auto* const question = new QFrame;
    question->setObjectName(QStringLiteral("panel"));
    auto* const column = new QVBoxLayout(question);
    column->setContentsMargins(space::medium, space::small, space::medium, space::small);
    column->setSpacing(space::small);
    column->addWidget(m_asks);
    column->addWidget(m_cooled);
    column->addWidget(m_broken);
    for (const NamedId& incubator : m_incubators) {
        m_incubator->addItem(text(incubator.name), text(incubator.id));
    }
    m_incubatorField = new Field(tr("&Incubator"), m_incubator);
    m_incubator->setMaximumWidth(400);
    column->addWidget(m_incubatorField);
    m_error->setProperty("tone", "bad");
    column->addWidget(m_error);
    auto* const buttons = new QHBoxLayout;
    m_leave->setAccessibleName(tr("Leave it: %1").arg(m_name));
    buttons->addWidget(m_record);
    buttons->addWidget(m_leave);
    buttons->addStretch();
    column->addLayout(buttons);
    connect(m_record, &QPushButton::clicked, this, &BiRow::confirm);
    connect(m_leave, &QPushButton::clicked, this, &BiRow::leave);
    return question;
}

bool BiRow::isAsking() const
{
    return m_question->isVisibleTo(this);
}

void BiRow::tell(Instant now)
{
    m_now = now;
    m_standing->setText(standingText(m_test, now, m_style));
    const Mark mark = markOf(m_test, now);
    m_glyph->show(mark.glyph, mark.tone);
    const bool isBad = m_test.isControl && m_test.control == ControlState::dead;
    for (QPushButton* const button : m_buttons) {
        // What is to be read now stands out; what comes later can be read, and does not count.
        setStyleProperty(button, "kind", isEarly() ? "quiet" : "plain");
    }
    setStyleProperty(m_standing, "tone", isBad ? "bad" : m_test.isDue(now) ? "waiting" : "muted");
}

void BiRow::focusFirst()
{
    if (!m_buttons.empty()) {
        m_buttons.front()->setFocus();
    }
}

bool BiRow::isEarly() const
{
    return m_test.step == BiStep::read && m_test.dueAt && m_now < *m_test.dueAt;
}

QString BiRow::questionFor(BiSaying saying) const
{
    switch (saying) {
    case BiSaying::activated: return tr("%1: activated now?").arg(m_name);
    case BiSaying::incubated: return tr("%1: put in now?").arg(m_name);
    case BiSaying::changed: return tr("%1: the mark on it changed?").arg(m_name);
    case BiSaying::unchanged:
        return m_test.isControl
                   ? tr("%1: the mark on it has not changed, as on what was in no sterilizer?")
                         .arg(m_name)
                   : tr("%1: the mark on it has not changed? The test is void then.").arg(m_name);
    case BiSaying::growth:
        return m_test.isControl
                   ? tr("%1: growth?").arg(m_name)
                   : tr("%1: growth? That fails the load and calls what the sterilizer has run "
                        "into question, and it is not taken back.")
                         .arg(m_name);
    case BiSaying::noGrowth:
        if (isEarly()) {
            return tr("%1: it is too early to say that nothing grew. Before %2 that is recorded "
                      "and "
                      "does not count, and it is to be read again then.")
                .arg(m_name, text(sayTime(*m_test.dueAt, m_style)));
        }
        return m_test.isControl
                   ? tr("%1: no growth? A control must grow: the vials beside it are void then.")
                         .arg(m_name)
                   : tr("%1: no growth?").arg(m_name);
    case BiSaying::unclear:
        return tr("%1: unclear? A second person must read it then.").arg(m_name);
    }
    return {};
}

void BiRow::ask(BiSaying saying)
{
    if (std::ranges::find(m_sayings, saying) == m_sayings.end()) {
        return;
    }
    m_saying = saying;
    m_asks->setText(questionFor(saying));
    const bool isActivation = saying == BiSaying::activated;
    m_cooled->setVisible(isActivation && !m_test.isControl);
    m_broken->setVisible(isActivation);
    m_cooled->setChecked(false);
    m_broken->setChecked(false);
    m_incubatorField->setVisible(saying == BiSaying::incubated);
    m_error->hide();
    const auto at = std::ranges::find(m_sayings, saying) - m_sayings.begin();
    const QString what = wordOf(m_buttons[static_cast<std::size_t>(at)]->text());
    // What does not count is recorded only by somebody who chooses that.
    const bool isTooEarly = saying == BiSaying::noGrowth && isEarly();
    m_record->setText(isTooEarly ? tr("Record it all the same") : tr("Record: %1").arg(what));
    m_record->setAccessibleName(tr("Record %1: %2").arg(what, m_name));
    setStyleProperty(m_record, "kind", isTooEarly ? "plain" : "main");
    setStyleProperty(m_leave, "kind", isTooEarly ? "main" : "plain");
    m_question->show();
    emit asked();
    if (isTooEarly) {
        m_leave->setFocus();
    } else if (isActivation) {
        (m_test.isControl ? m_broken : m_cooled)->setFocus();
    } else if (saying == BiSaying::incubated && m_incubators.size() > 1) {
        m_incubator->setFocus();
    } else {
        m_record->setFocus();
    }
}

void BiRow::confirm()
{
    if (m_saying == BiSaying::activated && m_cooled->isVisible() && !m_cooled->isChecked()) {
        m_error->setText(tr("Let it cool first: a warm vial may break or be spoiled. Tick it once "
                            "it has."));
        m_error->show();
        m_cooled->setFocus();
        return;
    }
    if (m_saying == BiSaying::activated && !m_broken->isChecked()) {
        m_error->setText(tr("Without its medium nothing can grow, and the test would look good. "
                            "Break the ampoule, look, and tick it."));
        m_error->show();
        m_broken->setFocus();
        return;
    }
    const QString incubator = m_incubator->currentData().toString();
    if (m_saying == BiSaying::incubated && incubator.isEmpty()) {
        m_incubatorField->setError(tr("No incubator is registered. Register one in Settings."));
        return;
    }
    m_question->hide();
    emit said(m_saying, incubator);
}

void BiRow::leave()
{
    m_question->hide();
    focusFirst();
    emit left();
}

bool BiRow::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride
        && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && isAsking()) {
        event->accept();
        return true;
    }
    return QFrame::event(event);
}

void BiRow::keyPressEvent(QKeyEvent* event)
{
    if (isAsking() && event->key() == Qt::Key_Escape) {
        leave();
    } else if (isAsking() && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)) {
        if (m_leave->hasFocus()) {
            leave();
        } else {
            confirm();
        }
    } else {
        QFrame::keyPressEvent(event);
    }
}

} // namespace loadwarden::ui

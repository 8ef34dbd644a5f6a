#include "ui/load/history_section.h"

#include "core/words/say_any_act.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"

#include <QCoreApplication>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPointer>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

struct StateWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::HistorySection)

public:
    static QString of(const HistoryLine& line)
    {
        switch (line.state) {
        case LineState::stands: return {};
        case LineState::amended: return tr("amended by entry %1").arg(line.by);
        case LineState::beside: return tr("counts beside another that it could not take away");
        case LineState::struck: return tr("struck by entry %1").arg(line.by);
        case LineState::withoutEffect: return tr("without effect");
        case LineState::notUnderstood: return tr("not understood by this version");
        }
        return {};
    }
};

bool isTakenBack(LineState state)
{
    return state == LineState::amended || state == LineState::struck
           || state == LineState::withoutEffect;
}

bool canBeCorrected(const AnyAct& act)
{
    return !std::holds_alternative<DispositionSigned>(act)
           && !std::holds_alternative<EmergencyReleased>(act)
           && !std::holds_alternative<EntryVoided>(act)
           && !std::holds_alternative<EntryAnnotated>(act)
           && !std::holds_alternative<HistoryImported>(act);
}

} // namespace

HistorySection::HistorySection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("History"), parent), m_rows(new QVBoxLayout)
{
    m_rows->setSpacing(0);
    column()->addLayout(m_rows);
}

void HistorySection::show(const LoadSheet& sheet)
{
    for (const auto* const line : findChildren<QLineEdit*>()) {
        if (m_correcting != 0 && line->hasFocus()) {
            return; // somebody is writing there
        }
    }
    clearLayout(m_rows);
    const std::vector<HistoryLine>& lines = sheet.view().folded.history;
    for (const HistoryLine& line : lines) {
        const auto entry = std::ranges::find(sheet.record.entries, line.seq, &Entry::seq);
        if (entry != sheet.record.entries.end()) {
            addLine(line, *entry, sheet);
        }
    }
    setState(tr("entries: %1").arg(lines.size()));
}

void HistorySection::addLine(const HistoryLine& line, const Entry& entry, const LoadSheet& sheet)
{
    const HouseStyle style = desk().style();
    const ActSaid said =
        say(entry.act, [&](std::string_view id) { return sheet.record.names.of(id); }, style);
    auto* const row = new QWidget;
    auto* const columns = new QHBoxLayout(row);
    columns->setContentsMargins(0, space::hair, 0, space::hair);
    columns->setSpacing(space::medium);
    auto* const when = makeMuted(shortTime(entry.happenedAt.at, sheet, style));
    when->setFixedWidth(96);
    columns->addWidget(when, 0, Qt::AlignTop);
    auto* const words = new QVBoxLayout;
    words->setSpacing(0);
    QString what = said.value.empty() ? text(said.what)
                                      : tr("%1: %2").arg(text(said.what), text(said.value));
    QStringList of;
    for (const std::string& id : entry.subjects) {
        if (const SheetIndicator* const indicator = sheet.indicator(id)) {
            of << placeText(*indicator);
        }
        const auto item = std::ranges::find(sheet.items, id, &SheetItem::id);
        if (item != sheet.items.end() && !std::holds_alternative<ItemAdded>(entry.act)) {
            of << text(item->label);
        }
    }
    const bool brings = std::holds_alternative<PcdPlaced>(entry.act)
                        || std::holds_alternative<ItemAdded>(entry.act);
    if (!of.isEmpty() && !brings) {
        what = tr("%1 (%2)", "what was said, of what").arg(what, of.join(QStringLiteral(", ")));
    }
    auto* const label = makeLabel(what);
    if (isTakenBack(line.state)) {
        QFont font = label->font();
        font.setStrikeOut(true);
        label->setFont(font);
        setStyleProperty(label, "tone", "muted");
    }
    words->addWidget(label);
    words->addWidget(makeMuted(
        tr("%1, entry %2").arg(whoText(entry, sheet, style), QString::number(entry.seq))));
    if (!entry.reason.empty()) {
        words->addWidget(makeMuted(tr("Because: %1").arg(text(entry.reason))));
    }
    if (const QString state = StateWords::of(line); !state.isEmpty()) {
        words->addWidget(makeLabel(capital(state)));
    }
    columns->addLayout(words, 1);
    const bool isOpen = m_correcting == entry.seq;
    auto* const correct = makeButton(isOpen ? tr("Leave it") : tr("Correct"), ButtonKind::quiet);
    correct->setAccessibleName(isOpen ? tr("Leave entry %1").arg(entry.seq)
                                      : tr("Correct entry %1: %2").arg(entry.seq).arg(what));
    if (!canBeCorrected(entry.act) || isTakenBack(line.state)) {
        correct->hide();
    }
    connect(correct, &QPushButton::clicked, this,
            [this, seq = entry.seq, isOpen] { ask(isOpen ? 0 : seq); });
    columns->addWidget(correct, 0, Qt::AlignTop);
    m_rows->addWidget(row);
    if (isOpen) {
        m_rows->addWidget(makeCorrection(entry));
    }
}

QWidget* HistorySection::makeCorrection(const Entry& entry)
{
    auto* const form = new QFrame;
    form->setObjectName(QStringLiteral("reading"));
    auto* const column = new QVBoxLayout(form);
    column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    auto* const why = new QLineEdit(m_typed);
    auto* const field = new Field(
        tr("Why, or what should be known"), why,
        tr("Nothing disappears: it stays here, struck through. To take back what speaks against a "
           "load takes a second person, of a higher role."));
    connect(why, &QLineEdit::textEdited, this, [this](const QString& typed) { m_typed = typed; });
    column->addWidget(field);
    auto* const buttons = new QHBoxLayout;
    auto* const strike = makeButton(tr("Strike entry %1: it is not so").arg(entry.seq));
    auto* const note = makeButton(tr("Only add the note"));
    note->setAccessibleName(tr("Only add the note to entry %1").arg(entry.seq));
    connect(strike, &QPushButton::clicked, this,
            [this, entry, why, field] { this->strike(entry, why->text().trimmed(), field); });
    connect(note, &QPushButton::clicked, this,
            [this, entry, why, field] { annotate(entry, why->text().trimmed(), field); });
    buttons->addWidget(strike);
    buttons->addWidget(note);
    buttons->addStretch();
    column->addLayout(buttons);
    column->addWidget(makeMuted(
        tr("Then record what is right where it belongs above.")));
    return form;
}

void HistorySection::ask(std::int64_t seq)
{
    if (QWidget* const focus = focusWidget()) {
        focus->clearFocus(); // nobody is writing any more
    }
    m_correcting = seq;
    m_typed.clear();
    show(*desk().sheet());
    for (auto* const line : findChildren<QLineEdit*>()) {
        if (line->isVisibleTo(this)) {
            line->setFocus(Qt::OtherFocusReason);
        }
    }
}

QString HistorySection::saidOf(const Entry& entry)
{
    const Names& names = desk().sheet()->record.names;
    const ActSaid said = say(
        entry.act, [&](std::string_view id) { return names.of(id); }, desk().style());
    return said.value.empty() ? text(said.what)
                              : tr("%1: %2").arg(text(said.what), text(said.value));
}

void HistorySection::strike(const Entry& entry, const QString& why, Field* field)
{
    if (why.isEmpty()) {
        field->setError(tr("Say why it is struck."));
        field->editor()->setFocus();
        return;
    }
    const ToRecord act{.act = EntryVoided{},
                       .subjects = entry.subjects,
                       .reason = why.toStdString(),
                       .supersedes = entry.seq};
    desk().sign(tr("Entry %1 of %2 is struck: it is not so").arg(entry.seq).arg(desk().lot()),
                {tr("It says: %1").arg(saidOf(entry)), tr("Because: %1").arg(why)},
                tr("Sign the correction"),
                [act](Office&) { return std::vector{act}; }, tr("The entry is struck."), [this] {
                    m_correcting = 0;
                    m_typed.clear();
                    show(*desk().sheet());
                });
}

void HistorySection::annotate(const Entry& entry, const QString& note, Field* field)
{
    if (note.isEmpty()) {
        field->setError(tr("Type the note."));
        field->editor()->setFocus();
        return;
    }
    const ToRecord act{.act = EntryAnnotated{note.toStdString()},
                       .subjects = entry.subjects,
                       .reason = tr("a note").toStdString(),
                       .supersedes = entry.seq};
    desk().record([act](Office&) { return std::vector{act}; }, tr("The note is recorded."),
                  [this] {
                      m_correcting = 0;
                      m_typed.clear();
                  },
                  [field = QPointer(field)](const QString& says) {
                      if (field != nullptr) {
                          field->setError(says);
                      }
                  });
}

} // namespace loadwarden::ui

#include "ui/load/further_section.h"

#include "core/desk/look_up.h"
#include "core/desk/rights.h"
#include "ui/look/text.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
FurtherSection::FurtherSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("What else happened"), parent),
      m_what(makeCombo()),
      m_hint(makeMuted({})),
      m_form(new QWidget),
      m_grid(new QGridLayout(m_form)),
      m_of(makeCombo()),
      m_how(makeCombo()),
      m_detail(makeCombo()),
      m_number(new QLineEdit),
      m_reason(new QLineEdit),
      m_record(makeButton({}))
{
    m_what->setAccessibleName(tr("What else happened"));
    column()->addWidget(m_what);
    column()->addWidget(m_hint);
    m_ofField = new Field(tr("Which item"), m_of);
    m_howField = new Field(tr("How"), m_how);
    m_detailField = new Field(tr("How far"), m_detail);
    m_numberField = new Field(tr("Number"), m_number);
    m_reasonField = new Field(tr("Why"), m_reason);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(space::medium);
    m_grid->setVerticalSpacing(0);
    m_grid->addWidget(m_ofField, 0, 0);
    m_grid->addWidget(m_howField, 0, 1);
    m_grid->addWidget(m_detailField, 0, 2);
    m_grid->addWidget(m_numberField, 1, 0, 1, 2);
    m_grid->addWidget(m_reasonField, 2, 0, 1, 3);
    for (int i = 0; i < 3; ++i) {
        m_grid->setColumnStretch(i, 1);
    }
    m_grid->addWidget(m_record, 3, 0, 1, 3, Qt::AlignLeft);
    column()->addWidget(m_form);
    connect(m_what, &QComboBox::currentIndexChanged, this, &FurtherSection::fillOf);
    connect(m_of, &QComboBox::currentIndexChanged, this, &FurtherSection::fillHows);
    connect(m_record, &QPushButton::clicked, this, &FurtherSection::record);
    connect(m_number, &QLineEdit::returnPressed, this, &FurtherSection::record);
    connect(m_reason, &QLineEdit::returnPressed, this, &FurtherSection::record);
}

void FurtherSection::show(const LoadSheet& sheet)
{
    setVisible(!sheet.view().isImported());
    std::vector<FurtherChoice> choices = furtherActs(sheet);
    const auto isSame = [](const FurtherChoice& a, const FurtherChoice& b) {
        return a.what == b.what && std::ranges::equal(a.of, b.of, {}, &Choice::id, &Choice::id);
    };
    if (m_what->count() > 0 && std::ranges::equal(choices, m_choices, isSame)) {
        return; // what is half-typed stays
    }
    const FurtherChoice* const before = chosen();
    const std::optional<Further> what =
        before == nullptr ? std::nullopt : std::optional(before->what);
    const QVariant of = m_of->currentData();
    m_choices = std::move(choices);
    fillWhat();
    if (what && choose(*what, of.toString())) {
        return;
    }
    fillOf();
}

void FurtherSection::fillWhat()
{
    const QSignalBlocker quiet(m_what);
    m_what->clear();
    m_what->addItem(m_choices.empty() ? tr("nothing else can be recorded now")
                                      : tr("choose what happened"));
    for (const FurtherChoice& choice : m_choices) {
        m_what->addItem(wordsOf(choice.what, *desk().sheet(), {}).name);
    }
}

const FurtherChoice* FurtherSection::chosen() const
{
    const int index = m_what->currentIndex() - 1;
    return index < 0 || index >= std::ssize(m_choices)
               ? nullptr
               : &m_choices[static_cast<std::size_t>(index)];
}

void FurtherSection::fillOf()
{
    const FurtherChoice* const choice = chosen();
    m_form->setVisible(choice != nullptr);
    m_hint->setVisible(choice != nullptr);
    if (choice == nullptr) {
        return;
    }
    clear();
    {
        const QSignalBlocker quiet(m_of);
        m_of->clear();
        for (const Choice& each : choice->of) {
            m_of->addItem(nameOf(choice->what, each, *desk().sheet()), text(each.id));
        }
    }
    fillHows();
}

void FurtherSection::fillHows()
{
    const FurtherChoice* const choice = chosen();
    if (choice == nullptr) {
        return;
    }
    m_words = wordsOf(choice->what, *desk().sheet(), m_of->currentData().toString().toStdString());
    m_hint->setText(m_words.hint);
    m_hint->setVisible(!m_words.hint.isEmpty());
    const auto ask = [](Field* field, const QString& name) {
        field->setVisible(!name.isEmpty());
        field->setName(name);
        field->setError({});
    };
    ask(m_ofField, choice->of.empty() ? QString() : m_words.of);
    ask(m_howField, m_words.how);
    ask(m_detailField, m_words.detail);
    ask(m_numberField, m_words.number);
    ask(m_reasonField, m_words.reason);
    for (const auto& [combo, words] :
         {std::pair(m_how, m_words.hows), std::pair(m_detail, m_words.details)}) {
        combo->clear();
        combo->addItem(tr("choose")); // nobody says by accident what stands first
        combo->addItems(words);
    }
    m_record->setText(m_words.button);
}

std::optional<FurtherAnswer> FurtherSection::answered()
{
    const FurtherChoice* const choice = chosen();
    if (choice == nullptr) {
        return std::nullopt;
    }
    FurtherAnswer answer{.what = choice->what,
                         .of = m_of->currentData().toString().toStdString(),
                         .how = m_how->currentIndex() - 1,
                         .detail = m_detail->currentIndex() - 1,
                         .number = m_number->text().trimmed().toStdString(),
                         .reason = m_reason->text().trimmed().toStdString()};
    QWidget* first = nullptr;
    const auto need = [&first](Field* field, const QString& asked, bool isThere,
                               const QString& says) {
        const bool isMissing = !asked.isEmpty() && !isThere;
        field->setError(isMissing ? says : QString());
        first = isMissing && first == nullptr ? field->editor() : first;
    };
    need(m_howField, m_words.how, answer.how >= 0, tr("Choose one."));
    need(m_detailField, m_words.detail, answer.detail >= 0, tr("Choose one."));
    need(m_numberField, m_words.number, !answer.number.empty(), tr("Type it, or scan it."));
    need(m_reasonField, m_words.reason, !answer.reason.empty(), tr("Say it in a few words."));
    if (first != nullptr) {
        first->setFocus();
        return std::nullopt;
    }
    return answer;
}

void FurtherSection::record()
{
    const std::optional<FurtherAnswer> answer = answered();
    if (!answer) {
        return;
    }
    if (!namesACycle(answer->what)) {
        recordAs(*answer, {});
        return;
    }
    desk().workstation().desk.ask(
        this,
        [number = answer->number](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return lookUp(snapshot, number);
        },
        [this, answer = *answer](const LookedUp& found) {
            if (found.what == LookedUp::What::cycle) {
                recordAs(answer, found.id);
                return;
            }
            m_numberField->setError(tr("No load or test has this number."));
            m_number->selectAll();
            m_number->setFocus();
        });
}

void FurtherSection::recordAs(const FurtherAnswer& answer, const std::string& otherCycle)
{
    const ToRecord act = toRecord(answer, *desk().sheet(), otherCycle);
    const bool isNew = answer.what == Further::openIncident;
    const CycleDesk::Acts acts = [act, isNew](Office& office) {
        ToRecord made = act;
        if (isNew) {
            made.subjects.front() = office.place().ids.next("ic");
        }
        return std::vector{made};
    };
    const QString done = tr("Recorded: %1.").arg(m_words.name);
    const auto then = [this] {
        m_what->setCurrentIndex(0);
        m_what->setFocus();
    };
    if (!rightOf(taskOf(act.act)).signs) {
        desk().record(acts, done, then);
        return;
    }
    desk().sign(tr("%1, load %2", "what happened, in which load").arg(m_words.name, desk().lot()),
                seen(answer), m_words.button, acts, done, then);
}

QStringList FurtherSection::seen(const FurtherAnswer& answer) const
{
    QStringList lines;
    const auto add = [&lines](const QString& asked, const QString& said) {
        if (!asked.isEmpty() && !said.isEmpty()) {
            lines << tr("%1: %2", "what is asked, the answer").arg(asked, said);
        }
    };
    add(m_words.of, m_of->currentText());
    add(m_words.how, m_how->currentText());
    add(m_words.detail, m_detail->currentText());
    add(m_words.reason, text(answer.reason));
    return lines;
}

void FurtherSection::clear()
{
    m_number->clear();
    m_reason->clear();
}

bool FurtherSection::choose(Further what, const QString& of)
{
    const auto found = std::ranges::find(m_choices, what, &FurtherChoice::what);
    if (found == m_choices.end()) {
        return false;
    }
    m_what->setCurrentIndex(static_cast<int>(found - m_choices.begin()) + 1);
    fillOf();
    if (const int index = m_of->findData(of); index >= 0) {
        m_of->setCurrentIndex(index);
    }
    return true;
}

} // namespace loadwarden::ui

#include "ui/load/contents_section.h"

#include "core/desk/planned_program.h"
#include "core/quantities/person.h"
#include "core/words/say_terms.h"
#include "ui/load/item_form.h"
#include "ui/look/text.h"
#include "ui/parts/verdict_badge.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
ContentsSection::ContentsSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Contents"), parent), m_rows(new QVBoxLayout), m_form(new ItemForm)
{
    m_rows->setSpacing(0);
    column()->addLayout(m_rows);
    column()->addWidget(m_form);
    connect(m_form, &ItemForm::wanted, this, &ContentsSection::addLabel);
}

void ContentsSection::show(const LoadSheet& sheet)
{
    m_form->offer(sheet.choices, plannedMethod(sheet));
    showItems(sheet);
    m_form->setVisible(!sheet.state.ended);
    const auto count = sheet.items.size();
    setState(count == 0 ? tr("nothing yet")
             : sheet.state.started && !sheet.state.ended
                 ? tr("items: %1; what is added now is recorded late").arg(count)
                 : tr("items: %1").arg(count));
}

void ContentsSection::showItems(const LoadSheet& sheet)
{
    if (m_rows->parentWidget() != nullptr && !m_removing.empty()) {
        for (const auto* const line : findChildren<QLineEdit*>()) {
            if (line->hasFocus() && line->objectName() == QLatin1String("why")) {
                return; // somebody is writing there
            }
        }
    }
    clearLayout(m_rows);
    if (sheet.items.empty()) {
        m_rows->addWidget(makeMuted(
            sheet.state.started
                ? tr("No item was recorded before the cycle started.")
                : tr("Scan the label of each item as it goes onto the cart. Packaging and "
                     "indicators stay chosen for the next items; implant and devices are asked "
                     "for anew each time.")));
    }
    for (const SheetItem& item : sheet.items) {
        m_rows->addWidget(makeRow(item));
    }
}

QWidget* ContentsSection::makeRow(const SheetItem& item)
{
    auto* const row = new QWidget;
    auto* const columns = new QHBoxLayout(row);
    columns->setContentsMargins(0, space::hair, 0, space::hair);
    columns->setSpacing(space::medium);
    columns->addWidget(makeLabel(text(item.label), Type::strong));
    QStringList about{text(say(item.implant))};
    about << (item.packaging.empty() ? tr("packaging not stated") : text(item.packaging));
    for (const std::string& device : item.devices) {
        about << text(device);
    }
    columns->addWidget(makeMuted(about.join(QStringLiteral(", "))), 1);
    if (item.verdict) {
        auto* const badge = new VerdictBadge(desk().workstation().look, VerdictBadge::Size::row);
        const auto& signedAs = desk().sheet()->view().signedAs;
        const Verdict verdict = signedAs ? std::max(*signedAs, *item.verdict) : *item.verdict;
        if (verdict == Verdict::release && !signedAs) {
            badge->show(glyphOf(verdict), toneOf(verdict), tr("Release, not signed"));
        } else {
            badge->show(verdict);
        }
        columns->addWidget(badge);
        return row;
    }
    auto* const why = new QLineEdit;
    why->setObjectName(QStringLiteral("why"));
    why->setPlaceholderText(tr("why it is taken out"));
    why->setAccessibleName(tr("Why %1 is taken out").arg(text(item.label)));
    if (m_removing != item.id) {
        why->hide();
    }
    auto* const button = makeButton(tr("Take out"), ButtonKind::quiet);
    button->setAccessibleName(tr("Take out %1").arg(text(item.label)));
    const auto takeOut = [this, item, why] {
        if (why->isHidden()) {
            m_removing = item.id;
            why->show();
            why->setFocus();
            return;
        }
        remove(item, why->text().trimmed());
    };
    connect(button, &QPushButton::clicked, this, takeOut);
    connect(why, &QLineEdit::returnPressed, this, takeOut);
    columns->addWidget(why);
    columns->addWidget(button);
    return row;
}

void ContentsSection::remove(const SheetItem& item, const QString& why)
{
    if (why.isEmpty()) {
        emit desk().says(tr("Say why %1 is taken out.").arg(text(item.label)), {});
        return;
    }
    m_removing.clear();
    desk().record(ItemRemoved{why.toStdString()}, {item.id},
                  tr("%1 is taken out.").arg(text(item.label)));
}

void ContentsSection::addLabel(const QString& label)
{
    const std::string typed = label.trimmed().toStdString();
    const auto& items = desk().sheet()->items;
    if (std::ranges::any_of(
            items, [&](const SheetItem& each) { return isSamePerson(each.label, typed); })) {
        m_form->refused(label, tr("%1 is in this load already.").arg(label.trimmed()));
        return;
    }
    const auto item = m_form->item(label, desk().sheet()->choices);
    if (!item) {
        return;
    }
    desk().record(
        [item = *item, cycle = desk().cycle()](Office& office) {
            IdSource& ids = office.place().ids;
            ItemAdded made = item;
            std::vector<std::string> subjects{ids.next("it"), cycle};
            if (made.external) {
                made.external->id = ids.next("ci");
                subjects.push_back(made.external->id);
            }
            for (PlacedIndicator& each : made.internals) {
                each.id = ids.next("ci");
                subjects.push_back(each.id);
            }
            return std::vector{ToRecord{.act = made, .subjects = std::move(subjects)}};
        },
        tr("%1 is in the load: %2.", "a label, implant or not")
            .arg(label.trimmed(), text(say(item->implant))),
        [this, label] { m_form->accepted(label); },
        [this, label](const QString& why) { m_form->refused(label, why); });
}

void ContentsSection::goTo(const QString& subject)
{
    if (m_form->isVisibleTo(this)) {
        m_form->focusLabel();
        return;
    }
    SheetSection::goTo(subject);
}

} // namespace loadwarden::ui

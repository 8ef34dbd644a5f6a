#include "ui/load/contents_section.h"

#include "core/desk/device_fit.h"
#include "core/desk/planned_program.h"
#include "core/quantities/person.h"
#include "core/words/say.h"
#include "core/words/say_terms.h"
#include "ui/load/item_form.h"
#include "ui/look/text.h"
#include "ui/parts/verdict_badge.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>
#include <iterator>

namespace loadwarden::ui {
ContentsSection::ContentsSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Contents"), parent), m_rows(new QVBoxLayout), m_form(new ItemForm)
{
    m_rows->setSpacing(0);
    column()->addLayout(m_rows);
    column()->addWidget(m_form);
    connect(m_form, &ItemForm::wanted, this, &ContentsSection::addLabel);
    connect(m_form, &ItemForm::devicesChanged, this, &ContentsSection::lookAtDevices);
}

QString ContentsSection::misfitText(const std::vector<Finding>& findings)
{
    QStringList said;
    for (const Finding& finding : findings) {
        const Said words = say(finding, desk().style());
        // Nothing is run yet: what is to be done is not what would be to be done afterwards.
        said << text(words.says) + u' '
                    + (finding.key == Key::itemCycleNotAllowed
                           ? tr("Put it into a load whose program they allow.")
                           : text(words.next));
    }
    said.removeDuplicates();
    return said.join(u'\n');
}

void ContentsSection::lookAtDevices()
{
    const LoadSheet* const sheet = desk().sheet();
    if (sheet == nullptr) {
        return;
    }
    std::vector<Device> devices;
    for (const DeviceChoice& choice : sheet->choices.devices) {
        if (std::ranges::find(m_form->deviceIds(), choice.id) != m_form->deviceIds().end()) {
            devices.push_back(choice.device);
        }
    }
    m_form->setMisfit(misfitText(misfitsOf(*sheet, devices)));
}

void ContentsSection::show(const LoadSheet& sheet)
{
    m_form->offer(sheet.choices, plannedMethod(sheet));
    lookAtDevices();
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
    // After the start the reasons say it.
    const std::vector<Finding> misfits =
        sheet.state.started ? std::vector<Finding>() : misfitsOf(sheet);
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        std::vector<Finding> ofIt;
        std::ranges::copy_if(misfits, std::back_inserter(ofIt), [i](const Finding& finding) {
            return finding.item == static_cast<std::int32_t>(i);
        });
        m_rows->addWidget(makeRow(sheet.items[i], misfitText(ofIt)));
    }
}

QWidget* ContentsSection::makeRow(const SheetItem& item, const QString& misfit)
{
    auto* const row = new QWidget;
    auto* const lines = new QVBoxLayout(row);
    lines->setContentsMargins(0, space::hair, 0, space::hair);
    lines->setSpacing(0);
    auto* const columns = new QHBoxLayout;
    lines->addLayout(columns);
    if (!misfit.isEmpty()) {
        auto* const says = makeLabel(misfit);
        says->setProperty("tone", "bad");
        lines->addWidget(says);
    }
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

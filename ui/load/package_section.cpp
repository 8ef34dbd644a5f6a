#include "ui/load/package_section.h"

#include "core/desk/sheet_part.h"
#include "core/quantities/person.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/flow_layout.h"

#include <QCheckBox>
#include <QCoreApplication>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

struct Looks {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::Looks)

public:
    static QStringList names()
    {
        return {tr("Cooled"), tr("Dry"), tr("Intact"), tr("Sealed"), tr("Label right")};
    }
};

QString checkText(const PackageCheck& check)
{
    const QStringList names = Looks::names();
    const std::optional<bool> looked[] = {check.cooled, check.dry, check.intact, check.sealed,
                                          check.labelAgrees};
    QStringList good;
    QStringList bad;
    for (int i = 0; i < names.size(); ++i) {
        if (looked[i]) {
            (*looked[i] ? good : bad) << names[i].toLower();
        }
    }
    QStringList said;
    if (!bad.isEmpty()) {
        said << Looks::tr("NOT %1").arg(bad.join(QStringLiteral(", ")));
    }
    if (!good.isEmpty()) {
        said << good.join(QStringLiteral(", "));
    }
    return said.join(QStringLiteral("; "));
}

} // namespace

ThreeWay::ThreeWay(const QString& of, const QString& what, QWidget* parent)
    : QWidget(parent), m_of(of), m_what(what), m_button(makeButton({}))
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_button);
    setFocusProxy(m_button);
    connect(m_button, &QPushButton::clicked, this, [this] {
        set(!m_value ? std::optional(true) : *m_value ? std::optional(false) : std::nullopt);
        emit answered();
    });
    set({});
}

void ThreeWay::set(std::optional<bool> value)
{
    m_value = value;
    const QString says = !value ? tr("not looked at") : *value ? tr("yes") : tr("NO");
    m_button->setText(!value ? QStringLiteral("–") : *value ? tr("Yes") : tr("NO"));
    m_button->setAccessibleName(tr("%1, %2: %3", "package, what, answer").arg(m_of, m_what, says));
    setStyleProperty(m_button, "tone", value && !*value ? "bad" : "neutral");
}

PackageSection::PackageSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Unloading"), parent),
      m_grid(new QGridLayout),
      m_form(new QWidget),
      m_checked(new Facts),
      m_error(makeLabel({})),
      m_record(makeButton(tr("Record the unloading"), ButtonKind::main)),
      m_again(makeButton(tr("Look at packages again")))
{
    column()->addWidget(m_checked);
    column()->addWidget(m_again, 0, Qt::AlignLeft);
    connect(m_again, &QPushButton::clicked, this, [this] {
        m_isAgain = true;
        show(*this->desk().sheet());
        goTo({});
    });
    auto* const lines = new QVBoxLayout(m_form);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->addWidget(makeMuted(tr("Scan each package as it comes out. Let it cool where no air "
                                  "blows on it; touch and look at it only then.")));
    m_grid->setHorizontalSpacing(space::small);
    m_grid->setVerticalSpacing(space::hair);
    lines->addLayout(m_grid);
    m_error->setProperty("tone", "bad");
    m_error->hide();
    lines->addWidget(m_error);
    auto* const buttons = new FlowLayout;
    buttons->setSpacing(space::small);
    auto* const good = makeButton(tr("Everything came out and is good"));
    connect(good, &QPushButton::clicked, this, &PackageSection::allGood);
    buttons->addWidget(good);
    buttons->addWidget(m_record);
    lines->addLayout(buttons);
    column()->addWidget(m_form);
    connect(m_record, &QPushButton::clicked, this, &PackageSection::record);
}

void PackageSection::makeRows(const LoadSheet& sheet)
{
    // What was looked at before stands above; a package that was never looked at has a row.
    std::vector<const SheetItem*> wanted;
    for (const SheetItem& item : sheet.items) {
        wanted.push_back(&item);
    }
    const bool isSame = std::ranges::equal(
        wanted, m_rows, {}, [](const SheetItem* item) { return item->id; }, &Row::id);
    if (isSame) {
        return;
    }
    clearLayout(m_grid);
    m_rows.clear();
    m_grid->addWidget(makeMuted(tr("Package"), false), 0, 0);
    m_grid->addWidget(makeMuted(tr("Out"), false), 0, 1);
    const QStringList names = Looks::names();
    for (int i = 0; i < names.size(); ++i) {
        m_grid->addWidget(makeMuted(names[i]), 0, i + 2, Qt::AlignBottom);
    }
    m_grid->setColumnStretch(0, 1);
    for (const SheetItem* const item : wanted) {
        const int line = static_cast<int>(m_rows.size()) + 1;
        Row row{.id = item->id, .label = text(item->label), .out = new QCheckBox, .looks = {}};
        row.out->setMinimumWidth(space::target);
        row.out->setAccessibleName(tr("%1 came out").arg(row.label));
        m_grid->addWidget(makeLabel(row.label, Type::strong), line, 0);
        m_grid->addWidget(row.out, line, 1);
        for (int i = 0; i < names.size(); ++i) {
            row.looks.push_back(new ThreeWay(row.label, names[i]));
            connect(row.looks.back(), &ThreeWay::answered, row.out,
                    [out = row.out] { out->setChecked(true); });
            m_grid->addWidget(row.looks.back(), line, i + 2);
        }
        m_rows.push_back(std::move(row));
    }
}

void PackageSection::show(const LoadSheet& sheet)
{
    const bool isLoad = !sheet.view().isTest() && !sheet.view().isImported();
    setVisible(isLoad);
    makeRows(sheet);
    showChecked(sheet);
    const auto unchecked = std::ranges::count(sheet.view().decision.findings, Key::itemNotChecked,
                                              &Finding::key);
    const bool isDone = unchecked == 0 && sheet.unloaded;
    const bool isLater = isBeforeAerationsEnd(sheet.view().decision.findings);
    const bool isNow = sheet.state.ended && !isLater && !m_rows.empty();
    m_form->setVisible(isNow && (!isDone || m_isAgain));
    m_again->setVisible(isNow && isDone && !m_isAgain);
    m_record->setText(sheet.unloaded ? tr("Record what was looked at") : tr("Record the unloading"));
    setState(!sheet.state.ended ? tr("when the cycle has ended")
             : isLater          ? tr("once aeration has ended: nothing is taken out before")
             : unchecked == 0   ? tr("every package was looked at")
                                : tr("packages not looked at: %1").arg(unchecked));
}

void PackageSection::showChecked(const LoadSheet& sheet)
{
    m_checked->clear();
    if (sheet.unloaded) {
        m_checked->add(tr("Unloaded"), shortTime(*sheet.unloaded, sheet, desk().style()));
    }
    for (const SheetItem& item : sheet.items) {
        if (item.check) {
            m_checked->add(text(item.label), checkText(*item.check),
                           whoText(item.check->act, sheet, desk().style()));
        }
    }
}

void PackageSection::allGood()
{
    for (const Row& row : m_rows) {
        row.out->setChecked(true);
        for (ThreeWay* const look : row.looks) {
            if (!look->value()) {
                look->set(true); // a NO that somebody said stays
            }
        }
    }
    m_record->setFocus();
}

bool PackageSection::cameOut(const QString& label)
{
    for (const Row& row : m_rows) {
        if (m_form->isVisibleTo(this)
            && isSamePerson(row.label.toStdString(), label.trimmed().toStdString())) {
            row.out->setChecked(true);
            row.looks.front()->setFocus(Qt::OtherFocusReason);
            emit desk().says(tr("%1 came out. Is it cool, dry and whole?").arg(row.label), {});
            return true;
        }
    }
    return false;
}

void PackageSection::record()
{
    m_error->hide();
    std::vector<ToRecord> acts;
    QStringList inside;
    if (!desk().sheet()->unloaded) {
        acts.push_back({.act = CycleUnloaded{}, .subjects = {desk().cycle()}});
    }
    for (const Row& row : m_rows) {
        PackageChecked check{.cooled = row.looks[0]->value(),
                             .dry = row.looks[1]->value(),
                             .intact = row.looks[2]->value(),
                             .sealed = row.looks[3]->value(),
                             .labelAgrees = row.looks[4]->value()};
        if (!row.out->isChecked() && !desk().sheet()->unloaded) {
            // Nobody looked at what did not come out.
            inside << row.label;
            continue;
        }
        if (check.cooled || check.dry || check.intact || check.sealed || check.labelAgrees) {
            acts.push_back({.act = check, .subjects = {row.id, desk().cycle()}});
        }
    }
    const QString missing = inside.join(QStringLiteral(", "));
    if (!missing.isEmpty() && !desk().sheet()->unloaded && missing != m_askedAbout) {
        m_askedAbout = missing;
        m_error->setText(tr("%1 went in and is not among what came out. Look into the chamber and "
                            "onto the cart. If it is missing, record the unloading once more, and "
                            "tell a lead.")
                             .arg(missing));
        m_error->show();
        m_record->setFocus();
        return;
    }
    for (const Row& row : m_rows) {
        if (!inside.contains(row.label)) {
            continue;
        }
        const auto added = std::ranges::find_if(
            desk().sheet()->record.entries, [&](const Entry& entry) {
                return std::holds_alternative<ItemAdded>(entry.act) && entry.subject("it") == row.id;
            });
        if (added != desk().sheet()->record.entries.end()) {
            acts.push_back({.act = EntryAnnotated{tr("It did not come out at unloading.").toStdString()},
                            .subjects = added->subjects,
                            .reason = tr("unloading").toStdString(),
                            .supersedes = added->seq});
        }
    }
    if (acts.empty()) {
        m_error->setText(tr("Say what you looked at first."));
        m_error->show();
        return;
    }
    desk().record(
        [acts](Office&) { return acts; },
        missing.isEmpty() ? tr("The unloading is recorded.")
                          : tr("The unloading is recorded; %1 did not come out.").arg(missing),
        [this] {
            for (const Row& row : m_rows) {
                for (ThreeWay* const look : row.looks) {
                    look->set({});
                }
            }
            m_askedAbout.clear();
            m_isAgain = false;
        },
        [this](const QString& why) {
            m_error->setText(why);
            m_error->setVisible(!why.isEmpty());
        });
}

void PackageSection::goTo(const QString& subject)
{
    for (const Row& row : m_rows) {
        if (m_form->isVisibleTo(this) && (subject == text(row.id) || subject == row.label)) {
            row.looks.front()->setFocus(Qt::OtherFocusReason);
            return;
        }
    }
    SheetSection::goTo(subject);
}

} // namespace loadwarden::ui

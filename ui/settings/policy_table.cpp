#include "ui/settings/policy_table.h"

#include "core/words/say_policy.h"
#include "ui/look/text.h"

#include <QGridLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

QString valueText(const std::string& section, const std::string& name, const std::string& value)
{
    return text(sayPolicyValue(section, name, value));
}

/// A section's settings, of which each takes a row.
QGridLayout* makeGrid()
{
    auto* const grid = new QGridLayout;
    grid->setHorizontalSpacing(space::large);
    grid->setVerticalSpacing(space::small);
    grid->setColumnStretch(0, 5);
    grid->setColumnStretch(1, 3);
    grid->setColumnStretch(2, 5);
    return grid;
}

} // namespace

PolicyTable::PolicyTable(QWidget* parent) : QWidget(parent), m_column(new QVBoxLayout(this))
{
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(space::medium);
}

void PolicyTable::clear()
{
    for (QWidget* const child : findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly)) {
        child->hide();
        child->deleteLater();
    }
    while (QLayoutItem* const item = m_column->takeAt(0)) {
        delete item;
    }
}

void PolicyTable::show(const std::vector<PolicyRow>& rows)
{
    clear();
    std::string section;
    QGridLayout* grid = nullptr;
    for (const PolicyRow& row : rows) {
        if (grid == nullptr || row.section != section) {
            section = row.section;
            auto* const part = new QWidget;
            auto* const column = new QVBoxLayout(part);
            column->setContentsMargins(0, 0, 0, 0);
            column->setSpacing(space::small);
            column->addWidget(makeLabel(text(sayPolicySection(section)), Type::heading));
            grid = makeGrid();
            column->addLayout(grid);
            m_column->addWidget(part);
            m_column->addWidget(makeRule());
        }
        const int at = grid->rowCount();
        const auto put = [&](QLabel* label, int column) {
            grid->addWidget(label, at, column, Qt::AlignTop);
        };
        put(makeLabel(text(sayPolicySetting(row.section, row.name))), 0);
        const QString value = valueText(row.section, row.name, row.value);
        auto* const said = makeLabel(
            row.isMilder ? tr("%1 (milder than the default)").arg(value) : value, Type::strong);
        if (row.isMilder) {
            said->setProperty("tone", "waiting");
        }
        put(said, 1);
        // Common practice has no source, and says so.
        put(makeMuted(row.confidence == "common-practice"
                          ? text(row.source)
                          : tr("%1 (%2)", "where a value comes from, how sure that is")
                                .arg(text(row.source), text(sayConfidence(row.confidence)))),
            2);
    }
}

void PolicyTable::showDifferences(const std::vector<PolicyDifference>& differences)
{
    clear();
    auto* const part = new QWidget;
    QGridLayout* const grid = makeGrid();
    part->setLayout(grid);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setColumnStretch(1, 4);
    grid->setColumnStretch(2, 4);
    grid->addWidget(makeMuted(tr("Setting")), 0, 0);
    grid->addWidget(makeMuted(tr("Until now")), 0, 1);
    grid->addWidget(makeMuted(tr("From now on")), 0, 2);
    for (const PolicyDifference& each : differences) {
        const int at = grid->rowCount();
        grid->addWidget(makeLabel(tr("%1: %2", "section of a policy, setting")
                                      .arg(text(sayPolicySection(each.section)),
                                           text(sayPolicySetting(each.section, each.name)))),
                        at, 0, Qt::AlignTop);
        grid->addWidget(makeLabel(valueText(each.section, each.name, each.before)), at, 1,
                        Qt::AlignTop);
        grid->addWidget(makeLabel(valueText(each.section, each.name, each.after), Type::strong), at,
                        2, Qt::AlignTop);
    }
    m_column->addWidget(part);
}

} // namespace loadwarden::ui

#include "ui/settings/settings_page.h"

#include "ui/look/text.h"
#include "ui/settings/backup_section.h"
#include "ui/settings/devices_section.h"
#include "ui/settings/incubators_section.h"
#include "ui/settings/packagings_section.h"
#include "ui/settings/policy_section.h"
#include "ui/settings/products_section.h"
#include "ui/settings/specifications_section.h"
#include "ui/settings/staff_section.h"
#include "ui/settings/sterilizers_section.h"
#include "ui/settings/workstation_page.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/session.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int widthOfList = 220;

} // namespace

SettingsPage::SettingsPage(Workstation& workstation)
    : m_workstation(workstation), m_list(nullptr), m_stack(new QStackedWidget)
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    auto* const side = new QWidget;
    side->setObjectName(QStringLiteral("side"));
    side->setAttribute(Qt::WA_StyledBackground);
    side->setMinimumWidth(widthOfList);
    m_list = new QVBoxLayout(side);
    m_list->setContentsMargins(0, space::medium, 0, space::medium);
    m_list->setSpacing(0);
    row->addWidget(side);
    row->addWidget(m_stack, 1);
    add("sterilizers", tr("&Sterilizers"), new SterilizersSection(workstation));
    add("specifications", tr("Speci&fications"), new SpecificationsSection(workstation));
    add("products", tr("&Products and lots"), new ProductsSection(workstation));
    add("packagings", tr("Pa&ckagings"), new PackagingsSection(workstation));
    add("devices", tr("&Devices"), new DevicesSection(workstation));
    add("incubators", tr("&Incubators"), new IncubatorsSection(workstation));
    add("staff", tr("St&aff"), new StaffSection(workstation));
    add("policy", tr("Polic&y"), new PolicySection(workstation));
    add("backup", tr("Bac&kup"), new BackupSection(workstation));
    addSection("workstation", tr("This &workstation"), new WorkstationPage(workstation));
    m_list->addStretch();
    // Behind the whole list, so that Tab goes through that first.
    for (QWidget* const section : m_widgets) {
        m_stack->addWidget(section);
    }
    connect(&workstation.desk, &DeskLink::recorded, this, &SettingsPage::ask);
    connect(&workstation.session, &Session::entered, this, [this] {
        for (Section* const section : m_sections) {
            section->lookAtRights();
        }
    });
    showSection(0);
}

void SettingsPage::add(const char* id, const QString& name, Section* section)
{
    m_sections.push_back(section);
    connect(section, &Section::says, this, &Page::says);
    addSection(id, name, section);
}

void SettingsPage::addSection(const char* id, const QString& name, QWidget* widget)
{
    const int index = sectionCount();
    auto* const tab = makeButton(name);
    tab->setObjectName(QStringLiteral("section"));
    tab->setCheckable(true);
    tab->installEventFilter(this);
    connect(tab, &QPushButton::clicked, this, [this, index] { showSection(index); });
    m_list->addWidget(tab);
    m_tabs.push_back(tab);
    m_ids.push_back(id);
    m_widgets.push_back(widget);
}

const char* SettingsPage::sectionId(int index) const
{
    return m_ids[static_cast<std::size_t>(index)];
}

void SettingsPage::showSection(int index)
{
    for (int i = 0; i < sectionCount(); ++i) {
        m_tabs[static_cast<std::size_t>(i)]->setChecked(i == index);
    }
    m_stack->setCurrentIndex(index);
}

int SettingsPage::section() const
{
    return m_stack->currentIndex();
}

bool SettingsPage::eventFilter(QObject* watched, QEvent* event)
{
    const auto at = std::ranges::find(m_tabs, watched);
    if (event->type() == QEvent::KeyPress && at != m_tabs.end()) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        const int step = key == Qt::Key_Down ? 1 : key == Qt::Key_Up ? -1 : 0;
        const int index = static_cast<int>(at - m_tabs.begin()) + step;
        if (step != 0) {
            if (index >= 0 && index < sectionCount()) {
                m_tabs[static_cast<std::size_t>(index)]->setFocus();
                showSection(index);
            }
            return true;
        }
    }
    return Page::eventFilter(watched, event);
}

void SettingsPage::shown()
{
    ask();
}

void SettingsPage::goTo(const QString& section)
{
    for (int i = 0; i < sectionCount(); ++i) {
        if (section == QLatin1String(sectionId(i))) {
            showSection(i);
        }
    }
}

void SettingsPage::ask()
{
    if (m_isAsking) {
        m_asksAgain = true;
        return;
    }
    m_isAsking = true;
    m_workstation.desk.ask(
        this,
        [](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return registersOf(snapshot, office.zone(), office.now());
        },
        [this](Registers registers) {
            m_isAsking = false;
            show(std::move(registers));
            if (std::exchange(m_asksAgain, false)) {
                ask();
            }
        },
        [this] {
            m_isAsking = false;
            for (Section* const section : m_sections) {
                section->notRead();
            }
        });
}

void SettingsPage::show(Registers registers)
{
    m_registers = std::make_shared<const Registers>(std::move(registers));
    for (Section* const section : m_sections) {
        section->show(m_registers);
    }
}

} // namespace loadwarden::ui

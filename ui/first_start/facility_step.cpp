#include "ui/first_start/facility_step.h"

#include "core/quantities/decimal.h"
#include "core/quantities/zone.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"

#include <QComboBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QTimeZone>

namespace loadwarden::ui {
namespace {

QComboBox* makeZones()
{
    auto* const zones = new QComboBox;
    zones->setEditable(true);
    zones->setInsertPolicy(QComboBox::NoInsert);
    for (const QByteArray& id : QTimeZone::availableTimeZoneIds()) {
        const QString name = QString::fromLatin1(id);
        if (name.contains(u'/') && !name.startsWith(QLatin1String("Etc/"))) {
            zones->addItem(name);
        }
    }
    zones->setCurrentText(QString::fromLatin1(QTimeZone::systemTimeZoneId()));
    return zones;
}

} // namespace

FacilityStep::FacilityStep(const QString& file, QWidget* parent)
    : Step(tr("A journal for your department"),
           tr("Everything that is recorded goes into one file, the journal. It is never "
              "overwritten. Put it where only this workstation writes and where it is backed up."),
           parent),
      m_file(new QLineEdit(file)),
      m_name(new QLineEdit),
      m_zone(makeZones()),
      m_atmosphere(new QLineEdit),
      m_fileField(nullptr),
      m_nameField(new Field(tr("&Facility"), m_name)),
      m_zoneField(new Field(tr("&Time zone of the facility"), m_zone,
                            tr("As the IANA database writes it, for example America/Chicago."))),
      m_atmosphereField(
          new Field(tr("&Atmospheric pressure here, in kPa"), m_atmosphere,
                    tr("Usual at this height above the sea; makes gauge pressure absolute. "
                       "May be left out.")))
{
    auto* const place = new QWidget;
    auto* const row = new QHBoxLayout(place);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::small);
    row->addWidget(m_file, 1);
    auto* const other = makeButton(tr("&Choose"));
    other->setAccessibleName(tr("Choose where the journal goes"));
    row->addWidget(other);
    place->setFocusProxy(m_file);
    m_fileField = new Field(tr("&Where the journal goes"), place);
    m_file->setAccessibleName(tr("Where the journal goes"));
    m_atmosphere->setMaximumWidth(160);
    connect(other, &QPushButton::clicked, this, &FacilityStep::choose);
    add(m_nameField);
    add(m_fileField);
    add(m_zoneField);
    add(m_atmosphereField);
    setFocusProxy(m_name);
}

void FacilityStep::choose()
{
    const QString chosen = QFileDialog::getSaveFileName(this, tr("Where the journal goes"),
                                                        m_file->text(), tr("Journals (*.journal)"));
    if (!chosen.isEmpty()) {
        m_file->setText(chosen);
    }
}

bool FacilityStep::check()
{
    bool isGood = needs(m_nameField, m_name, tr("Type the name of the facility."));
    const QFileInfo file(m_file->text().trimmed());
    if (m_file->text().trimmed().isEmpty()) {
        m_fileField->setError(tr("Type a file name for the journal."));
        isGood = false;
    } else if (file.exists()) {
        m_fileField->setError(tr("There is a file of that name. Choose another name; nothing is "
                                 "ever overwritten."));
        isGood = false;
    } else if (!file.absoluteDir().exists()) {
        m_fileField->setError(tr("There is no such folder. Make it first, or choose another."));
        isGood = false;
    } else {
        m_fileField->setError({});
    }
    const bool isZone = Zone::find(m_zone->currentText().trimmed().toStdString()).has_value();
    m_zoneField->setError(isZone ? QString()
                                 : tr("This computer knows no zone of that name. Write it as "
                                      "America/Chicago."));
    const QString pressure = m_atmosphere->text().trimmed();
    const auto kPa = parseDecimal(pressure.toStdString(), 3);
    const bool isPressure = pressure.isEmpty() || (kPa && *kPa >= 50'000 && *kPa <= 110'000);
    m_atmosphereField->setError(
        isPressure ? QString()
                   : tr("Type it in kPa with a point, from 50 to 110; at sea level about 101.3."));
    return isGood && isZone && isPressure;
}

void FacilityStep::fill(FirstDay& day) const
{
    day.file = m_file->text().trimmed().toStdString();
    day.founding.facility = m_name->text().trimmed().toStdString();
    day.founding.timeZone = m_zone->currentText().trimmed().toStdString();
    day.founding.atmosphereKPa = m_atmosphere->text().trimmed().toStdString();
}

} // namespace loadwarden::ui

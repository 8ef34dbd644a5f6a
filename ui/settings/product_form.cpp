#include "ui/settings/product_form.h"

#include "ui/parts/field.h"
#include "ui/settings/methods_edit.h"
#include "ui/settings/product_text.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr std::array responses = {Response::movingFront, Response::colour, Response::sheet};
constexpr std::array species = {Species::geobacillusStearothermophilus, Species::bacillusAtrophaeus,
                                Species::other};
constexpr std::array reaches = {ControlReach::day, ControlReach::lot, ControlReach::load};
constexpr int mostType = 6;
constexpr std::int64_t hundredthOfThousandths = 10;

std::optional<std::int64_t> times(std::optional<std::int64_t> number, std::int64_t factor)
{
    return number ? std::optional(*number * factor) : std::nullopt;
}

std::optional<std::int64_t> by(std::optional<std::int64_t> number, std::int64_t divisor)
{
    return number ? std::optional(*number / divisor) : std::nullopt;
}

QString listed(const std::vector<std::string>& texts)
{
    QStringList list;
    for (const std::string& each : texts) {
        list << text(each);
    }
    return list.join(QStringLiteral(", "));
}

QStringList partsOf(const QLineEdit* line)
{
    QStringList parts = line->text().split(u',', Qt::SkipEmptyParts);
    for (QString& part : parts) {
        part = part.trimmed();
    }
    parts.removeAll(QString());
    return parts;
}

} // namespace

ProductForm::ProductForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::ProductRecorded, tr("A supervisor records products.")),
      m_id(std::move(id)),
      m_name(new QLineEdit),
      m_kind(new QComboBox),
      m_methods(new MethodsEdit),
      m_cycleTypes(new QLineEdit),
      m_type(new QComboBox),
      m_response(new QComboBox),
      m_readWithin(new NumberEdit(tr("min"))),
      m_leastTime(new NumberEdit(tr("min"), 3)),
      m_mostTime(new NumberEdit(tr("min"), 3)),
      m_leastCelsius(new NumberEdit(tr("°C"), 2)),
      m_mostCelsius(new NumberEdit(tr("°C"), 2)),
      m_noDrying(new QCheckBox(tr("The sheet must not be dried"))),
      m_species(new QComboBox),
      m_release(new NumberEdit(tr("min"))),
      m_last(new NumberEdit(tr("min"))),
      m_latest(new NumberEdit(tr("min"))),
      m_startWithin(new NumberEdit(tr("min"))),
      m_control(new QComboBox),
      m_implantTypes(new QLineEdit),
      m_activation(new QCheckBox(tr("It must be activated before incubation"))),
      m_process(new QCheckBox(tr("It bears a process indicator")))
{
    if (m_id.empty()) {
        m_recorded.product.kind = IndicatorKind::chemical;
        m_recorded.product.type = 1;
    }
    makeCommon();
    makeChemical();
    makeBiological();
    addButtons(m_id.empty() ? tr("Check and sign") : tr("Check and sign the revision"));
    connect(m_kind, &QComboBox::currentIndexChanged, this, &ProductForm::showWhatApplies);
    connect(m_response, &QComboBox::currentIndexChanged, this, &ProductForm::showWhatApplies);
    setFocusProxy(m_name);
    putBack();
}

void ProductForm::makeCommon()
{
    beginGroup(m_id.empty() ? tr("New product") : tr("What its instructions for use say"),
               tr("Type what the instructions for use (IFU) in the box say, not what is usual: "
                  "readings are judged by it."));
    m_kind->addItems({tr("Chemical indicator (CI)"), tr("Biological indicator (BI)")});
    m_nameField = addField("name", tr("&Name"), m_name, tr("As your department calls it."));
    addField("kind", tr("Kind"), m_kind);
    m_methodsField = addField("methods", tr("Made for"), m_methods);
    spanLast();
    addField("cycleTypes", tr("Only for cycle types"), m_cycleTypes,
             tr("As your specifications name them, with commas. Empty: any."));
}

void ProductForm::makeChemical()
{
    beginGroup();
    m_chemical = group();
    for (int type = 1; type <= mostType; ++type) {
        m_type->addItem(tr("Type %1").arg(type));
    }
    for (const Response each : responses) {
        m_response->addItem(responseText(each));
    }
    addField("type", tr("Type by ISO 11140-1"), m_type);
    addField("response", tr("How it answers"), m_response);
    m_readWithinField = addField("readWithinMinutes", tr("To be read within"), m_readWithin,
                                 tr("After the cycle's end. Empty: not stated."));
    beginGroup(tr("Exposure within which the sheet may be judged"), tr("Empty: not stated."));
    m_sheet = group();
    m_sheetFields = {addField("leastMs", tr("Shortest"), m_leastTime),
                     addField("mostMs", tr("Longest"), m_mostTime),
                     addField("leastCelsiusHundredths", tr("Coolest"), m_leastCelsius),
                     addField("mostCelsiusHundredths", tr("Hottest"), m_mostCelsius)};
    addWide(m_noDrying);
    addEditor(m_noDrying);
}

void ProductForm::makeBiological()
{
    beginGroup();
    m_biological = group();
    for (const Species each : species) {
        m_species->addItem(speciesText(each));
    }
    m_control->addItem(tr("Not stated: the policy says"));
    for (const ControlReach each : reaches) {
        m_control->addItem(reachText(each));
    }
    addField("species", tr("Organism"), m_species);
    m_timeFields[0] = addField("releaseMinutes", tr("Readout that allows release, after"),
                               m_release, tr("From the start of incubation."));
    m_timeFields[1] =
        addField("lastMinutes", tr("Last readout, after"), m_last, tr("Empty: the same."));
    m_timeFields[2] = addField("latestMinutes", tr("Not to be read later than"), m_latest,
                               tr("Empty: not stated."));
    m_timeFields[3] = addField("startWithinMinutes", tr("Into the incubator within"), m_startWithin,
                               tr("After the cycle's end. Empty: not stated."));
    addField("control", tr("One control reaches"), m_control);
    m_implantField = addField("implantIndicatorTypes", tr("Beside it for implants"), m_implantTypes,
                              tr("Types of ISO 11140-1, with commas. Empty: not stated."));
    addWide(m_activation);
    addWide(m_process);
    addEditor(m_activation);
    addEditor(m_process);
}

void ProductForm::showWhatApplies()
{
    m_chemical->setVisible(!isBiological());
    m_sheet->setVisible(!isBiological() && response() == Response::sheet);
    m_biological->setVisible(isBiological());
}

bool ProductForm::isBiological() const
{
    return m_kind->currentIndex() == 1;
}

Response ProductForm::response() const
{
    return isBiological() ? Response::growth
                          : responses[static_cast<std::size_t>(m_response->currentIndex())];
}

void ProductForm::show(const Registers& registers)
{
    const auto found = std::ranges::find(registers.products, m_id, &RegisteredProduct::id);
    if (found != registers.products.end() && !isTouched()) {
        m_recorded = found->recorded;
        putBack();
    }
}

void ProductForm::putBack()
{
    const IndicatorProduct& product = m_recorded.product;
    const auto at = [](const auto& all, auto value) {
        const auto found = std::ranges::find(all, value);
        return found == all.end() ? 0 : static_cast<int>(found - all.begin());
    };
    m_name->setText(text(m_recorded.name));
    m_kind->setCurrentIndex(product.kind == IndicatorKind::biological ? 1 : 0);
    m_methods->set(product.methods);
    m_cycleTypes->setText(listed(product.cycleTypes));
    m_type->setCurrentIndex(std::max(product.type, 1) - 1);
    m_response->setCurrentIndex(at(responses, product.response));
    m_readWithin->setWhole(product.readWithinMinutes);
    m_leastTime->setMs(product.sheet.leastMs);
    m_mostTime->setMs(product.sheet.mostMs);
    m_leastCelsius->set(times(product.sheet.leastCelsiusHundredths, hundredthOfThousandths));
    m_mostCelsius->set(times(product.sheet.mostCelsiusHundredths, hundredthOfThousandths));
    m_noDrying->setChecked(product.sheet.dryingForbidden);
    m_species->setCurrentIndex(at(species, product.species));
    m_release->setWhole(product.releaseMinutes == 0 ? std::nullopt
                                                    : std::optional(product.releaseMinutes));
    m_last->setWhole(product.lastMinutes);
    m_latest->setWhole(product.latestMinutes);
    m_startWithin->setWhole(product.startWithinMinutes);
    m_control->setCurrentIndex(product.control ? at(reaches, *product.control) + 1 : 0);
    QStringList types;
    for (const int type : product.implantIndicatorTypes) {
        types << QString::number(type);
    }
    m_implantTypes->setText(types.join(QStringLiteral(", ")));
    m_activation->setChecked(product.needsActivation);
    m_process->setChecked(product.hasProcessIndicator);
    showWhatApplies();
    filled();
}

bool ProductForm::isNumber(Field* field, const NumberEdit* edit, bool isNeeded)
{
    const QString wrong = isNeeded && edit->isEmpty() ? tr("Type it as the instructions say.")
                          : edit->isGood()            ? QString()
                                                      : tr("This is no number that fits here.");
    setError(field, wrong);
    return wrong.isEmpty();
}

bool ProductForm::readMethods(IndicatorProduct& product)
{
    product.methods = m_methods->value();
    const QString wrong = m_methods->whatIsWrong();
    setError(m_methodsField, wrong);
    return wrong.isEmpty();
}

bool ProductForm::readChemical(IndicatorProduct& product)
{
    product.type = m_type->currentIndex() + 1;
    bool isGood = isNumber(m_readWithinField, m_readWithin, false);
    product.readWithinMinutes = m_readWithin->whole();
    if (response() != Response::sheet) {
        return isGood;
    }
    const std::array edits = {m_leastTime, m_mostTime, m_leastCelsius, m_mostCelsius};
    for (std::size_t i = 0; i < edits.size(); ++i) {
        isGood = isNumber(m_sheetFields[i], edits[i], false) && isGood;
    }
    product.sheet = {
        .leastMs = m_leastTime->ms(),
        .mostMs = m_mostTime->ms(),
        .leastCelsiusHundredths = by(m_leastCelsius->thousandths(), hundredthOfThousandths),
        .mostCelsiusHundredths = by(m_mostCelsius->thousandths(), hundredthOfThousandths),
        .dryingForbidden = m_noDrying->isChecked()};
    return isGood;
}

bool ProductForm::readBiological(IndicatorProduct& product)
{
    const std::array edits = {m_release, m_last, m_latest, m_startWithin};
    bool isGood = true;
    for (std::size_t i = 0; i < edits.size(); ++i) {
        isGood = isNumber(m_timeFields[i], edits[i], i == 0) && isGood;
    }
    product.species = species[static_cast<std::size_t>(m_species->currentIndex())];
    product.releaseMinutes = m_release->whole().value_or(0);
    product.lastMinutes = m_last->whole();
    product.latestMinutes = m_latest->whole();
    product.startWithinMinutes = m_startWithin->whole();
    product.needsActivation = m_activation->isChecked();
    product.hasProcessIndicator = m_process->isChecked();
    if (const int index = m_control->currentIndex(); index > 0) {
        product.control = reaches[static_cast<std::size_t>(index - 1)];
    }
    QString wrong;
    for (const QString& part : partsOf(m_implantTypes)) {
        bool isNumeric = false;
        const int type = part.toInt(&isNumeric);
        if (!isNumeric || type < 1 || type > mostType) {
            wrong = tr("Type numbers from 1 to 6, with commas between them.");
        }
        product.implantIndicatorTypes.push_back(type);
    }
    setError(m_implantField, wrong);
    return isGood && wrong.isEmpty();
}

std::optional<Wanted> ProductForm::wanted()
{
    ProductRecorded made{.name = m_name->text().trimmed().toStdString(), .product = {}};
    IndicatorProduct& product = made.product;
    product.kind = isBiological() ? IndicatorKind::biological : IndicatorKind::chemical;
    product.response = response();
    for (const QString& part : partsOf(m_cycleTypes)) {
        product.cycleTypes.push_back(part.toStdString());
    }
    bool isGood = needs(m_nameField, tr("Type its name."));
    isGood = readMethods(product) && isGood;
    isGood = (isBiological() ? readBiological(product) : readChemical(product)) && isGood;
    if (!isGood) {
        return std::nullopt;
    }
    const QString name = m_name->text().trimmed();
    const std::string id = m_id.empty() ? RandomIdSource().next("pr") : m_id;
    return Wanted{.acts = {{.act = made, .subjects = {id}}},
                  .what = m_id.empty() ? tr("Record the product %1").arg(name)
                                       : tr("Revise the product %1").arg(name),
                  .seen = linesOf(product),
                  .done = tr("The product %1 is recorded.").arg(name)};
}

} // namespace loadwarden::ui

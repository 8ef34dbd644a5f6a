#include "ui/settings/products_section.h"

#include "ui/parts/clear_layout.h"
#include "ui/settings/lot_form.h"
#include "ui/settings/product_form.h"
#include "ui/settings/product_text.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

struct Said {
    QString words;
    const char* tone;
};

} // namespace

/// The lots of a product, the newest first, and below them the form for one more.
class LotsView : public QWidget {
    Q_OBJECT

public:
    LotsView(const Workstation& workstation, std::string product)
        : m_product(std::move(product)),
          m_form(new LotForm(workstation, m_product)),
          m_count(makeMuted({})),
          m_rows(new QGridLayout)
    {
        auto* const column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->setSpacing(space::small);
        column->addWidget(makeLabel(tr("Lots"), Type::heading));
        column->addWidget(m_count);
        m_rows->setHorizontalSpacing(space::large);
        m_rows->setVerticalSpacing(0);
        m_rows->setColumnStretch(2, 1);
        column->addLayout(m_rows);
        column->addSpacing(space::small);
        column->addWidget(m_form);
    }

    [[nodiscard]] LotForm* form() const { return m_form; }

    void show(const Registers& registers)
    {
        m_form->show(registers);
        clearLayout(m_rows);
        int count = 0;
        for (auto lot = registers.lots.rbegin(); lot != registers.lots.rend(); ++lot) {
            if (lot->product == m_product) {
                addRow(*lot, registers, count++);
            }
        }
        m_count->setVisible(count == 0);
        m_count->setText(tr("No lot of it is recorded: no indicator of it can be placed in a load "
                            "with its lot. Record one when a box is opened."));
    }

signals:
    void says(const QString& what, const QString& next);

private:
    static Said stateOf(const RegisteredLot& lot, Date day)
    {
        const auto date = [&] { return text(formatDate(*lot.recorded.expires)); };
        switch (lotState(lot.recorded.expires, day)) {
        case LotState::notStated: return {tr("no expiry: no answer of it counts"), "bad"};
        case LotState::expired: return {tr("expired on %1: take it away").arg(date()), "bad"};
        case LotState::slip: return {tr("expires on %1: check the year").arg(date()), "bad"};
        case LotState::expiresSoon: return {tr("expires soon, on %1").arg(date()), "waiting"};
        case LotState::inDate: return {tr("good until %1").arg(date()), "muted"};
        }
        return {};
    }

    void addRow(const RegisteredLot& lot, const Registers& registers, int row)
    {
        m_rows->addWidget(makeLabel(text(lot.recorded.number), Type::strong, false), row, 0);
        const Said state = stateOf(lot, registers.day);
        auto* const words = makeLabel(state.words, Type::body, false);
        words->setProperty("tone", state.tone);
        m_rows->addWidget(words, row, 1);
        auto* const by = makeMuted(tr("recorded by %1").arg(text(registers.names.of(lot.by))));
        m_rows->addWidget(by, row, 2);
        auto* const revise = makeButton(tr("Correct"), ButtonKind::quiet);
        revise->setAccessibleName(tr("Correct lot %1").arg(text(lot.recorded.number)));
        connect(revise, &QPushButton::clicked, this, [this, lot] {
            if (!m_form->revise(lot)) {
                emit says(tr("A lot is typed that is not recorded."),
                          tr("Record it or drop it, then correct another."));
            }
        });
        m_rows->addWidget(revise, row, 3);
    }

    std::string m_product;
    LotForm* m_form;
    QLabel* m_count;
    QGridLayout* m_rows;
};

namespace {

class ProductView : public EntryView {
public:
    ProductView(const Workstation& workstation, const QString& id)
        : m_id(id.toStdString()), m_name(makeLabel({}, Type::title))
    {
        if (!m_id.empty()) {
            m_lots = new LotsView(workstation, m_id);
            add(m_name);
            keep(m_lots->form());
            add(m_lots);
            addRule();
            connect(m_lots, &LotsView::says, this, &EntryView::says);
        } else {
            delete m_name;
        }
        m_form = new ProductForm(workstation, m_id);
        add(m_form);
        connect(m_form, &RegisterForm::recorded, this, &EntryView::recorded);
        setFocusProxy(m_form);
    }

    void show(const Registers& registers) override
    {
        m_form->show(registers);
        if (m_lots == nullptr) {
            return;
        }
        m_lots->show(registers);
        const auto found = std::ranges::find(registers.products, m_id, &RegisteredProduct::id);
        if (found != registers.products.end()) {
            m_name->setText(text(found->recorded.name));
        }
    }

private:
    std::string m_id;
    QLabel* m_name;
    LotsView* m_lots = nullptr;
    ProductForm* m_form;
};

} // namespace

ProductsSection::ProductsSection(const Workstation& workstation)
    : RegisterSection(
        workstation,
        {.title = tr("Products and lots"),
         .belongs = tr("Indicator products by their instructions for use, and the lots in the "
                       "department. An operator records a lot when its box is opened."),
         .add = tr("Add a product"),
         .fresh = tr("New product"),
         .empty = tr("No indicator product is recorded yet"),
         .teaches = tr("Without products nothing says when a vial is due or which answer of a "
                       "strip is good. A supervisor takes the instructions for use (IFU) from the "
                       "box of each indicator and records what they say; then lots are added.")},
        Task::ProductRecorded)
{
    lookAtRights();
}

std::vector<RegisterLine> ProductsSection::lines(const Registers& registers) const
{
    std::vector<RegisterLine> all;
    for (const RegisteredProduct& each : registers.products) {
        const auto lots = std::ranges::count_if(registers.lots, [&](const RegisteredLot& lot) {
            return lot.product == each.id
                   && lotState(lot.recorded.expires, registers.day) != LotState::expired;
        });
        all.push_back({text(each.id), text(each.recorded.name),
                       lots == 0 ? tr("%1; no lot in date").arg(productText(each.recorded.product))
                                 : productText(each.recorded.product),
                       false});
    }
    return all;
}

EntryView* ProductsSection::makeView(const QString& id)
{
    return new ProductView(workstation(), id);
}

} // namespace loadwarden::ui

#include "products_section.moc"

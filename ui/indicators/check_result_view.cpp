#include "ui/indicators/check_result_view.h"

#include "core/words/say_reading.h"
#include "ui/indicators/indicator_schematic.h"
#include "ui/indicators/stopwatch.h"
#include "ui/look/text.h"
#include "ui/parts/rows_scroll.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLocale>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int widest = 1100;
constexpr int widthOfPicture = 300;

const char* toneOf(AnswerMark mark)
{
    switch (mark) {
    case AnswerMark::right: return "good";
    case AnswerMark::acceptedWhatFails: return "bad";
    case AnswerMark::rejectedWhatPasses:
    case AnswerMark::notSure: return "waiting";
    }
    return "";
}

void addFigure(QGridLayout* grid, const QString& name, const QString& figure, const QString& means)
{
    const int line = grid->rowCount();
    grid->addWidget(makeLabel(name, Type::strong, false), line, 0);
    grid->addWidget(makeLabel(figure, Type::strong, false), line, 1, Qt::AlignRight);
    grid->addWidget(makeMuted(means), line, 2);
}

} // namespace

CheckResultView::CheckResultView(Look& look, const CheckResult& result,
                                 const std::vector<CheckProduct>& products, QWidget* parent)
    : QWidget(parent), m_look(look)
{
    auto* const outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    QScrollArea* const scroll = makeRowsScroll(this);
    outer->addWidget(scroll);
    auto* const across = new QHBoxLayout(scroll->widget());
    across->setContentsMargins(space::page, space::medium, space::page, space::page);
    auto* const narrow = new QWidget;
    narrow->setMaximumWidth(widest);
    across->addWidget(narrow, 1);
    across->addStretch(0);
    auto* const column = new QVBoxLayout(narrow);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::medium);
    column->addWidget(
        makeLabel(tr("%1 of %2 right")
                      .arg(QString::number(result.right), QString::number(result.drawn.size())),
                  Type::title));
    addFigures(column, result);
    if (!result.misread.empty()) {
        column->addWidget(makeLabel(tr("What was not read right"), Type::heading));
    }
    for (const Misread& misread : result.misread) {
        column->addWidget(makeMistake(result, misread, products));
    }
    column->addWidget(makeMuted(tr("It was read on drawings. It shows how the rules are known, and "
                                   "is no evidence about a load or about a product.")));
    auto* const done = makeButton(tr("Close the result"), ButtonKind::main);
    connect(done, &QPushButton::clicked, this, &CheckResultView::left);
    column->addWidget(done, 0, Qt::AlignLeft);
    column->addStretch();
    m_scroll = scroll;
    scroll->setFocusPolicy(Qt::StrongFocus);
    scroll->setAccessibleName(tr("Result of the check"));
}

void CheckResultView::addFigures(QVBoxLayout* column, const CheckResult& result)
{
    auto* const box = new QFrame;
    box->setObjectName(QStringLiteral("panel"));
    auto* const grid = new QGridLayout(box);
    grid->setContentsMargins(space::large, space::medium, space::large, space::medium);
    grid->setHorizontalSpacing(space::large);
    grid->setVerticalSpacing(space::small);
    grid->setColumnStretch(2, 1);
    const auto add = [grid](AnswerMark mark, std::int64_t count, const QString& means) {
        addFigure(grid, text(say(mark)), QString::number(count), means);
    };
    add(AnswerMark::acceptedWhatFails, result.acceptedWhatFails,
        tr("dangerous: in earnest it could reach a patient"));
    add(AnswerMark::rejectedWhatPasses, result.rejectedWhatPasses,
        tr("costly: in earnest a good set is run again"));
    add(AnswerMark::notSure, result.notSure, tr("in earnest a second person reads it"));
    constexpr double second = 1'000;
    const auto each = static_cast<double>(result.tookMs)
                      / static_cast<double>(std::max<std::size_t>(result.drawn.size(), 1));
    addFigure(grid, tr("Time"), minutesText(result.tookMs),
              tr("%1 s for each; it is not judged").arg(QLocale().toString(each / second, 'f', 1)));
    column->addWidget(box);
}

QWidget* CheckResultView::makeMistake(const CheckResult& result, const Misread& misread,
                                      const std::vector<CheckProduct>& products)
{
    const Drawn& drawn = result.drawn[misread.drawn];
    auto* const box = new QFrame;
    box->setObjectName(QStringLiteral("panel"));
    auto* const row = new QHBoxLayout(box);
    row->setContentsMargins(space::large, space::medium, space::large, space::medium);
    row->setSpacing(space::large);
    auto* const picture = new IndicatorSchematic(m_look, IndicatorSchematic::Size::small);
    picture->setFixedWidth(widthOfPicture);
    picture->show(drawn);
    row->addWidget(picture, 0, Qt::AlignTop);
    auto* const words = new QVBoxLayout;
    words->setSpacing(space::hair);
    QLabel* const mark = makeLabel(text(say(misread.mark)), Type::strong);
    mark->setProperty("tone", toneOf(misread.mark));
    words->addWidget(mark);
    const ReadingSaid rule = say(misread.rule);
    words->addWidget(makeLabel(text(rule.says)));
    const auto product = std::ranges::find(products, drawn.product, &CheckProduct::id);
    words->addWidget(makeMuted(
        tr("Indicator %1, %2; you said %3 after %4 s", "its number, product, answer, seconds")
            .arg(QString::number(misread.drawn + 1),
                 product == products.end() ? text(drawn.product) : text(product->name),
                 text(say(result.answers[misread.drawn].readAs)),
                 QLocale().toString(
                     static_cast<double>(result.answers[misread.drawn].tookMs) / 1'000, 'f', 1))));
    words->addWidget(makeMuted(tr("Source: %1").arg(text(rule.source))));
    words->addStretch();
    row->addLayout(words, 1);
    return box;
}

void CheckResultView::focusFirst()
{
    m_scroll->setFocus(Qt::OtherFocusReason);
}

} // namespace loadwarden::ui

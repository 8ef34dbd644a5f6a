#include "core/indicators/reading_check.h"

#include <algorithm>
#include <iterator>
#include <random>
#include <utility>

namespace loadwarden {
namespace {

/// Whole numbers of a seed by arithmetic of our own: what the standard says of its distributions
/// leaves open which numbers come.
class Lots {
public:
    explicit Lots(std::uint64_t seed) : m_engine(seed) {}

    /// From least to most, both included, each as likely.
    int between(int least, int most)
    {
        const auto count = static_cast<std::uint64_t>(most - least) + 1;
        // What is beyond the last whole count would make the first numbers likelier.
        const std::uint64_t beyond = (std::mt19937_64::max() - count + 1) % count;
        std::uint64_t drawn = m_engine();
        while (drawn > std::mt19937_64::max() - beyond) {
            drawn = m_engine();
        }
        return least + static_cast<int>(drawn % count);
    }

    template <class Things>
    void shuffle(Things& things)
    {
        for (std::size_t i = things.size(); i > 1; --i) {
            const auto other = static_cast<std::size_t>(between(0, static_cast<int>(i) - 1));
            std::swap(things[i - 1], things[other]);
        }
    }

private:
    std::mt19937_64 m_engine;
};

enum class Case : std::uint8_t {
    justPast,
    onBoundary,
    justShort,
    wellPast,
    wellShort,
    colourReached,
    colourPartly,
    colourUnchanged,
    sheetComplete,
    sheetIncomplete,
    sheetPaleCentre,
    sheetPaleEdge,
    sheetStreaks,
    sheetUnchanged
};

/// What comes in turn of a kind of product: first all of the first group, in any order, then all of
/// the second. As many pass as fail, or nearly.
struct Turns {
    std::vector<Case> hard;
    std::vector<Case> plain;
};

Turns turnsOf(Response response)
{
    switch (response) {
    case Response::movingFront:
        return {{Case::justPast, Case::onBoundary, Case::justShort},
                {Case::justPast, Case::wellPast, Case::wellShort}};
    case Response::sheet:
        return {{Case::sheetComplete, Case::sheetIncomplete, Case::sheetPaleCentre},
                {Case::sheetComplete, Case::sheetComplete, Case::sheetPaleEdge, Case::sheetStreaks,
                 Case::sheetUnchanged}};
    case Response::colour:
    case Response::growth: break;
    }
    return {{Case::colourReached, Case::colourPartly},
            {Case::colourReached, Case::colourUnchanged}};
}

std::vector<Case> casesOf(Response response, std::size_t count, Lots& lots)
{
    std::vector<Case> cases;
    while (cases.size() < count) {
        Turns turns = turnsOf(response);
        lots.shuffle(turns.hard);
        lots.shuffle(turns.plain);
        cases.insert(cases.end(), turns.hard.begin(), turns.hard.end());
        cases.insert(cases.end(), turns.plain.begin(), turns.plain.end());
    }
    cases.resize(count);
    return cases;
}

int frontOf(Case which, int boundary, Lots& lots)
{
    const int near = lots.between(nearestFront, nearFront);
    switch (which) {
    case Case::justPast: return std::min(boundary + near, wholeStrip);
    case Case::justShort: return std::max(boundary - near, 0);
    case Case::wellPast:
        return lots.between(std::min(boundary + nearFront, wholeStrip), wholeStrip);
    case Case::wellShort: return lots.between(0, std::max(boundary - nearFront, 0));
    default: return boundary;
    }
}

SheetPattern patternOfCase(Case which)
{
    switch (which) {
    case Case::sheetIncomplete: return SheetPattern::incomplete;
    case Case::sheetPaleCentre: return SheetPattern::paleCentre;
    case Case::sheetPaleEdge: return SheetPattern::paleEdge;
    case Case::sheetStreaks: return SheetPattern::streaks;
    case Case::sheetUnchanged: return SheetPattern::noChange;
    default: return SheetPattern::complete;
    }
}

void drawColour(Case which, Drawn& drawn, Lots& lots)
{
    constexpr int all = 1'000;
    switch (which) {
    case Case::colourPartly:
        drawn.truth = Seen::endColourPartly;
        drawn.changed = lots.between(leastChanged, mostChanged);
        break;
    case Case::colourUnchanged: drawn.truth = Seen::unchanged; break;
    default:
        drawn.truth = Seen::endColourReached;
        drawn.changed = all;
        break;
    }
}

Drawn draw(const CheckProduct& product, Case which, Lots& lots)
{
    Drawn drawn{.product = product.id, .response = product.response};
    switch (product.response) {
    case Response::movingFront:
        drawn.boundary = boundaryOf(product.directions).value_or(unstatedBoundary);
        drawn.front = frontOf(which, drawn.boundary, lots);
        drawn.truth = seenOfFront(drawn.front, drawn.boundary);
        break;
    case Response::sheet:
        drawn.pattern = patternOfCase(which);
        drawn.truth = seenOf(drawn.pattern);
        break;
    case Response::colour:
    case Response::growth: drawColour(which, drawn, lots); break;
    }
    return drawn;
}

/// Whose turn it is, twenty times.
std::vector<const CheckProduct*> chosen(const std::vector<CheckProduct>& products, Lots& lots)
{
    std::vector<const CheckProduct*> order;
    for (const CheckProduct& product : products) {
        order.push_back(&product);
    }
    lots.shuffle(order);
    std::vector<const CheckProduct*> all;
    for (std::size_t i = 0; !order.empty() && i < drawnInCheck; ++i) {
        all.push_back(order[i % order.size()]);
    }
    return all;
}

} // namespace

bool canBeDrawn(const CheckProduct& product)
{
    if (product.response != Response::movingFront) {
        return product.response != Response::growth;
    }
    const int boundary = boundaryOf(product.directions).value_or(unstatedBoundary);
    return boundary >= nearestFront && boundary <= wholeStrip - nearestFront;
}

std::vector<Drawn> drawCheck(std::vector<CheckProduct> products, std::uint64_t seed)
{
    std::erase_if(products, [](const CheckProduct& each) { return !canBeDrawn(each); });
    std::ranges::stable_sort(products, {}, &CheckProduct::id);
    Lots lots(seed);
    const std::vector<const CheckProduct*> turns = chosen(products, lots);
    std::vector<Drawn> all;
    for (const Response response : {Response::movingFront, Response::colour, Response::sheet}) {
        std::vector<const CheckProduct*> those;
        std::ranges::copy_if(turns, std::back_inserter(those), [response](const auto* product) {
            return product->response == response;
        });
        const std::vector<Case> cases = casesOf(response, those.size(), lots);
        for (std::size_t i = 0; i < those.size(); ++i) {
            all.push_back(draw(*those[i], cases[i], lots));
        }
    }
    lots.shuffle(all);
    return all;
}

} // namespace loadwarden

// The check that is drawn of any products.
#include "core/indicators/chemical.h"
#include "core/indicators/reading_check.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <rapidcheck.h>
#include <string>

namespace loadwarden {
namespace {

CheckProduct anyProduct(int number)
{
    CheckProduct product{.id = "p-" + std::to_string(number),
                         .name = "product " + std::to_string(number),
                         .type = *rc::gen::inRange(0, 7),
                         .response = *rc::gen::element(Response::movingFront, Response::colour,
                                                       Response::sheet, Response::growth)};
    if (*rc::gen::arbitrary<bool>()) {
        product.directions.emplace();
        product.directions->stripTenthsMm = *rc::gen::inRange<std::int64_t>(0, 400);
        product.directions->boundaryTenthsMm = *rc::gen::inRange<std::int64_t>(0, 400);
    }
    return product;
}

std::vector<CheckProduct> anyProducts()
{
    std::vector<CheckProduct> products;
    const int count = *rc::gen::inRange(0, 26);
    for (int i = 0; i < count; ++i) {
        products.push_back(anyProduct(i));
    }
    return products;
}

std::uint64_t anySeed()
{
    return *rc::gen::arbitrary<std::uint64_t>();
}

std::size_t drawable(const std::vector<CheckProduct>& products)
{
    return static_cast<std::size_t>(std::ranges::count_if(products, canBeDrawn));
}

RC_GTEST_PROP(ReadingCheckProperties, HasTwentyIndicatorsOrNone, ())
{
    const std::vector<CheckProduct> products = anyProducts();
    RC_ASSERT(drawCheck(products, anySeed()).size()
              == (drawable(products) == 0 ? 0 : drawnInCheck));
}

RC_GTEST_PROP(ReadingCheckProperties, IsTheSameOfTheSameSeedInWhateverOrderProductsCome, ())
{
    std::vector<CheckProduct> products = anyProducts();
    const std::uint64_t seed = anySeed();
    const std::vector<Drawn> check = drawCheck(products, seed);
    RC_ASSERT(drawCheck(products, seed) == check);
    std::ranges::reverse(products);
    RC_ASSERT(drawCheck(products, seed) == check);
}

RC_GTEST_PROP(ReadingCheckProperties, EachProductComesAsOftenAsAnyOrOnceMore, ())
{
    const std::vector<CheckProduct> products = anyProducts();
    const std::size_t count = drawable(products);
    RC_PRE(count > 0U);
    std::map<std::string, std::size_t> drawn;
    for (const Drawn& each : drawCheck(products, anySeed())) {
        ++drawn[each.product];
    }
    for (const CheckProduct& product : products) {
        if (!canBeDrawn(product)) {
            RC_ASSERT(!drawn.contains(product.id));
            continue;
        }
        RC_ASSERT(drawn[product.id] >= drawnInCheck / count);
        RC_ASSERT(drawn[product.id] <= (drawnInCheck + count - 1) / count);
    }
}

RC_GTEST_PROP(ReadingCheckProperties, TruthIsWhatIsDrawnAndPassesOrFails, ())
{
    const std::vector<CheckProduct> products = anyProducts();
    for (const Drawn& each : drawCheck(products, anySeed())) {
        const auto product = std::ranges::find(products, each.product, &CheckProduct::id);
        RC_ASSERT(product != products.end());
        RC_ASSERT(product->response == each.response);
        RC_ASSERT(isGoodAnswer(each.truth) != isBadAnswer(each.truth));
        switch (each.response) {
        case Response::movingFront:
            RC_ASSERT(each.boundary == boundaryOf(product->directions).value_or(unstatedBoundary));
            RC_ASSERT(isGoodAnswer(each.truth) == (each.front > each.boundary));
            break;
        case Response::colour:
            RC_ASSERT(isGoodAnswer(each.truth) == (each.changed == 1'000));
            break;
        case Response::sheet:
            RC_ASSERT(isGoodAnswer(each.truth) == (each.pattern == SheetPattern::complete));
            break;
        case Response::growth: RC_FAIL("no vial is drawn");
        }
    }
}

RC_GTEST_PROP(ReadingCheckProperties, NothingCanBeArguedAbout, ())
{
    for (const Drawn& each : drawCheck(anyProducts(), anySeed())) {
        if (each.response == Response::movingFront) {
            const int distance = std::abs(each.front - each.boundary);
            RC_ASSERT(distance == 0 || distance >= 2 * readingTolerance);
            RC_ASSERT(each.front >= 0 && each.front <= wholeStrip);
        }
        if (each.truth == Seen::endColourPartly) {
            RC_ASSERT(each.changed >= 250 && each.changed <= 750);
        }
        RC_ASSERT(each.response != Response::sheet || patternOf(cellsOf(each.pattern)));
    }
}

RC_GTEST_PROP(ReadingCheckProperties, FrontsComeNearTheBoundaryOnEitherSideAndOnIt, ())
{
    const CheckProduct product{.id = "a", .response = Response::movingFront};
    const std::vector<Drawn> check = drawCheck({product}, anySeed());
    const auto count = [&check](auto is) {
        return std::ranges::count_if(
            check, [&](const Drawn& each) { return is(each.front - each.boundary); });
    };
    // In turn, six by six: three turns and two of the hard group.
    RC_ASSERT(count([](int by) { return by == 0; }) >= 3);
    RC_ASSERT(count([](int by) { return by > 0 && by <= nearFront; }) >= 6);
    RC_ASSERT(count([](int by) { return by < 0 && by >= -nearFront; }) >= 3);
    RC_ASSERT(count([](int by) { return by >= nearFront; }) >= 3);
    RC_ASSERT(count([](int by) { return by <= -nearFront; }) >= 3);
}

RC_GTEST_PROP(ReadingCheckProperties, SomePassAndSomeFailOfEachKind, ())
{
    for (const Response response : {Response::movingFront, Response::colour, Response::sheet}) {
        const std::vector<Drawn> check = drawCheck({{.id = "a", .response = response}}, anySeed());
        const auto good = std::ranges::count_if(
            check, [](const Drawn& each) { return isGoodAnswer(each.truth); });
        RC_ASSERT(good >= 7 && good <= 12);
    }
}

} // namespace
} // namespace loadwarden

#include "core/acts/bodies/bodies.h"

#include <algorithm>
#include <string_view>

namespace loadwarden::body_format {
namespace {

constexpr Whole inTenthsMm{1, 10'000};
constexpr Whole spores{1, 1'000'000'000'000};
constexpr Typed typedKelvin{2, 0, 500'000};
constexpr Text aColourName{1, 64, false};
constexpr Text sevenCharacters{7, 7, false};

/// As #rrggbb in small letters.
bool isColour(std::string_view text)
{
    return text.size() == 7 && text.front() == '#'
           && text.find_first_not_of("0123456789abcdef", 1) == std::string_view::npos;
}

} // namespace

template <class Io>
void members(Io& io, Ref<Io, ColourSample> colour)
{
    io.must("name", colour.name, aColourName);
    io.may("rgb", colour.rgb, sevenCharacters);
    io.require(colour.rgb.empty() || isColour(colour.rgb),
               "must give a colour as # and six hexadecimal digits in small letters");
}

template <class Io>
void members(Io& io, Ref<Io, DirectionsRecorded> act)
{
    auto& directions = act.directions;
    io.must("text", directions.text, aText);
    io.may("document", directions.document, aName);
    io.may("revision", directions.revision, aName);
    io.may("dated", directions.dated, aDay);
    io.may("reviewBy", directions.reviewBy, aDay);
    io.may("storage", directions.storage, aText);
    io.may("isStable", directions.isStable, aFlag);
    io.may("stripTenthsMm", directions.stripTenthsMm, inTenthsMm);
    io.may("boundaryTenthsMm", directions.boundaryTenthsMm, inTenthsMm);
    io.require(!directions.boundaryTenthsMm
                   || (directions.stripTenthsMm
                       && *directions.boundaryTenthsMm < *directions.stripTenthsMm),
               "must have its boundary short of the end of its strip");
    io.may("startColour", directions.startColour, nested<ColourSample>);
    io.may("endColour", directions.endColour, nested<ColourSample>);
}

template <class Io>
void members(Io& io, Ref<Io, LotCertificate> certificate)
{
    io.must("document", certificate.document, aName);
    io.must("population", certificate.population, spores);
    io.must("dMinutes", certificate.dMinutes, typedMinutes);
    io.must("celsius", certificate.celsius, typedCelsius);
    io.may("zKelvin", certificate.zKelvin, typedKelvin);
}

template <class Io>
void members(Io& io, Ref<Io, LotDescribed> act)
{
    io.may("received", act.received, aDay);
    io.may("opened", act.opened, aDay);
    io.may("usedUp", act.usedUp, aDay);
    io.may("certificate", act.certificate, nested<LotCertificate>);
}

template <class Io>
void members(Io& io, Ref<Io, LotRecalled> act)
{
    io.must("why", act.why, aText);
}

LW_BODY(DirectionsRecorded)
LW_BODY(LotDescribed)
LW_BODY(LotRecalled)

} // namespace loadwarden::body_format

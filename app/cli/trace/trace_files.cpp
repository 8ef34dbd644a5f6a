#include "app/cli/trace/trace_files.h"

#include "app/cli/paragraph.h"
#include "app/cli/text_file.h"
#include "core/cycle/trace/trace_limits.h"
#include "core/exchange/trace_mapping_json.h"
#include "core/quantities/decimal.h"

#include <istream>
#include <iterator>
#include <stdexcept>
#include <variant>

namespace loadwarden::cli {

std::string readTraceFile(std::string_view name, Streams streams)
{
    if (name == "-") {
        return {std::istreambuf_iterator<char>(streams.in), {}};
    }
    return readFile(std::string(name), TraceLimits{}.mostBytes);
}

std::optional<TraceMapping> mappingGiven(const Arguments& given)
{
    const auto file = given.value("--map");
    if (!file) {
        return std::nullopt;
    }
    const std::string name(*file);
    auto read = readTraceMapping(readTextFile(name));
    if (const auto* const error = std::get_if<TraceMappingError>(&read)) {
        throw std::runtime_error(oneLine(name) + ": " + error->message);
    }
    return std::get<TraceMapping>(std::move(read));
}

double numberIn(std::string_view text, std::string_view option)
{
    const auto thousandths = parseDecimal(text, 3);
    if (!thousandths) {
        throw UsageError(std::string(option) + " needs a number with at most 3 decimals, not \""
                         + std::string(text) + '"');
    }
    return static_cast<double>(*thousandths) / 1000;
}

std::optional<double> numberGiven(const Arguments& given, std::string_view option)
{
    const auto text = given.value(option);
    return text ? std::optional(numberIn(*text, option)) : std::nullopt;
}

std::optional<AbsolutePressure> atmosphereGiven(const Arguments& given)
{
    const auto text = given.value("--atmosphere");
    if (!text) {
        return std::nullopt;
    }
    const auto thousandths = parseDecimal(*text, 3);
    constexpr TraceLimits limits;
    const double kPa = thousandths ? static_cast<double>(*thousandths) / 1000 : 0;
    if (!(kPa >= limits.leastAtmosphereKPa && kPa <= limits.mostAtmosphereKPa)) {
        throw UsageError("--atmosphere needs the site's air pressure in kPa absolute, 50 to 110, "
                         "not \""
                         + std::string(*text) + '"');
    }
    return AbsolutePressure::fromKPaThousandths(*thousandths);
}

} // namespace loadwarden::cli

#include "core/quantities/id_source.h"

#include <random>

namespace loadwarden {

std::string RandomIdSource::next(std::string_view prefix)
{
    constexpr std::string_view hex = "0123456789abcdef";
    static_assert(std::random_device::max() == 0xffffffffU, "32 bits a draw");
    std::random_device device;
    std::string id(prefix);
    id += '-';
    for (int word = 0; word < 4; ++word) {
        const unsigned bits = device();
        for (int shift = 28; shift >= 0; shift -= 4) {
            id += hex[(bits >> shift) & 0xfU];
        }
    }
    return id;
}

std::string CountingIdSource::next(std::string_view prefix)
{
    ++last_;
    return std::string(prefix) + '-' + std::to_string(last_);
}

} // namespace loadwarden

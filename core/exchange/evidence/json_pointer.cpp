#include "core/exchange/evidence/json_pointer.h"

#include "core/exchange/evidence/json_scanner.h"

#include <algorithm>

namespace loadwarden::evidence_format {

std::string pointerStep(std::string_view name)
{
    std::string step = "/";
    for (const char c : name) {
        if (c == '~') {
            step += "~0";
        } else if (c == '/') {
            step += "~1";
        } else {
            step += c;
        }
    }
    return step;
}

std::size_t findPointer(std::string_view json, std::string_view pointer)
{
    JsonScanner scanner(json);
    JsonKind kind = scanner.peek();
    while (!pointer.empty()) {
        const std::size_t end = std::min(pointer.find('/', 1), pointer.size());
        const std::string_view step = pointer.substr(0, end); // with its "/"
        pointer.remove_prefix(end);
        const std::size_t holder = scanner.mark();
        const bool isObject = kind == JsonKind::object;
        if (!scanner.take(isObject ? '{' : '[')) {
            return holder;
        }
        for (std::size_t index = 0;; ++index) {
            std::string_view name;
            if (isObject && !(scanner.text(name) && scanner.take(':'))) {
                return holder;
            }
            if (step == (isObject ? pointerStep(name) : '/' + std::to_string(index))) {
                break;
            }
            if (!scanner.skipValue() || !scanner.take(',')) {
                return holder;
            }
        }
        kind = scanner.peek();
    }
    return scanner.mark();
}

} // namespace loadwarden::evidence_format

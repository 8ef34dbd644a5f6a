#include "ui/shell/workstation_name.h"

#include <QSysInfo>

namespace loadwarden::ui {

std::string workstationName()
{
    constexpr std::size_t longest = 64;
    std::string id = "ws-";
    for (const QChar c : QSysInfo::machineHostName()) {
        const bool isPlain = (c >= u'0' && c <= u'9') || (c >= u'A' && c <= u'Z')
                             || (c >= u'a' && c <= u'z') || c == u'-' || c == u'.';
        id += isPlain ? static_cast<char>(c.unicode()) : '-';
    }
    return id.substr(0, longest);
}

} // namespace loadwarden::ui

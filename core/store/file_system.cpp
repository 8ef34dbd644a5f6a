#include "core/store/file_system.h"

#include "core/store/store_error.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>
#include <sys/vfs.h>
#include <vector>

namespace loadwarden {
namespace {

namespace fs = std::filesystem;

/// mountinfo writes blanks, tabs, line feeds and backslashes as \ooo.
std::string unescaped(std::string_view text)
{
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto isOctal = [&text](std::size_t at) { return text[at] >= '0' && text[at] <= '7'; };
        if (text[i] == '\\' && i + 3 < text.size() && isOctal(i + 1) && isOctal(i + 2)
            && isOctal(i + 3)) {
            out += static_cast<char>((text[i + 1] - '0') * 64 + (text[i + 2] - '0') * 8
                                     + (text[i + 3] - '0'));
            i += 3;
        } else {
            out += text[i];
        }
    }
    return out;
}

std::vector<std::string_view> words(std::string_view line)
{
    std::vector<std::string_view> found;
    while (!line.empty()) {
        const std::size_t end = std::min(line.find(' '), line.size());
        found.push_back(line.substr(0, end));
        line.remove_prefix(std::min(end + 1, line.size()));
    }
    return found;
}

bool isWithin(const std::string& path, const std::string& folder)
{
    return folder == "/" || path == folder
           || (path.starts_with(folder) && path[folder.size()] == '/');
}

/// statfs(2), for systems whose mounts cannot be read.
bool hasSharedMagic(const fs::path& path)
{
    struct statfs status {};
    if (statfs(path.c_str(), &status) != 0) {
        return false;
    }
    constexpr std::array<std::uint32_t, 10> magics{
        0x6969U,      // nfs
        0x517BU,      // smb
        0xFF534D42U,  // cifs
        0xFE534D42U,  // smb2
        0x5346414FU,  // afs
        0x6B414653U,  // kafs
        0x00C36400U,  // ceph
        0x01021997U,  // 9p
        0x564C4D43U,  // ncp
        0x786F4256U}; // shared folders of a virtual machine
    return std::ranges::find(magics, static_cast<std::uint32_t>(status.f_type)) != magics.end();
}

} // namespace

std::string fileSystemOf(const fs::path& path, std::string_view mountinfo)
{
    const std::string wanted = path.string();
    std::string type;
    std::size_t longest = 0;
    while (!mountinfo.empty()) {
        const std::size_t end = std::min(mountinfo.find('\n'), mountinfo.size());
        const auto fields = words(mountinfo.substr(0, end));
        mountinfo.remove_prefix(std::min(end + 1, mountinfo.size()));
        const auto dash = std::ranges::find(fields, std::string_view("-"));
        if (fields.size() < 5 || fields.end() - dash < 2) {
            continue;
        }
        const std::string folder = unescaped(fields[4]);
        // Of two mounts on one folder the later one is what is seen.
        if (isWithin(wanted, folder) && folder.size() >= longest) {
            longest = folder.size();
            type = *(dash + 1);
        }
    }
    return type;
}

bool isShared(std::string_view fileSystem)
{
    constexpr std::array<std::string_view, 19> shared{
        "nfs",    "nfs4",      "cifs",   "smb3",     "smbfs",  "ncpfs", "afs",
        "coda",   "ceph",      "9p",     "virtiofs", "vboxsf", "gfs2",  "ocfs2",
        "lustre", "glusterfs", "beegfs", "orangefs", "fuse"};
    // What a fuse file system does with locks is known to its own program only. fuseblk, a local
    // disk by such a program, is another type.
    return std::ranges::find(shared, fileSystem) != shared.end() || fileSystem.starts_with("fuse.");
}

void refuseSharedFileSystem(const fs::path& file)
{
    std::error_code error;
    const fs::path folder = fs::absolute(file, error).parent_path();
    const fs::path real = fs::canonical(fs::exists(file, error) ? file : folder, error);
    if (error) {
        return; // opening it will say why
    }
    std::ifstream in("/proc/self/mountinfo", std::ios::binary);
    const std::string mounts{std::istreambuf_iterator<char>(in), {}};
    const std::string type = fileSystemOf(real, mounts);
    if (isShared(type) || hasSharedMagic(real)) {
        throw StoreError(
            StoreFault::network,
            file.string() + " lies on a file system" + (type.empty() ? "" : " (" + type + ')')
                + " that other computers may write too. Two programs could then damage "
                  "the journal without noticing each other.",
            "Move the journal to a disk of this computer. Backups may go there.");
    }
}

} // namespace loadwarden

#include "core/store/seal_key_file.h"

#include "core/store/posix_file.h"
#include "core/store/store_error.h"

#include <cstdlib>

namespace loadwarden {

namespace fs = std::filesystem;

fs::path userDataFolder()
{
    const char* const data = std::getenv("XDG_DATA_HOME");
    if (data != nullptr && *data == '/') {
        return fs::path(data) / "loadwarden";
    }
    const char* const home = std::getenv("HOME");
    if (home == nullptr || *home != '/') {
        throw StoreError(StoreFault::missing, "This user has no home folder.",
                         "Set HOME, or give the path of the key.");
    }
    return fs::path(home) / ".local" / "share" / "loadwarden";
}

fs::path usualSealKeyPath()
{
    return userDataFolder() / "seal.key";
}

SealKey readSealKey(const fs::path& path)
{
    if (!fs::exists(path)) {
        throw StoreError(StoreFault::missing, "There is no key for seals at " + path.string() + '.',
                         "Put back the file that was there; only if it is lost for good, a "
                         "supervisor makes a new key (journal new-key).");
    }
    const PosixFile file(path, PosixFile::Mode::read);
    if (!file.isPrivate()) {
        throw StoreError(StoreFault::denied,
                         "The key " + path.string()
                             + " can be read by others, so that its seals "
                               "would show nothing.",
                         "Give it to the user who runs Loadwarden, for reading by that user alone "
                         "(chmod 600), and ask who could have copied it.");
    }
    std::string seed = file.read();
    if (!seed.empty() && seed.back() == '\n') {
        seed.pop_back();
    }
    const auto key = SealKey::fromSeed(seed);
    if (!key) {
        throw StoreError(StoreFault::damaged, "The file " + path.string() + " holds no key.",
                         "Put back the file that was there.");
    }
    return *key;
}

SealKey createSealKey(const fs::path& path)
{
    if (fs::exists(path)) {
        throw StoreError(StoreFault::exists, "There is a key at " + path.string() + " already.",
                         "Use that one.");
    }
    makePrivateFolder(path.parent_path());
    const fs::path part = path.string() + ".part";
    fs::remove(part);
    const SealKey key = SealKey::create();
    {
        PosixFile file(part, PosixFile::Mode::createNew);
        file.write(key.seedHex() + '\n');
        file.sync();
    }
    publish(part, path);
    return key;
}

} // namespace loadwarden

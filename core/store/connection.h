#pragma once

#include "core/store/dialect.h"
#include "core/store/place.h"

#include <chrono>
#include <memory>

namespace loadwarden {

struct ConnectionOptions {
    Access access = Access::write;
    Syncing syncing = Syncing::full;
    /// How long to wait for somebody else's transaction before giving up.
    std::chrono::milliseconds patience{5000};
};

/// One connection to the database of a journal, open for as long as it lives. To be used by the
/// thread that made it. It can do nothing by itself: ReadSnapshot reads with it, WriteTransaction
/// writes. A process needs a QCoreApplication, which loads the drivers.
class Connection {
public:
    /// Opens, says the dialect's settings and reads them back. Throws StoreError.
    explicit Connection(const StorePlace& place, const ConnectionOptions& options = {});
    ~Connection();
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;

    [[nodiscard]] const Dialect& dialect() const { return m_dialect; }
    [[nodiscard]] Access access() const { return m_options.access; }
    [[nodiscard]] std::chrono::milliseconds patience() const { return m_options.patience; }

private:
    friend class Statement;
    friend class ReadSnapshot;
    friend class WriteTransaction;
    friend class FileCopy;

    struct Impl;

    /// Runs one statement outside the cache, and gives the first column of its first row, empty
    /// when it has none.
    std::string say(const std::string& sql);

    StorePlace m_place;
    ConnectionOptions m_options;
    Dialect m_dialect;
    std::unique_ptr<Impl> m_impl;
};

} // namespace loadwarden

#pragma once

#include "core/store/connection.h"
#include "core/store/store_error.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <optional>
#include <string>
#include <utility>

/// Places for the store's tests.
namespace loadwarden::testing {

/// A new folder that goes with its owner.
class TempFolder {
public:
    TempFolder();
    ~TempFolder();
    TempFolder(const TempFolder&) = delete;
    TempFolder& operator=(const TempFolder&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }
    [[nodiscard]] std::filesystem::path operator/(const char* name) const { return m_path / name; }

private:
    std::filesystem::path m_path;
};

/// A PostgreSQL server of this test program's own, started at the first asking and stopped at the
/// end; nullopt, with the reason printed, when there is none on this computer.
[[nodiscard]] std::optional<PostgresServer> testServer();

/// Why there is no test server; empty when there is.
[[nodiscard]] std::string whyNoServer();

/// A place for a new journal: a file in the folder, or a schema on the test server.
[[nodiscard]] std::optional<StorePlace> newPlace(Dialect::Engine engine, const TempFolder& folder);

/// The fault with which something throws; nullopt when it throws nothing.
template <class Action>
std::optional<StoreFault> faultOf(const Action& action)
{
    try {
        action();
    } catch (const StoreError& error) {
        return error.fault();
    }
    return std::nullopt;
}

/// Tests that run on both engines.
class OnBothEngines : public ::testing::TestWithParam<Dialect::Engine> {
protected:
    void SetUp() override
    {
        const auto place = newPlace(GetParam(), m_folder);
        if (!place) {
            GTEST_SKIP() << whyNoServer();
        }
        m_place = *place;
    }

    [[nodiscard]] const StorePlace& place() const { return m_place; }
    [[nodiscard]] const TempFolder& folder() const { return m_folder; }

private:
    TempFolder m_folder;
    StorePlace m_place;
};

inline std::string engineName(const ::testing::TestParamInfo<Dialect::Engine>& info)
{
    return info.param == Dialect::Engine::sqlite ? "Sqlite" : "Postgres";
}

inline const auto bothEngines =
    ::testing::Values(Dialect::Engine::sqlite, Dialect::Engine::postgres);

} // namespace loadwarden::testing

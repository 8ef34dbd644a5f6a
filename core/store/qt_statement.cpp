#include "core/store/prepared_statement.h"

#include <QByteArray>
#include <QSqlError>
#include <QSqlQuery>
#include <QVariant>

#include <forward_list>
#include <utility>
#include <vector>

namespace loadwarden {
namespace {

class QtStatement final : public PreparedStatement {
public:
    QtStatement(const QSqlDatabase& database, const Dialect& dialect, std::string_view sql)
        : PreparedStatement(dialect, sql), m_query(database)
    {
        m_query.setForwardOnly(true);
        if (!m_query.prepare(QString::fromUtf8(sql.data(), static_cast<qsizetype>(sql.size())))) {
            failNow();
        }
    }

    void bind(std::string_view name, std::int64_t value) override
    {
        m_query.bindValue(known(name), QVariant::fromValue<qlonglong>(value));
    }
    void bindText(std::string_view name, std::string_view text) override
    {
        m_query.bindValue(known(name),
                          QString::fromUtf8(dataOf(text), static_cast<qsizetype>(text.size())));
    }
    void bindBytes(std::string_view name, std::string_view bytes) override
    {
        m_query.bindValue(known(name),
                          QByteArray(dataOf(bytes), static_cast<qsizetype>(bytes.size())));
    }

    bool step() override
    {
        if (!m_isRunning) {
            if (!m_query.exec()) {
                failNow();
            }
            m_isRunning = true;
        }
        m_bytes.clear();
        if (m_query.isSelect() && m_query.next()) {
            return true;
        }
        if (m_query.lastError().isValid()) {
            failNow();
        }
        finish();
        return false;
    }
    void finish() noexcept override
    {
        m_query.finish();
        m_bytes.clear();
        m_isRunning = false;
    }

    bool isNull(int column) override { return m_query.isNull(column); }
    std::int64_t integer(int column) override
    {
        const QVariant value = m_query.value(column);
        bool isNumber = false;
        const std::int64_t number = value.toLongLong(&isNumber);
        if (!isNumber || value.isNull() || value.typeId() == QMetaType::QString) {
            wrongType(column);
        }
        return number;
    }
    std::string text(int column) override
    {
        const QVariant value = m_query.value(column);
        if (value.typeId() != QMetaType::QString || value.isNull()) {
            wrongType(column);
        }
        return value.toString().toStdString();
    }
    std::string_view bytes(int column) override
    {
        const QVariant value = m_query.value(column);
        if (value.typeId() != QMetaType::QByteArray || value.isNull()) {
            wrongType(column);
        }
        const QByteArray& bytes = m_bytes.emplace_front(value.toByteArray());
        return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
    }

private:
    /// A bind's name as Qt takes it.
    [[nodiscard]] const QString& known(std::string_view name)
    {
        for (const auto& [each, asQt] : m_names) {
            if (each == name) {
                return asQt;
            }
        }
        check(name);
        const QString asQt = QString::fromLatin1(name.data(), static_cast<qsizetype>(name.size()));
        return m_names.emplace_back(name, asQt).second;
    }

    /// Qt would take a value for a name that the statement does not have, and forget it.
    void check(std::string_view name) const
    {
        const auto isPart = [](char c) {
            return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')
                   || c == '_';
        };
        for (auto at = sql().find(name); at != std::string::npos; at = sql().find(name, at + 1)) {
            const std::size_t behind = at + name.size();
            if (behind == sql().size() || !isPart(sql()[behind])) {
                return;
            }
        }
        noBind(name);
    }

    [[noreturn]] void failNow() const
    {
        const QSqlError error = m_query.lastError();
        std::string words = error.databaseText().simplified().toStdString();
        if (words.empty()) {
            words = error.driverText().simplified().toStdString();
        }
        fail(error.nativeErrorCode().toStdString(), std::move(words));
    }

    QSqlQuery m_query;
    std::vector<std::pair<std::string, QString>> m_names; ///< by which it was asked for
    std::forward_list<QByteArray> m_bytes;                ///< of this row
    bool m_isRunning = false;
};

} // namespace

std::unique_ptr<PreparedStatement> prepareByQt(const QSqlDatabase& database, const Dialect& dialect,
                                               std::string_view sql)
{
    return std::make_unique<QtStatement>(database, dialect, sql);
}

} // namespace loadwarden

#pragma once

#include "core/desk/records.h"
#include "core/words/say.h"

#include <QAbstractTableModel>

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

namespace loadwarden::ui {

/// The loads and tests that were found, the newest first. However many they are, only those near
/// the view are asked for and kept: older ones come when the view nears its end, and what left the
/// view far behind is asked for anew by its place when it is seen again.
class RecordsModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column : std::uint8_t { when, sterilizer, lot, what, signedAs, signedBy, columns };

    /// Asks for one look behind a place and calls `done` with it, later and once; nullopt: that
    /// failed, and somebody was told.
    using Done = std::function<void(std::optional<RecordPage>)>;
    using Source = std::function<void(const CyclePlace& behind, Done done)>;
    /// How a name is said of an id.
    using NameOf = std::function<QString(const std::string& id)>;

    RecordsModel(Source source, NameOf nameOf, QObject* parent = nullptr);

    /// How times are said.
    void setStyle(const HouseStyle& style) { m_style = style; }

    /// Begins anew with the newest.
    void search();
    /// Begins anew where the newest are not what they were.
    void refresh();
    /// Looks further back where it had stopped.
    void goOn();
    /// Which rows are in the view, both included.
    void showing(int first, int last);

    /// Nullptr where it is not here, or not here now.
    [[nodiscard]] const RecordRow* at(int row) const;

    [[nodiscard]] bool isLooking() const { return m_isLooking; }
    /// Whether there are no older ones.
    [[nodiscard]] bool isEnd() const { return m_isEnd; }
    /// Whether it stopped looking though older ones may fit: somebody has to ask for more.
    [[nodiscard]] bool hasStopped() const { return m_hasStopped; }
    [[nodiscard]] bool isByTime() const { return m_isByTime; }
    /// How far back it has looked; nullopt: nothing was looked at.
    [[nodiscard]] std::optional<Instant> lookedBackTo() const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] bool canFetchMore(const QModelIndex& parent) const override;
    void fetchMore(const QModelIndex& parent) override;

signals:
    /// What isLooking(), isEnd(), hasStopped() or lookedBackTo() say has changed.
    void looked();

private:
    /// Rows that came together. They are asked for again by where they begin.
    struct Chunk {
        CyclePlace behind;
        CyclePlace last;
        int first = 0;
        int count = 0;
        std::vector<RecordRow> rows; ///< empty: not kept
    };

    void look();
    void came(const CyclePlace& behind, std::optional<RecordPage> page);
    void fill();
    void filled(std::size_t chunk, std::optional<RecordPage> page);
    void letGo();
    [[nodiscard]] std::size_t chunkOf(int row) const;
    [[nodiscard]] QString textOf(const RecordRow& row, int column) const;

    Source m_source;
    NameOf m_nameOf;
    HouseStyle m_style;
    std::vector<Chunk> m_chunks;
    std::vector<std::size_t> m_kept; ///< the chunks whose rows are here
    CyclePlace m_place;              ///< the next look goes on behind it
    int m_rows = 0;
    int m_firstSeen = 0;
    int m_lastSeen = 0;
    int m_looksLeft = 0;
    std::uint64_t m_search = 0; ///< answers to older ones are not taken
    bool m_isLooking = false;
    bool m_isFilling = false;
    bool m_isRefreshing = false;
    bool m_isEnd = true;
    bool m_hasStopped = false;
    bool m_isByTime = false;
    bool m_hasLooked = false;
};

} // namespace loadwarden::ui

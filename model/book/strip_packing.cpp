#include "model/book/strip_packing.h"

#include <algorithm>
#include <functional>
#include <optional>

namespace model {
namespace {

constexpr double packing_slack = 1.0e-9;

struct PackedRow {
    double top = 0.0;
    double height = 0.0;
    double used = 0.0;  // of its width
};

// Rows of one sheet; the last one can still become higher.
class PackedSheet {
public:
    PackedSheet(const PackedSize& size, double gap) : size_{size}, gap_{gap} {}

    std::optional<PackedPlace> take(const PackedSize& it) {
        const auto row = std::ranges::find_if(rows_, [&](const PackedRow& row_of) {
            return row_of.used + gap_ + it.width <= size_.width + packing_slack &&
                   it.height <= most_height(row_of) + packing_slack;
        });
        if (row != rows_.end()) return take_in(*row, it);
        const double top = rows_.empty() ? 0.0 : rows_.back().top + rows_.back().height + gap_;
        if (!rows_.empty() && top + it.height > size_.height + packing_slack) return std::nullopt;
        rows_.push_back({top, it.height, -gap_});
        return take_in(rows_.back(), it);
    }

private:
    double most_height(const PackedRow& row) const {
        return &row == &rows_.back() ? size_.height - row.top : row.height;
    }

    PackedPlace take_in(PackedRow& row, const PackedSize& it) const {
        const PackedPlace place{0, row.used + gap_, row.top};
        row.used += gap_ + it.width;
        row.height = std::max(row.height, it.height);
        return place;
    }

    PackedSize size_;
    double gap_;
    std::vector<PackedRow> rows_;
};

class GroupPacking {
public:
    GroupPacking(const std::vector<PackedSize>& sizes, const PackedSize& sheet, double gap)
        : sizes_{sizes}, places_(sizes.size()), empty_{sheet, gap} {}

    void put_group(std::size_t from, std::size_t to) {
        for (std::size_t i = 0; i < sheets_.size(); ++i) {
            PackedSheet trial = sheets_[i];
            if (!has_room_for_all(trial, i, from, to)) continue;
            sheets_[i] = trial;
            return;
        }
        put_one_by_one(from, to);
    }

    std::vector<PackedPlace> places() && { return std::move(places_); }

private:
    bool has_room_for_all(PackedSheet& sheet,
                          std::size_t number,
                          std::size_t from,
                          std::size_t to) {
        for (std::size_t i = from; i < to; ++i) {
            const auto place = sheet.take(sizes_[i]);
            if (!place) return false;
            places_[i] = {number, place->left, place->top};
        }
        return true;
    }

    // From the last sheet on, none before the one that comes before it.
    void put_one_by_one(std::size_t from, std::size_t to) {
        std::size_t number = sheets_.empty() ? 0 : sheets_.size() - 1;
        for (std::size_t i = from; i < to;) {
            if (number == sheets_.size()) sheets_.push_back(empty_);
            const auto place = sheets_[number].take(sizes_[i]);
            if (place) {
                places_[i++] = {number, place->left, place->top};
            } else {
                ++number;
            }
        }
    }

    const std::vector<PackedSize>& sizes_;
    std::vector<PackedPlace> places_;
    PackedSheet empty_;
    std::vector<PackedSheet> sheets_;
};

struct Group {
    std::size_t from = 0;
    std::size_t to = 0;
    double height = 0.0;  // of its highest
};

std::vector<Group> groups_of(const std::vector<PackedSize>& sizes,
                             const std::vector<std::size_t>& group_of) {
    std::vector<Group> groups;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        if (i == 0 || group_of[i] != group_of[i - 1]) groups.push_back({i, i, 0.0});
        groups.back().to = i + 1;
        groups.back().height = std::max(groups.back().height, sizes[i].height);
    }
    return groups;
}

std::size_t sheets_of(const std::vector<PackedPlace>& places) {
    std::size_t count = 0;
    for (const auto& place : places) count = std::max(count, place.sheet + 1);
    return count;
}

}  // namespace

std::vector<PackedPlace> packed_in_groups(const std::vector<PackedSize>& sizes,
                                          const std::vector<std::size_t>& group_of,
                                          const PackedSize& sheet,
                                          double gap) {
    auto groups = groups_of(sizes, group_of);
    const auto packed = [&] {
        GroupPacking packing(sizes, sheet, gap);
        for (const auto& group : groups) packing.put_group(group.from, group.to);
        return std::move(packing).places();
    };
    auto in_order = packed();
    std::ranges::stable_sort(groups, std::ranges::greater{}, &Group::height);
    auto highest_first = packed();
    return sheets_of(highest_first) < sheets_of(in_order) ? highest_first : in_order;
}

}  // namespace model

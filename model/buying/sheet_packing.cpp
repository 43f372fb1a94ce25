#include "model/buying/sheet_packing.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>
#include <utility>

namespace model {
namespace {

using engine::Nm;
using Size = std::array<Nm, 2>;

enum class Order { area, longer_side, shorter_side };
enum class Fit { short_side, area };
enum class Split { shorter_rest, longer_rest };

struct Rules {
    Order order = Order::area;
    Fit fit = Fit::short_side;
    Split split = Split::shorter_rest;
    std::size_t sheet = 0;  // that is opened where it serves
};

double area_of(const Size& size) {
    return static_cast<double>(size[0]) * static_cast<double>(size[1]);
}

bool fits_in(const Size& part, const Size& room) {
    return part[0] <= room[0] && part[1] <= room[1];
}

Size turned(const Size& size) { return {size[1], size[0]}; }

bool fits_on(const Size& part, const SheetOffer& sheet) {
    return fits_in(part, sheet.size) || (sheet.may_turn && fits_in(turned(part), sheet.size));
}

// A rectangle of a sheet that is still whole. The kerf is counted with each part, to its right and
// above it, and with the sheet itself: so it lies between parts, but takes nothing at the edge.
struct Room {
    Size at{};
    Size size{};
};

struct Choice {
    std::size_t room = 0;
    bool is_turned = false;
    double waste = std::numeric_limits<double>::max();  // the less the better the part fits
    bool is_found() const { return waste < std::numeric_limits<double>::max(); }
};

class OpenSheet {
public:
    OpenSheet(const SheetOffer& offer, std::size_t index, Nm kerf)
        : may_turn_{offer.may_turn}, kerf_{kerf} {
        packed_.offer = index;
        rooms_.push_back({{0, 0}, {offer.size[0] + kerf, offer.size[1] + kerf}});
    }

    Choice best_for(const Size& part, Fit fit) const {
        Choice best;
        for (std::size_t i = 0; i < rooms_.size(); ++i) {
            consider(best, i, with_kerf(part), false, fit);
            if (may_turn_ && part[0] != part[1])
                consider(best, i, with_kerf(turned(part)), true, fit);
        }
        return best;
    }

    void put(std::size_t index, const Size& part, const Choice& choice, Split split) {
        const Room room = rooms_[choice.room];
        const Size size = with_kerf(choice.is_turned ? turned(part) : part);
        rooms_.erase(rooms_.begin() + static_cast<std::ptrdiff_t>(choice.room));
        packed_.parts.push_back({.part = index, .at = room.at, .is_turned = choice.is_turned});
        const Size rest{room.size[0] - size[0], room.size[1] - size[1]};
        const bool cuts_across = (rest[0] < rest[1]) == (split == Split::shorter_rest);
        add_room({room.at[0] + size[0], room.at[1]},
                 {rest[0], cuts_across ? size[1] : room.size[1]});
        add_room({room.at[0], room.at[1] + size[1]},
                 {cuts_across ? room.size[0] : size[0], rest[1]});
    }

    const PackedSheet& packed() const { return packed_; }

private:
    Size with_kerf(const Size& part) const { return {part[0] + kerf_, part[1] + kerf_}; }

    void consider(Choice& best, std::size_t room, const Size& part, bool is_turned, Fit fit) const {
        const Size& size = rooms_[room].size;
        if (!fits_in(part, size)) return;
        const auto rest = std::min(size[0] - part[0], size[1] - part[1]);
        const double waste =
            fit == Fit::area ? area_of(size) - area_of(part) : static_cast<double>(rest);
        if (waste < best.waste) best = {room, is_turned, waste};
    }

    void add_room(const Size& at, const Size& size) {
        if (size[0] > kerf_ && size[1] > kerf_) rooms_.push_back({at, size});
    }

    bool may_turn_;
    Nm kerf_;
    std::vector<Room> rooms_;
    PackedSheet packed_;
};

std::vector<std::size_t> parts_in_order(const PackingTask& task, Order order) {
    std::vector<std::size_t> parts(task.parts.size());
    std::iota(parts.begin(), parts.end(), std::size_t{0});
    const auto key = [&](std::size_t i) {
        const auto [shorter, longer] = std::minmax(task.parts[i][0], task.parts[i][1]);
        const auto area = area_of(task.parts[i]);
        if (order == Order::area) return std::tuple{area, static_cast<double>(longer)};
        return std::tuple{static_cast<double>(order == Order::longer_side ? longer : shorter),
                          area};
    };
    std::ranges::stable_sort(parts, std::ranges::greater{}, key);
    return parts;
}

// What a sheet counts as: its price, or its area in mm2 where not all have one.
std::vector<std::int64_t> weights_of(const PackingTask& task) {
    const bool is_priced = std::ranges::all_of(
        task.sheets, [](const SheetOffer& sheet) { return sheet.price.has_value(); });
    std::vector<std::int64_t> weights;
    for (const auto& sheet : task.sheets) {
        weights.push_back(is_priced ? *sheet.price
                                    : static_cast<std::int64_t>(area_of(sheet.size) / 1e12));
    }
    return weights;
}

class Packer {
public:
    Packer(const PackingTask& task, const std::vector<std::int64_t>& weights, const Rules& rules)
        : task_{task}, weights_{weights}, rules_{rules} {
        for (const auto& sheet : task.sheets) left_.push_back(sheet.left);
    }

    Packing packing() {
        for (const auto part : parts_in_order(task_, rules_.order)) place(part);
        for (auto& sheet : open_) exchange(sheet);
        for (const auto& sheet : open_) result_.sheets.push_back(sheet.packed());
        return std::move(result_);
    }

private:
    void place(std::size_t part) {
        const Size& size = task_.parts[part];
        Choice best;
        std::size_t on = 0;
        for (std::size_t i = 0; i < open_.size(); ++i) {
            const auto choice = open_[i].best_for(size, rules_.fit);
            if (choice.waste >= best.waste) continue;
            best = choice;
            on = i;
        }
        if (!best.is_found()) {
            if (!open_sheet_for(part)) return;
            on = open_.size() - 1;
            best = open_[on].best_for(size, rules_.fit);
        }
        open_[on].put(part, size, best, rules_.split);
    }

    bool open_sheet_for(std::size_t part) {
        const auto fits = [&](std::size_t i) {
            return fits_on(task_.parts[part], task_.sheets[i]);
        };
        std::size_t chosen = task_.sheets.size();
        bool fits_any = false;
        for (std::size_t i = 0; i < task_.sheets.size(); ++i) {
            if (!fits(i)) continue;
            fits_any = true;
            if (left_[i] == 0) continue;
            if (chosen == task_.sheets.size() || weights_[i] < weights_[chosen]) chosen = i;
        }
        if (chosen < task_.sheets.size() && fits(rules_.sheet) && left_[rules_.sheet] > 0)
            chosen = rules_.sheet;
        if (chosen == task_.sheets.size()) {
            (fits_any ? result_.left_out : result_.too_large).push_back(part);
            return false;
        }
        --left_[chosen];
        open_.emplace_back(task_.sheets[chosen], chosen, task_.kerf);
        return true;
    }

    // For the cheapest sheet that holds the same parts.
    void exchange(OpenSheet& sheet) {
        const auto now = sheet.packed().offer;
        auto best = now;
        OpenSheet better = sheet;
        for (std::size_t i = 0; i < task_.sheets.size(); ++i) {
            if (left_[i] == 0 || weights_[i] >= weights_[best]) continue;
            OpenSheet other{task_.sheets[i], i, task_.kerf};
            if (!holds_all(other, sheet.packed().parts)) continue;
            best = i;
            better = std::move(other);
        }
        if (best == now) return;
        ++left_[now];
        --left_[best];
        sheet = std::move(better);
    }

    bool holds_all(OpenSheet& sheet, const std::vector<PackedPart>& parts) const {
        for (const auto& part : parts) {
            const Size& size = task_.parts[part.part];
            const auto choice = sheet.best_for(size, rules_.fit);
            if (!choice.is_found()) return false;
            sheet.put(part.part, size, choice, rules_.split);
        }
        return true;
    }

    const PackingTask& task_;
    const std::vector<std::int64_t>& weights_;
    Rules rules_;
    std::vector<int> left_;
    std::vector<OpenSheet> open_;
    Packing result_;
};

// Less is better.
std::tuple<std::size_t, std::int64_t, double, std::size_t> rating(
    const Packing& packing, const PackingTask& task, const std::vector<std::int64_t>& weights) {
    std::int64_t cost = 0;
    double area = 0.0;
    for (const auto& sheet : packing.sheets) {
        cost += weights[sheet.offer];
        area += area_of(task.sheets[sheet.offer].size);
    }
    return {packing.left_out.size(), cost, area, packing.sheets.size()};
}

std::vector<Rules> all_rules(std::size_t sheets) {
    std::vector<Rules> all;
    for (std::size_t sheet = 0; sheet < sheets; ++sheet) {
        for (const auto order : {Order::area, Order::longer_side, Order::shorter_side}) {
            for (const auto fit : {Fit::short_side, Fit::area}) {
                for (const auto split : {Split::shorter_rest, Split::longer_rest})
                    all.push_back({order, fit, split, sheet});
            }
        }
    }
    return all;
}

}  // namespace

Packing packing_of(const PackingTask& task) {
    Packing best;
    if (task.sheets.empty()) {
        for (std::size_t i = 0; i < task.parts.size(); ++i) best.too_large.push_back(i);
        return best;
    }
    const auto weights = weights_of(task);
    bool is_first = true;
    for (const auto& rules : all_rules(task.sheets.size())) {
        auto packing = Packer{task, weights, rules}.packing();
        if (!is_first && rating(packing, task, weights) >= rating(best, task, weights)) continue;
        best = std::move(packing);
        is_first = false;
    }
    return best;
}

}  // namespace model

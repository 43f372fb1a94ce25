#include "model/buying/sheet_packing.h"

#include "model/buying/open_sheet.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>
#include <utility>

namespace model {
namespace {

using Size = SheetSize;

enum class Order { area, longer_side, shorter_side };

struct Rules {
    Order order = Order::area;
    PartFit fit = PartFit::short_side;
    RestSplit split = RestSplit::shorter_rest;
    std::size_t sheet = 0;  // that is opened where it serves
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

// What a sheet counts as: its price, or its area in mm2 where not all to be bought have one.
std::vector<std::int64_t> weights_of(const PackingTask& task) {
    const bool is_priced = std::ranges::all_of(
        task.sheets, [](const SheetOffer& it) { return it.is_paid || it.price.has_value(); });
    std::vector<std::int64_t> weights;
    for (const auto& sheet : task.sheets) {
        weights.push_back(sheet.is_paid ? 0
                          : is_priced   ? *sheet.price
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
        RoomChoice best;
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
            for (const auto fit : {PartFit::short_side, PartFit::area}) {
                for (const auto split : {RestSplit::shorter_rest, RestSplit::longer_rest})
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

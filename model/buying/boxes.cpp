#include "model/buying/boxes.h"

#include <algorithm>
#include <limits>
#include <tuple>
#include <utility>

namespace model {
namespace {

struct Outlay {
    Cents cost = std::numeric_limits<Cents>::max();
    std::int64_t count = 0;
    std::int64_t boxes = 0;

    bool is_possible() const { return cost < std::numeric_limits<Cents>::max(); }
    auto operator<=>(const Outlay&) const = default;
};

// So many boxes of one size, taken together; limits are made of doubling numbers of boxes.
struct Lot {
    std::size_t offer = 0;
    int boxes = 1;
    bool is_unlimited = false;
};

std::vector<Lot> lots_of(const std::vector<BoxPrice>& offers, int wanted) {
    std::vector<Lot> lots;
    for (std::size_t i = 0; i < offers.size(); ++i) {
        const int most = wanted / offers[i].count + 1;
        int left = std::min(offers[i].limit.value_or(most), most);
        if (left == most) {
            lots.push_back({i, 1, true});
            continue;
        }
        for (int boxes = 1; left > 0; boxes *= 2) {
            const int taken = std::min(boxes, left);
            lots.push_back({i, taken, false});
            left -= taken;
        }
    }
    return lots;
}

// The least outlay for each number of fasteners, lot by lot.
class BoxSearch {
public:
    BoxSearch(const std::vector<BoxPrice>& offers, int wanted)
        : offers_{offers}, lots_{lots_of(offers, wanted)} {
        best_.resize(static_cast<std::size_t>(wanted) + 1);
        best_[0] = {0, 0, 0};
        for (std::size_t lot = 0; lot < lots_.size(); ++lot) offer(lot);
    }

    bool is_possible() const { return best_.back().is_possible(); }

    std::vector<int> boxes() const {
        std::vector<int> taken(offers_.size());
        auto left = best_.size() - 1;
        for (auto lot = lots_.size(); lot-- > 0;) {
            while (left > 0 && takes_[lot][left]) {
                taken[lots_[lot].offer] += lots_[lot].boxes;
                left = without(lots_[lot], left);
                if (!lots_[lot].is_unlimited) break;
            }
        }
        return taken;
    }

private:
    std::int64_t held_by(const Lot& lot) const {
        return std::int64_t{offers_[lot.offer].count} * lot.boxes;
    }

    std::size_t without(const Lot& lot, std::size_t wanted) const {
        const auto held = static_cast<std::size_t>(held_by(lot));
        return held < wanted ? wanted - held : 0;
    }

    void offer(std::size_t index) {
        const auto& lot = lots_[index];
        takes_.emplace_back(best_.size());
        const auto consider = [&](std::size_t wanted) {
            const auto& rest = best_[without(lot, wanted)];
            if (!rest.is_possible()) return;
            const Outlay with{rest.cost + offers_[lot.offer].price.value_or(0) * lot.boxes,
                              rest.count + held_by(lot), rest.boxes + lot.boxes};
            if (with >= best_[wanted]) return;
            best_[wanted] = with;
            takes_[index][wanted] = true;
        };
        // Upwards a lot may be taken again and again, downwards once.
        for (std::size_t i = 1; i < best_.size(); ++i)
            consider(lot.is_unlimited ? i : best_.size() - i);
    }

    const std::vector<BoxPrice>& offers_;
    std::vector<Lot> lots_;
    std::vector<Outlay> best_;
    std::vector<std::vector<bool>> takes_;  // by lot and number wanted
};

// Those of the fastener that are weighed against each other, the largest first.
std::vector<BoxPrice> boxes_weighed(const std::string& fastener,
                                    const std::vector<BoxPrice>& offered) {
    std::vector<BoxPrice> boxes;
    for (const auto& box : offered) {
        if (box.fastener == fastener && box.count > 0) boxes.push_back(box);
    }
    const auto has_price = [](const BoxPrice& box) { return box.price.has_value(); };
    if (std::ranges::any_of(boxes, has_price))
        std::erase_if(boxes, [&](const BoxPrice& box) { return !has_price(box); });
    std::ranges::stable_sort(boxes, std::ranges::greater{}, &BoxPrice::count);
    return boxes;
}

std::int64_t most_to_be_had(const std::vector<BoxPrice>& boxes) {
    std::int64_t most = 0;
    for (const auto& box : boxes) {
        if (!box.limit) return std::numeric_limits<std::int64_t>::max();
        most += std::int64_t{box.count} * *box.limit;
    }
    return most;
}

}  // namespace

BoxChoice boxes_for(const std::string& fastener,
                    int needed,
                    int spares,
                    const std::vector<BoxPrice>& offered) {
    BoxChoice choice{.fastener = fastener, .needed = needed, .spares = spares, .bought = {}};
    const auto boxes = boxes_weighed(fastener, offered);
    const int asked = needed + spares;
    const int wanted = static_cast<int>(std::min<std::int64_t>(asked, most_to_be_had(boxes)));
    choice.missing = asked - wanted;
    if (boxes.empty() || wanted <= 0) return choice;
    const auto taken = BoxSearch{boxes, wanted}.boxes();
    std::int64_t bought = 0;
    if (boxes[0].price) choice.cost = 0;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        if (taken[i] == 0) continue;
        choice.bought.push_back({boxes[i].count, boxes[i].price, taken[i]});
        bought += std::int64_t{boxes[i].count} * taken[i];
        if (choice.cost) *choice.cost += *boxes[i].price * taken[i];
    }
    choice.over = static_cast<int>(bought - wanted);
    return choice;
}

std::vector<BoxChoice> box_choices(const std::vector<FastenerRow>& rows, const PriceList* prices) {
    static const std::vector<BoxPrice> none;
    std::vector<BoxChoice> choices;
    for (const auto& row : rows) {
        choices.push_back(boxes_for(row.fastener, row.needed, row.spares,
                                    prices == nullptr ? none : prices->boxes));
    }
    return choices;
}

}  // namespace model

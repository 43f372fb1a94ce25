#include "model/book/leader_labels.h"

#include "engine/drawing/lettering.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace model {
namespace {

using engine::PagePoint;
using engine::TextAnchor;

constexpr double text_size = 3.8;   // mm, readable at arm's length
constexpr double line_pitch = 5.0;  // between texts of a column
constexpr double away = 5.0;        // from the picture to the texts

double widest(const std::vector<LeaderLabel>& labels) {
    double width = 0.0;
    for (const auto& label : labels) {
        width =
            std::max(width, engine::text_width(label.text, text_size, engine::LetterWeight::bold));
    }
    return width;
}

enum class Side { left, right, top };

// A place that one text may take.
struct Slot {
    Side side = Side::left;
    PagePoint at;  // where its line begins
};

std::vector<Slot> slots_round(const engine::PageBox& box, const LeaderSides& sides, double width) {
    std::vector<Slot> slots;
    const auto column = [&](Side side, double x) {
        const auto count = static_cast<int>(box.height / line_pitch);
        for (int i = 0; i < count; ++i) {
            slots.push_back({side, {x, box.top + (i + 0.5) * box.height / count}});
        }
    };
    if (sides.left) column(Side::left, box.left - away);
    if (sides.right) column(Side::right, box.left + box.width + away);
    if (sides.top) {
        const auto count = static_cast<int>(box.width / (width + 2.5));
        for (int i = 0; i < count; ++i) {
            slots.push_back(
                {Side::top, {box.left + (i + 0.5) * box.width / count, box.top - away}});
        }
    }
    return slots;
}

double squared(const PagePoint& a, const PagePoint& b) {
    return (a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y);
}

double turn(const PagePoint& a, const PagePoint& b, const PagePoint& c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool cross(const PagePoint& a, const PagePoint& b, const PagePoint& c, const PagePoint& d) {
    return turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0;
}

// A label in its place, with the nearest of the points that it may lead to.
struct Placed {
    std::size_t slot = 0;
    PagePoint to;
};

PagePoint nearest(const LeaderLabel& label, const Slot& slot) {
    return *std::ranges::min_element(label.to, {},
                                     [&](const PagePoint& p) { return squared(p, slot.at); });
}

// The nearest free slot for each, the first ones first; then those whose lines cross change places,
// which makes the lines shorter together each time and so comes to an end.
std::vector<Placed> placed(const std::vector<LeaderLabel>& labels, const std::vector<Slot>& slots) {
    const std::size_t count = std::min(labels.size(), slots.size());
    std::vector<Placed> all;
    std::vector<bool> is_taken(slots.size(), false);
    for (std::size_t i = 0; i < count; ++i) {
        std::optional<std::size_t> best;
        PagePoint to;
        for (std::size_t s = 0; s < slots.size(); ++s) {
            if (is_taken[s]) continue;
            const auto point = nearest(labels[i], slots[s]);
            if (best && squared(point, slots[s].at) >= squared(to, slots[*best].at)) continue;
            best = s;
            to = point;
        }
        is_taken[*best] = true;
        all.push_back({*best, to});
    }
    bool has_changed = true;
    for (int round = 0; has_changed && round < 200; ++round) {
        has_changed = false;
        for (std::size_t i = 0; i < count; ++i) {
            for (std::size_t k = i + 1; k < count; ++k) {
                if (!cross(all[i].to, slots[all[i].slot].at, all[k].to, slots[all[k].slot].at))
                    continue;
                std::swap(all[i].slot, all[k].slot);
                for (const std::size_t it : {i, k})
                    all[it].to = nearest(labels[it], slots[all[it].slot]);
                has_changed = true;
            }
        }
    }
    return all;
}

void draw_label(engine::Page& page,
                const std::string& text,
                const PagePoint& to,
                const Slot& slot) {
    page.draw_line(slot.at, to, {.width = engine::thin_width});
    // A leader that ends within an outline ends with a dot (ISO 128-2, from memory).
    constexpr double r = 0.55;
    page.draw_polygon({{to.x - r, to.y}, {to.x, to.y - r}, {to.x + r, to.y}, {to.x, to.y + r}},
                      engine::filled(engine::Ink::black));
    const bool is_top = slot.side == Side::top;
    const double beside = slot.side == Side::left ? -0.8 : slot.side == Side::right ? 0.8 : 0.0;
    page.draw_text({slot.at.x + beside, slot.at.y + (is_top ? -0.8 : 0.36 * text_size)}, text,
                   {.size = text_size,
                    .weight = engine::LetterWeight::bold,
                    .anchor = is_top                    ? TextAnchor::middle
                              : slot.side == Side::left ? TextAnchor::end
                                                        : TextAnchor::start});
}

}  // namespace

double leader_room_beside(const std::vector<LeaderLabel>& labels) {
    return away + 1.0 + widest(labels);
}

std::size_t draw_leader_labels(engine::Page& page,
                               const std::vector<LeaderLabel>& labels,
                               const engine::PageBox& picture,
                               const LeaderSides& sides) {
    const auto slots = slots_round(picture, sides, widest(labels));
    const auto all = placed(labels, slots);
    for (std::size_t i = 0; i < all.size(); ++i)
        draw_label(page, labels[i].text, all[i].to, slots[all[i].slot]);
    return all.size();
}

}  // namespace model

#include "model/book/mark_layout.h"

#include "engine/drawing/lettering.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace model {
namespace {

constexpr std::array scales{1.0, 2.0, 2.5, 5.0, 10.0, 20.0, 50.0};  // ISO 5455, and 2.5
constexpr double bar_width = 48.0;                                  // paper, at most
constexpr double least_bar_width = 20.0;  // below that holes are no longer told apart
constexpr double sheet_width = 90.0;
constexpr double wide_bar = 62.0;     // where it is short
constexpr double short_piece = 60.0;  // mm
constexpr double unbroken = 76.0;     // paper along a piece that needs no break
constexpr std::size_t few_breaks = 3;
constexpr double shortest_side = 8.0;  // beside a piece, where it has no numbers

// Sloping edges are bent by a break: what is cut to its outline has none.
bool can_break(const MarkFacts& facts) { return !facts.is_sheet(); }

// A slope has many places, so that it is no blank length to be broken out.
void add_slope(std::vector<double>& all, double from, double to) {
    constexpr double step = 8.0;  // mm of the piece
    const auto count = static_cast<int>(std::abs(to - from) / step);
    for (int i = 1; i <= count; ++i) all.push_back(from + (to - from) * i / (count + 1));
}

std::vector<double> features_of(const MarkFacts& facts) {
    std::vector<double> all{0.0, facts.flat.length};
    for (const auto& hole : facts.flat.holes) all.push_back(hole.down);
    for (const auto& loop : facts.flat.loops) {
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const auto& from = loop[i];
            const auto& to = loop[(i + 1) % loop.size()];
            all.push_back(from[1]);
            if (std::abs(to[0] - from[0]) > 1e-3) add_slope(all, from[1], to[1]);
        }
    }
    return all;
}

double room_for(const MarkOrdinates& ordinates, const MarkRoom& room) {
    const auto numbers = std::max(ordinates.left.size(), ordinates.right.size());
    return std::min(std::max(room.wanted, MarkLayout::pitch * static_cast<double>(numbers)),
                    room.most);
}

// What is drawn from one side alone has its numbers at both, in turn, where they are many.
void share_sides(MarkOrdinates& ordinates, const MarkRoom& room) {
    const double needed = MarkLayout::pitch * static_cast<double>(ordinates.left.size());
    if (!ordinates.right.empty() || needed <= room.most) return;
    std::vector<Ordinate> left;
    for (std::size_t i = 0; i < ordinates.left.size(); ++i) {
        const bool stays = i % 2 == 0 || ordinates.left[i].is_end;
        (stays ? left : ordinates.right).push_back(ordinates.left[i]);
    }
    ordinates.left = std::move(left);
}

// Beyond what there is room for only the table tells them.
bool drop_crowded(std::vector<Ordinate>& ordinates, double room) {
    const auto most = static_cast<std::size_t>(room / MarkLayout::pitch);
    if (ordinates.size() <= most || most < 2) return false;
    const std::size_t each = (ordinates.size() + most - 1) / most;
    std::vector<Ordinate> kept;
    for (std::size_t i = 0; i < ordinates.size(); ++i) {
        const bool is_last = i + 1 == ordinates.size();
        if (i % each == 0 && !(is_last && ordinates[i].is_end)) kept.push_back(ordinates[i]);
        if (is_last && ordinates[i].is_end) kept.push_back(ordinates[i]);
    }
    ordinates = std::move(kept);
    return true;
}

double scale_of_sheet(const MarkFacts& facts, double room, double most) {
    for (const double scale : scales) {
        const double longest = scale > 2.0 ? std::min(std::max(room, 150.0), most) : room;
        if (facts.flat.width / scale <= sheet_width && facts.flat.length / scale <= longest)
            return scale;
    }
    return std::max(
        {facts.flat.width / sheet_width, facts.flat.length / std::min(150.0, most), scales.back()});
}

struct ScaleAndRoom {
    double scale = 1.0;
    double room = 0.0;
};

// What a piece takes with no more than a few breaks.
double room_with_few_breaks(std::vector<double> features, double scale) {
    constexpr double broken = 12.0;  // mm of paper
    std::sort(features.begin(), features.end());
    std::vector<double> gaps;
    for (std::size_t i = 1; i < features.size(); ++i)
        gaps.push_back((features[i] - features[i - 1]) / scale);
    std::sort(gaps.rbegin(), gaps.rend());
    const double next = gaps.size() > few_breaks ? gaps[few_breaks] : 0.0;
    double room = 0.0;
    for (std::size_t i = 0; i < gaps.size(); ++i)
        room += i < few_breaks ? std::min(gaps[i], std::max(broken, next)) : gaps[i];
    return room;
}

// The largest that is as wide as wanted, unless a smaller one, or more room, spares breaks.
ScaleAndRoom scale_of_bar(const MarkFacts& facts,
                          const std::vector<double>& features,
                          double room,
                          double most) {
    const double widest = facts.flat.length <= short_piece ? wide_bar : bar_width;
    std::vector<double> usable;
    for (const double scale : scales) {
        const double width = facts.flat.width / scale;
        if (width <= widest && (usable.empty() || width >= least_bar_width))
            usable.push_back(scale);
    }
    if (usable.empty()) return {facts.flat.width / bar_width, room};
    for (const double scale : usable) {
        const double whole = facts.flat.length / scale;
        if (whole <= std::min(unbroken, most)) return {scale, std::max(room, whole + 0.01)};
        if (MarkLengthwise(features, scale, room).breaks().size() <= few_breaks)
            return {scale, room};
    }
    for (const double scale : usable) {
        const double needed = room_with_few_breaks(features, scale) + 0.01;
        if (needed <= most) return {scale, needed};
    }
    return {usable.front(), room};
}

MarkLengthwise lengthwise_of(const MarkFacts& facts,
                             std::vector<double> features,
                             double scale,
                             double room) {
    if (!can_break(facts)) room = facts.flat.length / scale + 1.0;
    return {std::move(features), scale, room};
}

double reach_of(const std::vector<Ordinate>& ordinates) {
    double reach = 0.0;
    for (const auto& it : ordinates) {
        double width = engine::text_width(
            it.text, MarkLayout::number_size,
            it.is_end ? engine::LetterWeight::bold : engine::LetterWeight::regular);
        if (!it.numbers.empty())
            width += 2.0 + engine::text_width(it.numbers, MarkLayout::hole_size);
        reach = std::max(reach, width);
    }
    return reach == 0.0 ? shortest_side : reach + MarkLayout::leader + 1.0;
}

// Each as low as it has room, from the left.
void lay_names(MarkLayout& layout, const MarkFacts& facts) {
    std::vector<double> ends;  // of each line so far
    for (const auto& wall : facts.flat.walls) {
        const double middle = (wall.left() + wall.right()) / 2 / layout.scale;
        const double half = engine::text_width(wall.name, MarkLayout::name_size) / 2;
        std::size_t level = 0;
        while (level < ends.size() && middle - half < ends[level] + 1.5) ++level;
        if (level == ends.size()) ends.push_back(0.0);
        ends[level] = middle + half;
        layout.name_levels.push_back(static_cast<int>(level));
    }
    if (!ends.empty())
        layout.above += MarkLayout::name_pitch * static_cast<double>(ends.size() - 1);
}

// Side by side where they fit, else turned by a quarter.
void lay_below(MarkLayout& layout) {
    layout.has_more = drop_crowded(layout.ordinates.below, layout.width()) || layout.has_more;
    double widest = 0.0;
    for (const auto& it : layout.ordinates.below)
        widest = std::max(widest, engine::text_width(it.text, MarkLayout::number_size));
    const auto count = static_cast<double>(layout.ordinates.below.size());
    if (count == 0.0) return;
    layout.below_pitch = widest + 2.5;
    layout.is_turned_below = count * layout.below_pitch > layout.width();
    if (layout.is_turned_below) layout.below_pitch = MarkLayout::pitch;
    layout.below_room = MarkLayout::below_leader + 2.0 +
                        (layout.is_turned_below ? widest : MarkLayout::number_size);
}

}  // namespace

MarkLayout mark_layout(const Project& project,
                       const Resolved& resolved,
                       const MarkFacts& facts,
                       const MarkRoom& room) {
    auto ordinates = mark_ordinates(project, resolved, facts);
    share_sides(ordinates, room);
    const auto features = features_of(facts);
    const double wanted = room_for(ordinates, room);
    const auto [scale, along] =
        can_break(facts) ? scale_of_bar(facts, features, wanted, room.most)
                         : ScaleAndRoom{scale_of_sheet(facts, wanted, room.most), wanted};
    MarkLayout layout{.ordinates = std::move(ordinates),
                      .scale = scale,
                      .lengthwise = lengthwise_of(facts, features, scale, along)};
    const double reach = layout.lengthwise.height() + 8.0;
    for (auto* side : {&layout.ordinates.left, &layout.ordinates.right})
        layout.has_more = drop_crowded(*side, reach) || layout.has_more;
    layout.piece_width = facts.flat.width / scale;
    lay_names(layout, facts);
    layout.left_room = reach_of(layout.ordinates.left);
    layout.right_room = reach_of(layout.ordinates.right);
    lay_below(layout);
    return layout;
}

}  // namespace model

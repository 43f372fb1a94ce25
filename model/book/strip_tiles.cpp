#include "model/book/strip_tiles.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

constexpr double before_hole = 18.0;  // mm of paper before a first hole: words have room there
constexpr double beside_hole = 12.0;  // and beyond the last one
constexpr double least_blank = 90.0;  // mm without holes that are worth a tape instead of paper
constexpr double least_end = 40.0;    // what is shorter up to the far end is kept, as a check
constexpr double overlap = 10.0;      // mm on either side of a joint
constexpr double least_paper = 60.0;  // mm: a shorter one could not get past its joints
constexpr double hair = 1.0e-6;

struct WallRange {
    std::size_t first = 0;
    std::size_t count = 1;
};

double width_of(const UnrolledPiece& flat, const WallRange& range) {
    return flat.walls[range.first + range.count - 1].right() - flat.walls[range.first].left();
}

// All walls on one paper, or as many side by side as it has room for.
std::vector<WallRange> wall_ranges(const UnrolledPiece& flat, double room) {
    std::vector<WallRange> ranges;
    for (std::size_t i = 0; i < flat.walls.size(); ++i) {
        if (!ranges.empty()) {
            WallRange longer = ranges.back();
            ++longer.count;
            if (width_of(flat, longer) <= room) {
                ranges.back() = longer;
                continue;
            }
        }
        ranges.push_back({i, 1});
    }
    return ranges;
}

class Cutting {
public:
    Cutting(const UnrolledPiece& flat, const TileRoom& room, WallRange range)
        : flat_{flat}, room_{room}, length_{std::max(room.length, least_paper)} {
        for (const auto& hole : flat.holes) {
            const bool is_on_it = hole.wall >= range.first && hole.wall < range.first + range.count;
            if (is_on_it) places_.push_back(hole.down);
        }
        std::sort(places_.begin(), places_.end());
        shape_.first_wall = range.first;
        shape_.wall_count = range.count;
    }

    std::vector<StripTile> tiles() && {
        if (places_.empty()) return {};
        begin_first();
        for (std::size_t i = 0; i < places_.size();) i = add_tile(i);
        return std::move(tiles_);
    }

private:
    // On a mark of the tape, at or before that place.
    engine::Length mark_before(double mm) const {
        const Nm step = std::max<Nm>(room_.step.nm(), 1);
        const Nm nm = static_cast<Nm>(std::llround(std::max(mm, 0.0) * 1.0e6));
        return engine::Length::from_nm(nm / step * step);
    }

    void begin_first() {
        shape_.start = {TileEnd::piece, {}};
        shape_.from = 0.0;
        if (places_.front() > least_blank) begin_behind_blank(places_.front());
    }

    void begin_behind_blank(double hole) {
        shape_.start = {TileEnd::blank, mark_before(hole - before_hole)};
        shape_.from = shape_.start.at.mm();
    }

    // How far paper must reach for a hole to be on it.
    double end_for(double hole) const { return std::min(hole + beside_hole, flat_.length); }

    bool is_behind_blank(std::size_t i) const {
        return i > 0 && places_[i] - places_[i - 1] > least_blank;
    }

    // With holes from i on; gives the first that it has no room for.
    std::size_t add_tile(std::size_t i) {
        const double limit = shape_.from + length_;
        std::size_t next = i;
        while (next < places_.size() && end_for(places_[next]) <= limit + hair) {
            if (next > i && is_behind_blank(next)) break;
            ++next;
        }
        const bool is_full = next < places_.size() && (next == i || !is_behind_blank(next));
        if (is_full) {
            const auto line = mark_before(limit - overlap);
            next = first_beyond(line.mm());
            const bool goes_on = next < places_.size() && (next <= i || !is_behind_blank(next));
            if (goes_on) return add_joint(line, next);
        }
        return end_before(next, limit);
    }

    std::size_t first_beyond(double line) const {
        const auto next = std::upper_bound(places_.begin(), places_.end(), line);
        return static_cast<std::size_t>(next - places_.begin());
    }

    // Behind the last hole before `next`, or at the end of the piece where that is near.
    std::size_t end_before(std::size_t next, double limit) {
        const double last = places_[next - 1];
        const bool reaches_end =
            next == places_.size() && flat_.length - last <= least_end && flat_.length <= limit;
        const double to = reaches_end ? flat_.length : std::min(end_for(last), limit);
        const bool is_end = to > flat_.length - hair;
        put({is_end ? TileEnd::piece : TileEnd::blank,
             engine::Length::from_nm(static_cast<Nm>(std::llround(to * 1.0e6)))},
            to);
        if (next < places_.size()) begin_behind_blank(places_[next]);
        return next;
    }

    // Papers share a line; holes from `next` on lie beyond it.
    std::size_t add_joint(engine::Length line, std::size_t next) {
        put({TileEnd::joint, line}, line.mm() + overlap);
        shape_.start = {TileEnd::joint, line};
        shape_.from = line.mm() - overlap;
        return next;
    }

    void put(TileEdge end, double to) {
        shape_.end = end;
        shape_.to = to;
        tiles_.push_back(shape_);
    }

    const UnrolledPiece& flat_;
    const TileRoom& room_;
    double length_;
    std::vector<double> places_;  // of holes, mm from the datum end, rising
    StripTile shape_;             // the next one
    std::vector<StripTile> tiles_;
};

}  // namespace

double widest_drilled_wall(const UnrolledPiece& flat) {
    double widest = 0.0;
    for (const auto& hole : flat.holes) {
        const auto& wall = flat.walls[hole.wall];
        widest = std::max(widest, wall.right() - wall.left());
    }
    return widest;
}

std::vector<StripTile> strip_tiles(const UnrolledPiece& flat,
                                   std::size_t mark,
                                   const TileRoom& room) {
    std::vector<StripTile> all;
    for (const auto& range : wall_ranges(flat, room.width)) {
        auto tiles = Cutting(flat, room, range).tiles();
        all.insert(all.end(), tiles.begin(), tiles.end());
    }
    int part = 0;
    for (auto& tile : all) {
        tile.mark = mark;
        tile.part = ++part;
        tile.parts = static_cast<int>(all.size());
    }
    return all;
}

}  // namespace model

#include "model/resolve/sheet_region.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace model {
namespace {

double area_of(const Region& region) {
    return static_cast<double>(region.hi[0] - region.lo[0]) *
           static_cast<double>(region.hi[1] - region.lo[1]);
}

std::vector<Nm> lines_of(const Region& whole, std::span<const Region> taken, std::size_t k) {
    std::vector<Nm> lines{whole.lo[k], whole.hi[k]};
    for (const auto& region : taken) {
        for (const Nm at : {region.lo[k], region.hi[k]}) {
            if (at > whole.lo[k] && at < whole.hi[k]) lines.push_back(at);
        }
    }
    std::ranges::sort(lines);
    lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
    return lines;
}

using Crossing = std::array<std::size_t, 2>;

// The rectangle cut along all edges of what is taken: cells that are sheet, or not.
class Cells {
public:
    Cells(const Region& whole, std::span<const Region> taken)
        : u_{lines_of(whole, taken, 0)}, v_{lines_of(whole, taken, 1)} {
        is_sheet_.assign(columns() * rows(), true);
        for (std::size_t i = 0; i < columns(); ++i) {
            for (std::size_t j = 0; j < rows(); ++j) {
                const Region cell = region_of(i, j);
                is_sheet_[at(i, j)] = std::ranges::none_of(
                    taken, [&](const Region& region) { return share_area(region, cell); });
            }
        }
    }

    std::size_t columns() const { return u_.size() - 1; }
    std::size_t rows() const { return v_.size() - 1; }

    // Outside of the rectangle, too: i and j may be one past either end.
    bool is_sheet(std::size_t i, std::size_t j) const {
        return i < columns() && j < rows() && is_sheet_[at(i, j)];
    }

    Region region_of(std::size_t i, std::size_t j) const {
        return {{u_[i], v_[j]}, {u_[i + 1], v_[j + 1]}};
    }

    std::array<Nm, 2> corner(const Crossing& at) const { return {u_[at[0]], v_[at[1]]}; }

    // Takes out all parts but the largest. Whether there was more than one.
    bool keep_largest_part() {
        std::vector<std::size_t> part(is_sheet_.size(), 0);
        std::vector<double> areas{-1.0};
        for (std::size_t i = 0; i < columns(); ++i) {
            for (std::size_t j = 0; j < rows(); ++j) {
                if (!is_sheet(i, j) || part[at(i, j)] != 0) continue;
                areas.push_back(flood(i, j, areas.size(), part));
            }
        }
        const auto largest =
            static_cast<std::size_t>(std::distance(areas.begin(), std::ranges::max_element(areas)));
        for (std::size_t c = 0; c < part.size(); ++c) {
            if (part[c] != largest) is_sheet_[c] = false;
        }
        return areas.size() > 2;
    }

    // Takes out the smaller of two cells that touch at a corner only; whether there was one.
    bool part_one_corner() {
        for (std::size_t i = 0; i + 1 < columns(); ++i) {
            for (std::size_t j = 0; j + 1 < rows(); ++j) {
                const bool a = is_sheet(i, j);
                const bool b = is_sheet(i + 1, j);
                if (a == b || is_sheet(i + 1, j + 1) != a || is_sheet(i, j + 1) != b) continue;
                const Crossing one = a ? Crossing{i, j} : Crossing{i + 1, j};
                const Crossing two = a ? Crossing{i + 1, j + 1} : Crossing{i, j + 1};
                const bool one_is_smaller =
                    area_of(region_of(one[0], one[1])) <= area_of(region_of(two[0], two[1]));
                const auto& smaller = one_is_smaller ? one : two;
                is_sheet_[at(smaller[0], smaller[1])] = false;
                return true;
            }
        }
        return false;
    }

private:
    std::size_t at(std::size_t i, std::size_t j) const { return i * rows() + j; }

    double flood(std::size_t i,
                 std::size_t j,
                 std::size_t number,
                 std::vector<std::size_t>& part) const {
        std::vector<Crossing> next{{i, j}};
        part[at(i, j)] = number;
        double area = 0.0;
        while (!next.empty()) {
            const auto [x, y] = next.back();
            next.pop_back();
            area += area_of(region_of(x, y));
            for (const Crossing& by :
                 {Crossing{x + 1, y}, Crossing{x - 1, y}, Crossing{x, y + 1}, Crossing{x, y - 1}}) {
                if (!is_sheet(by[0], by[1]) || part[at(by[0], by[1])] != 0) continue;
                part[at(by[0], by[1])] = number;
                next.push_back(by);
            }
        }
        return area;
    }

    std::vector<Nm> u_;
    std::vector<Nm> v_;
    std::vector<bool> is_sheet_;
};

// All edges with the sheet on their left: where the edge that begins at each crossing ends.
class Edges {
public:
    explicit Edges(const Cells& cells)
        : rows_{cells.rows() + 1}, to_((cells.columns() + 1) * rows_, none) {
        for (std::size_t i = 0; i < cells.columns(); ++i) {
            for (std::size_t j = 0; j < cells.rows(); ++j) {
                if (!cells.is_sheet(i, j)) continue;
                if (!cells.is_sheet(i, j - 1)) add({i, j}, {i + 1, j});
                if (!cells.is_sheet(i + 1, j)) add({i + 1, j}, {i + 1, j + 1});
                if (!cells.is_sheet(i, j + 1)) add({i + 1, j + 1}, {i, j + 1});
                if (!cells.is_sheet(i - 1, j)) add({i, j + 1}, {i, j});
            }
        }
    }

    // Takes out loop after loop; empty when there is none left.
    std::vector<Crossing> take_loop() {
        std::vector<Crossing> loop;
        const auto first = std::ranges::find_if(to_, [](std::size_t to) { return to != none; });
        if (first == to_.end()) return loop;
        auto from = static_cast<std::size_t>(std::distance(to_.begin(), first));
        while (to_[from] != none) {
            loop.push_back({from / rows_, from % rows_});
            from = std::exchange(to_[from], none);
        }
        return loop;
    }

private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    void add(const Crossing& from, const Crossing& to) {
        to_[from[0] * rows_ + from[1]] = to[0] * rows_ + to[1];
    }

    std::size_t rows_;
    std::vector<std::size_t> to_;
};

// Without the crossings in the middle of a straight edge.
Corners corners_of(const Cells& cells, const std::vector<Crossing>& loop) {
    Corners corners;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& before = loop[(i + loop.size() - 1) % loop.size()];
        const auto& after = loop[(i + 1) % loop.size()];
        const bool is_straight = before[0] == after[0] || before[1] == after[1];
        if (!is_straight) corners.push_back(cells.corner(loop[i]));
    }
    return corners;
}

bool is_counter_clockwise(const Corners& corners) {
    double twice = 0.0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const auto& a = corners[i];
        const auto& b = corners[(i + 1) % corners.size()];
        twice += static_cast<double>(a[0]) * static_cast<double>(b[1]) -
                 static_cast<double>(b[0]) * static_cast<double>(a[1]);
    }
    return twice > 0.0;
}

Region bounds_of(const Corners& corners) {
    Region bounds{corners.front(), corners.front()};
    for (const auto& corner : corners) {
        for (std::size_t k = 0; k < 2; ++k) {
            bounds.lo[k] = std::min(bounds.lo[k], corner[k]);
            bounds.hi[k] = std::max(bounds.hi[k], corner[k]);
        }
    }
    return bounds;
}

}  // namespace

Region grown(Region region, Nm by) {
    for (std::size_t k = 0; k < 2; ++k) {
        region.lo[k] -= by;
        region.hi[k] += by;
    }
    return region;
}

SheetShape sheet_without(const Region& whole, std::span<const Region> taken) {
    SheetShape shape{.bounds = whole};
    if (whole.lo[0] >= whole.hi[0] || whole.lo[1] >= whole.hi[1]) return shape;
    Cells cells(whole, taken);
    shape.fell_apart = cells.keep_largest_part();
    while (cells.part_one_corner()) shape.fell_apart |= cells.keep_largest_part();
    Edges edges(cells);
    for (auto loop = edges.take_loop(); !loop.empty(); loop = edges.take_loop()) {
        auto corners = corners_of(cells, loop);
        if (is_counter_clockwise(corners)) {
            shape.outline.corners = std::move(corners);
        } else {
            shape.outline.cut_outs.push_back(std::move(corners));
        }
    }
    if (shape.outline.corners.empty()) return shape;
    shape.bounds = bounds_of(shape.outline.corners);
    for (std::size_t i = 0; i < cells.columns(); ++i) {
        for (std::size_t j = 0; j < cells.rows(); ++j) {
            const Region cell = cells.region_of(i, j);
            if (!cells.is_sheet(i, j) && share_area(cell, shape.bounds)) {
                shape.gone.push_back(cell);
            }
        }
    }
    return shape;
}

Region opening_between(Region whole, std::span<const Region> obstacles) {
    for (const auto& obstacle : obstacles) {
        if (!share_area(obstacle, whole)) continue;
        Region best{whole.lo, whole.lo};
        for (std::size_t k = 0; k < 2; ++k) {
            Region below = whole;
            below.hi[k] = std::max(obstacle.lo[k], whole.lo[k]);
            Region above = whole;
            above.lo[k] = std::min(obstacle.hi[k], whole.hi[k]);
            for (const auto& left : {below, above}) {
                if (area_of(left) > area_of(best)) best = left;
            }
        }
        whole = best;
    }
    return whole;
}

}  // namespace model

#include "engine/geometry/triangle_tree.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace engine {
namespace {

constexpr std::uint32_t most_in_a_leaf = 4;
constexpr std::size_t slices = 16;
constexpr int deep_enough = 48;  // from here on parts are halved, so that no tree gets too deep

// Triangles cheaply boxed for the building, in floats rounded outward.
struct FloatBox {
    std::array<float, 3> lo{std::numeric_limits<float>::max(), std::numeric_limits<float>::max(),
                            std::numeric_limits<float>::max()};
    std::array<float, 3> hi{std::numeric_limits<float>::lowest(),
                            std::numeric_limits<float>::lowest(),
                            std::numeric_limits<float>::lowest()};
};

struct Entry {
    FloatBox box;
    std::uint32_t number = 0;
};

void put_in(FloatBox& box, const FloatBox& other) {
    for (std::size_t i = 0; i < 3; ++i) {
        box.lo[i] = std::min(box.lo[i], other.lo[i]);
        box.hi[i] = std::max(box.hi[i], other.hi[i]);
    }
}

float below(double value) {
    const auto near = static_cast<float>(value);
    return static_cast<double>(near) > value
               ? std::nextafter(near, std::numeric_limits<float>::lowest())
               : near;
}

float above(double value) {
    const auto near = static_cast<float>(value);
    return static_cast<double>(near) < value
               ? std::nextafter(near, std::numeric_limits<float>::max())
               : near;
}

Vector in_doubles(const Vector& at) { return at; }

Vector in_doubles(const std::array<float, 3>& at) {
    return {static_cast<double>(at[0]), static_cast<double>(at[1]), static_cast<double>(at[2])};
}

void put_in(FloatBox& box, const Vector& at) {
    for (std::size_t i = 0; i < 3; ++i) {
        box.lo[i] = std::min(box.lo[i], below(at[i]));
        box.hi[i] = std::max(box.hi[i], above(at[i]));
    }
}

void put_in(FloatBox& box, const std::array<float, 3>& at) {
    for (std::size_t i = 0; i < 3; ++i) {
        box.lo[i] = std::min(box.lo[i], at[i]);
        box.hi[i] = std::max(box.hi[i], at[i]);
    }
}

// Halved before they are summed up: the sum of two large floats is infinite.
float middle(const FloatBox& box, std::size_t axis) {
    return 0.5F * box.lo[axis] + 0.5F * box.hi[axis];
}

std::array<float, 3> middle(const FloatBox& box) {
    return {middle(box, 0), middle(box, 1), middle(box, 2)};
}

// Half the surface.
float surface_of(const FloatBox& box) {
    const float x = box.hi[0] - box.lo[0];
    const float y = box.hi[1] - box.lo[1];
    const float z = box.hi[2] - box.lo[2];
    return x * y + y * z + z * x;
}

std::size_t longest_axis(const FloatBox& box) {
    std::size_t longest = 0;
    for (std::size_t i = 1; i < 3; ++i) {
        if (box.hi[i] - box.lo[i] > box.hi[longest] - box.lo[longest]) longest = i;
    }
    return longest;
}

// Some entries, the box around them and that around their middles.
struct Part {
    std::uint32_t first = 0;
    std::uint32_t count = 0;
    FloatBox box;
    FloatBox middles;
};

void put_in(Part& part, const Entry& entry) {
    ++part.count;
    put_in(part.box, entry.box);
    put_in(part.middles, middle(entry.box));
}

void put_in(Part& part, const Part& other) {
    part.count += other.count;
    put_in(part.box, other.box);
    put_in(part.middles, other.middles);
}

// Even slices along the longest axis of the middles.
struct Slicing {
    std::size_t axis = 0;
    float from = 0.0F;
    float scale = 0.0F;

    std::size_t slice_of(const Entry& entry) const {
        const float at = (middle(entry.box, axis) - from) * scale;
        if (!(at > 0.0F)) return 0;  // also where the span is infinite, and so no number comes out
        return at < static_cast<float>(slices) ? static_cast<std::size_t>(at) : slices - 1;
    }
};

using Slices = std::array<Part, slices>;

// The first slice of the upper part: where surface times count of both parts is least in sum, the
// usual estimate of what a tree costs to ask (surface area heuristic).
std::size_t best_cut(const Slices& sliced) {
    std::array<float, slices> cost_above{};
    Part upper;
    for (std::size_t i = slices - 1; i > 0; --i) {
        put_in(upper, sliced[i]);
        if (upper.count > 0)
            cost_above[i] = surface_of(upper.box) * static_cast<float>(upper.count);
    }
    Part lower;
    std::size_t best = slices / 2;
    float least = std::numeric_limits<float>::max();
    for (std::size_t i = 1; i < slices; ++i) {
        put_in(lower, sliced[i - 1]);
        if (lower.count == 0) continue;
        const float cost = surface_of(lower.box) * static_cast<float>(lower.count) + cost_above[i];
        if (cost < least) {
            least = cost;
            best = i;
        }
    }
    return best;
}

}  // namespace

// Works through entries, parting them in place.
class TriangleTree::Builder {
public:
    Builder(TriangleTree& tree, const Progress& progress) : tree_{tree}, progress_{progress} {}

    template <class Point>
    bool build(std::span<const Point> points, std::span<const Corners> triangles) {
        if (triangles.empty()) return true;
        if (!enter(points, triangles)) return false;
        Part all{};
        for (const auto& entry : entries_) put_in(all, entry);
        tree_.nodes_.reserve(triangles.size());
        tree_.nodes_.emplace_back();
        if (!part(0, all, 0)) return false;
        tree_.nodes_.shrink_to_fit();
        keep_in_order(points, triangles);
        return !progress_ || progress_(1.0);
    }

private:
    template <class Point>
    bool enter(std::span<const Point> points, std::span<const Corners> triangles) {
        entries_.resize(triangles.size());
        for (std::uint32_t i = 0; i < triangles.size(); ++i) {
            entries_[i].number = i;
            for (const auto corner : triangles[i]) {
                assert(corner < points.size());
                put_in(entries_[i].box, points[corner]);
            }
        }
        return !progress_ || progress_(0.1);
    }

    bool part(std::uint32_t node, const Part& whole, int depth) {
        tree_.nodes_[node].lo = whole.box.lo;
        tree_.nodes_[node].hi = whole.box.hi;
        if (whole.count <= most_in_a_leaf) {
            tree_.nodes_[node].first = whole.first;
            tree_.nodes_[node].count = whole.count;
            return report(whole.count);
        }
        auto [lower, upper] = depth < deep_enough ? sliced(whole) : halved(whole);
        if (lower.count == 0 || upper.count == 0) std::tie(lower, upper) = halved(whole);
        const auto children = static_cast<std::uint32_t>(tree_.nodes_.size());
        tree_.nodes_.resize(tree_.nodes_.size() + 2);
        tree_.nodes_[node].first = children;
        return part(children, lower, depth + 1) && part(children + 1, upper, depth + 1);
    }

    std::pair<Part, Part> sliced(const Part& whole) {
        Slicing slicing{.axis = longest_axis(whole.middles)};
        slicing.from = whole.middles.lo[slicing.axis];
        const float span = whole.middles.hi[slicing.axis] - slicing.from;
        if (!(span > 0.0F)) return {};
        slicing.scale = static_cast<float>(slices) / span;
        Slices all{};
        const auto begin = entries_.begin() + whole.first;
        const auto end = begin + whole.count;
        for (auto it = begin; it != end; ++it) put_in(all[slicing.slice_of(*it)], *it);
        const std::size_t cut = best_cut(all);
        std::partition(begin, end,
                       [&](const Entry& entry) { return slicing.slice_of(entry) < cut; });
        std::pair<Part, Part> parts;
        for (std::size_t i = 0; i < slices; ++i)
            put_in(i < cut ? parts.first : parts.second, all[i]);
        parts.first.first = whole.first;
        parts.second.first = whole.first + parts.first.count;
        return parts;
    }

    std::pair<Part, Part> halved(const Part& whole) {
        const std::size_t axis = longest_axis(whole.middles);
        const auto begin = entries_.begin() + whole.first;
        const auto half = begin + whole.count / 2;
        const auto end = begin + whole.count;
        std::nth_element(begin, half, end, [axis](const Entry& a, const Entry& b) {
            return middle(a.box, axis) < middle(b.box, axis);
        });
        std::pair<Part, Part> parts;
        parts.first.first = whole.first;
        parts.second.first = whole.first + whole.count / 2;
        for (auto it = begin; it != half; ++it) put_in(parts.first, *it);
        for (auto it = half; it != end; ++it) put_in(parts.second, *it);
        return parts;
    }

    bool report(std::uint32_t count) {
        finished_ += count;
        if (!progress_ || finished_ < next_report_) return true;
        next_report_ = finished_ + entries_.size() / 64;
        return progress_(0.1 + 0.8 * static_cast<double>(finished_) /
                                   static_cast<double>(entries_.size()));
    }

    // Points that no triangle names are left out.
    template <class Point>
    void keep_in_order(std::span<const Point> points, std::span<const Corners> triangles) {
        constexpr auto not_yet = std::numeric_limits<std::uint32_t>::max();
        std::vector<std::uint32_t> place(points.size(), not_yet);
        tree_.points_.reserve(points.size());
        tree_.leaves_.resize(entries_.size());
        for (std::size_t i = 0; i < entries_.size(); ++i) {
            auto& leaf = tree_.leaves_[i];
            leaf.number = entries_[i].number;
            for (std::size_t k = 0; k < 3; ++k) {
                const std::uint32_t corner = triangles[leaf.number][k];
                if (place[corner] == not_yet) {
                    place[corner] = static_cast<std::uint32_t>(tree_.points_.size());
                    tree_.points_.push_back(in_doubles(points[corner]));
                    engine::put_in(tree_.bounds_, tree_.points_.back());
                }
                leaf.corners[k] = place[corner];
            }
        }
    }

    TriangleTree& tree_;
    const Progress& progress_;
    std::vector<Entry> entries_;
    std::size_t finished_ = 0;
    std::size_t next_report_ = 0;
};

TriangleTree::TriangleTree(std::span<const Vector> points, std::span<const Corners> triangles) {
    Builder(*this, nullptr).build(points, triangles);
}

std::optional<TriangleTree> TriangleTree::built(std::span<const Vector> points,
                                                std::span<const Corners> triangles,
                                                const Progress& progress) {
    TriangleTree tree;
    if (!Builder(tree, progress).build(points, triangles)) return std::nullopt;
    return tree;
}

std::optional<TriangleTree> TriangleTree::built(std::span<const std::array<float, 3>> points,
                                                std::span<const Corners> triangles,
                                                const Progress& progress) {
    TriangleTree tree;
    if (!Builder(tree, progress).build(points, triangles)) return std::nullopt;
    return tree;
}

}  // namespace engine

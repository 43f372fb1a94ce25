#include "engine/geometry/box_tree.h"

#include <algorithm>
#include <cstddef>

namespace engine {
namespace {

constexpr std::uint32_t most_in_a_leaf = 6;

std::size_t longest_axis(const Box& box) {
    std::size_t longest = 0;
    for (std::size_t i = 1; i < 3; ++i) {
        if (box.hi[i] - box.lo[i] > box.hi[longest] - box.lo[longest]) longest = i;
    }
    return longest;
}

}  // namespace

BoxTree::BoxTree(std::span<const Box> boxes) {
    if (boxes.empty()) return;
    entries_.reserve(boxes.size());
    for (std::uint32_t i = 0; i < boxes.size(); ++i) entries_.push_back({boxes[i], i});
    nodes_.reserve(boxes.size());
    nodes_.emplace_back();
    build(0, 0, static_cast<std::uint32_t>(boxes.size()));
}

void BoxTree::build(std::uint32_t node, std::uint32_t first, std::uint32_t count) {
    const auto begin = entries_.begin() + first;
    Box all = begin->box;
    Box centres{all.lo, all.lo};  // of the lower corners: as good for parting as true centres
    for (auto it = begin + 1; it != begin + count; ++it) {
        all = hull(all, it->box);
        centres = hull(centres, {it->box.lo, it->box.lo});
    }
    nodes_[node].box = all;
    if (count <= most_in_a_leaf) {
        nodes_[node].first = first;
        nodes_[node].count = count;
        return;
    }
    const std::size_t axis = longest_axis(centres);
    const std::uint32_t half = count / 2;
    std::nth_element(begin, begin + half, begin + count, [axis](const Entry& a, const Entry& b) {
        return a.box.lo[axis] + a.box.hi[axis] < b.box.lo[axis] + b.box.hi[axis];
    });
    const auto children = static_cast<std::uint32_t>(nodes_.size());
    nodes_.resize(nodes_.size() + 2);
    nodes_[node].first = children;
    build(children, first, half);
    build(children + 1, first + half, count - half);
}

}  // namespace engine

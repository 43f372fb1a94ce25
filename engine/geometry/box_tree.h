// A tree over boxes that answers "which of them touch this one" without looking at them all.
#pragma once

#include "engine/geometry/box.h"

#include <cstdint>
#include <span>
#include <vector>

namespace engine {

class BoxTree {
public:
    // Keeps copies of the boxes. n log n.
    explicit BoxTree(std::span<const Box> boxes);

    // Calls visit(index) for each box that shares at least a point with `probe`, in no fixed order.
    template <class Visit>
    void for_each_touching(const Box& probe, Visit visit) const {
        if (!nodes_.empty()) descend(0, probe, visit);
    }

private:
    struct Node {
        Box box;
        std::uint32_t first = 0;  // of its entries, or of its two child nodes
        std::uint32_t count = 0;  // 0: an inner node whose children are first and first + 1
    };
    struct Entry {
        Box box;
        std::uint32_t index = 0;
    };

    void build(std::uint32_t node, std::uint32_t first, std::uint32_t count);

    template <class Visit>
    void descend(std::uint32_t at, const Box& probe, Visit& visit) const {
        const Node& node = nodes_[at];
        if (!touches(node.box, probe)) return;
        if (node.count == 0) {
            descend(node.first, probe, visit);
            descend(node.first + 1, probe, visit);
            return;
        }
        for (std::uint32_t i = node.first; i < node.first + node.count; ++i) {
            if (touches(entries_[i].box, probe)) visit(entries_[i].index);
        }
    }

    std::vector<Node> nodes_;
    std::vector<Entry> entries_;
};

}  // namespace engine

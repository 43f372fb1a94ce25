// What still stands while a frame is taken apart, and what of it can come off. Only files of this
// folder use it.
#pragma once

#include "model/assembly/part.h"
#include "model/assembly/part_ways.h"
#include "model/assembly/take_apart.h"
#include "model/assembly/tool_access.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace model {

// Frame, ways and access, and what is to become of each joint. All but the last stay as they are.
struct Apart {
    const FrameParts& parts;
    const PartWays& ways;
    const ToolAccess& access;
    std::vector<SetWith> set_with;  // by joint

    const PieceSet* in_way(Index joint) const {
        if (set_with[joint] == SetWith::nothing) return nullptr;
        const auto& of = access.joints[joint];
        return set_with[joint] == SetWith::tool ? &of.in_way : &of.in_way_of_nose;
    }
    // Whether it must be set before all that stands is on.
    bool keeps_together(Index joint, const PieceSet& standing) const {
        const JointOfFrame& of = parts.joints()[joint];
        if (!of.is_fastened || !of.stands_in(standing)) return false;
        const PieceSet* in = in_way(joint);
        return in != nullptr && in->meets(standing);
    }
};

// Parts that come off together, and how.
struct Coming {
    std::vector<std::size_t> parts;  // numbers in what stands, rising
    std::size_t way = 0;
};

class Standing {
public:
    // `kept` is what was when more stood, by joint, where what becomes of the joints is still the
    // same; else empty. Nothing new is kept together when parts come off.
    Standing(const Apart& apart, const std::vector<Part>& parts, std::vector<bool> kept = {});

    const PieceSet& all() const { return all_; }
    const std::vector<bool>& kept() const { return is_kept_; }

    // The easiest way by which one part alone comes off.
    std::optional<std::size_t> way_of(std::size_t part) const;

    // The fewest pieces that come off together, of parts no further down than `last`; never all.
    std::optional<Coming> fewest(PartKind last) const;

    // Nothing comes off, neither by itself nor with others.
    bool is_stuck() const;
    // Of one that is stuck: whether it still were if that part were what it is made of.
    bool is_stuck_without(std::size_t whole) const;

    // How many parts lie between each part and the one given, by the joints between them; parts
    // that others hang on are not leaves.
    struct Reach {
        std::vector<std::size_t> distance;
        std::vector<bool> is_leaf;
    };
    Reach reach_from(std::size_t part) const;

private:
    // A part that counts as what is inside of it: by piece of the frame, which of those.
    struct Opened {
        std::size_t part = static_cast<std::size_t>(-1);
        std::vector<std::size_t> inside_of;
    };
    bool is_held_back(std::size_t part) const;
    PieceSet staying(Index piece,
                     std::size_t way,
                     std::size_t give_up_at,
                     const PieceSet& give_up_with,
                     const Opened& opened) const;
    const std::vector<Index>& moved_with(Index piece, const Opened& opened) const;
    std::vector<std::size_t> parts_in(const PieceSet& set) const;

    const Apart& apart_;
    const std::vector<Part>& parts_;
    PieceSet all_;
    std::vector<std::size_t> part_of_;  // by piece
    std::vector<bool> is_kept_;         // by joint: it keeps its pieces together now
};

}  // namespace model

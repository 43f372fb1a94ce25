// Puts the parts that a recipe asks for into a frame: gussets, cleats and straps, clear of all that
// is there already, with the laps in which they are fastened.
#pragma once

#include "engine/geometry/box_tree.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/joint_overrides.h"
#include "model/resolve/lap.h"
#include "model/resolve/lap_layout.h"
#include "model/resolve/screw_choice.h"
#include "model/resolve/skeleton.h"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace model {

// One end of a piece of the lower bar at a piece of the upper one.
struct Corner {
    std::uint8_t recipe = 0;
    Index upper = 0;  // pieces of the frame
    Index lower = 0;
    std::size_t along = 0;   // axis of the lower piece's run
    std::size_t across = 0;  // axis of the upper piece's run
    std::size_t normal = 0;  // the third one, across which both have walls
    int into = 1;            // sense along `along` from the upper piece into the lower one
    Nm end = 0;              // where the lower piece ends
};

struct PartRoom {
    const Project& project;
    const Catalogue& catalogue;
    const ResolvedShop& shop;
    std::span<const StockShape> shapes;
};

class PartMaker {
public:
    // Parts go behind the pieces of the skeleton, outlines and laps behind those that are there.
    PartMaker(const PartRoom& room,
              FrameSkeleton& skeleton,
              std::vector<Outline>& outlines,
              std::vector<Lap>& laps);

    const PartRoom& room() const { return room_; }
    const Piece& piece(Index index) const { return s_.pieces[index]; }
    const Bar& bar(Index piece) const { return s_.bars[s_.bar_of[piece]]; }

    // The wall of a bar's piece whose outer face lies in its layout plane across that axis.
    const Plate* primary_wall(Index piece, std::size_t normal_axis) const;

    // The fasteners that each lap of the corner is to have are so thick where the thickest plate is
    // so thick; and how long a lap must be to hold them in a row.
    Nm fastener_diameter(Index piece, Nm thickest) const;
    Nm length_for_fasteners(Nm diameter) const;

    // What is left of a flat slab when everything in its way is cut off from its sides, with the
    // shop's gap between.
    Box free_part(Box slab, std::size_t normal_axis) const;

    // What is left of the stretch [from, to] along an axis in which none of the boxes, all of that
    // length, has anything in its way; of two parts the longer one is kept, one obstacle after the
    // other. Empty: from >= to.
    std::array<Nm, 2> free_stretch(std::span<const Box> boxes, std::size_t axis) const;

    Index add(Piece part);
    Index add_outline(Outline outline);

    // How many fasteners, up to those wanted in each lap of the corner, would have room where a
    // wall of `upper` touches one of `lower` within `rect`. One of the two pieces need not be in
    // the frame yet.
    int fasteners_with_room(const Piece& upper,
                            const Plate& wall,
                            const Piece& lower,
                            const Plate& other,
                            const Box& rect);

    int wanted() const { return wanted_; }

    // The laps that the corner's two members have without any part between them. False: none.
    bool lap_directly(const Corner& corner);

    // A lap of a wall of `upper`, which lies outside, with one of `lower` that touches it, within
    // `rect` (along the normal it is not used). False when they share no area there.
    bool add_lap(Index upper, const Plate& wall, Index lower, const Plate& other, const Box& rect);

    // What follows is for that corner, of which the joint's own entry may say something.
    void begin(const Corner& corner, const JointOverride* own = nullptr);

private:
    FastenerAnswer fastener_for(MeasureSystem system, Nm thickest, Nm thinnest, Nm stack) const;

    // Pieces of the frame whose extents touch the box, in order.
    const std::vector<Index>& pieces_at(const Box& box) const;
    template <class Visit>
    void for_each_wall_in(const Box& box, Visit visit) const;

    PartRoom room_;
    FrameSkeleton& s_;
    std::vector<Outline>& outlines_;
    std::vector<Lap>& laps_;
    LapLayouts layouts_;
    std::uint8_t recipe_ = 0;
    FastenerWish wish_;
    int wanted_ = 2;

    struct Block {
        std::size_t first = 0;  // of the frame's pieces
        std::size_t count = 0;
        engine::BoxTree tree;
    };

    void put_in_blocks() const;

    mutable std::vector<Block> blocks_;  // one after the other, from large to small
    mutable std::vector<Index> found_;
};

// A meeting whose recipe found no room for what it needs, once everything was in its place.
struct NoRoom {
    Index upper = 0;  // bars
    Index lower = 0;
    std::uint8_t recipe = 0;
    std::string why;
    std::string use_instead;
    bool is_lapped = false;    // the two touch, and are fastened there
    std::uint8_t made_as = 0;  // the recipe that stands in for it; the same one: none does

    bool can_be_made_otherwise() const { return !is_lapped && made_as != recipe; }
};

// Puts in the parts of all meetings; gives those that have no room.
std::vector<NoRoom> add_parts(const PartRoom& room,
                              const JointOverrides& overrides,
                              FrameSkeleton& skeleton,
                              std::vector<Outline>& outlines,
                              std::vector<Lap>& laps);

// What was made otherwise, and what found no room all the same.
void report_no_room(const Frame& frame,
                    const FrameSkeleton& skeleton,
                    std::span<const NoRoom> made_otherwise,
                    std::span<const NoRoom> left,
                    std::vector<Finding>& findings);

}  // namespace model

// What passes through resolve: the bars of one frame between "a member was stated" and "its pieces
// stand in space". Only files of this folder use it.
#pragma once

#include "engine/geometry/box_tree.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace model {

// A stock's section laid out as walls, once for all members made of it.
struct StockShape {
    Index stock = no_index;
    Index section = no_index;  // no_index: the stock cannot be used
    std::vector<SectionPlate> walls;
    // For the face across section axis a (0) and b (1): its primary wall, the one whose outer face
    // lies at 0; how deep the layer behind that face begins (a tube is one solid layer); and how
    // thick that wall is.
    std::array<int, 2> primary{-1, -1};
    std::array<Nm, 2> layer{};
    std::array<Nm, 2> wall_thickness{};
    bool is_closed = false;  // a tube: nothing runs on through its hollow
};

StockShape stock_shape(const Catalogue& catalogue, Index section);

// Where a bar ends as seen from another that it meets.
enum class Meets { not_at_all, at_from, at_to, in_passing };

// A member on its way: everything along the axes of its frame.
struct Bar {
    Index member = 0;
    Index stock = 0;
    const StockShape* shape = nullptr;
    Axis run = Axis::x;
    std::array<std::size_t, 2> axis{};  // across(run) as indices
    std::array<Nm, 2> line{};           // positions of its two planes
    std::array<int, 2> leg{1, 1};       // where it extends to
    std::array<int, 2> inward{1, 1};    // from its layout planes into the metal
    std::array<Nm, 2> seat_offset{};    // of the heel from the line, along leg (root seat: < 0)
    std::size_t a_on = 1;               // which of axis[] section axis a points along
    Nm from = 0;                        // along run, before trimming
    Nm to = 0;
    std::array<PieceEnd, 2> ends{};  // at from and to, where a recipe cuts them aslant
    int corner_order = 0;            // lower lies outside
    int depth = 0;                   // longest chain of bars that rank above it
    std::array<Nm, 2> set_in{};      // from its two layout planes
    Index first_piece = 0;           // into FrameSkeleton::pieces once trimmed
    Index piece_count = 0;
};

// Two bars with different runs that come near each other; `upper` ranks above `lower`.
struct Meeting {
    Index upper = 0;
    Index lower = 0;
    Meets upper_meets = Meets::not_at_all;  // how the upper one meets the lower one
    Meets lower_meets = Meets::not_at_all;
    std::uint8_t recipe = 0;  // in recipes()
};

// A range of indices into FrameSkeleton::near.
struct Neighbours {
    Index first = 0;
    Index count = 0;
};

struct FrameSkeleton {
    Index frame = 0;
    std::vector<Bar> bars;
    std::vector<Index> order;  // bars by rank: what lies outside first
    std::vector<std::array<Index, 2>>
        close;                       // every pair whose bodies come near, lower index first
    std::vector<Meeting> meetings;   // those with different runs that meet, by lower bar
    std::vector<Neighbours> above;   // per bar: its meetings in which it is the lower one
    std::vector<Neighbours> around;  // per bar: into near
    std::vector<Index> near;         // neighbouring bars
    std::vector<Piece> pieces;       // after trimming
    std::vector<Index> bar_of;       // per piece; of a part that a recipe makes: no_index
};

// Position of the section's origin (its heel) along axis[i].
constexpr Nm heel(const Bar& bar, std::size_t i) {
    return bar.line[i] + bar.leg[i] * bar.seat_offset[i] + bar.inward[i] * bar.set_in[i];
}

// Section axis (0 for a, 1 for b) that points along axis[i].
constexpr std::size_t section_axis(const Bar& bar, std::size_t i) {
    return i == bar.a_on ? 0U : 1U;
}

// i such that axis[i] is that axis of the frame; only for axes other than the run.
constexpr std::size_t across_index(const Bar& bar, std::size_t frame_axis) {
    return bar.axis[0] == frame_axis ? 0U : 1U;
}

// Plates and extents of a piece of bar from its datum, axes, senses and length.
void lay_walls(Piece& piece, std::span<const SectionPlate> walls);

// One wall over a stretch of the bar's run.
Box wall_box(const Bar& bar, const SectionPlate& wall, Nm from, Nm to);

// All of the bar over its whole run.
Box body(const Bar& bar);

// Over the extents of all pieces.
engine::BoxTree tree_of_pieces(const FrameSkeleton& skeleton);

// "member NAME" of a frame, for findings.
Subject member_subject(const Frame& frame, Index member);

}  // namespace model

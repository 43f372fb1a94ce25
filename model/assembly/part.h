// What is moved as one while a frame is taken apart or put together. Only files of this folder use
// it.
#pragma once

#include "model/assembly/frame_parts.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace model {

// In the order in which they come off, as far as that goes: the last to be put on first.
enum class PartKind {
    comes_apart,  // held by screws alone
    hung,         // a panel that nothing fastens
    panel,
    small,  // what is put over or between the bars: gussets, cleats, braces
    flat,   // a flat sub-assembly
    bar,
    several,  // that only move together
};

struct Part {
    PartKind kind = PartKind::bar;
    std::vector<Index> pieces;  // rising
    PieceSet set;
    std::string face;                // of a flat one
    std::optional<Axis> best_along;  // the way that suits it best: across the face that it lies in
    // Of a piece of a flat part: the way, in PartWays, up from the bench that its outside lies on.
    std::optional<std::size_t> off_bench;
    std::vector<Part> inside;  // what it is made of, where that is more than one piece
};

// A part put on, in a frame that is put together; what it is made of is put together before.
struct Put {
    Part part;
    int way = -1;             // out of its place, in PartWays; -1: the first of all
    bool is_forced = false;   // there is none: see AssemblyOrder::pieces_without_way
    std::vector<Put> inside;  // in order; empty for one piece
};

// All of `of` as single pieces.
std::vector<Part> single_parts(const FrameParts& parts, const PieceSet& of);

// All of `of`: flat parts across the axis, and the rest as single pieces.
std::vector<Part> flat_and_single(const FrameParts& parts, Axis axis, const PieceSet& of);

// All of the frame: what comes apart as wholes of their own, the rest as by flat_and_single.
std::vector<Part> parts_of_frame(const FrameParts& parts, Axis axis);

}  // namespace model

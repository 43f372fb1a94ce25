// What of a piece's ends and outlines must agree for two pieces to be alike.
#pragma once

#include "model/resolve/resolved.h"
#include "model/resolve/symmetry.h"

#include <cstdint>
#include <vector>

namespace model {

// Square ends and no outline: only length and holes tell such pieces apart.
bool is_plain(const Piece& piece);

// Slopes to nine decimals (a nanometre in a metre), notches to the nanometre.
bool read_alike(const std::array<PieceEnd, 2>& a, const std::array<PieceEnd, 2>& b);
std::uint64_t hash_of(const std::array<PieceEnd, 2>& ends);

FaceOutlines face_outlines(const Resolved& resolved, const Plate& plate);

// The same for outlines that have the same corners, whichever is the first: near and far side by
// side, the shape's loop, then what is cut out in a fixed order.
using OutlineReading = std::vector<std::vector<std::array<Nm, 4>>>;
OutlineReading reading_of(const FaceOutlines& outlines);

// Corner by corner, apart by no more than the rounding in any number.
bool read_alike(const OutlineReading& a, const OutlineReading& b, Nm rounding);

// The same for an outline and its mirror images, turned over or not.
std::uint64_t invariant_hash(const FaceOutlines& outlines);

}  // namespace model

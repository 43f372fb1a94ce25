#include "model/schedule/laying.h"

#include "model/schedule/plate_axes.h"

namespace model {
namespace {

std::array<int, 3> cross(const std::array<int, 3>& a, const std::array<int, 3>& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

}  // namespace

TableEnd datum_end_on_table(const Piece& piece, std::uint8_t wall) {
    // The metal lies above its outer face, so up is n; the gauge v runs from the heel towards the
    // maker, so what is on the maker's right is n x v.
    const auto axes = plate_axes(piece, piece.plates[wall]);
    return cross(axes.n, axes.v) == axes.u ? TableEnd::left : TableEnd::right;
}

}  // namespace model

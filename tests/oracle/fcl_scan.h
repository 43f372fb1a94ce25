// A mesh held by FCL (the Flexible Collision Library, libfcl-dev), asked for distances and hits.
// Its headers stay in the .cpp.
#pragma once

#include "engine/geometry/convex_body.h"

#include <array>
#include <cstdint>
#include <limits>
#include <memory>
#include <span>
#include <vector>

namespace tests {

// A piece as FCL holds it: the faces of all its bodies as one mesh, and each body as a shape of
// FCL's own, a box or a convex solid.
class FclPiece {
public:
    explicit FclPiece(std::span<const engine::ConvexBody> bodies);
    ~FclPiece();
    FclPiece(FclPiece&&) noexcept;
    FclPiece& operator=(FclPiece&&) noexcept;

private:
    friend class FclScan;
    struct Held;
    std::unique_ptr<Held> held_;
};

class FclScan {
public:
    FclScan(std::span<const engine::Vector> points,
            std::span<const std::array<std::uint32_t, 3>> triangles);
    ~FclScan();
    FclScan(FclScan&&) noexcept;
    FclScan& operator=(FclScan&&) noexcept;

    static constexpr double without_limit = std::numeric_limits<double>::max();

    // mm; 0: they cross. `cut_off` when they are no nearer. The first is exact, but blind to a
    // triangle wholly inside a body; the second comes nearer in steps, down to `tolerance`.
    double distance_of_surfaces(const FclPiece& piece, double cut_off = without_limit) const;
    double distance_of_shapes(const FclPiece& piece, double cut_off, double tolerance) const;

    bool surfaces_cross(const FclPiece& piece) const;
    bool shapes_cross(const FclPiece& piece) const;

private:
    struct Held;
    std::unique_ptr<Held> held_;
};

}  // namespace tests

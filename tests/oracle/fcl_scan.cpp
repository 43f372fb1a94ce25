#include "tests/oracle/fcl_scan.h"

#include <fcl/fcl.h>

#include <algorithm>
#include <limits>

namespace tests {
namespace {

using Model = fcl::BVHModel<fcl::OBBRSSd>;
using Object = fcl::CollisionObjectd;

fcl::Vector3d in_fcl(const engine::Vector& at) { return {at[0], at[1], at[2]}; }

Object surface_of(std::span<const engine::ConvexBody> bodies) {
    std::vector<fcl::Vector3d> points;
    std::vector<fcl::Triangle> triangles;
    for (const auto& body : bodies) {
        const std::size_t base = points.size();
        for (const auto& corner : body.corners) points.push_back(in_fcl(corner));
        for (const auto& face : body.faces) {
            const auto corner = [&](std::size_t i) { return base + body.loops[face.first + i]; };
            for (std::size_t i = 1; i + 1 < face.count; ++i)
                triangles.emplace_back(corner(0), corner(i), corner(i + 1));
        }
    }
    auto model = std::make_shared<Model>();
    model->beginModel();
    model->addSubModel(points, triangles);
    model->endModel();
    return Object(model);
}

bool is_box(const engine::ConvexBody& body) {
    if (body.corners.size() != 8 || body.faces.size() != 6) return false;
    return std::ranges::all_of(body.faces, [&](const engine::BodyFace& face) {
        return std::ranges::any_of(body.around.axes, [&](const engine::Vector& axis) {
            return std::abs(engine::dot(axis, face.normal)) > 1.0 - 1e-14;
        });
    });
}

Object box_of(const engine::OrientedBox& box) {
    fcl::Transform3d place = fcl::Transform3d::Identity();
    for (int k = 0; k < 3; ++k)
        place.linear().col(k) = in_fcl(box.axes[static_cast<std::size_t>(k)]);
    place.translation() = in_fcl(box.centre);
    return Object(std::make_shared<fcl::Boxd>(2.0 * in_fcl(box.half)), place);
}

Object shape_of(const engine::ConvexBody& body) {
    if (is_box(body)) return box_of(body.around);
    auto points = std::make_shared<std::vector<fcl::Vector3d>>();
    for (const auto& corner : body.corners) points->push_back(in_fcl(corner));
    auto faces = std::make_shared<std::vector<int>>();
    for (const auto& face : body.faces) {
        faces->push_back(face.count);
        for (std::size_t i = 0; i < face.count; ++i) faces->push_back(body.loops[face.first + i]);
    }
    return Object(
        std::make_shared<fcl::Convexd>(points, static_cast<int>(body.faces.size()), faces));
}

double distance_of(const Object& one, const Object& other, double cut_off, double tolerance) {
    fcl::DistanceRequestd request;
    request.distance_tolerance = tolerance;
    fcl::DistanceResultd result(cut_off);
    fcl::distance(&one, &other, request, result);
    return std::max(0.0, result.min_distance);
}

bool cross(const Object& one, const Object& other) {
    const fcl::CollisionRequestd request;
    fcl::CollisionResultd result;
    return fcl::collide(&one, &other, request, result) > 0;
}

}  // namespace

struct FclPiece::Held {
    Object surface;
    std::vector<Object> shapes;
};

FclPiece::FclPiece(std::span<const engine::ConvexBody> bodies)
    : held_{std::make_unique<Held>(Held{surface_of(bodies), {}})} {
    for (const auto& body : bodies) held_->shapes.push_back(shape_of(body));
}

FclPiece::~FclPiece() = default;
FclPiece::FclPiece(FclPiece&&) noexcept = default;
FclPiece& FclPiece::operator=(FclPiece&&) noexcept = default;

struct FclScan::Held {
    Object mesh;
};

FclScan::FclScan(std::span<const engine::Vector> points,
                 std::span<const std::array<std::uint32_t, 3>> triangles) {
    std::vector<fcl::Vector3d> corners;
    corners.reserve(points.size());
    for (const auto& point : points) corners.push_back(in_fcl(point));
    std::vector<fcl::Triangle> all;
    all.reserve(triangles.size());
    for (const auto& t : triangles) all.emplace_back(t[0], t[1], t[2]);
    auto model = std::make_shared<Model>();
    model->beginModel(static_cast<int>(all.size()), static_cast<int>(corners.size()));
    model->addSubModel(corners, all);
    model->endModel();
    held_ = std::make_unique<Held>(Held{Object(model)});
}

FclScan::~FclScan() = default;
FclScan::FclScan(FclScan&&) noexcept = default;
FclScan& FclScan::operator=(FclScan&&) noexcept = default;

double FclScan::distance_of_surfaces(const FclPiece& piece, double cut_off) const {
    return distance_of(held_->mesh, piece.held_->surface, cut_off, 1e-6);
}

double FclScan::distance_of_shapes(const FclPiece& piece, double cut_off, double tolerance) const {
    double least = cut_off;
    for (const auto& shape : piece.held_->shapes)
        least = std::min(least, distance_of(held_->mesh, shape, least, tolerance));
    return least;
}

bool FclScan::surfaces_cross(const FclPiece& piece) const {
    return cross(held_->mesh, piece.held_->surface);
}

bool FclScan::shapes_cross(const FclPiece& piece) const {
    return std::ranges::any_of(piece.held_->shapes,
                               [&](const Object& shape) { return cross(held_->mesh, shape); });
}

}  // namespace tests

#include "model/resolve/piece_mesh.h"

#include "model/resolve/resolve.h"

#include "tests/support/mesh_checks.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

namespace {

using model::Axis;
using model::Index;
using model::Nm;

const model::Catalogue& shipped_catalogue() {
    static const auto loaded = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(loaded);
    return *loaded;
}

// A box 36 x 18 x 30 in, legs inward, in a stock of one section.
model::Project box_of(const std::string& section) {
    model::Project project;
    project.stock = {{.name = "bar", .section = section, .alloy = "6063-T52"}};
    model::Frame frame{.name = "box",
                       .origin = {"10 in", "-20 in", "3 in"},
                       .quarter_turns = 1,
                       .planes = {{"left", Axis::x, "0"},
                                  {"right", Axis::x, "36 in"},
                                  {"front", Axis::y, "0"},
                                  {"back", Axis::y, "18 in"},
                                  {"bottom", Axis::z, "0"},
                                  {"top", Axis::z, "30 in"}}};
    const auto inward = [](bool at_first) {
        return at_first ? model::Sense::plus : model::Sense::minus;
    };
    const std::array<std::array<std::string, 2>, 3> ends{
        {{"left", "right"}, {"front", "back"}, {"bottom", "top"}}};
    for (const auto run : {Axis::x, Axis::y, Axis::z}) {
        const auto [first, second] = model::across(run);
        for (unsigned i = 0; i < 4; ++i) {
            const bool low_first = (i & 1U) == 0;
            const bool low_second = (i & 2U) == 0;
            frame.members.push_back({.name = "bar " + std::to_string(frame.members.size() + 1),
                                     .stock = "bar",
                                     .run = run,
                                     .on = {ends[model::index_of(first)][low_first ? 0 : 1],
                                            ends[model::index_of(second)][low_second ? 0 : 1]},
                                     .from = ends[model::index_of(run)][0],
                                     .to = ends[model::index_of(run)][1],
                                     .legs = {inward(low_first), inward(low_second)}});
        }
    }
    project.frames.push_back(frame);
    return project;
}

struct Reach {
    std::array<double, 3> lo{};
    std::array<double, 3> hi{};
};

Reach reach_of(const engine::Mesh& mesh) {
    Reach reach;
    for (std::size_t i = 0; i < 3; ++i) {
        reach.lo[i] = std::numeric_limits<double>::infinity();
        reach.hi[i] = -reach.lo[i];
        for (const auto& vertex : mesh.vertices) {
            const auto at = static_cast<double>(vertex.position[i]);
            reach.lo[i] = std::min(reach.lo[i], at);
            reach.hi[i] = std::max(reach.hi[i], at);
        }
    }
    return reach;
}

double mm(Nm length) { return static_cast<double>(length) / 1e6; }

// Where its plates lie in the room.
Reach reach_of(const model::Resolved& resolved, const model::Piece& piece) {
    const auto& frame = resolved.frames[piece.frame];
    const auto one = model::to_room(frame, piece.extents.lo);
    const auto other = model::to_room(frame, piece.extents.hi);
    Reach reach;
    for (std::size_t i = 0; i < 3; ++i) {
        reach.lo[i] = mm(std::min(one[i], other[i]));
        reach.hi[i] = mm(std::max(one[i], other[i]));
    }
    return reach;
}

void check_same(const Reach& a, const Reach& b) {
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(a.lo[i] == Approx(b.lo[i]).margin(1e-3));
        CHECK(a.hi[i] == Approx(b.hi[i]).margin(1e-3));
    }
}

// Cross-section as its plates give it: square corners, and in these forms no two plates share more
// than the squares where they meet.
double area_of(const model::Section& section) {
    const double t = section.thickness.mm();
    const double a = section.a.mm();
    const double b = section.b.mm();
    if (section.form == model::SectionForm::angle) return (a + b - t) * t;
    if (section.form == model::SectionForm::flat) return a * t;
    if (section.form == model::SectionForm::channel)
        return a * section.web_thickness.mm() + 2.0 * (b - section.web_thickness.mm()) * t;
    return a * b - (a - 2.0 * t) * (b - 2.0 * t);
}

double drawn_circle(double diameter) {
    return 3.0 * diameter * diameter * std::sin(0.2617993877991494);
}

double volume_wanted(const model::Resolved& resolved, const model::Piece& piece) {
    const auto& section = shipped_catalogue().sections[piece.section];
    double volume = area_of(section) * mm(piece.length);
    for (const auto& hole : resolved.holes_of(piece)) {
        const auto& plate = piece.plates[hole.wall];
        const auto axis = plate.normal_axis;
        volume -= drawn_circle(mm(hole.diameter)) * mm(plate.box.hi[axis] - plate.box.lo[axis]);
    }
    return volume;
}

}  // namespace

TEST_CASE("every piece of a box is one closed solid in its place, with all its holes",
          "[model][piece_mesh]") {
    const auto* section = GENERATE("angle 1 x 1 x 1/8", "angle 1 1/2 x 1 1/2 x 1/8");
    const auto resolved = model::resolve(box_of(section), shipped_catalogue());
    REQUIRE(resolved.pieces.size() >= 12);
    REQUIRE(!resolved.holes.empty());
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        CAPTURE(i);
        const auto& piece = resolved.pieces[i];
        const auto mesh = model::piece_mesh(resolved, shipped_catalogue(), i);
        CHECK(tests::open_edges(mesh) == 0);
        CHECK(tests::faulty_triangles(mesh) == 0);
        CHECK(tests::volume(mesh) == Approx(volume_wanted(resolved, piece)).epsilon(2e-5));
        check_same(reach_of(mesh), reach_of(resolved, piece));
    }
}

TEST_CASE("all forms of section are closed solids of their own area", "[model][piece_mesh]") {
    const auto& catalogue = shipped_catalogue();
    for (Index section = 0; section < catalogue.sections.size(); ++section) {
        const auto& shape = catalogue.sections[section];
        CAPTURE(shape.id);
        model::Resolved resolved;
        resolved.frames.resize(1);
        resolved.pieces.push_back({.section = section, .length = 100'000'000});
        const auto mesh = model::piece_mesh(resolved, catalogue, 0);
        CHECK(tests::open_edges(mesh) == 0);
        CHECK(tests::faulty_triangles(mesh) == 0);
        const bool is_square = shape.root_radius.nm() == 0 && shape.toe_radius.nm() == 0;
        const double within = is_square ? 1e-5 : 0.05;
        CHECK(tests::volume(mesh) == Approx(area_of(shape) * 100.0).epsilon(within));
    }
}

TEST_CASE("an angle's crisp lines follow its outline without a seam", "[model][piece_mesh]") {
    model::Resolved resolved;
    resolved.frames.resize(1);
    const auto* section = model::find_section(shipped_catalogue(), "angle 1 x 1 x 1/8");
    REQUIRE(section != nullptr);
    const auto index = static_cast<Index>(section - shipped_catalogue().sections.data());
    resolved.pieces.push_back({.section = index, .length = 100'000'000});
    const auto mesh = model::piece_mesh(resolved, shipped_catalogue(), 0);
    CHECK(mesh.edges.size() == 2 * (6 + 6 + 6));
}

TEST_CASE("a shim is drawn as the sheet it is", "[model][piece_mesh]") {
    model::Resolved resolved;
    resolved.frames.resize(1);
    model::Piece shim{.kind = model::PieceKind::shim,
                      .run = Axis::z,
                      .a_axis = Axis::x,
                      .length = 25'400'000,
                      .extents = {.lo = {0, 0, 0}, .hi = {20'000'000, 1'587'500, 25'400'000}}};
    shim.plates[0] = {.box = shim.extents, .normal_axis = 1, .inward = 1};
    shim.plate_count = 1;
    shim.hole_count = 1;
    resolved.holes.push_back(
        {.from_datum = 12'000'000, .gauge = 10'000'000, .diameter = 3'200'000});
    resolved.pieces.push_back(shim);
    const auto mesh = model::piece_mesh(resolved, shipped_catalogue(), 0);
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::volume(mesh) == Approx((20.0 * 25.4 - drawn_circle(3.2)) * 1.5875).epsilon(1e-5));
    check_same(reach_of(mesh), reach_of(resolved, shim));
}

TEST_CASE("set fasteners stand on both sides of their stack", "[model][piece_mesh]") {
    const auto resolved = model::resolve(box_of("angle 1 x 1 x 1/8"), shipped_catalogue());
    REQUIRE(!resolved.fasteners.empty());
    for (Index i = 0; i < resolved.fasteners.size(); ++i) {
        CAPTURE(i);
        const auto& fastener = resolved.fasteners[i];
        const auto mesh = model::fastener_mesh(resolved, shipped_catalogue(), i);
        CHECK(tests::open_edges(mesh) == 0);
        const auto& frame = resolved.frames[0];
        std::array<int, 3> drive{};
        drive[fastener.axis] = fastener.drive;
        const auto along = model::direction_to_room(frame, drive);
        const auto at = model::to_room(frame, fastener.at);
        double first = 0.0;
        double last = 0.0;
        for (const auto& vertex : mesh.vertices) {
            double depth = 0.0;
            for (std::size_t k = 0; k < 3; ++k)
                depth += (static_cast<double>(vertex.position[k]) - mm(at[k])) * along[k];
            first = std::min(first, depth);
            last = std::max(last, depth);
        }
        CHECK(first < -0.5);
        CHECK(last > mm(fastener.grip) + 0.5);
    }
}

TEST_CASE("many pieces in one mesh are the same as each apart", "[model][piece_mesh]") {
    const auto resolved = model::resolve(box_of("angle 1 x 1 x 1/8"), shipped_catalogue());
    engine::Mesh all;
    model::PieceMesher mesher{resolved, shipped_catalogue()};
    std::size_t vertices = 0;
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        mesher.append(all, i);
        const auto apart = model::piece_mesh(resolved, shipped_catalogue(), i);
        CHECK(std::equal(apart.vertices.begin(), apart.vertices.end(),
                         all.vertices.begin() + static_cast<std::ptrdiff_t>(vertices),
                         all.vertices.end()));
        vertices += apart.vertices.size();
    }
}

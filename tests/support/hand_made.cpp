#include "tests/support/hand_made.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace tests {
namespace {

using engine::Length;
using model::Axis;
using model::Corners;
using model::Index;
using model::Nm;
using model::Piece;
using model::PieceKind;
using model::Point;

constexpr Nm mm = 1'000'000;

model::Section rounded(std::string id, model::SectionForm form, Nm b, Nm root, Nm toe) {
    return {.id = std::move(id),
            .form = form,
            .system = model::MeasureSystem::metric,
            .a = Length::from_nm(40 * mm),
            .b = Length::from_nm(b),
            .thickness = Length::from_nm(3 * mm),
            .web_thickness = Length::from_nm(form == model::SectionForm::channel ? 4 * mm : 0),
            .root_radius = Length::from_nm(root),
            .toe_radius = Length::from_nm(toe),
            .usual_alloy = "6063-T52",
            .usual_lengths = {},
            .source = "made up"};
}

class Maker {
public:
    explicit Maker(const model::Catalogue& shipped) {
        made_.catalogue = shipped;
        auto& sections = made_.catalogue.sections;
        using model::SectionForm;
        sections.push_back(rounded("test angle", SectionForm::angle, 30 * mm, 4 * mm, 2 * mm));
        sections.push_back(rounded("test full toe", SectionForm::angle, 30 * mm, 0, 3 * mm));
        sections.push_back(rounded("test channel", SectionForm::channel, 25 * mm, 3 * mm, 2 * mm));
        sections.push_back(rounded("test tube", SectionForm::tube, 30 * mm, 2 * mm, 5 * mm));
        sections.push_back(rounded("test square tube", SectionForm::tube, 40 * mm, 0, 0));
        sections.push_back(rounded("test flat", SectionForm::flat, 0, 0, 0));
        made_.project.name = "every shape";
        made_.project.frames.push_back({.name = "frame", .quarter_turns = 1});
        model::ResolvedFrame frame{.origin = {100 * mm, -50 * mm, 30 * mm}, .quarter_turns = 1};
        made_.resolved.frames.push_back(frame);
    }

    // With its walls in their places; along an axis, or along a lean.
    Piece& bar(const std::string& section, Nm length, bool mirrored = false) {
        auto& piece = start(PieceKind::bar, section, length);
        piece.section = index_of(section);
        made_.project.stock.push_back({.name = section, .section = section, .alloy = "6063-T52"});
        piece.stock = static_cast<Index>(made_.project.stock.size() - 1);
        piece.b_sense = mirrored ? -1 : 1;
        std::uint8_t wall = 0;
        for (const auto& shape : section_plates(made_.catalogue.sections[piece.section])) {
            if (piece.plate_count == piece.plates.size()) break;
            piece.plates[piece.plate_count++] = plate_of(piece, shape, wall++);
        }
        piece.extents = hull_of(piece);
        return piece;
    }

    // Across the frame's y axis, from the datum: x along it, z across.
    Piece& sheet(PieceKind kind, Nm width, Nm height, Nm thickness) {
        auto& piece =
            start(kind, std::string(kind == PieceKind::panel ? "panel" : "gusset"), width);
        piece.run = Axis::x;
        piece.a_axis = Axis::z;
        const Point hi{piece.datum[0] + width, piece.datum[1] + thickness, piece.datum[2] + height};
        piece.plates[0] = {.box = {.lo = piece.datum, .hi = hi}, .normal_axis = 1, .inward = 1};
        piece.plate_count = 1;
        piece.extents = piece.plates[0].box;
        return piece;
    }

    void outline(Piece& piece, model::Outline near) {
        made_.resolved.outlines.push_back(std::move(near));
        piece.plates[0].outline = static_cast<Index>(made_.resolved.outlines.size() - 1);
    }

    void outline_far(Piece& piece, model::Outline far) {
        made_.resolved.outlines.push_back(std::move(far));
        piece.plates[0].outline_far = static_cast<Index>(made_.resolved.outlines.size() - 1);
    }

    // Along a direction between the axes, section axis a kept level with it.
    void lean(Piece& piece, double angle, double tilt) {
        const double c = std::cos(angle);
        const double s = std::sin(angle);
        const double ct = std::cos(tilt);
        const double st = std::sin(tilt);
        made_.resolved.leans.push_back(
            {.run = {c * ct, s * ct, st}, .a = {-s, c, 0.0}, .b = {-c * st, -s * st, ct}});
        piece.lean = static_cast<Index>(made_.resolved.leans.size() - 1);
    }

    void hole(Piece& piece, std::uint8_t wall, Nm along, Nm gauge, Nm diameter) {
        auto& holes = made_.resolved.holes;
        if (piece.hole_count == 0) piece.first_hole = static_cast<Index>(holes.size());
        holes.push_back({.piece = static_cast<Index>(&piece - made_.resolved.pieces.data()),
                         .wall = wall,
                         .from_datum = along,
                         .gauge = gauge,
                         .diameter = diameter});
        ++piece.hole_count;
    }

    HandMade finished() {
        // All holes are for one.
        made_.resolved.fasteners.push_back({.spec = {.index = 0, .grip = 0}});
        return std::move(made_);
    }

private:
    Index index_of(const std::string& section) const {
        const auto* found = model::find_section(made_.catalogue, section);
        return static_cast<Index>(found - made_.catalogue.sections.data());
    }

    Piece& start(PieceKind kind, const std::string& name, Nm length) {
        auto& pieces = made_.resolved.pieces;
        pieces.reserve(64);  // references are kept while one is made
        const auto place = static_cast<Nm>(pieces.size());
        auto& members = made_.project.frames[0].members;
        members.push_back({.name = name + " " + std::to_string(place + 1)});
        pieces.push_back({.kind = kind,
                          .member = static_cast<Index>(members.size() - 1),
                          .run = Axis::x,
                          .a_axis = Axis::y,
                          .datum = {0, place * 80 * mm, 10 * mm},
                          .length = length});
        return pieces.back();
    }

    static model::Plate plate_of(const Piece& piece,
                                 const model::SectionPlate& shape,
                                 std::uint8_t wall) {
        const std::array<int, 2> senses{piece.a_sense, piece.b_sense};
        model::Plate plate{.wall = wall,
                           .normal_axis = static_cast<std::uint8_t>(1 + shape.normal_axis),
                           .is_root_fillet = shape.is_root_fillet};
        const auto normal = static_cast<std::size_t>(shape.normal_axis);
        plate.inward = static_cast<std::int8_t>(-shape.outward * senses[normal]);
        plate.box.lo[0] = piece.datum[0];
        plate.box.hi[0] = piece.datum[0] + piece.length;
        for (std::size_t i = 0; i < 2; ++i) {
            const Nm one = piece.datum[i + 1] + senses[i] * shape.lo[i];
            const Nm other = piece.datum[i + 1] + senses[i] * shape.hi[i];
            plate.box.lo[i + 1] = std::min(one, other);
            plate.box.hi[i + 1] = std::max(one, other);
        }
        return plate;
    }

    static model::Box hull_of(const Piece& piece) {
        auto box = piece.plates[0].box;
        for (const auto& plate : piece.walls()) box = engine::hull(box, plate.box);
        return box;
    }

    HandMade made_;
};

void add_square_bars(Maker& make) {
    for (const auto* section :
         {"angle 1 x 1 x 1/8", "angle 1 1/2 x 1 1/2 x 1/8 rounded", "test angle", "test full toe",
          "test channel", "test tube", "test square tube", "test flat"}) {
        auto& bar = make.bar(section, 300 * mm);
        make.hole(bar, 0, 40 * mm, 14 * mm, 4 * mm);
        make.hole(bar, 0, 260 * mm, 15 * mm, 3 * mm);
    }
}

void add_sloping_bars(Maker& make) {
    auto& mitred = make.bar("angle 1 x 1 x 1/8", 400 * mm);
    mitred.ends[1].slope = {1.0, 0.0};
    mitred.ends[0].slope = {1.0, 0.0};
    make.hole(mitred, 0, 60 * mm, 14 * mm, 4 * mm);
    make.hole(mitred, 1, 200 * mm, 14 * mm, 4 * mm);
    for (const auto* section : {"test angle", "test full toe", "test channel", "test tube"}) {
        auto& sloping = make.bar(section, 350 * mm, true);
        sloping.ends[0].slope = {-0.5, 0.3};
        sloping.ends[1].slope = {0.7, -0.41};
        make.hole(sloping, 0, 150 * mm, 15 * mm, 5 * mm);
    }
}

void add_notched_bars(Maker& make) {
    for (const auto* section : {"angle 1 x 1 x 1/8", "test angle", "test full toe"}) {
        auto& coped = make.bar(section, 280 * mm);
        coped.ends[1].wall_back[0] = 25'400'000;
        coped.ends[0].wall_back[1] = 12 * mm;
        make.hole(coped, 1, 270 * mm, 15 * mm, 4 * mm);
    }
    auto& channel = make.bar("test channel", 260 * mm, true);
    channel.ends[0].wall_back = {15 * mm, 10 * mm, 0, 0};
    channel.ends[1].wall_back = {0, 0, 8 * mm, 0};
    make.hole(channel, 0, 100 * mm, 20 * mm, 4 * mm);
    for (const auto* section : {"test tube", "test square tube"}) {
        auto& tube = make.bar(section, 220 * mm);
        tube.ends[1].wall_back = {20 * mm, 0, 5 * mm, 0};
        make.hole(tube, 3, 100 * mm, 14 * mm, 4 * mm);
    }
    auto& both = make.bar("test angle", 240 * mm);
    both.ends[0].slope = {0.0, 1.0};
    both.ends[1].wall_back[0] = 20 * mm;
}

void add_plates(Maker& make) {
    auto& gusset = make.sheet(PieceKind::gusset, 80 * mm, 80 * mm, 3 * mm);
    make.outline(
        gusset,
        {.corners = {{0, 0}, {80 * mm, 0}, {80 * mm, 20 * mm}, {20 * mm, 80 * mm}, {0, 80 * mm}},
         .cut_outs = {}});
    make.hole(gusset, 0, 10 * mm, 10 * mm, 5 * mm);
    make.hole(gusset, 0, 60 * mm, 10 * mm, 5 * mm);
    auto& panel = make.sheet(PieceKind::panel, 300 * mm, 200 * mm, 2 * mm);
    make.outline(
        panel,
        {.corners = {{0, 0}, {300 * mm, 0}, {300 * mm, 200 * mm}, {0, 200 * mm}},
         .cut_outs = {
             {{50 * mm, 50 * mm}, {50 * mm, 60 * mm}, {150 * mm, 60 * mm}, {150 * mm, 50 * mm}},
             {{50 * mm, 80 * mm}, {50 * mm, 90 * mm}, {150 * mm, 90 * mm}, {150 * mm, 80 * mm}}}});
    for (Nm i = 0; i < 5; ++i) make.hole(panel, 0, (20 + 60 * i) * mm, 10 * mm, 3'200'000);
    auto& plain = make.sheet(PieceKind::shim, 60 * mm, 25 * mm, 1'587'500);
    make.hole(plain, 0, 20 * mm, 12 * mm, 4 * mm);
}

void add_braces(Maker& make) {
    // A flat whose ends follow an outline, one of them bevelled.
    auto& brace = make.bar("test flat", 500 * mm);
    make.lean(brace, 0.6, 0.0);
    make.outline(brace,
                 {.corners = {{0, 0}, {500 * mm, 0}, {460 * mm, 40 * mm}, {25 * mm, 40 * mm}},
                  .cut_outs = {}});
    make.outline_far(brace,
                     {.corners = {{0, 0}, {497 * mm, 0}, {457 * mm, 40 * mm}, {25 * mm, 40 * mm}},
                      .cut_outs = {}});
    make.hole(brace, 0, 60 * mm, 20 * mm, 5 * mm);
    make.hole(brace, 0, 420 * mm, 20 * mm, 5 * mm);
    for (const auto* section : {"test angle", "test channel", "test tube", "test flat"}) {
        auto& leaning = make.bar(section, 320 * mm);
        make.lean(leaning, 0.7, -0.3);
        leaning.ends[1].slope = {0.8, 0.25};
        make.hole(leaning, 0, 100 * mm, 20 * mm, 4 * mm);
    }
}

}  // namespace

HandMade hand_made(const model::Catalogue& shipped) {
    Maker make{shipped};
    add_square_bars(make);
    add_sloping_bars(make);
    add_notched_bars(make);
    add_plates(make);
    add_braces(make);
    return make.finished();
}

}  // namespace tests

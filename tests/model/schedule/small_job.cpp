#include "tests/model/schedule/small_job.h"

namespace tests {
namespace {

using engine::Length;
using engine::Nm;
using engine::Point;
using namespace engine::literals;
using namespace model;

constexpr Nm inch = Length::nm_per_inch;
constexpr Nm wall = inch / 8;
constexpr Nm shim_thickness = inch / 16;

constexpr Length ten_thousandths_in(Nm count) { return Length::from_nm(count * inch / 10'000); }

enum Pieces : Index { post_left, post_right, rail, flat_front, shim, flat_back };
enum Drills : Index { drill_29, drill_30, drill_18 };

Catalogue small_catalogue() {
    Catalogue catalogue;
    catalogue.sections = {
        {.id = "angle 1 x 1 x 1/8", .a = 1_in, .b = 1_in, .thickness = 8_in_64},
        {.id = "flat 1 x 1/8", .form = SectionForm::flat, .a = 1_in, .thickness = 8_in_64}};
    catalogue.alloys = {{.id = "6063-T52"}};
    catalogue.drills = {{"#29", "number", ten_thousandths_in(1360), ""},
                        {"#30", "number", ten_thousandths_in(1285), ""},
                        {"#18", "number", ten_thousandths_in(1695), ""}};
    catalogue.rivets = {{.id = "blind rivet 1/8",
                         .diameter = 8_in_64,
                         .drill = "#30",
                         .grips = {{.code = "4-2", .least = 4_in_64, .most = 8_in_64},
                                   {.code = "4-4", .least = 12_in_64, .most = 16_in_64}}}};
    catalogue.screws = {{.id = "machine screw 8-32",
                         .diameter = ten_thousandths_in(1640),
                         .tap_drill = "#29",
                         .clearance_drill = "#18",
                         .lengths = {24_in_64, 32_in_64}}};
    catalogue.pins = {{.id = "sheet pin 3/32",
                       .hole = ten_thousandths_in(980),
                       .drill = "#41",
                       .grip_most = 16_in_64},
                      {.id = "sheet pin 1/8",
                       .hole = ten_thousandths_in(1285),
                       .drill = "#30",
                       .grip_most = 16_in_64}};
    return catalogue;
}

Project small_project() {
    Project project{.name = "Shop trial", .note = "invented"};
    project.dimensions = {{.name = "mill length", .formula = "8 ft"}};
    project.stock = {{.name = "angle",
                      .section = "angle 1 x 1 x 1/8",
                      .alloy = "6063-T52",
                      .bars = {{.length = "mill length"}},
                      .offcuts = {{.length = "14"}}},
                     {.name = "strap",
                      .section = "flat 1 x 1/8",
                      .alloy = "6063-T52",
                      .bars = {{.length = "4 ft", .limit = 5}}}};
    project.frames = {
        {.name = "gate",
         .members = {{.name = "post left"}, {.name = "post right"}, {.name = "rail"}}},
        {.name = "strap pair", .members = {{.name = "front flat"}, {.name = "back flat"}}}};
    return project;
}

// An angle's plates, root corners shared, as section_plates has them.
void set_angle_plates(Piece& piece) {
    const auto run = index_of(piece.run);
    const auto a = index_of(piece.a_axis);
    const auto b = 3 - run - a;
    const auto box = [&](Nm size_a, Nm size_b) {
        Box all;
        const auto set = [&](std::size_t axis, Nm size, int sense) {
            const Nm from = piece.datum[axis];
            const Nm to = from + size * sense;
            all.lo[axis] = std::min(from, to);
            all.hi[axis] = std::max(from, to);
        };
        set(run, piece.length, piece.run_sense);
        set(a, size_a, piece.a_sense);
        set(b, size_b, piece.b_sense);
        return all;
    };
    const auto sign = [](int sense) { return static_cast<std::int8_t>(sense); };
    const auto axis = [](std::size_t index) { return static_cast<std::uint8_t>(index); };
    piece.plates[0] = {box(inch, wall), 0, axis(b), sign(piece.b_sense), false};
    piece.plates[1] = {box(wall, inch), 1, axis(a), sign(piece.a_sense), false};
    piece.plate_count = 2;
    piece.extents = box(inch, inch);
}

Piece angle(Index member, Axis run, Axis a_axis, int a_sense, int b_sense, Point datum, Nm length) {
    Piece piece{.member = member,
                .stock = 0,
                .section = 0,
                .run = run,
                .a_axis = a_axis,
                .a_sense = a_sense,
                .b_sense = b_sense,
                .datum = datum,
                .length = length};
    set_angle_plates(piece);
    return piece;
}

// Lying flat with its face across y, of the given thickness; heel at the lowest corner.
Piece flat(PieceKind kind, Index member, Axis run, Point datum, Nm length, Nm thickness) {
    Piece piece{.kind = kind,
                .frame = 1,
                .member = member,
                .stock = kind == PieceKind::bar ? 1 : no_index,
                .section = kind == PieceKind::bar ? 1 : no_index,
                .run = run,
                .a_axis = run == Axis::x ? Axis::z : Axis::x,
                .datum = datum,
                .length = length};
    const auto across = index_of(piece.a_axis);
    Box box{datum, datum};
    box.hi[index_of(run)] += length;
    box.hi[across] += inch;
    box.hi[1] += thickness;
    piece.plates[0] = {box, 0, 1, 1, false};
    piece.plate_count = 1;
    piece.extents = box;
    return piece;
}

std::vector<Piece> small_pieces() {
    const Nm end = wall + inch / 32;
    std::vector<Piece> pieces{
        angle(0, Axis::z, Axis::x, 1, 1, {0, 0, 0}, 12 * inch),
        angle(1, Axis::z, Axis::x, -1, 1, {20 * inch, 0, 0}, 12 * inch),
        angle(2, Axis::x, Axis::y, 1, -1, {end, wall, 12 * inch}, 20 * inch - 2 * end),
        flat(PieceKind::bar, 0, Axis::x, {0, 0, 0}, 6 * inch, wall),
        flat(PieceKind::shim, no_index, Axis::x, {0, wall, 0}, inch, shim_thickness),
        flat(PieceKind::bar, 1, Axis::z, {0, wall + shim_thickness, 0}, 9 * inch, wall)};
    const auto set_mark = [&](Index piece, Index mark, Hand hand) {
        pieces[piece].mark = mark;
        pieces[piece].hand = hand;
    };
    set_mark(post_left, 0, Hand::as_drawn);
    set_mark(post_right, 0, Hand::opposite);
    set_mark(rail, 1, Hand::none);
    set_mark(flat_front, 2, Hand::none);
    set_mark(shim, 4, Hand::none);
    set_mark(flat_back, 3, Hand::none);
    return pieces;
}

Fastener rivet(Index joint, Point at, Index post) {
    return {.joint = joint,
            .spec = {.index = 0, .grip = 1},
            .at = at,
            .axis = 1,
            .stack = {{{post, 0, wall}, {rail, 1, wall}, {}}},
            .stack_count = 2,
            .grip = 2 * wall,
            .grip_least = 12 * inch / 64,
            .grip_most = 16 * inch / 64};
}

Fastener screw(FastenerSpec::Kind kind, Nm x) {
    return {.joint = 2,
            .spec = {.kind = kind, .index = 0, .grip = 1},
            .at = {x, 0, inch / 2},
            .axis = 1,
            .stack = {{{flat_front, 0, wall}, {shim, 0, shim_thickness}, {flat_back, 0, wall}}},
            .stack_count = 3,
            .grip = 2 * wall + shim_thickness,
            .grip_least = 2 * wall + shim_thickness,
            .grip_most = 2 * wall + shim_thickness};
}

std::vector<Fastener> small_fasteners() {
    const Nm upper = 12 * inch - inch / 4;
    const Nm lower = 12 * inch - 3 * inch / 4;
    const Nm left = inch / 2;
    const Nm right = 20 * inch - inch / 2;
    return {rivet(0, {left, 0, upper}, post_left),
            rivet(0, {left, 0, lower}, post_left),
            rivet(1, {right, 0, upper}, post_right),
            rivet(1, {right, 0, lower}, post_right),
            screw(FastenerSpec::Kind::screw_through, inch / 4),
            screw(FastenerSpec::Kind::screw_tapped, 3 * inch / 4)};
}

class HoleMaker {
public:
    explicit HoleMaker(SmallJob& job) : job_{job} {}

    void start(Index piece) {
        piece_ = piece;
        job_.resolved.pieces[piece].first_hole = static_cast<Index>(job_.resolved.holes.size());
    }
    void add(std::uint8_t wall_index,
             Nm from_datum,
             Nm gauge,
             Index drill,
             HoleOperation operation,
             Index fastener,
             Index mate) {
        job_.resolved.holes.push_back({.piece = piece_,
                                       .wall = wall_index,
                                       .from_datum = from_datum,
                                       .gauge = gauge,
                                       .diameter = job_.catalogue.drills[drill].diameter.nm(),
                                       .drill = drill,
                                       .operation = operation,
                                       .fastener = fastener,
                                       .mate = mate});
        ++job_.resolved.pieces[piece_].hole_count;
    }

private:
    SmallJob& job_;
    Index piece_ = 0;
};

void add_rivet_holes(SmallJob& job) {
    using enum HoleOperation;
    const Nm rail_left = inch / 2 - wall - inch / 32;
    const Nm rail_right = job.resolved.pieces[rail].length - rail_left;
    HoleMaker holes{job};
    holes.start(post_left);
    holes.add(0, 12 * inch - 3 * inch / 4, inch / 2, drill_30, drill, 1, rail);
    holes.add(0, 12 * inch - inch / 4, inch / 2, drill_30, drill, 0, rail);
    holes.start(post_right);
    holes.add(0, 12 * inch - 3 * inch / 4, inch / 2, drill_30, drill, 3, rail);
    holes.add(0, 12 * inch - inch / 4, inch / 2, drill_30, drill, 2, rail);
    holes.start(rail);
    holes.add(1, rail_left, inch / 4, drill_30, drill, 0, post_left);
    holes.add(1, rail_right, inch / 4, drill_30, drill, 2, post_right);
    holes.add(1, rail_left, 3 * inch / 4, drill_30, match_drill, 1, post_left);
    holes.add(1, rail_right, 3 * inch / 4, drill_30, match_drill, 3, post_right);
}

void add_screw_holes(SmallJob& job) {
    using enum HoleOperation;
    HoleMaker holes{job};
    holes.start(flat_front);
    holes.add(0, inch / 4, inch / 2, drill_18, clearance, 4, shim);
    holes.add(0, 3 * inch / 4, inch / 2, drill_18, clearance, 5, shim);
    holes.start(shim);
    holes.add(0, inch / 4, inch / 2, drill_18, clearance, 4, flat_back);
    holes.add(0, 3 * inch / 4, inch / 2, drill_18, clearance, 5, flat_back);
    holes.start(flat_back);
    holes.add(0, inch / 2, inch / 4, drill_18, clearance, 4, shim);
    holes.add(0, inch / 2, 3 * inch / 4, drill_29, tap_drill, 5, shim);
    job.resolved.holes.back().tap = 0;
}

std::vector<Joint> small_joints() {
    const auto joint = [](Index frame, Index first, Index second, Index first_fastener) {
        return Joint{.frame = frame,
                     .pieces = {first, second},
                     .normal_axis = 1,
                     .first_fastener = first_fastener,
                     .fastener_count = 2,
                     .wanted = 2};
    };
    std::vector<Joint> joints{joint(0, post_left, rail, 0), joint(0, post_right, rail, 2),
                              joint(1, flat_front, flat_back, 4)};
    joints[0].walls = {0, 1};
    joints[1].walls = {0, 1};
    joints[2].shim = shim;
    return joints;
}

}  // namespace

SmallJob small_job() {
    SmallJob job{small_project(), small_catalogue(), {}};
    auto& resolved = job.resolved;
    resolved.dimensions.emplace_back(
        engine::Quantity{.kind = engine::QuantityKind::length, .length = 96_in});
    resolved.shop.kerf = 3 * inch / 32;
    resolved.shop.end_trim = inch / 2;
    resolved.frames = {{.origin = {100'000'000, 0, 0}, .quarter_turns = 1, .piece_count = 3},
                       {.origin = {0, 0, 500'000'000}, .first_piece = 3, .piece_count = 3}};
    resolved.pieces = small_pieces();
    resolved.joints = small_joints();
    resolved.fasteners = small_fasteners();
    add_rivet_holes(job);
    add_screw_holes(job);
    resolved.marks = {{"A1", post_left, 1, 1},
                      {"A2", rail, 1, 0},
                      {"B1", flat_front, 1, 0},
                      {"B2", flat_back, 1, 0},
                      {"S1", shim, 1, 0}};
    resolved.findings = {{.code = "loose_end",
                          .severity = Severity::warning,
                          .concerns = {{SubjectKind::member, "gate", "post left"}},
                          .what = "the lower end of post left is held by nothing",
                          .mend = "add a rail, or a cleat"}};
    return job;
}

}  // namespace tests

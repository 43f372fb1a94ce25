// Each check of the invariants can fail: a small skeleton that is good is spoilt in one way.
#include "tests/support/skeleton_checks.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <array>
#include <string>

namespace {

using nlohmann::json;
using tests::Complaints;
using tests::SkeletonFiles;

constexpr double inch = 25.4;
constexpr double side = 24 * inch;
constexpr double thick = inch / 8;
constexpr double near_hole = 5 * inch / 16;
constexpr double far_hole = 11 * inch / 16;

std::string hole_id(int piece, int hole) {
    return "h" + std::to_string(piece) + "-" + std::to_string(hole);
}

// Four flats 24 x 1 x 1/8 in, each the one before turned by a quarter about y, with two 1/8 in
// rivets where two meet. The upright ones (0 and 2) lie in front.
json flat(int index) {
    struct Turn {
        std::array<double, 3> datum;
        std::array<double, 3> run;
        std::array<double, 3> gauge;
    };
    static const std::array<Turn, 4> turns{{{{0, 0, 0}, {0, 0, 1}, {1, 0, 0}},
                                            {{0, thick, side}, {1, 0, 0}, {0, 0, -1}},
                                            {{side, 0, side}, {0, 0, -1}, {-1, 0, 0}},
                                            {{side, thick, 0}, {-1, 0, 0}, {0, 0, 1}}}};
    const auto& turn = turns[static_cast<std::size_t>(index)];
    json holes = json::array();
    // The piece's start is corner `index`, its far end corner `index + 1`.
    for (int end = 0; end < 2; ++end) {
        for (int k = 0; k < 2; ++k) {
            const double gauge = k == 0 ? near_hole : far_hole;
            const double from = end == 0 ? gauge : side - gauge;
            const int corner = (index + end) % 4;
            holes.push_back({{"id", hole_id(index, end * 2 + k)},
                             {"at", {from, gauge}},
                             {"diameter", 3.2639},
                             {"operation", "drill"},
                             {"joint", "j" + std::to_string(corner)},
                             {"fastener", "f" + std::to_string(corner * 2 + k)}});
        }
    }
    const json plate{{"leg", "face"},  {"origin", turn.datum},
                     {"u", turn.run},  {"v", turn.gauge},
                     {"n", {0, 1, 0}}, {"thickness", thick},
                     {"holes", holes}, {"outline", {{0, 0}, {side, 0}, {side, inch}, {0, inch}}}};
    return {{"id", "p" + std::to_string(index)},
            {"mark", "A1"},
            {"hand", ""},
            {"member", "side " + std::to_string(index)},
            {"frame", "square"},
            {"section", "flat 1 x 1/8"},
            {"length", side},
            {"run", turn.run},
            {"datum", turn.datum},
            {"plates", json::array({plate})}};
}

json corner_joint(int corner) {
    const std::array<std::array<double, 2>, 4> signs{{{0, 0}, {0, side}, {side, side}, {side, 0}}};
    const auto& [x, z] = signs[static_cast<std::size_t>(corner)];
    const int upright = corner == 0 || corner == 3 ? (corner == 0 ? 0 : 2) : (corner == 1 ? 0 : 2);
    const int level = corner == 1 || corner == 2 ? 1 : 3;
    json fasteners = json::array();
    for (int k = 0; k < 2; ++k) {
        const double in = k == 0 ? near_hole : far_hole;
        const std::string front = "p" + std::to_string(upright);
        const std::string back = "p" + std::to_string(level);
        fasteners.push_back({{"id", "f" + std::to_string(corner * 2 + k)},
                             {"at", {x == 0 ? in : x - in, 0, z == 0 ? in : z - in}},
                             {"axis", {0, 1, 0}},
                             {"spec", "blind rivet 1/8, grip 4-4"},
                             {"head_side", front},
                             {"stack",
                              {{{"piece", front}, {"leg", "face"}, {"thickness", thick}},
                               {{"piece", back}, {"leg", "face"}, {"thickness", thick}}}},
                             {"grip_least", 3 * inch / 16},
                             {"grip_most", inch / 4}});
    }
    return {{"id", "j" + std::to_string(corner)},
            {"recipe", "staggered lap"},
            {"pieces", {"p" + std::to_string(upright), "p" + std::to_string(level)}},
            {"fasteners", fasteners}};
}

json small_pieces() {
    json whole{{"pieces", json::array()}, {"joints", json::array()}};
    for (int i = 0; i < 4; ++i) {
        whole["pieces"].push_back(flat(i));
        whole["joints"].push_back(corner_joint(i));
    }
    return whole;
}

const std::string drill_head =
    "mark,hand,pieces,leg,hole,from_datum,from_datum_mm,gauge,gauge_mm,diameter_in,diameter_mm,"
    "drill,operation,fastener,mates_with,setup,datum_end\n";

std::string drill_row(const std::string& from, const std::string& gauge) {
    return "A1,,4,face,1,x," + from + ",x," + gauge +
           ",0.1285,3.2639,#30,drill,blind rivet 1/8,A1,1,right\n";
}

SkeletonFiles small_files() {
    return {
        {"pieces.json", small_pieces().dump()},
        {"cut.csv",
         "mark,hand,quantity,section,alloy,length,length_mm,end_a,end_b,frame,members\n"
         "A1,,4,flat 1 x 1/8,6063-T52,24,609.6,square,square,square,all\n"},
        {"drill.csv", drill_head + drill_row("7.9375", "7.9375") + drill_row("17.4625", "17.4625") +
                          drill_row("601.6625", "7.9375") + drill_row("592.1375", "17.4625")},
        {"fasteners.csv",
         "fastener,diameter,grip_or_length,stack_mm,needed,spares,total,joints\n"
         "\"blind rivet 1/8, grip 4-4\",1/8,x,6.35,8,1,9,4\nsheet pin 1/8,1/8,x,,4,0,4,4\n"},
        {"bars.csv", "bar,from,section,bar_length,sequence,mark,hand,length,start,offcut\n"},
        {"sheet.csv", "mark,hand,quantity,width_mm,length_mm,cut_outs,opening_1,opening_2\n"},
        {"findings.csv", "code,severity,where,what,mend\n"}};
}

SkeletonFiles with_pieces(const json& pieces) {
    auto files = small_files();
    files["pieces.json"] = pieces.dump();
    return files;
}

Complaints complaints_of(const SkeletonFiles& files) {
    return tests::skeleton_complaints(files, {.per_lap = 2});
}

bool has(const Complaints& complaints, const std::string& part) {
    for (const auto& complaint : complaints) {
        if (complaint.find(part) != std::string::npos) return true;
    }
    for (const auto& complaint : complaints) UNSCOPED_INFO(complaint);
    return false;
}

json& holes_of(json& pieces, std::size_t piece) {
    return pieces["pieces"][piece]["plates"][0]["holes"];
}

}  // namespace

TEST_CASE("the small skeleton gives no complaint", "[support][checks]") {
    CHECK(complaints_of(small_files()) == Complaints{});
}

TEST_CASE("a hole moved by a nanometre is missed by its fastener", "[support][checks]") {
    auto pieces = small_pieces();
    holes_of(pieces, 0)[1]["at"][0] = far_hole + 1e-6;
    const auto complaints = complaints_of(with_pieces(pieces));
    CHECK(has(complaints, "fastener f1 misses its hole in p0 face"));
    CHECK(has(complaints, "drill.csv does not list a hole of p0"));
    CHECK(has(complaints, "drill.csv lists a hole that p0"));
    CHECK(has(complaints, "is not congruent"));
}

TEST_CASE("a hole that is not drilled is missed", "[support][checks]") {
    auto pieces = small_pieces();
    holes_of(pieces, 0).erase(0);
    const auto complaints = complaints_of(with_pieces(pieces));
    CHECK(has(complaints, "fastener f0 has no hole in p0 face"));
    CHECK(has(complaints, "drill.csv lists a hole that p0"));
}

TEST_CASE("a hole for nothing is noticed", "[support][checks]") {
    auto pieces = small_pieces();
    auto hole = holes_of(pieces, 0)[0];
    hole["fastener"] = "f99";
    hole["at"] = {300, 12.7};
    holes_of(pieces, 0).push_back(hole);
    CHECK(has(complaints_of(with_pieces(pieces)), "is for no fastener"));
}

TEST_CASE("a piece cut short no longer covers its length", "[support][checks]") {
    auto pieces = small_pieces();
    pieces["pieces"][1]["length"] = side - 1;
    const auto complaints = complaints_of(with_pieces(pieces));
    CHECK(has(complaints, "p1 does not reach"));
    CHECK(has(complaints, "cut.csv has another length or section for p1"));
}

TEST_CASE("a piece that is really shorter than its fellows is not congruent with them",
          "[support][checks]") {
    auto pieces = small_pieces();
    pieces["pieces"][1]["length"] = side - 1;
    pieces["pieces"][1]["plates"][0]["outline"] = {
        {0, 0}, {side - 1, 0}, {side - 1, inch}, {0, inch}};
    const auto complaints = complaints_of(with_pieces(pieces));
    CHECK(has(complaints, "p1 of mark A1 is not congruent"));
    CHECK(has(complaints, "is too near an edge") == false);
}

TEST_CASE("a piece pushed into another is interference, unless a finding names both",
          "[support][checks]") {
    auto pieces = small_pieces();
    pieces["pieces"][1]["datum"][1] = 0.5 * thick;
    pieces["pieces"][1]["plates"][0]["origin"][1] = 0.5 * thick;
    auto files = with_pieces(pieces);
    CHECK(has(complaints_of(files), "p0 (square: side 0) and p1 (square: side 1) enter"));
    files["findings.csv"] +=
        "interference,error,\"square: member side 0, member side 1\",they clash,move one\n";
    CHECK_FALSE(has(complaints_of(files), "p0 (square: side 0) and p1 (square: side 1) enter"));
    CHECK(has(complaints_of(files), "p1 (square: side 1) and p2 (square: side 2) enter"));
}

TEST_CASE("a piece drawn away leaves a gap in the stack", "[support][checks]") {
    auto pieces = small_pieces();
    pieces["pieces"][1]["datum"][1] = thick + 0.000001;
    pieces["pieces"][1]["plates"][0]["origin"][1] = thick + 0.000001;
    CHECK(has(complaints_of(with_pieces(pieces)), "has a gap of 1 nm before p1 face"));
}

TEST_CASE("a stack outside the grip is noticed", "[support][checks]") {
    auto pieces = small_pieces();
    pieces["joints"][0]["fasteners"][0]["grip_most"] = 6.3;
    CHECK(has(complaints_of(with_pieces(pieces)), "outside its grip"));
}

TEST_CASE("a hole too near an edge is noticed", "[support][checks]") {
    auto files = small_files();
    CHECK(has(tests::skeleton_complaints(files, {.edge_distance = 2.6}), "too near an edge"));
    CHECK_FALSE(has(tests::skeleton_complaints(files, {.edge_distance = 2.5}), "too near an edge"));
}

TEST_CASE("holes nearer than the pitch are noticed", "[support][checks]") {
    // The two holes of a corner are 3/8 in * sqrt(2) = 4.243 diameters apart.
    auto files = small_files();
    CHECK(has(tests::skeleton_complaints(files, {.pitch = 4.25}), "nearer than the pitch"));
    CHECK_FALSE(has(tests::skeleton_complaints(files, {.pitch = 4.24}), "nearer than the pitch"));
}

TEST_CASE("metal in the way of a head or a tail is noticed", "[support][checks]") {
    auto pieces = small_pieces();
    auto block = flat(0);
    block["id"] = "p9";
    block["plates"][0]["holes"] = json::array();
    SECTION("over the head") {
        block["plates"][0]["origin"][1] = -thick;
        block["datum"][1] = -thick;
        pieces["pieces"].push_back(block);
        CHECK(has(complaints_of(with_pieces(pieces)), "the head of fastener f0 runs into p9"));
    }
    SECTION("under the tail") {
        block["plates"][0]["origin"][1] = 2 * thick;
        block["datum"][1] = 2 * thick;
        pieces["pieces"].push_back(block);
        CHECK(has(complaints_of(with_pieces(pieces)), "the tail of fastener f0 runs into p9"));
    }
}

TEST_CASE("two fasteners in one place are noticed", "[support][checks]") {
    auto pieces = small_pieces();
    auto twice = pieces["joints"][0]["fasteners"][0];
    twice["id"] = "f99";
    pieces["joints"][0]["fasteners"].push_back(twice);
    const auto complaints = complaints_of(with_pieces(pieces));
    CHECK(has(complaints, "run into each other"));
    CHECK(has(complaints, "fasteners.csv counts blind rivet 1/8, grip 4-4 wrongly"));
}

TEST_CASE("an end without a fastener is loose, unless a finding says so", "[support][checks]") {
    auto pieces = small_pieces();
    pieces["joints"].erase(0);
    holes_of(pieces, 0).erase(1);
    holes_of(pieces, 0).erase(0);
    holes_of(pieces, 3).erase(3);
    holes_of(pieces, 3).erase(2);
    auto files = with_pieces(pieces);
    CHECK(has(complaints_of(files), "nothing holds p0 datum end"));
    CHECK(has(complaints_of(files), "nothing holds p3 far end"));
    files["findings.csv"] += "loose_end,warning,square: member side 0,it is loose,add a cleat\n";
    CHECK_FALSE(has(complaints_of(files), "nothing holds p0 datum end"));
    CHECK(has(complaints_of(files), "nothing holds p3 far end"));
}

TEST_CASE("a finding about one member does not excuse another of a longer name",
          "[support][checks]") {
    auto files = small_files();
    files["findings.csv"] += "loose_end,warning,square: member side 01,it is loose,add a cleat\n";
    const auto skeleton = tests::read_skeleton(files);
    REQUIRE(skeleton);
    CHECK(tests::findings_naming(*skeleton, "loose_end", "square", {"side 0"}) == 0);
    CHECK(tests::findings_naming(*skeleton, "loose_end", "square", {"side 01"}) == 1);
}

TEST_CASE("a lap with fewer fasteners than asked needs a finding", "[support][checks]") {
    auto files = small_files();
    CHECK(has(tests::skeleton_complaints(files, {.per_lap = 3}), "joint j0 has 2 fasteners"));
    files["findings.csv"] +=
        "too_few_fasteners,warning,\"square: member side 0, member side 3\",2 fit,smaller ones\n";
    CHECK_FALSE(has(tests::skeleton_complaints(files, {.per_lap = 3}), "joint j0 has 2 fasteners"));
}

TEST_CASE("a wrong number in drill.csv is noticed", "[support][checks]") {
    auto files = small_files();
    SECTION("a distance") {
        files["drill.csv"] = drill_head + drill_row("7.937501", "7.9375") +
                             drill_row("17.4625", "17.4625") + drill_row("601.6625", "7.9375") +
                             drill_row("592.1375", "17.4625");
        CHECK(has(complaints_of(files), "drill.csv does not list a hole of p0"));
    }
    SECTION("a hole too many") {
        files["drill.csv"] += drill_row("300", "12.7");
        CHECK(has(complaints_of(files), "drill.csv lists a hole that p0"));
    }
    SECTION("a piece too few of a mark") {
        auto& text = files["drill.csv"];
        text.replace(text.find("A1,,4"), 5, "A1,,3");
        CHECK(has(complaints_of(files),
                  "drill.csv counts 3 pieces of mark A1 , of which there are 4"));
    }
    SECTION("a mark that is not there") {
        files["drill.csv"] +=
            "B7,,1,face,1,x,1,x,1,0.1285,3.2639,#30,drill,blind rivet 1/8,A1,1,right\n";
        CHECK(has(complaints_of(files), "lists mark B7"));
    }
    SECTION("the datum end of one hole on the other hand") {
        auto& text = files["drill.csv"];
        text.replace(text.find("right"), 5, "left");
        CHECK(has(complaints_of(files), "drill.csv does not list a hole of p0"));
    }
    SECTION("no number") {
        auto& text = files["drill.csv"];
        text.replace(text.find("7.9375"), 6, "5/16");
        CHECK(has(complaints_of(files), "has no exact number under from_datum_mm"));
    }
}

TEST_CASE("a piece measured from the wrong end or edge disagrees with drill.csv",
          "[support][checks]") {
    auto pieces = small_pieces();
    SECTION("datum on the toe edge") {
        pieces["pieces"][0]["datum"][0] = inch;
        CHECK(has(complaints_of(with_pieces(pieces)), "drill.csv does not list a hole of p0"));
    }
    SECTION("gauge towards the heel") {
        auto& plate = pieces["pieces"][0]["plates"][0];
        plate["v"] = {-1, 0, 0};
        plate["outline"] = {{0, 0}, {side, 0}, {side, -inch}, {0, -inch}};
        for (auto& hole : plate["holes"]) hole["at"][1] = -hole["at"][1].get<double>();
        CHECK(has(complaints_of(with_pieces(pieces)), "drill.csv does not list a hole of p0"));
    }
}

TEST_CASE("a cut list of the wrong quantity is noticed", "[support][checks]") {
    auto files = small_files();
    auto& text = files["cut.csv"];
    text.replace(text.find(",4,"), 3, ",3,");
    CHECK(has(complaints_of(files), "cut.csv asks for 3 of mark A1"));
}

TEST_CASE("two marks for the same piece are noticed", "[support][checks]") {
    auto pieces = small_pieces();
    pieces["pieces"][1]["mark"] = "A2";
    CHECK(has(complaints_of(with_pieces(pieces)), "marks A1 and A2 are for the same piece"));
}

TEST_CASE("an opposite hand that is no mirror image, or no different, is noticed",
          "[support][checks]") {
    auto pieces = small_pieces();
    SECTION("a piece that equals its mirror image") {
        pieces["pieces"][1]["hand"] = "opposite";
        CHECK(has(complaints_of(with_pieces(pieces)), "is the same as its mirror image"));
    }
    SECTION("a turned copy called opposite") {
        for (std::size_t i = 0; i < 4; ++i) {
            holes_of(pieces, i)[0]["diameter"] = 2.5;
        }
        pieces["pieces"][1]["hand"] = "opposite";
        // A flat with one different hole near a corner equals its mirror image turned over.
        CHECK(has(complaints_of(with_pieces(pieces)), "is the same as its mirror image"));
    }
}

TEST_CASE("oblique plates that cross are interference too", "[support][checks]") {
    auto pieces = small_pieces();
    auto brace = flat(0);
    const double c = 0.6;
    const double s = 0.8;
    brace["id"] = "p9";
    brace["member"] = "brace";
    brace["mark"] = "B1";
    brace["run"] = {c, 0, s};
    auto& plate = brace["plates"][0];
    plate["holes"] = json::array();
    plate["u"] = {c, 0, s};
    plate["v"] = {s, 0, -c};
    const double y = GENERATE(0.0, 3.175);
    brace["datum"] = {100, y, 100};
    plate["origin"] = brace["datum"];
    pieces["pieces"].push_back(brace);
    const auto complaints = complaints_of(with_pieces(pieces));
    // The brace runs from (100, 100) to (466, 588): it meets the top rail, which lies behind.
    CHECK(has(complaints, "p1 (square: side 1) and p9 (square: brace) enter") == (y > 0));
    CHECK_FALSE(has(complaints, "p0 (square: side 0) and p9"));
}

TEST_CASE("files that cannot be read are a complaint", "[support][checks]") {
    auto files = small_files();
    files["pieces.json"] = "{";
    CHECK(has(complaints_of(files), "cannot be read"));
    files.erase("pieces.json");
    CHECK(has(complaints_of(files), "the file is missing: pieces.json"));
}

TEST_CASE("fasteners are known by their names", "[support][checks]") {
    CHECK(tests::diameter_of_spec("blind rivet 1/8, grip 4-4") == 3'175'000);
    CHECK(tests::diameter_of_spec("blind rivet 4.0 mm, grip 4 x 8") == 4'000'000);
    CHECK(tests::diameter_of_spec("machine screw 8-32 x 1/2 in") == 4'165'600);
    CHECK(tests::diameter_of_spec("machine screw M4 x 12 mm") == 4'000'000);
    CHECK(tests::diameter_of_spec("machine screw 1/4-20 x 1/2 in") == 6'350'000);
    CHECK_FALSE(tests::diameter_of_spec("sheet pin 1/8"));
}

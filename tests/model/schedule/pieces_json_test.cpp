#include "model/schedule/pieces_json.h"

#include "tests/model/schedule/small_job.h"
#include "tests/support/hand_made.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

namespace {

nlohmann::json pieces_of(const tests::SmallJob& job) {
    return nlohmann::json::parse(model::pieces_json(job.project, job.catalogue, job.resolved));
}

using Triple = std::array<double, 3>;

// A place on a plate, in the room.
Triple place(const nlohmann::json& plate, double u, double v, double w) {
    Triple at = plate["origin"];
    const Triple axis_u = plate["u"];
    const Triple axis_v = plate["v"];
    const Triple axis_n = plate["n"];
    for (std::size_t i = 0; i < 3; ++i) at[i] += u * axis_u[i] + v * axis_v[i] + w * axis_n[i];
    return at;
}

}  // namespace

TEST_CASE("pieces stand in the room, turned and moved with their frame",
          "[model][schedule][json]") {
    const auto file = pieces_of(tests::small_job());
    const auto& post = file["pieces"][1];
    CHECK(post["member"] == "post right");
    CHECK(post["hand"] == "opposite");
    CHECK(post["datum"].get<Triple>() == Triple{100, 508, 0});
    CHECK(post["run"].get<Triple>() == Triple{0, 0, 1});
    CHECK(post["length"] == 304.8);
    const auto& leg_b = post["plates"][1];
    CHECK(leg_b["leg"] == "leg b");
    CHECK(leg_b["n"].get<Triple>() == Triple{0, -1, 0});
    CHECK(leg_b["v"].get<Triple>() == Triple{-1, 0, 0});
}

TEST_CASE("a fastener's holes lie on its axis in every plate of its stack",
          "[model][schedule][json]") {
    const auto file = pieces_of(tests::small_job());
    std::map<std::string, Triple> fasteners;
    for (const auto& joint : file["joints"]) {
        for (const auto& fastener : joint["fasteners"]) {
            fasteners[fastener["id"]] = fastener["at"];
        }
    }
    int checked = 0;
    for (const auto& piece : file["pieces"]) {
        for (const auto& plate : piece["plates"]) {
            for (const auto& hole : plate["holes"]) {
                const auto at = place(plate, hole["at"][0], hole["at"][1], 0);
                const auto fastener = fasteners.at(hole["fastener"]);
                const bool is_turned = piece["frame"] == "gate";
                const std::size_t axis = is_turned ? 0 : 1;  // that the fasteners lie along
                for (std::size_t i = 0; i < 3; ++i) {
                    if (i != axis) CHECK(at[i] == Approx(fastener[i]).margin(1e-9));
                }
                ++checked;
            }
        }
    }
    CHECK(checked == 14);
}

TEST_CASE("a plate's outline begins at the datum end and at the heel", "[model][schedule][json]") {
    const auto file = pieces_of(tests::small_job());
    const auto& plate = file["pieces"][2]["plates"][0];
    const auto& outline = plate["outline"];
    CHECK(outline[0] == nlohmann::json({0, 0}));
    CHECK(outline[2] == nlohmann::json({file["pieces"][2]["length"], 25.4}));
    CHECK(plate["thickness"] == 3.175);
}

TEST_CASE("a joint with a shim lists it between its two pieces", "[model][schedule][json]") {
    const auto file = pieces_of(tests::small_job());
    CHECK(file["joints"][2]["pieces"] == nlohmann::json({"P4", "P5", "P6"}));
    CHECK(file["joints"][2]["fasteners"][0]["stack"].size() == 3);
}

TEST_CASE("names come through with quotes, backslashes and control characters",
          "[model][schedule][json]") {
    auto job = tests::small_job();
    const std::string name = "a \"b\" \\ c\n\t\x01 \xC3\xA9 \xE6\xA2\x81";
    job.project.frames[0].members[0].name = name;
    CHECK(pieces_of(job)["pieces"][0]["member"] == name);
}

namespace {

nlohmann::json hand_made_pieces() {
    const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(catalogue);
    const auto made = tests::hand_made(*catalogue);
    return nlohmann::json::parse(
        model::pieces_json(made.project, made.catalogue, made.resolved))["pieces"];
}

nlohmann::json piece_named(const std::string& name) {
    for (const auto& piece : hand_made_pieces())
        if (piece["member"] == name) return piece;
    FAIL("there is no " + name);
    return {};
}

}  // namespace

TEST_CASE("a gusset's own outline is written, and a panel's openings", "[model][schedule][json]") {
    const auto gusset = piece_named("gusset 21")["plates"][0];
    CHECK(gusset["outline"] == nlohmann::json({{0, 0}, {80, 0}, {80, 20}, {20, 80}, {0, 80}}));
    CHECK_FALSE(gusset.contains("cut_outs"));
    const auto panel = piece_named("panel 22")["plates"][0];
    CHECK(panel["cut_outs"].size() == 2);
    CHECK(panel["cut_outs"][0][2] == nlohmann::json({150, 60}));
}

TEST_CASE("a bevelled edge has an outline on both faces", "[model][schedule][json]") {
    const auto brace = piece_named("test flat 24")["plates"][0];
    CHECK(brace["outline"][1] == nlohmann::json({500, 0}));
    CHECK(brace["outline_far"][1] == nlohmann::json({497, 0}));
}

TEST_CASE("a mitred angle's leg is a trapeze, and its cut is a plane", "[model][schedule][json]") {
    const auto piece = piece_named("angle 1 x 1 x 1/8 9");
    // Leg a recedes along its width, from the heel on, at both ends.
    CHECK(piece["plates"][0]["outline"] ==
          nlohmann::json({{0, 0}, {400, 0}, {374.6, 25.4}, {25.4, 25.4}}));
    REQUIRE(piece["cuts"].size() == 2);
    CHECK(piece["cuts"][0]["at"] == 0);
    CHECK(piece["cuts"][1]["at"] == 400);
    const Triple run = piece["run"];
    const Triple across = piece["cuts"][1]["across"];
    CHECK(across[0] * run[0] + across[1] * run[1] + across[2] * run[2] == Approx(1.0));
}

TEST_CASE("a coped leg's outline steps back beyond the root", "[model][schedule][json]") {
    const auto piece = piece_named("test angle 15");  // legs 3 thick, root radius 4
    CHECK(piece["plates"][0]["outline"] ==
          nlohmann::json({{0, 0}, {280, 0}, {280, 7}, {254.6, 7}, {254.6, 40}, {0, 40}}));
    CHECK_FALSE(piece.contains("cuts"));
}

TEST_CASE("a leaning piece has unit directions at right angles", "[model][schedule][json]") {
    const auto piece = piece_named("test channel 26");
    for (const auto& plate : piece["plates"]) {
        const Triple u = plate["u"];
        const Triple v = plate["v"];
        const Triple n = plate["n"];
        double along = 0.0;
        double size = 0.0;
        for (std::size_t i = 0; i < 3; ++i) {
            along += u[i] * v[i] + v[i] * n[i] + n[i] * u[i];
            size += u[i] * u[i] + v[i] * v[i] + n[i] * n[i];
        }
        CHECK(along == Approx(0.0).margin(1e-15));
        CHECK(size == Approx(3.0));
    }
}

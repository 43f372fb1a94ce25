#include "model/schedule/pieces_json.h"

#include "tests/model/schedule/small_job.h"

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
    CHECK(checked == 15);
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

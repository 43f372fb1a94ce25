// The file of ticks beside a project: read back as written, and refused in words when it is broken.
#include "engine/files/whole_file.h"

#include "tests/model/bench/bench_job.h"
#include "tests/support/scratch_folder.h"

#include <nlohmann/json.hpp>

#include <fstream>

using model::BenchWork;
using namespace tests;
using nlohmann::json;

namespace {

constexpr auto odd_name = "caf\u00e9 \"one\"";

// A tick of every kind of work and a piece of every kind of shape.
model::BenchTicks full_ticks() {
    auto job = small_job();
    job.resolved.pieces[rail].ends[1].slope[0] = 0.75;
    job.resolved.pieces[rail].ends[0].wall_back[1] = inches_64ths(32);
    const auto in = whole_inches(1);
    const model::Outline outline{
        .corners = {{0, 0}, {in, 0}, {in, in}, {0, in}},
        .cut_outs = {{{in / 4, in / 4}, {in / 4, in / 2}, {in / 2, in / 4}}}};
    job.resolved.outlines = {outline, outline};
    job.resolved.pieces[shim].plates[0].outline = 0;
    job.resolved.pieces[shim].plates[0].outline_far = 1;
    job.project.frames[0].name = odd_name;
    auto ticks = made(job, rail);
    ticks = tick(job, ticks, rail, BenchWork::deburr);
    ticks = tick(job, ticks, rail, BenchWork::fit);
    ticks = tick(job, ticks, rail, BenchWork::set);
    ticks = tick(job, ticks, shim, BenchWork::cut);
    ticks = tick(job, ticks, post_left, BenchWork::cut);
    ticks = tick(job, ticks, flat_back, BenchWork::cut);
    ticks = tick(job, ticks, flat_back, BenchWork::drill);
    for (auto& each : ticks.pieces) {
        if (!each.made.holes.empty()) each.made.holes.back().is_left_open = true;
    }
    ticks.pieces.back().cut_before = {{whole_inches(40), "square; square"}, {whole_inches(39), ""}};
    return ticks;
}

// Reads a text that is wrong; gives the error.
engine::Error refused(const std::string& text) {
    const auto ticks = model::ticks_from_text(text);
    INFO(text);
    REQUIRE_FALSE(ticks);
    CHECK_FALSE(ticks.error().message.empty());
    return ticks.error();
}

// Every value of a tree, by its pointer.
void collect(const json& in, const json::json_pointer& at, std::vector<json::json_pointer>& into) {
    into.push_back(at);
    if (in.is_object()) {
        for (const auto& [key, value] : in.items()) collect(value, at / key, into);
    } else if (in.is_array()) {
        for (std::size_t i = 0; i < in.size(); ++i) collect(in[i], at / i, into);
    }
}

}  // namespace

TEST_CASE("ticks stand beside the project under its name", "[model][bench]") {
    CHECK(model::path_of_ticks("van/counter.json") ==
          std::filesystem::path("van/counter.bench.json"));
}

TEST_CASE("ticks are read as they were written, one line for each piece", "[model][bench]") {
    const auto ticks = full_ticks();
    const auto text = model::ticks_text(ticks);
    const auto read = model::ticks_from_text(text);
    REQUIRE(read);
    CHECK(*read == ticks);
    CHECK(model::ticks_text(*read) == text);
    // Two lines in front, the list's end, the object's end.
    CHECK(std::ranges::count(text, '\n') == static_cast<long>(ticks.pieces.size()) + 5);
    const auto none = model::ticks_from_text(model::ticks_text({}));
    REQUIRE(none);
    CHECK(none->pieces.empty());
}

TEST_CASE("ticks go to their file and back; no file holds none", "[model][bench]") {
    const ScratchFolder folder("bench_ticks");
    const auto path = folder.path / "counter.bench.json";
    const auto none = model::read_ticks(path);
    REQUIRE(none);
    CHECK(none->pieces.empty());
    REQUIRE(model::write_ticks(path, full_ticks()));
    const auto read = model::read_ticks(path);
    REQUIRE(read);
    CHECK(*read == full_ticks());
    REQUIRE(engine::write_whole_file(path, "{\n\"pieces\": ["));
    const auto broken = model::read_ticks(path);
    REQUIRE_FALSE(broken);
    CHECK(broken.error().where == "counter.bench.json, line 2, column 12");
    REQUIRE_FALSE(model::read_ticks(folder.path));
    REQUIRE_FALSE(model::write_ticks(folder.path / "no folder" / "x.bench.json", {}));
}

TEST_CASE("a text of ticks cut off anywhere is refused", "[model][bench]") {
    const auto text = model::ticks_text(full_ticks());
    for (std::size_t length = 0; length + 2 < text.size(); ++length) {
        const auto error = refused(text.substr(0, length));
        CHECK(error.code == engine::ErrorCode::bad_file);
        CHECK_FALSE(error.where.empty());
    }
}

TEST_CASE("a value of a wrong kind is refused with its place", "[model][bench]") {
    const auto whole = json::parse(model::ticks_text(full_ticks()));
    std::vector<json::json_pointer> places;
    collect(whole, json::json_pointer(), places);
    REQUIRE(places.size() > 100);
    for (const auto& place : places) {
        auto broken = whole;
        broken[place] = nullptr;
        const auto error = refused(broken.dump());
        CHECK(error.where == place.to_string());
        // These may be another thing than was meant, but nothing breaks on them.
        for (const auto& other :
             {json(-1), json(1e300), json(18446744073709551615ULL), json("text"), json(true),
              json(json::array()), json(json::object()), json(99)}) {
            broken[place] = other;
            const auto ticks = model::ticks_from_text(broken.dump());
            if (!ticks) {
                CHECK_FALSE(ticks.error().message.empty());
                continue;
            }
            auto job = small_job();
            job.project.frames[0].name = odd_name;
            static_cast<void>(
                model::bench_pieces(job.project, job.catalogue, job.resolved, *ticks));
        }
    }
}

TEST_CASE("a field that is not known or is missing is refused with its place", "[model][bench]") {
    auto tree = json::parse(model::ticks_text(full_ticks()));
    auto unknown = tree;
    unknown["pieces"][1]["made"]["colour"] = "red";
    auto error = refused(unknown.dump());
    CHECK(error.where == "/pieces/1/made");
    CHECK(error.message.find("\"colour\"") != std::string::npos);
    tree["pieces"][0]["made"].erase("length_nm");
    error = refused(tree.dump());
    CHECK(error.where == "/pieces/0/made");
    CHECK(error.message == "the field \"length_nm\" is missing");
}

TEST_CASE("ticks of a later version, of another file, or twice are refused", "[model][bench]") {
    auto tree = json::parse(model::ticks_text(full_ticks()));
    auto later = tree;
    later["barwright_bench"] = 2;
    CHECK(refused(later.dump()).code == engine::ErrorCode::newer_version);
    CHECK(refused("{\"barwright\": 3}").message ==
          "this is no file of ticks from the bench; it needs \"barwright_bench\"");
    tree["pieces"].push_back(tree["pieces"][0]);
    CHECK(refused(tree.dump()).message.find("is there twice") != std::string::npos);
    tree["pieces"][0]["done"] = json::array();
    CHECK(refused(tree.dump()).where == "/pieces/0");
}

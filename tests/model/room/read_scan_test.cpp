#include "model/room/read_scan.h"

#include "model/resolve/resolve.h"
#include "model/room/clearance.h"

#include "tests/model/room/room_projects.h"
#include "tests/support/scratch_folder.h"

#include <algorithm>
#include <filesystem>
#include <fstream>

namespace {

using namespace model;

// A box from (0, 0, 0) to (4, 4, 4), in whatever unit; without its last face where it is open.
enum class BoxMesh { solid, open, hollow };

std::filesystem::path box_file(const std::filesystem::path& folder, BoxMesh box = BoxMesh::solid) {
    const auto file = folder / "box.obj";
    std::ofstream out(file);
    for (int corner = 0; corner < 8; ++corner) {
        out << "v " << 4 * (corner & 1) << " " << 2 * (corner & 2) << " " << (corner & 4) << "\n";
    }
    if (box == BoxMesh::hollow) {  // as a scanner inside sees it: faces look into the room
        out << "f 2 4 3 1\nf 7 8 6 5\nf 5 6 2 1\nf 4 8 7 3\nf 3 7 5 1\nf 6 8 4 2\n";
        return file;
    }
    out << "f 1 3 4 2\nf 5 6 8 7\nf 1 2 6 5\nf 3 7 8 4\nf 1 5 7 3\n";
    if (box == BoxMesh::solid) out << "f 2 4 8 6\n";
    return file;
}

}  // namespace

TEST_CASE("a scan is read in its unit, and whether it is closed is told", "[model][room]") {
    const tests::ScratchFolder scratch{"scan_unit"};
    const auto closed = read_scan(box_file(scratch.path), engine::LengthUnit::foot);
    REQUIRE(closed.has_value());
    CHECK((*closed)->is_closed);
    CHECK_FALSE((*closed)->is_hollow);
    CHECK((*closed)->tree.triangle_count() == 12);
    CHECK((*closed)->tree.bounds().hi[0] == Approx(4.0 * 304.8));
    const auto open =
        read_scan(box_file(scratch.path, BoxMesh::open), engine::LengthUnit::millimetre);
    REQUIRE(open.has_value());
    CHECK_FALSE((*open)->is_closed);
    CHECK((*open)->tree.bounds().hi[2] == Approx(4.0));
}

TEST_CASE("reading a scan can be stopped, and a missing file is told", "[model][room]") {
    const tests::ScratchFolder scratch{"scan_stopped"};
    const auto stopped =
        read_scan(box_file(scratch.path), engine::LengthUnit::inch, [](double) { return false; });
    REQUIRE_FALSE(stopped.has_value());
    CHECK(stopped.error().code == engine::ErrorCode::cancelled);
    CHECK_FALSE(read_scan(scratch.path / "none.obj", engine::LengthUnit::inch).has_value());
}

// It comes near to no triangle, so that only the inside tells.
TEST_CASE("a cabinet wholly inside a closed scan stands in it", "[model][room]") {
    const tests::ScratchFolder scratch{"scan_inside"};
    box_file(scratch.path);
    auto project = room_tests::cabinet({"50 in", "50 in", "50 in"}, "20 in", "18 in", "20 in");
    const ScannedObstacle scan{.file = "box.obj", .unit = engine::LengthUnit::metre};
    project.room.push_back({.name = "solid", .shape = scan});
    const auto scans = read_scans(project, scratch.path);
    REQUIRE(scans.size() == 1);
    const auto resolved = resolve(project, room_tests::catalogue());
    const auto code = [&] {
        const auto found = room_findings(project, room_tests::catalogue(), resolved, scans);
        return found.empty() ? std::string() : found.front().code;
    };
    CHECK(code() == "inside_obstacle");
    std::get<ScannedObstacle>(project.room[0].shape).at = {"300 in", "0", "0"};
    CHECK(code().empty());
}

// Programs that make a mesh of a scan often close its holes.
TEST_CASE("a cabinet stands in a van's closed shell that was seen from within", "[model][room]") {
    const tests::ScratchFolder scratch{"scan_hollow"};
    box_file(scratch.path, BoxMesh::hollow);
    auto project = room_tests::cabinet({"50 in", "50 in", "50 in"}, "20 in", "18 in", "20 in");
    const ScannedObstacle scan{.file = "box.obj", .unit = engine::LengthUnit::metre};
    project.room.push_back({.name = "van", .shape = scan});
    const auto scans = read_scans(project, scratch.path);
    REQUIRE(scans.size() == 1);
    REQUIRE(scans.begin()->second);
    CHECK((*scans.begin()->second)->is_hollow);
    const auto codes = [&] {
        std::vector<std::string> all;
        const auto resolved = resolve(project, room_tests::catalogue());
        for (const auto& it : room_findings(project, room_tests::catalogue(), resolved, scans))
            all.push_back(it.code);
        return all;
    };
    CHECK(codes().empty());
    project.frames[0].origin[0] = "-1/4 in";  // through its side
    CHECK(codes() == std::vector<std::string>{"inside_obstacle"});
}

TEST_CASE("a scan that lies too far away in its unit is refused", "[model][room]") {
    const tests::ScratchFolder scratch{"scan_far"};
    const auto file = scratch.path / "far.obj";
    std::ofstream(file) << "v 0 0 0\nv 1e38 0 0\nv 0 1e38 0\nf 1 2 3\n";
    const auto read = read_scan(file, engine::LengthUnit::metre);  // 1e41 mm is no float
    REQUIRE_FALSE(read.has_value());
    CHECK(read.error().code == engine::ErrorCode::out_of_range);
    CHECK(read.error().where == "far.obj");
    std::ofstream(file) << "v 0 0 0\nv 900 0 0\nv 0 900 0\nf 1 2 3\n";
    CHECK(read_scan(file, engine::LengthUnit::metre).has_value());
    std::ofstream(file) << "v 0 0 0\nv 1100 0 0\nv 0 900 0\nf 1 2 3\n";
    CHECK_FALSE(read_scan(file, engine::LengthUnit::metre).has_value());
}

TEST_CASE("a scan that cannot be read is a finding with the reader's reason", "[model][room]") {
    const tests::ScratchFolder scratch{"scan_reason"};
    std::ofstream(scratch.path / "cut.stl") << std::string(80, ' ') << "d   and no more";
    Project project;
    project.room.push_back({.name = "van", .shape = ScannedObstacle{.file = "cut.stl"}});
    const auto what = [&] {
        const auto scans = read_scans(project, scratch.path);
        std::vector<Finding> findings;
        CHECK(room_obstacles(project, Resolved{}, scans, findings).empty());
        REQUIRE(findings.size() == 1);
        CHECK(findings[0].code == "scan_not_read");
        return findings[0].what;
    };
    const auto reason = read_scan(scratch.path / "cut.stl", engine::LengthUnit::millimetre);
    REQUIRE_FALSE(reason.has_value());
    CHECK(what().find(reason.error().message) != std::string::npos);
}

TEST_CASE("reading a scan can be stopped until its last step", "[model][room]") {
    const tests::ScratchFolder scratch{"scan_last"};
    const auto file = box_file(scratch.path);
    std::vector<double> told;
    REQUIRE(read_scan(file, engine::LengthUnit::inch, [&](double done) {
        told.push_back(done);
        return true;
    }));
    CHECK(std::ranges::is_sorted(told));
    CHECK(told.back() > 0.95);  // the tree is done by then, and its edges are looked at
    const auto last = told.back();
    const auto stopped =
        read_scan(file, engine::LengthUnit::inch, [&](double done) { return done < last; });
    REQUIRE_FALSE(stopped.has_value());
    CHECK(stopped.error().code == engine::ErrorCode::cancelled);
}

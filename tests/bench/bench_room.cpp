// How long it takes to tell whether a project fits into its room, beside resolving it: frames along
// both walls of a scanned van, clear of it and sunk into its floor, and along wells and leaning
// walls as a tape measures them; and how long it takes to tell how far a dimension may go.
// Usage: bench_room [PIECES] [TRIANGLES]   (default: 500 200000)
// Figures are processor time, medians, and compare within one run. The van is invented.
#include "model/catalogue/catalogue.h"
#include "model/project/project_json.h"
#include "model/resolve/resolve.h"
#include "model/room/band.h"
#include "model/room/clearance.h"

#include "tests/bench/processor_time.h"
#include "tests/support/clearance_job.h"
#include "tests/support/frame_builder.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <utility>

namespace {

using tests::formula_of;
using tests::inches;
using tests::inches_64;
using tests::millimetres;

constexpr int runs = 9;

tests::VanMesh mesh_of(std::size_t triangles) {
    const double around = std::ceil(std::sqrt(static_cast<double>(triangles) / 5.0));
    const double along = std::ceil(static_cast<double>(triangles) / 2.0 / around);
    return tests::van_mesh(static_cast<std::uint32_t>(along), static_cast<std::uint32_t>(around));
}

std::shared_ptr<const model::Scan> scan_of(const tests::VanMesh& mesh) {
    return std::make_shared<model::Scan>(
        model::Scan{.tree = engine::TriangleTree{mesh.points, mesh.triangles}});
}

// How far the backs of the cabinets stand from the middle of the van, and their feet from the
// floor.
struct Stand {
    model::Nm out = 0;
    model::Nm up = 0;
};

// Eight narrow cabinets along each wall, in as many rows on top of each other as it takes.
model::Frame cabinet(int number, const Stand& stand) {
    tests::BoxShape shape;
    shape.width = inches(14);
    shape.depth = inches(15);
    shape.height = inches(20);
    for (int i = 1; i <= 4; ++i) shape.shelves.push_back(inches(4) * i);
    auto frame = tests::box_frame("cabinet " + std::to_string(number + 1), shape);
    const int along = number / 2 % 8;
    const int row = number / 16;
    frame.origin = {formula_of(number % 2 == 0 ? -stand.out : stand.out - shape.width),
                    formula_of(inches(1) + inches_64(15 * 64 + 24) * along),
                    formula_of(stand.up + inches_64(20 * 64 + 32) * row)};
    return frame;
}

model::Project empty_van() {
    model::Project project;
    project.name = "van";
    project.stock.push_back(tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"));
    return project;
}

void fill(model::Project& project,
          const model::Catalogue& catalogue,
          std::size_t pieces,
          const Stand& stand) {
    for (int i = 0; model::resolve(project, catalogue).pieces.size() < pieces; ++i)
        project.frames.push_back(cabinet(i, stand));
}

// A pair of wells and both walls, by the tape: the van along Y.
void add_measured_van(model::Project& project) {
    for (const bool left : {true, false}) {
        const std::string side = left ? "left " : "right ";
        model::WheelWell well;
        well.least = {left ? "-34 in" : "29 in", "52 in", "0"};
        well.most = {left ? "-29 in" : "34 in", "83 in", "10 3/4 in"};
        well.inner_side = model::Axis::x;
        well.inner_sense = left ? model::Sense::plus : model::Sense::minus;
        well.top_radius = "3 in";
        well.corner_radius = "2 in";
        project.room.push_back({.name = side + "well", .shape = well});
        model::WallProfile wall;
        wall.at = left ? "-34 in" : "34 in";
        wall.inside = well.inner_sense;
        for (int height = 0; height <= 72; height += 6) {
            const auto inset = inches_64(height * height / 12);
            wall.offsets.push_back({formula_of(inches(height)), formula_of(inset)});
        }
        project.room.push_back({.name = side + "wall", .shape = wall});
    }
}

void print(const char* what, double ms, std::size_t pieces) {
    std::printf("  %-44s %9.2f ms %9.4f ms a piece\n", what, ms, ms / static_cast<double>(pieces));
}

void measure(const char* name,
             const model::Project& project,
             const model::Catalogue& catalogue,
             const model::ScanLibrary& scans) {
    const auto resolved = model::resolve(project, catalogue);
    std::size_t found = 0;
    std::printf("%s: %zu frames, %zu pieces, %zu fasteners\n", name, project.frames.size(),
                resolved.pieces.size(), resolved.fasteners.size());
    const double alone =
        tests::median_ms(runs, [&] { found += model::resolve(project, catalogue).pieces.size(); });
    print("resolve", alone, resolved.pieces.size());
    std::vector<model::Finding> none;
    const auto obstacles = model::room_obstacles(project, resolved, scans, none);
    const double near = tests::median_ms(
        runs, [&] { found += model::near_places(resolved, catalogue, obstacles).size(); });
    print("near places alone", near, resolved.pieces.size());
    const double room = tests::median_ms(
        runs, [&] { found += model::room_findings(project, catalogue, resolved, scans).size(); });
    print("all findings of the room", room, resolved.pieces.size());
    const auto findings = model::room_findings(project, catalogue, resolved, scans);
    std::printf("      %.2f times resolve; %zu findings\n", room / alone, findings.size());
    if (found == 0) std::puts("nothing was found");
}

// Every dimension of the samples: how far it may go.
void measure_bands(const model::Catalogue& catalogue) {
    std::printf("bands of the samples' dimensions %27s %9s %9s\n", "ms, least", "most", "looks");
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(BARWRIGHT_SAMPLES)) {
        if (entry.path().extension() == ".json") files.push_back(entry.path());
    }
    std::ranges::sort(files);
    for (const auto& file : files) {
        std::ostringstream text;
        text << std::ifstream(file).rdbuf();
        const auto project = model::read_project_json(text.str());
        if (!project) continue;
        std::vector<double> times;
        int looks = 0;
        bool proved = true;
        for (const auto& dimension : project->dimensions) {
            const double start = tests::processor_ms();
            const auto band = model::band_of(*project, catalogue, {}, dimension.name);
            if (!band) continue;
            times.push_back(tests::processor_ms() - start);
            looks = std::max(looks, band->looked_at);
            proved = proved && band->is_proved;
        }
        if (times.empty()) continue;
        std::ranges::sort(times);
        std::printf("  %-44s %9.1f ms %9.1f %9d%s\n", file.stem().c_str(), times.front(),
                    times.back(), looks, proved ? "" : ", not proved");
    }
}

}  // namespace

int main(int count, char** arguments) {
    const int pieces = count > 1 ? std::atoi(arguments[1]) : 500;
    const int triangles = count > 2 ? std::atoi(arguments[2]) : 200'000;
    if (pieces <= 0 || triangles <= 0) {
        std::fprintf(stderr, "usage: bench_room [PIECES] [TRIANGLES]\n");
        return 2;
    }
    const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    if (!catalogue) {
        std::fprintf(stderr, "%s\n", to_text(catalogue.error()).c_str());
        return 1;
    }
    const auto mesh = mesh_of(static_cast<std::size_t>(triangles));
    const model::ScannedObstacle scanned{.file = "van.stl", .turn = {"0", "0", "90 deg"}};
    model::ScanLibrary scans;
    scans.emplace(model::scan_key(scanned), scan_of(mesh));
    std::printf("%zu triangles\n", mesh.triangles.size());
    const auto count_of = static_cast<std::size_t>(pieces);
    for (const auto& [name, up] : {std::pair{"clear of the scan", inches(12)},
                                   std::pair{"sunk into its floor", inches(1)}}) {
        auto project = empty_van();
        project.room.push_back({.name = "scan", .shape = scanned});
        fill(project, *catalogue, count_of, {millimetres(540), up});
        measure(name, project, *catalogue, scans);
    }
    for (const auto& [name, out] :
         {std::pair{"clear of measured walls and wells", inches_64(28 * 64 + 32)},
          std::pair{"in measured wells", inches(30)}}) {
        auto project = empty_van();
        add_measured_van(project);
        fill(project, *catalogue, count_of, {out, inches(1)});
        measure(name, project, *catalogue, {});
    }
    measure_bands(*catalogue);
    return 0;
}

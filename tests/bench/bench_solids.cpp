// Our solids and meshes beside other kernels' on the same pieces, and beside a plain copy of the
// finished buffers. Usage: bench_solids [MEMBERS] [PIECES FOR THE OTHERS]   (default: 2000 200)
// The WASM kernel is asked where node and its package are: BARWRIGHT_NPM names the folder in which
// npm installed it; else the one that tests/oracle/npm.sh made. Figures compare within one run.
#include "engine/geometry/solid_measure.h"
#include "model/resolve/piece_mesh.h"
#include "model/resolve/piece_solid.h"
#include "model/resolve/resolve.h"

#include "tests/bench/bench_projects.h"
#include "tests/bench/kernel_routes.h"
#include "tests/bench/processor_time.h"
#include "tests/support/mesh_checks.h"
#include "tests/support/scratch_folder.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <numeric>

namespace {

using model::Index;

template <class Work>
double median_ms_of(const Work& work) {
    return tests::median_ms(9, work);
}

struct Job {
    const model::Catalogue& catalogue;
    const model::Resolved& resolved;
};

void remesh(const Job& job, engine::Mesh& mesh) {
    mesh.vertices.clear();
    mesh.triangles.clear();
    mesh.edges.clear();
    model::PieceMesher mesher{job.resolved, job.catalogue};
    mesher.reserve_for_all(mesh);
    for (Index i = 0; i < job.resolved.pieces.size(); ++i) mesher.append(mesh, i);
}

template <class Part>
void copy(const std::vector<Part>& from, std::vector<Part>& to) {
    std::memcpy(to.data(), from.data(), from.size() * sizeof(Part));
}

double bytes_of(const engine::Mesh& mesh) {
    return static_cast<double>(mesh.vertices.size() * sizeof(engine::MeshVertex) +
                               mesh.triangles.size() * sizeof(std::uint32_t) +
                               mesh.edges.size() * sizeof(mesh.edges[0]));
}

void print(const char* what, double ms, std::size_t pieces, double volume) {
    std::printf("%-58s %10.2f ms %10.4f ms a piece", what, ms, ms / static_cast<double>(pieces));
    if (volume > 0.0) std::printf("   %.9g mm3", volume);
    std::printf("\n");
}

struct Ours {
    double mesh_ms = 0.0;
    double solid_ms = 0.0;
};

Ours measure_ours(const Job& job) {
    const std::size_t pieces = job.resolved.pieces.size();
    engine::Mesh mesh;
    remesh(job, mesh);
    Ours ours;
    ours.mesh_ms = median_ms_of([&] { remesh(job, mesh); });
    auto finished = mesh;
    const double copy_ms = median_ms_of([&] {
        copy(mesh.vertices, finished.vertices);
        copy(mesh.triangles, finished.triangles);
        copy(mesh.edges, finished.edges);
    });
    model::PieceSolid made;
    double volume = 0.0;
    ours.solid_ms = median_ms_of([&] {
        volume = 0.0;
        model::PieceSolids solids{job.resolved, job.catalogue};
        for (Index i = 0; i < pieces; ++i) {
            solids.make(made, i);
            volume += engine::measure_of(made.solid).volume;
        }
    });
    std::printf("%zu pieces, %zu holes, %zu triangles, %.1f MiB of buffers\n", pieces,
                job.resolved.holes.size(), mesh.triangles.size() / 3,
                bytes_of(mesh) / (1024.0 * 1024.0));
    print("a plain copy of the finished buffers", copy_ms, pieces, 0.0);
    print("ours: triangles and crisp edges", ours.mesh_ms, pieces, 0.0);
    print("ours: exact solids and their volumes", ours.solid_ms, pieces, volume);
    std::printf("our triangles take %.1f times the copy\n", ours.mesh_ms / copy_ms);
    ours.mesh_ms /= static_cast<double>(pieces);
    ours.solid_ms /= static_cast<double>(pieces);
    return ours;
}

double compare_occt(const Job& job, std::span<const Index> some, double exact) {
    double least = 0.0;
    for (const auto& [name, route] :
         {std::pair{"Open CASCADE: section pushed, one cut with all holes",
                    tests::KernelRoute::section_then_holes},
          std::pair{"Open CASCADE: drilled walls pushed, one union",
                    tests::KernelRoute::drilled_walls_united}}) {
        const auto times = tests::kernel_times(job.resolved, job.catalogue, some, route);
        print(name, times.build_ms, some.size(), times.volume);
        print("    and its triangles", times.mesh_ms, some.size(), 0.0);
        std::printf("    volume off ours by %.1e\n", std::abs(times.volume / exact - 1.0));
        const double all = (times.build_ms + times.mesh_ms) / static_cast<double>(some.size());
        if (least == 0.0 || all < least) least = all;
    }
    return least;
}

std::string output_of(const std::string& command) {
    std::string out;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) return out;
    std::array<char, 512> text{};
    while (std::fgets(text.data(), static_cast<int>(text.size()), pipe) != nullptr)
        out += text.data();
    return pclose(pipe) == 0 ? out : std::string();
}

double compare_wasm(const Job& job, std::span<const Index> some, double drawn) {
    const char* named = std::getenv("BARWRIGHT_NPM");
    const std::filesystem::path modules = named != nullptr ? named : BARWRIGHT_NPM_FOLDER;
    if (!std::filesystem::exists(modules / "node_modules" / "manifold-3d")) {
        std::printf("SKIPPED: the WASM kernel is not installed (tests/oracle/npm.sh does it)\n");
        return 0.0;
    }
    const tests::ScratchFolder scratch{"bench_solids"};
    const auto file = scratch.path / "pieces.json";
    std::ofstream{file} << tests::pieces_for_wasm(job.resolved, job.catalogue, some);
    const auto lines = output_of("node '" BARWRIGHT_BENCH_FOLDER "/bench_solids.mjs' '" +
                                 modules.string() + "' '" + file.string() + "'");
    if (lines.empty()) std::printf("SKIPPED: the WASM kernel does not run\n");
    double least = 0.0;
    for (std::size_t at = 0; at < lines.size(); at = lines.find('\n', at) + 1) {
        const auto line = nlohmann::json::parse(lines.substr(at, lines.find('\n', at) - at));
        const double ms = line["ms"];
        const double volume = line["volume"];
        print(("WASM kernel: " + line["name"].get<std::string>() + ", with triangles").c_str(), ms,
              some.size(), volume);
        std::printf("    volume off our triangles' by %.1e\n", std::abs(volume / drawn - 1.0));
        if (least == 0.0 || ms < least) least = ms;
    }
    return least / static_cast<double>(some.size());
}

}  // namespace

int main(int count, char** arguments) {
    const int members = count > 1 ? std::atoi(arguments[1]) : 2'000;
    const int for_others = count > 2 ? std::atoi(arguments[2]) : 200;
    const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    if (!catalogue || members <= 0 || for_others <= 0) {
        std::fprintf(stderr, "usage: bench_solids [MEMBERS] [PIECES FOR THE OTHERS]\n");
        return 2;
    }
    const auto resolved =
        model::resolve(tests::bench_project(tests::BenchShape::cabinets, members), *catalogue);
    const Job job{*catalogue, resolved};
    std::vector<Index> some(std::min(resolved.pieces.size(), static_cast<std::size_t>(for_others)));
    std::iota(some.begin(), some.end(), 0U);
    const auto ours = measure_ours(job);
    double exact = 0.0;
    engine::Mesh mesh;
    model::PieceMesher mesher{resolved, *catalogue};
    for (const auto piece : some) {
        exact += model::piece_volume(resolved, *catalogue, piece);
        mesher.append(mesh, piece);
    }
    std::printf("\nthe first %zu pieces: ours hold %.12g mm3, our triangles %.12g mm3\n",
                some.size(), exact, tests::volume(mesh));
    const double occt = compare_occt(job, some, exact);
    const double wasm = compare_wasm(job, some, tests::volume(mesh));
    std::printf(
        "\na piece, to triangles, each kernel by its cheaper route: Open CASCADE %.0f times "
        "ours",
        occt / ours.mesh_ms);
    if (wasm > 0.0) std::printf(", the WASM kernel %.0f times ours", wasm / ours.mesh_ms);
    std::printf("\na piece's exact solid and volume: %.4f ms\n", ours.solid_ms);
    return 0;
}

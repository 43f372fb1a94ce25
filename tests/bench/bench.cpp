// Time per member and memory of one pass: resolve (and the marks in it), schedules, meshes, apart
// and together. The copy that is marked anew is timed with the marks.
// Usage: bench [--shape cabinets|lattice] [MEMBERS...]   (default: both; 100 1000 10000)
// Figures compare within one run; absolute times depend on the machine and its load.
#include "engine/geometry/mesh.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/mark.h"
#include "model/resolve/piece_mesh.h"
#include "model/resolve/resolve.h"
#include "model/schedule/tables.h"
#include "model/schedule/write_all.h"

#include "tests/bench/bench_projects.h"
#include "tests/bench/processor_time.h"

#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <functional>
#include <string>
#include <vector>

namespace {

using tests::BenchShape;
using tests::median_ms;

// What the process holds in memory now, in MiB; 0 where the system does not tell.
double resident_mib() {
    std::ifstream file{"/proc/self/statm"};
    double pages = 0;
    double resident = 0;
    file >> pages >> resident;
    return resident * 4096.0 / (1024.0 * 1024.0);
}

struct Measured {
    std::size_t members = 0;
    std::size_t pieces = 0;
    std::size_t holes = 0;
    double resolve_ms = 0;
    double rows_ms = 0;    // the tables on the screen
    double files_ms = 0;   // all schedule files as text, pieces.json among them
    double meshes_ms = 0;  // every piece, without fasteners
    double marks_ms = 0;   // a part of resolve
    double resident_mib = 0;
    double resolved_mib = 0;
    double meshes_mib = 0;

    double together_ms() const { return resolve_ms + rows_ms + meshes_ms; }  // one step of a drag
    double export_ms() const { return resolve_ms + files_ms; }               // the rows are in it
    double per_member_us(double ms) const { return ms * 1e3 / static_cast<double>(members); }
};

std::size_t all_rows(const model::Project& project,
                     const model::Catalogue& catalogue,
                     const model::Resolved& resolved) {
    return model::cut_rows(project, catalogue, resolved).size() +
           model::drill_rows(project, catalogue, resolved).size() +
           model::fastener_rows(project, catalogue, resolved).size() +
           model::bar_rows(project, catalogue, resolved,
                           model::bar_plans(project, catalogue, resolved,
                                            {.effort = model::PlanEffort::first_fit}))
               .size();
}

// All pieces into one mesh whose memory is kept from the pass before, as the window does it.
void remesh(const model::Catalogue& catalogue,
            const model::Resolved& resolved,
            engine::Mesh& mesh) {
    mesh.vertices.clear();
    mesh.triangles.clear();
    mesh.edges.clear();
    model::PieceMesher mesher{resolved, catalogue};
    mesher.reserve_for_all(mesh);
    for (model::Index i = 0; i < resolved.pieces.size(); ++i) mesher.append(mesh, i);
}

Measured measured(const model::Project& project, const model::Catalogue& catalogue) {
    Measured m;
    for (const auto& frame : project.frames) m.members += frame.members.size();
    const int runs = m.members > 3'000 ? 5 : 15;
    const double before = resident_mib();
    const auto resolved = model::resolve(project, catalogue);
    m.resolved_mib = resident_mib() - before;
    m.pieces = resolved.pieces.size();
    m.holes = resolved.holes.size();
    std::size_t used = 0;  // so that no work is left out as unused
    m.resolve_ms =
        median_ms(runs, [&] { used += model::resolve(project, catalogue).pieces.size(); });
    m.marks_ms = median_ms(runs, [&] {
        auto marked = resolved;
        marked.marks.clear();
        model::mark_pieces(project, catalogue, marked);
        used += marked.marks.size();
    });
    m.rows_ms = median_ms(runs, [&] { used += all_rows(project, catalogue, resolved); });
    m.files_ms = median_ms(
        runs, [&] { used += model::schedule_files(project, catalogue, resolved).size(); });
    engine::Mesh mesh;
    const double without_mesh = resident_mib();
    remesh(catalogue, resolved, mesh);
    m.meshes_mib = resident_mib() - without_mesh;
    m.meshes_ms = median_ms(runs, [&] {
        remesh(catalogue, resolved, mesh);
        used += mesh.triangles.size();
    });
    if (used == 0) std::puts("nothing was made");
    m.resident_mib = resident_mib();
    return m;
}

void print_heading(BenchShape shape) {
    std::printf("\n%s\n", std::string(tests::name_of(shape)).c_str());
    std::printf("%9s %8s %8s | %9s %9s %9s %9s %9s %9s | %8s %8s %8s %8s %8s %8s | %9s %9s %9s\n",
                "members", "pieces", "holes", "resolve", "marks", "rows", "files", "meshes",
                "together", "resolve", "marks", "rows", "files", "meshes", "together", "resolved",
                "meshes", "resident");
    std::printf("%27s | %59s | %53s | %29s\n", "", "ms (median)", "us per member", "MiB");
}

void print_row(const Measured& m) {
    std::printf(
        "%9zu %8zu %8zu | %9.2f %9.2f %9.2f %9.2f %9.2f %9.2f | %8.2f %8.2f %8.2f %8.2f %8.2f "
        "%8.2f | "
        "%9.1f "
        "%9.1f %9.1f\n",
        m.members, m.pieces, m.holes, m.resolve_ms, m.marks_ms, m.rows_ms, m.files_ms, m.meshes_ms,
        m.together_ms(), m.per_member_us(m.resolve_ms), m.per_member_us(m.marks_ms),
        m.per_member_us(m.rows_ms), m.per_member_us(m.files_ms), m.per_member_us(m.meshes_ms),
        m.per_member_us(m.together_ms()), m.resolved_mib, m.meshes_mib, m.resident_mib);
}

void print_ratios(const Measured& small, const Measured& large) {
    const auto ratio = [&](double large_ms, double small_ms) {
        return large.per_member_us(large_ms) / small.per_member_us(small_ms);
    };
    std::printf(
        "cost per member at %zu over that at %zu: resolve %.2f, rows %.2f, files %.2f, "
        "meshes %.2f, together %.2f; resolve and files %.2f\n",
        large.members, small.members, ratio(large.resolve_ms, small.resolve_ms),
        ratio(large.rows_ms, small.rows_ms), ratio(large.files_ms, small.files_ms),
        ratio(large.meshes_ms, small.meshes_ms), ratio(large.together_ms(), small.together_ms()),
        ratio(large.export_ms(), small.export_ms()));
}

void run(BenchShape shape, const std::vector<int>& sizes, const model::Catalogue& catalogue) {
    print_heading(shape);
    std::vector<Measured> all;
    for (const int members : sizes) {
        all.push_back(measured(tests::bench_project(shape, members), catalogue));
        print_row(all.back());
    }
    for (std::size_t i = 1; i < all.size(); ++i) print_ratios(all[i - 1], all[i]);
}

}  // namespace

int main(int count, char** arguments) {
    std::vector<BenchShape> shapes{BenchShape::cabinets, BenchShape::lattice};
    std::vector<int> sizes;
    for (int i = 1; i < count; ++i) {
        if (std::strcmp(arguments[i], "--shape") == 0 && i + 1 < count) {
            ++i;
            const bool lattice = std::strcmp(arguments[i], "lattice") == 0;
            shapes = {lattice ? BenchShape::lattice : BenchShape::cabinets};
        } else if (const int size = std::atoi(arguments[i]); size > 0) {
            sizes.push_back(size);
        } else {
            std::fprintf(stderr, "usage: bench [--shape cabinets|lattice] [MEMBERS...]\n");
            return 2;
        }
    }
    if (sizes.empty()) sizes = {100, 1'000, 10'000};
    const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    if (!catalogue) {
        std::fprintf(stderr, "%s\n", to_text(catalogue.error()).c_str());
        return 1;
    }
    for (const auto shape : shapes) run(shape, sizes, *catalogue);
    return 0;
}

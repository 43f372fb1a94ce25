// Reading scans: the time for a made-up mesh of each kind of file, and its ratio to a plain read of
// the bytes. Usage: bench_scans [TRIANGLES]   (default: 1,000,000)
// Figures compare within one run. The files lie in the system's folder for temporary ones, and are
// in its memory when they are read: no disk is timed.
#include "engine/files/scan_mesh.h"
#include "engine/files/whole_file.h"

#include "tests/bench/processor_time.h"
#include "tests/support/mesh_files.h"
#include "tests/support/scratch_folder.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>

int main(int count, char** arguments) {
    const int triangles = count > 1 ? std::atoi(arguments[1]) : 1'000'000;
    if (triangles < 2) {
        std::fprintf(stderr, "usage: bench_scans [TRIANGLES]\n");
        return 2;
    }
    constexpr int runs = 9;
    const auto side = static_cast<std::uint32_t>(std::sqrt(triangles / 2.0));
    const auto sheet = tests::wavy_sheet(side, side);
    std::printf("%zu points, %zu triangles; medians of %d runs\n", sheet.points.size(),
                sheet.triangles.size(), runs);
    const tests::ScratchFolder scratch{"bench_scans"};
    for (const auto form : tests::mesh_forms) {
        const auto path = scratch.path / ("sheet." + tests::ending_of(form));
        const auto bytes = mesh_file(sheet, form);
        if (!engine::write_whole_file(path, bytes)) return 1;
        bool is_good = true;
        const double plain_ms = tests::median_ms(runs, [&] {
            const auto read = engine::read_whole_file(path, engine::most_scan_bytes);
            is_good = is_good && read && read->size() == bytes.size();
        });
        const engine::ReadProgress progress{[](double) { return true; }};
        const double mesh_ms = tests::median_ms(runs, [&] {
            const auto mesh = engine::read_scan_mesh(path, progress);
            is_good = is_good && mesh && mesh->triangles == sheet.triangles;
        });
        if (!is_good) return 1;
        std::printf("%-18s %6.1f MiB   bytes alone %6.1f ms   mesh %7.1f ms   %5.1f times\n",
                    tests::name_of(form).c_str(), static_cast<double>(bytes.size()) / 1048576.0,
                    plain_ms, mesh_ms, mesh_ms / plain_ms);
    }
    return 0;
}

// Writes a small mesh of every kind into a folder, for fuzz_scan to begin with.
// Usage: write_scan_seeds FOLDER
#include "engine/files/whole_file.h"

#include "tests/support/mesh_files.h"

#include <cstdio>

int main(int count, char** arguments) {
    if (count != 2) {
        std::fprintf(stderr, "usage: write_scan_seeds FOLDER\n");
        return 2;
    }
    const std::filesystem::path folder = arguments[1];
    std::filesystem::create_directories(folder);
    for (const auto form : tests::mesh_forms) {
        for (const std::uint32_t side : {1U, 3U}) {
            const auto path = folder / (std::to_string(side) + " " + tests::name_of(form));
            const auto written =
                engine::write_whole_file(path, mesh_file(tests::wavy_sheet(side, side), form));
            if (!written) {
                std::fprintf(stderr, "%s\n", to_text(written.error()).c_str());
                return 1;
            }
        }
    }
    return 0;
}

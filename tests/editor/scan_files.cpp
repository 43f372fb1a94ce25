#include "tests/editor/scan_files.h"

#include "engine/files/whole_file.h"

#include <catch2/catch.hpp>

#include <sstream>

namespace tests {

std::string box_as_obj(double x, double y, double z) {
    std::ostringstream text;
    for (int i = 0; i < 8; ++i) {
        text << "v " << ((i & 1) != 0 ? x : 0.0) << ' ' << ((i & 2) != 0 ? y : 0.0) << ' '
             << ((i & 4) != 0 ? z : 0.0) << '\n';
    }
    text << "f 1 2 4 3\nf 5 7 8 6\nf 1 5 6 2\nf 3 4 8 7\nf 1 3 7 5\nf 2 6 8 4\n";
    return text.str();
}

std::filesystem::path written(const std::filesystem::path& file, const std::string& text) {
    const auto done = engine::write_whole_file(file, text);
    if (!done) FAIL(engine::to_text(done.error()));
    return file;
}

model::Project project_with_scan(const std::string& file) {
    model::Project project;
    model::ScannedObstacle scan{.file = file, .unit = engine::LengthUnit::metre};
    project.room = {{.name = "van", .shape = scan}};
    return project;
}

}  // namespace tests

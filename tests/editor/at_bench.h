// A small project in a file, and the desk at the bench.
#pragma once

#include "editor/commands.h"
#include "editor/desk_files.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace tests {

inline std::string text_in_file(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

inline void open_at_bench(HeadlessUi& ui, const std::filesystem::path& folder) {
    start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder / "box.json"));
    editor::run_command(ui.desk, "make.bench");
    ui.settle();
}

}  // namespace tests

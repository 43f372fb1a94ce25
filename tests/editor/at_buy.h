// Two suppliers with their price lists in a folder, and the desk at Buy.
#pragma once

#include "editor/buy_run.h"
#include "editor/commands.h"
#include "editor/desk_files.h"
#include "engine/files/whole_file.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <string>

namespace tests {

inline void write(const std::filesystem::path& file, const std::string& text) {
    const auto written = engine::write_whole_file(file, text);
    REQUIRE(written);
}

inline std::string text_of(const std::filesystem::path& file) {
    const auto text = engine::read_whole_file(file);
    if (!text) FAIL(engine::to_text(text.error()));
    return *text;
}

// What the bars of a box cost at a yard that sells one length alone.
inline std::string yard_list(const model::Stock& stock, const std::string& price) {
    return "what,size,price\ncurrency,,crowns\n" + stock.section + " " + stock.alloy + ",20 ft," +
           price + "\n";
}

// A box in a file, with two suppliers beside it; the desk at Buy.
inline void open_with_suppliers(HeadlessUi& ui, const std::filesystem::path& folder) {
    start_box(ui.desk);
    const auto& stock = editor::project_of(ui.desk).stock[0];
    write(folder / "yard.csv", yard_list(stock, "30"));
    write(folder / "dear.csv", yard_list(stock, "60"));
    for (const auto* name : {"yard", "dear"}) {
        const model::Supplier supplier{.name = name, .prices = std::string(name) + ".csv"};
        REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutSupplier{supplier, {}})));
    }
    REQUIRE(editor::save_to(ui.desk, folder / "box.json"));
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    editor::buy_facts_now(ui.desk);
    ui.settle();
}

}  // namespace tests

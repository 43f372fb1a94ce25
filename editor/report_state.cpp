#include "editor/report_state.h"

#include "editor/dimension_values.h"

#include <nlohmann/json.hpp>

#include <array>
#include <cmath>

namespace editor {
namespace {

using nlohmann::json;

constexpr std::array<const char*, 34> dialog_names{
    "",         "files",       "starter",     "dimension", "title",  "unsaved",
    "trouble",  "export",      "panel",       "vents",     "brace",  "leaning",
    "obstacle", "well survey", "wall survey", "opening",   "scan",   "step over",
    "place",    "lean",        "split",       "mirror",    "repeat", "copy",
    "take out", "recovery",    "changed",     "find",      "member", "plane",
    "bay",      "supplier",    "trade words", "writing"};
static_assert(dialog_names.size() == std::variant_size_v<Dialog>);

json dimensions_of(const Derived& now) {
    json all = json::object();
    for (const auto& dimension : now.project->dimensions) {
        const auto value = value_of(now, dimension.name);
        all[dimension.name] = value ? quantity_text(*value, now.project->shown) : "";
    }
    return all;
}

json items_of(const ItemMap& items) {
    json all = json::object();
    for (const auto& [name, item] : items) {
        if (!item.visible || !item.enabled) continue;
        all[name] = {std::lround(item.middle_x()), std::lround(item.middle_y()), item.value};
    }
    return all;
}

json chosen_in(const Desk& desk) {
    json all = json::array();
    for (const auto& piece : desk.ui.selection.pieces) all.push_back(piece.member);
    return all;
}

std::string_view sheet_name(const UiState& ui) {
    if (ui.place == Place::prove) return name_of(ui.prove.sheet);
    return ui.place == Place::make ? name_of(ui.make.table) : "";
}

// Rounded, so that the line stays the same while nothing is to be seen.
double rounded(double value) { return std::round(value * 1000.0) / 1000.0; }

}  // namespace

std::string state_line(Desk& desk, const ItemMap& items, bool wants_text) {
    const Derived& now = derived(desk);
    const auto& ui = desk.ui;
    json state;
    state["title"] = title_of(desk);
    state["file"] = desk.file.string();
    state["saved"] = desk.history.is_saved();
    state["place"] = row_of(ui.place).name;
    state["sheet"] = sheet_name(ui);
    state["dialog"] = dialog_names.at(ui.dialog.index());
    state["dimensions"] = dimensions_of(now);
    state["pieces"] = now.summary.pieces;
    state["fasteners"] = now.summary.fasteners;
    state["open"] = now.summary.open();
    state["chosen"] = chosen_in(desk);
    state["notice"] = ui.notice ? ui.notice->text : "";
    state["view"] = {{"turn", rounded(ui.view.camera.turn)},
                     {"tilt", rounded(ui.view.camera.tilt)},
                     {"distance", rounded(ui.view.camera.distance)}};
    state["text_input"] = wants_text;
    state["items"] = items_of(items);
    // A name may hold any bytes; what is no UTF-8 must not end the program.
    return state.dump(-1, ' ', false, json::error_handler_t::replace);
}

}  // namespace editor

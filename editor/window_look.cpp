#include "editor/window_look.h"

#include "editor/state_folder.h"
#include "engine/files/json_text.h"
#include "engine/files/whole_file.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace editor {
namespace {

using nlohmann::json;

std::filesystem::path file_in(const std::filesystem::path& state_folder) {
    return state_folder / "window.json";
}

}  // namespace

WindowLook read_window_look(const std::filesystem::path& state_folder) {
    WindowLook look;
    if (state_folder.empty()) return look;
    const auto text = engine::read_whole_file(file_in(state_folder), 1U << 16U);
    const auto tree = text ? engine::read_json(*text) : engine::Result<json>(text.error());
    if (!tree || !tree->is_object()) return look;
    const auto theme = tree->find("theme");
    if (theme != tree->end() && *theme == "dark") look.theme = Theme::dark;
    const auto scale = tree->find("text_scale");
    if (scale != tree->end() && scale->is_number())
        look.text_scale = std::clamp(scale->get<float>(), least_text_scale, most_text_scale);
    const auto dismissed = tree->find("has_dismissed_steps");
    look.has_dismissed_steps = dismissed != tree->end() && *dismissed == true;
    const auto folded = tree->find("folded");
    for (std::size_t i = 0; i < look.folded.size(); ++i) {
        const bool is_told = folded != tree->end() && folded->is_array() && i < folded->size();
        look.folded[i] = is_told && folded->at(i) == true;
    }
    return look;
}

void write_window_look(const WindowLook& look, const std::filesystem::path& state_folder) {
    if (state_folder.empty() || !is_made(state_folder)) return;
    const json tree{{"theme", look.theme == Theme::dark ? "dark" : "light"},
                    {"text_scale", look.text_scale},
                    {"has_dismissed_steps", look.has_dismissed_steps},
                    {"folded", look.folded}};
    static_cast<void>(engine::write_whole_file(file_in(state_folder), tree.dump(2) + "\n"));
}

}  // namespace editor

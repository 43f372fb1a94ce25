#include "editor/places/start_card.h"

#include "editor/kit/widgets.h"

#include <algorithm>
#include <span>
#include <string>

namespace editor {
namespace {

// "tool_cabinet.json" is "tool cabinet".
std::string words_of(const std::filesystem::path& file) {
    std::string words = file.stem().string();
    std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

// Links to files behind a word, as many in a line as have room.
void draw_files(const char* heading,
                const char* kind,
                std::span<const std::filesystem::path> files,
                StartChoice& choice) {
    if (files.empty()) return;
    draw_rule();
    draw_text(heading, colour::quiet);
    const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
    bool is_first = true;
    for (const auto& file : files) {
        const IdScope id(file.c_str());  // files of two folders may have one name
        const std::string words = words_of(file);
        const float width = ImGui::CalcTextSize(words.c_str()).x + scaled(24);
        if (!is_first && ImGui::GetItemRectMax().x + width < right) ImGui::SameLine(0, scaled(2));
        is_first = false;
        if (draw_button(kind + (" " + words), {.text = words, .weight = Weight::link}))
            choice.file = file;
        draw_hint(file.string());
    }
}

void draw_frames(StartChoice& choice) {
    if (draw_button("Box frame", {.text = "New box frame\xE2\x80\xA6", .weight = Weight::main})) {
        choice.command = "frame.box";
    }
    ImGui::SameLine();
    if (draw_button("Stepped frame", {.text = "New stepped frame\xE2\x80\xA6"})) {
        choice.command = "frame.stepped";
    }
    ImGui::SameLine();
    if (draw_button("Planes alone", {.text = "From nothing\xE2\x80\xA6"})) {
        choice.command = "frame.planes";
    }
    draw_hint("The outer planes of a cabinet, to put bars onto in the view");
    ImGui::SameLine();
    if (draw_button("Open", {.text = "Open\xE2\x80\xA6", .weight = Weight::link})) {
        choice.command = "project.open";
    }
}

}  // namespace

StartChoice draw_start_card(const Area& view,
                            const std::vector<std::filesystem::path>& recent,
                            const std::vector<std::filesystem::path>& samples) {
    constexpr std::size_t most_shown = 4;
    const float width = std::min(scaled(560), view.width - scaled(20));
    const float height = std::min(
        scaled(190.0F + (samples.empty() ? 0.0F : 114.0F) + (recent.empty() ? 0.0F : 84.0F)),
        view.height - scaled(20));
    const Area area{view.x + (view.width - width) / 2, view.y + (view.height - height) * 0.42F,
                    width, height};
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(24, 20));
    const StyleScope outline(ImGuiStyleVar_WindowBorderSize, scaled(1));
    const PanelScope panel("Start", area, 0, Layer::floating);
    StartChoice choice;
    draw_text("Begin with a frame", Type::title);
    draw_wrapped(
        "Give its outside sizes and the bar it is made of. Every size can be changed "
        "afterwards, and everything follows.",
        Type::text, colour::quiet);
    ImGui::Dummy(scaled(1, 4));
    draw_frames(choice);
    const auto shown = std::min(recent.size(), most_shown);
    draw_files("Or go on with what was open before:", "recent", std::span(recent).first(shown),
               choice);
    draw_files("Or look at a sample of an invented van:", "sample", samples, choice);
    draw_text("A project file can also be dropped on this window.", Type::small, colour::quiet);
    return choice;
}

}  // namespace editor

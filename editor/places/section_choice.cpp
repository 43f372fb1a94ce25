#include "editor/places/section_choice.h"

#include "editor/by_name.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {
namespace {

const char* heading_of(model::SectionForm form) {
    switch (form) {
        case model::SectionForm::angle:
            return "Angle";
        case model::SectionForm::flat:
            return "Flat bar";
        case model::SectionForm::channel:
            return "Channel";
        case model::SectionForm::tube:
            return "Tube";
    }
    return "";
}

// Every word that was typed occurs: "angle 3/4" finds "angle 3/4 x 3/4 x 1/8".
bool matches(std::string_view id, std::string_view filter) {
    while (!filter.empty()) {
        const auto space = filter.find(' ');
        const auto word = filter.substr(0, space);
        if (id.find(word) == std::string_view::npos) return false;
        if (space == std::string_view::npos) break;
        filter.remove_prefix(space + 1);
    }
    return true;
}

// What Enter takes: the section that was typed in full, else the first that holds the text as it
// stands, else the first that holds its words.
std::optional<std::string> best_match(const model::Catalogue& catalogue, std::string_view filter) {
    if (model::find_section(catalogue, filter) != nullptr) return std::string(filter);
    std::optional<std::string> by_words;
    for (const auto& section : catalogue.sections) {
        if (section.id.find(filter) != std::string::npos) return section.id;
        if (!by_words && matches(section.id, filter)) by_words = section.id;
    }
    return by_words;
}

std::optional<std::string> draw_list(const std::string& current,
                                     const model::Catalogue& catalogue,
                                     const std::string& filter,
                                     float room) {
    std::optional<std::string> chosen;
    const ChildScope list("sections", {scaled(300), std::min(scaled(330), room)});
    std::optional<model::SectionForm> form;
    for (const auto& section : catalogue.sections) {
        if (!matches(section.id, filter)) continue;
        if (form != section.form) draw_text(heading_of(section.form), Type::small, colour::quiet);
        form = section.form;
        const bool is_current = section.id == current;
        if (draw_row(section.id, section.id, is_current).clicked) chosen = section.id;
        if (is_current && ImGui::IsWindowAppearing()) ImGui::SetScrollHereY();
    }
    if (!form) draw_text("No section in the catalogue is like that", colour::quiet);
    return chosen;
}

}  // namespace

std::optional<std::string> draw_section_choice(std::string_view name,
                                               const std::string& current,
                                               const model::Catalogue& catalogue,
                                               std::string& filter,
                                               float width) {
    const std::string popup = std::string(name) + " list";
    const std::string text = current.empty() ? "choose a section" : current;
    if (draw_button(name, {.text = text + "  \xE2\x96\xBE", .width = width})) {
        filter.clear();
        ImGui::OpenPopup(popup.c_str());
    }
    const float room = popup_room() - ImGui::GetFrameHeightWithSpacing();
    const PopupScope open(popup.c_str());
    if (!open) return std::nullopt;
    const auto field = draw_field("Filter", filter,
                                  {.hint = "type to narrow the list: angle 3/4",
                                   .width = scaled(300),
                                   .wants_focus = ImGui::IsWindowAppearing()});
    auto chosen = draw_list(current, catalogue, filter, room);
    if (field.entered) chosen = best_match(catalogue, filter);
    if (chosen || is_pressed(key::escape)) ImGui::CloseCurrentPopup();
    return chosen;
}

StockChoice stock_of_section(const model::Project& project,
                             const model::Catalogue& catalogue,
                             const std::string& section,
                             std::string_view like,
                             const std::vector<model::BarOffer>& bars) {
    for (const auto& stock : project.stock) {
        if (stock.section == section) return {stock.name, std::nullopt};
    }
    model::Stock stock{.name = section, .section = section, .bars = bars};
    for (int n = 2; by_name(project.stock, stock.name) != nullptr; ++n) {
        stock.name = section + " (" + std::to_string(n) + ")";
    }
    if (const auto* row = model::find_section(catalogue, section)) stock.alloy = row->usual_alloy;
    if (const auto* other = by_name(project.stock, like)) {
        for (const auto& bar : other->bars) stock.bars.push_back({.length = bar.length});
    }
    return {stock.name, model::PutStock{stock, {}}};
}

Change section_change(const model::Project& project,
                      const model::Catalogue& catalogue,
                      const std::string& frame,
                      const std::vector<std::string>& members,
                      const std::string& section) {
    std::string like;
    if (const auto* of = by_name(project.frames, frame); of != nullptr && !members.empty()) {
        if (const auto* member = by_name(of->members, members.front())) like = member->stock;
    }
    auto choice = stock_of_section(project, catalogue, section, like);
    Change change;
    if (choice.edit) change.edits.push_back(*std::move(choice.edit));
    change.edits.emplace_back(model::SetMemberStock{frame, members, choice.name});
    return change;
}

}  // namespace editor

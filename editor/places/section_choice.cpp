#include "editor/places/section_choice.h"

#include "editor/by_name.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/node_bars.h"
#include "editor/places/section_match.h"
#include "editor/turned_members.h"

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

// Up and down move the mark, from where the present section is.
void move_mark(SectionTyping& typing, int last) {
    const int by = (is_pressed(key::down, true) ? 1 : 0) - (is_pressed(key::up, true) ? 1 : 0);
    typing.marked = std::clamp(typing.marked + by, 0, std::max(last, 0));
    typing.shows_mark = typing.shows_mark || by != 0;
}

std::optional<std::string> draw_list(const std::string& current,
                                     const std::vector<const model::Section*>& sections,
                                     SectionTyping& typing,
                                     float room) {
    std::optional<std::string> chosen;
    const ChildScope list("sections", {scaled(300), std::min(scaled(330), room)});
    if (typing.shows_first) ImGui::SetScrollY(0.0F);
    std::optional<model::SectionForm> form;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const auto& section = *sections[i];
        if (form != section.form) draw_text(heading_of(section.form), Type::small, colour::quiet);
        form = section.form;
        const bool is_marked = static_cast<int>(i) == typing.marked;
        const std::string text = section.id + (section.id == current ? "  \xC2\xB7 now" : "");
        if (draw_row(section.id, text, is_marked).clicked) chosen = section.id;
        if (is_marked && typing.shows_mark) ImGui::SetScrollHereY();
    }
    typing.shows_mark = false;
    typing.shows_first = false;
    if (!form) draw_text("No section in the catalogue is like that", colour::quiet);
    return chosen;
}

void open_list(SectionTyping& typing,
               const std::string& current,
               const model::Catalogue& catalogue,
               const std::string& popup) {
    typing = {.shows_mark = true};
    for (std::size_t i = 0; i < catalogue.sections.size(); ++i) {
        if (catalogue.sections[i].id == current) typing.marked = static_cast<int>(i);
    }
    ImGui::OpenPopup(popup.c_str());
}

// Calls visit with each of the frame's braces and leaning members that are named.
template <class Visit>
void visit_named(const model::Frame& frame, const std::vector<std::string>& names, Visit visit) {
    for (const auto& name : names) {
        if (const auto* brace = by_name(frame.diagonals, name)) visit(*brace);
        if (const auto* leaning = by_name(frame.leaning, name)) visit(*leaning);
    }
}

// What those members (all when nothing is named) or braces and leaning members are made of, each
// stock once.
std::vector<std::string> stocks_of(const model::Frame& frame,
                                   const std::vector<std::string>& members,
                                   const std::vector<std::string>& node_bars) {
    std::vector<std::string> stocks;
    const auto add = [&](const auto& bar) {
        if (std::find(stocks.begin(), stocks.end(), bar.stock) == stocks.end())
            stocks.push_back(bar.stock);
    };
    if (members.empty() && !node_bars.empty()) {
        visit_named(frame, node_bars, add);
        return stocks;
    }
    for (const auto& member : frame.members) {
        const bool is_named = members.empty() || std::find(members.begin(), members.end(),
                                                           member.name) != members.end();
        if (is_named) add(member);
    }
    return stocks;
}

void append_node_bars(Change& change,
                      const model::Frame& frame,
                      const std::vector<std::string>& names,
                      const std::string& stock) {
    visit_named(frame, names, [&]<class Bar>(const Bar& bar) {
        auto changed = bar;
        changed.stock = stock;
        change.edits.push_back(NodeBarKind<Bar>::put(frame.name, std::move(changed), {}));
        change.label = "Make " + std::string(NodeBarKind<Bar>::word) + " " + bar.name +
                       (names.size() > 1 ? " and others" : "") + " of " + stock;
    });
}

bool is_of_another_form(const model::Project& project,
                        const model::Catalogue& catalogue,
                        const std::vector<std::string>& stocks,
                        const std::string& section) {
    const auto* now = model::find_section(catalogue, section);
    return std::any_of(stocks.begin(), stocks.end(), [&](const std::string& name) {
        const auto* stock = by_name(project.stock, name);
        const auto* before =
            stock == nullptr ? nullptr : model::find_section(catalogue, stock->section);
        return now != nullptr && (before == nullptr || before->form != now->form);
    });
}

// What stood well as an angle may stand edge-on as a flat.
void append_best_turns(Change& change,
                       const Derived& now,
                       const model::Catalogue& catalogue,
                       const std::string& frame,
                       const std::vector<std::string>& members) {
    const auto changed = project_after(*now.project, change);
    if (!changed) return;  // submit says why
    for (auto& edit : best_turns(*changed, catalogue, *now.scans, frame, members)) {
        change.edits.push_back(std::move(edit));
    }
}

}  // namespace

std::optional<std::string> draw_section_choice(std::string_view name,
                                               const std::string& current,
                                               const model::Catalogue& catalogue,
                                               SectionTyping& typing,
                                               float width) {
    const std::string popup = std::string(name) + " list";
    if (draw_button(name,
                    {.text = text_with_arrow(current.empty() ? "choose a section" : current, width),
                     .width = width})) {
        open_list(typing, current, catalogue, popup);
    }
    draw_hint(current);
    const float room = popup_room() - ImGui::GetFrameHeightWithSpacing();
    const PopupScope open(popup.c_str());
    if (!open) return std::nullopt;
    const auto field = draw_field("Filter", typing.text,
                                  {.hint = "type to narrow the list: angle 3/4",
                                   .width = scaled(300),
                                   .wants_focus = ImGui::IsWindowAppearing()});
    if (field.changed) {
        typing.marked = 0;
        typing.shows_first = true;
    }
    const auto sections = matching_sections(catalogue, typing.text);
    move_mark(typing, static_cast<int>(sections.size()) - 1);
    auto chosen = draw_list(current, sections, typing, room);
    if (field.entered && !sections.empty()) {
        chosen = sections[static_cast<std::size_t>(typing.marked)]->id;
    }
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

Change section_change(const Derived& now,
                      const model::Catalogue& catalogue,
                      const std::string& frame,
                      const std::vector<std::string>& members,
                      const std::string& section,
                      const std::vector<std::string>& node_bars) {
    Change change;
    const auto& project = *now.project;
    const auto* found = by_name(project.frames, frame);
    if (found == nullptr) return change;
    const auto stocks = stocks_of(*found, members, node_bars);
    auto choice = stock_of_section(project, catalogue, section,
                                   stocks.empty() ? std::string_view() : stocks.front());
    if (choice.edit) change.edits.push_back(*std::move(choice.edit));
    append_node_bars(change, *found, node_bars, choice.name);
    if (members.empty() && !node_bars.empty()) return change;
    const model::Edit put = model::SetMemberStock{frame, members, choice.name};
    change.edits.push_back(put);
    change.label = model::label_of(put);
    if (is_of_another_form(project, catalogue, stocks, section)) {
        append_best_turns(change, now, catalogue, frame, members);
    }
    return change;
}

}  // namespace editor

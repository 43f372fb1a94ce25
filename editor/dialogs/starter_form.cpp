#include "editor/dialogs/starter_form.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/buy.h"
#include "editor/places/section_choice.h"

#include <algorithm>
#include <cstdint>

namespace editor {
namespace {

std::string free_frame_name(const model::Project& project, const std::string& wanted) {
    std::string name = wanted;
    for (int n = 2; by_name(project.frames, name) != nullptr; ++n)
        name = wanted + " " + std::to_string(n);
    return name;
}

// A hand's breadth to the right of everything, on a whole inch or centimetre.
engine::Length place_beside(const Derived& derived, bool metric) {
    const auto& resolved = derived.resolved;
    if (resolved.pieces.empty()) return {};
    model::Nm right = 0;
    for (const auto& piece : resolved.pieces) {
        const auto& frame = resolved.frames[piece.frame];
        right = std::max(right, model::to_room(frame, piece.extents.lo)[0]);
        right = std::max(right, model::to_room(frame, piece.extents.hi)[0]);
    }
    const auto step =
        metric ? 10 * engine::Length::nm_per_mm : std::int64_t{engine::Length::nm_per_inch};
    const auto hand = 100 * engine::Length::nm_per_mm;
    return engine::Length::from_nm((right + hand) / step * step);
}

const char* usual_section(bool metric) {
    return metric ? "angle 30 x 30 x 3 mm" : "angle 1 x 1 x 1/8";
}

std::string first_section(const Derived& derived, const model::Catalogue& tables, bool metric) {
    if (!derived.project->stock.empty()) return derived.project->stock.front().section;
    if (model::find_section(tables, usual_section(metric)) != nullptr) return usual_section(metric);
    return tables.sections.empty() ? std::string() : tables.sections.front().id;
}

void fill_sizes(StarterForm& form, bool metric) {
    form.width = metric ? "600 mm" : "24 in";
    form.bars = metric ? "6 m" : "20 ft";
    form.depth = metric ? "400 mm" : "16 in";
    form.height = metric ? "500 mm" : "20 in";
    form.well_height = metric ? "270 mm" : "10 3/4 in";
    form.well_depth = metric ? "210 mm" : "8 1/4 in";
    if (form.kind == StarterKind::box) {
        form.shelf_levels = {metric ? "230 mm" : "9 in"};
    } else {
        form.width = metric ? "1200 mm" : "48 in";
        form.depth = metric ? "450 mm" : "18 in";
        form.height = metric ? "860 mm" : "34 in";
    }
}

// One line of the form, with what its formula gives or why it cannot be read beside it.
bool draw_size(const char* name, std::string& text, const Derived& derived, bool wants_focus) {
    ImGui::AlignTextToFramePadding();
    draw_text(name);
    ImGui::SameLine(scaled(150));
    draw_field(name, text, {.width = scaled(150), .wants_focus = wants_focus});
    const auto value = tried_length(derived, text);
    ImGui::SameLine();
    if (value) {
        draw_text("= " + quantity_text(*value, derived.project->shown), Type::small, colour::quiet);
    } else {
        draw_text(engine::to_text(value.error()), Type::small, colour::red);
    }
    return value.has_value();
}

bool draw_sizes(const char* name,
                const char* one,
                std::vector<std::string>& texts,
                const Derived& derived) {
    bool all_good = true;
    std::optional<std::size_t> gone;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const std::string label = std::string(one) + " " + std::to_string(i + 1);
        all_good = draw_size(label.c_str(), texts[i], derived, false) && all_good;
        ImGui::SameLine();
        if (draw_button("Remove " + label, {.text = "remove", .weight = Weight::link})) gone = i;
    }
    if (gone) texts.erase(texts.begin() + static_cast<std::ptrdiff_t>(*gone));
    if (draw_button(std::string("Add ") + one,
                    {.text = std::string("+ ") + name, .weight = Weight::link})) {
        texts.push_back(texts.empty() ? "" : texts.back());
    }
    return all_good;
}

bool is_new_stock(const StarterForm& form, const model::Project& project) {
    return std::none_of(project.stock.begin(), project.stock.end(),
                        [&](const model::Stock& stock) { return stock.section == form.section; });
}

bool draw_fields(StarterForm& form, const Derived& derived, const model::Catalogue& tables) {
    ImGui::AlignTextToFramePadding();
    draw_text("name");
    ImGui::SameLine(scaled(150));
    draw_field("name", form.frame, {.width = scaled(260)});
    ImGui::AlignTextToFramePadding();
    draw_text("made of");
    ImGui::SameLine(scaled(150));
    const auto section =
        draw_section_choice("made of", form.section, tables, form.section_filter, scaled(260));
    if (section) form.section = *section;
    if (is_new_stock(form, *derived.project)) {
        ImGui::AlignTextToFramePadding();
        draw_text("sold in bars of");
        ImGui::SameLine(scaled(150));
        draw_field("bars", form.bars, {.hint = "16 ft; 20 ft", .width = scaled(260)});
    }
    bool good = draw_size("width", form.width, derived, form.is_fresh);
    good = draw_size("depth", form.depth, derived, false) && good;
    good = draw_size("height", form.height, derived, false) && good;
    if (form.kind == StarterKind::stepped) {
        good = draw_size("well height", form.well_height, derived, false) && good;
        good = draw_size("well depth", form.well_depth, derived, false) && good;
    }
    good = draw_sizes("shelf level", "shelf", form.shelf_levels, derived) && good;
    good = draw_sizes("divider", "divider", form.dividers, derived) && good;
    if (!derived.project->frames.empty()) {
        good = draw_size("from the left", form.beside, derived, false) && good;
    }
    return good;
}

const char* help_of(StarterKind kind) {
    if (kind == StarterKind::box) {
        return "Four posts, rails round bottom, top and each shelf. Sizes are outside sizes; shelf "
               "levels are the height of the shelf's upper face; dividers are counted from the "
               "left.";
    }
    return "Stands over a wheel well at its back: the lower back part, as high and as deep as the "
           "well, is left out and its edge is framed. Sizes are outside sizes; shelf levels lie "
           "above the well.";
}

// Tries the whole change before it is asked for, so that the form stays open on a refusal.
std::optional<Change> tried_change(StarterForm& form,
                                   const Derived& derived,
                                   const model::Catalogue& tables) {
    const auto tried = starter_change(form, derived, tables);
    if (!tried) {
        form.trouble = engine::to_text(tried.error());
        return std::nullopt;
    }
    const Change& change = *tried;
    model::Project trial = *derived.project;
    for (const auto& edit : change.edits) {
        auto applied = model::apply(std::move(trial), edit);
        if (!applied) {
            form.trouble = engine::to_text(applied.error());
            return std::nullopt;
        }
        trial = std::move(applied).value();
    }
    return change;
}

}  // namespace

StarterForm starter_form(StarterKind kind, const Derived& derived, const model::Catalogue& tables) {
    const bool metric = is_metric(derived.project->shown);
    StarterForm form{.kind = kind};
    form.frame = free_frame_name(*derived.project, kind == StarterKind::box ? "box" : "counter");
    form.section = first_section(derived, tables, metric);
    form.beside = engine::exact_text(place_beside(derived, metric), derived.project->shown);
    fill_sizes(form, metric);
    return form;
}

engine::Result<Change> starter_change(const StarterForm& form,
                                      const Derived& derived,
                                      const model::Catalogue& tables) {
    const auto bars = read_offers(derived, {}, form.bars);
    if (!bars) return bars.error();
    auto stock = stock_of_section(*derived.project, tables, form.section, {}, *bars);
    Change change;
    if (stock.edit) change.edits.push_back(*std::move(stock.edit));
    const model::Place origin{form.beside.empty() ? "0" : form.beside, "0", "0"};
    if (form.kind == StarterKind::box) {
        change.edits.emplace_back(model::StartBoxFrame{form.frame, stock.name, form.width,
                                                       form.depth, form.height, form.shelf_levels,
                                                       form.dividers, origin});
    } else {
        change.edits.emplace_back(model::StartSteppedFrame{
            form.frame, stock.name, form.width, form.depth, form.height, form.well_height,
            form.well_depth, form.shelf_levels, form.dividers, origin});
    }
    return change;
}

StarterOutcome draw_starter_form(StarterForm& form,
                                 const Derived& derived,
                                 const model::Catalogue& tables) {
    StarterOutcome outcome;
    const bool is_box = form.kind == StarterKind::box;
    const DialogScope dialog("Starter", is_box ? "New box frame" : "New stepped frame",
                             scaled(620));
    if (!dialog) return outcome;
    draw_wrapped(help_of(form.kind), Type::text, colour::quiet);
    ImGui::Dummy(scaled(1, 6));
    const bool is_choosing = ImGui::IsPopupOpen("made of list");  // Enter belongs to the list
    const bool good = draw_fields(form, derived, tables);
    if (!form.trouble.empty()) draw_wrapped(form.trouble, Type::text, colour::red);
    ImGui::Dummy(scaled(1, 8));
    const bool can_make = good && !form.section.empty() && !form.frame.empty();
    const bool entered = is_pressed(key::enter) && !is_choosing;
    if (draw_button("Make the frame", {.weight = Weight::main, .enabled = can_make}) ||
        (entered && can_make)) {
        outcome.change = tried_change(form, derived, tables);
    }
    ImGui::SameLine();
    outcome.is_cancelled = draw_button("Cancel") || (is_pressed(key::escape) && !is_choosing);
    form.is_fresh = false;
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor

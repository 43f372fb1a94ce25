#include "editor/dialogs/starter_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/starter_sizes.h"
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

// What the youngest frame is made of.
const model::Stock* stock_in_use(const model::Project& project) {
    for (auto frame = project.frames.rbegin(); frame != project.frames.rend(); ++frame) {
        if (frame->members.empty()) continue;
        return by_name(project.stock, frame->members.front().stock);
    }
    return nullptr;
}

std::string first_section(const Derived& derived, const model::Catalogue& tables, bool metric) {
    if (const auto* stock = stock_in_use(*derived.project)) return stock->section;
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
    if (form.kind == StarterKind::planes) return;
    if (form.kind == StarterKind::box) {
        form.shelf_levels = {metric ? "230 mm" : "9 in"};
    } else {
        form.width = metric ? "1200 mm" : "48 in";
        form.depth = metric ? "450 mm" : "18 in";
        form.height = metric ? "860 mm" : "34 in";
    }
}

// One line of the form, with what its formula gives beside it, or why it will not do below it.
// What stands beside the field is drawn by `beside`.
template <class Beside>
bool draw_size(const std::string& name,
               std::string& text,
               StarterForm& form,
               const StarterSizes& sizes,
               const Derived& derived,
               Beside beside) {
    ImGui::AlignTextToFramePadding();
    draw_text(name);
    ImGui::SameLine(scaled(150));
    const bool wants_focus = form.focus == name;
    if (wants_focus) form.focus.clear();
    draw_field(name, text, {.width = scaled(150), .wants_focus = wants_focus});
    beside();
    const auto length = sizes.length(name);
    const auto trouble = sizes.trouble(name);
    if (length && !trouble) {
        ImGui::SameLine();
        const engine::Quantity value{engine::QuantityKind::length, *length, 0.0};
        draw_text("= " + quantity_text(value, derived.project->shown), Type::small, colour::quiet);
    }
    if (!trouble) return true;
    ImGui::Indent(scaled(150) - ImGui::GetStyle().WindowPadding.x);
    draw_wrapped(*trouble, Type::small, colour::red);
    log_item("trouble of " + name, *trouble);
    ImGui::Unindent(scaled(150) - ImGui::GetStyle().WindowPadding.x);
    return false;
}

bool draw_size(const std::string& name,
               std::string& text,
               StarterForm& form,
               const StarterSizes& sizes,
               const Derived& derived) {
    return draw_size(name, text, form, sizes, derived, [] {});
}

// Shelves or dividers; a new one begins where there is most room, ready to be typed over.
bool draw_sizes(const std::string& kind,
                const char* link,
                std::vector<std::string>& texts,
                StarterForm& form,
                const StarterSizes& sizes,
                const Derived& derived) {
    bool all_good = true;
    std::optional<std::size_t> gone;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const std::string label = kind + " " + std::to_string(i + 1);
        const auto draw_remove = [&] {
            ImGui::SameLine();
            if (draw_button("Remove " + label, {.text = "remove", .weight = Weight::link})) {
                gone = i;
            }
        };
        all_good = draw_size(label, texts[i], form, sizes, derived, draw_remove) && all_good;
    }
    if (gone) texts.erase(texts.begin() + static_cast<std::ptrdiff_t>(*gone));
    if (draw_button("Add " + kind, {.text = link, .weight = Weight::link})) {
        texts.push_back(kind == "shelf" ? sizes.shelf_between() : sizes.divider_between());
        form.focus = kind + " " + std::to_string(texts.size());
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
    const StarterForm as_it_stands = form;
    const StarterSizes sizes(as_it_stands, derived);
    bool good = draw_size("width", form.width, form, sizes, derived);
    good = draw_size("depth", form.depth, form, sizes, derived) && good;
    good = draw_size("height", form.height, form, sizes, derived) && good;
    if (form.kind == StarterKind::stepped) {
        good = draw_size("well height", form.well_height, form, sizes, derived) && good;
        good = draw_size("well depth", form.well_depth, form, sizes, derived) && good;
    }
    good = draw_sizes("shelf", "+ shelf level", form.shelf_levels, form, sizes, derived) && good;
    good = draw_sizes("divider", "+ divider", form.dividers, form, sizes, derived) && good;
    if (!derived.project->frames.empty()) {
        good = draw_size("from the left", form.beside, form, sizes, derived) && good;
    }
    return good;
}

const char* help_of(StarterKind kind) {
    if (kind == StarterKind::planes) {
        return "The six outer planes of a cabinet, with no bar on them yet: put bars onto the "
               "lines "
               "where they meet in the view. Shelves and dividers are planes too, and more can be "
               "set at any time.";
    }
    if (kind == StarterKind::box) {
        return "Four posts, rails round bottom, top and each shelf. Sizes are outside sizes; shelf "
               "levels are the height of the shelf's upper face; dividers are counted from the "
               "left. A size may name another: width/2.";
    }
    return "Stands over a wheel well at its back: the lower back part, as high and as deep as the "
           "well, is left out and its edge is framed. Sizes are outside sizes; shelf levels lie "
           "above the well.";
}

const char* usual_name(StarterKind kind) {
    switch (kind) {
        case StarterKind::box:
            return "box";
        case StarterKind::stepped:
            return "counter";
        case StarterKind::planes:
            return "cabinet";
    }
    return "frame";
}

const char* title_of(StarterKind kind) {
    switch (kind) {
        case StarterKind::box:
            return "New box frame";
        case StarterKind::stepped:
            return "New stepped frame";
        case StarterKind::planes:
            return "New frame of planes alone";
    }
    return "";
}

// As a box frame, without what is on its planes.
engine::Result<engine::Done> leave_planes_alone(Change& change,
                                                const model::Project& before,
                                                const std::string& name) {
    const auto started = project_after(before, change);
    if (!started) return started.error();
    const auto* frame = by_name(started->frames, name);
    if (frame == nullptr) return engine::Done{};
    auto bare = *frame;
    bare.members.clear();
    bare.bays.clear();
    change.edits.push_back(model::PutFrame{std::move(bare), {}});
    change.label = "Start frame " + name;
    return engine::Done{};
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
    form.frame = free_frame_name(*derived.project, usual_name(kind));
    form.section = first_section(derived, tables, metric);
    form.beside = engine::exact_text(place_beside(derived, metric), derived.project->shown);
    form.focus = "width";
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
    model::Project trial = *derived.project;
    if (stock.edit) {
        auto with_stock = model::apply(std::move(trial), *stock.edit);
        if (!with_stock) return with_stock.error();
        trial = std::move(with_stock).value();
        change.edits.push_back(*std::move(stock.edit));
    }
    change.edits.push_back(starter_edit(with_dimension_names(form, trial, stock.name), stock.name));
    if (form.kind != StarterKind::planes) return change;
    const auto bare = leave_planes_alone(change, *derived.project, form.frame);
    if (!bare) return bare.error();
    return change;
}

StarterOutcome draw_starter_form(StarterForm& form,
                                 const Derived& derived,
                                 const model::Catalogue& tables) {
    StarterOutcome outcome;
    const DialogScope dialog("Starter", title_of(form.kind), scaled(620));
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
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor

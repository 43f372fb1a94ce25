#include "editor/dialogs/vent_form.h"

#include "editor/dialogs/form_line.h"
#include "editor/dialogs/vent_present.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/panel_facts.h"
#include "editor/places/choice_button.h"
#include "model/resolve/resolve.h"

#include <algorithm>
#include <string>
#include <vector>

namespace editor {
namespace {

// "metal louvre: passes 75 %".
std::string cover_words(const model::VentCover& cover) {
    return cover.id + ": passes " + std::to_string(static_cast<int>(cover.free_area * 100 + 0.5)) +
           " %";
}

void choose_cover(const std::string& name, const model::Catalogue& tables, std::string& cover) {
    std::vector<ListEntry> entries;
    std::size_t chosen = tables.vent_covers.size();
    for (std::size_t i = 0; i < tables.vent_covers.size(); ++i) {
        entries.push_back({cover_words(tables.vent_covers[i])});
        if (tables.vent_covers[i].id == cover) chosen = i;
    }
    if (const auto clicked = draw_choice_button(name, "behind", entries, chosen)) {
        cover = tables.vent_covers[*clicked].id;
    }
    if (chosen < tables.vent_covers.size()) draw_hint(tables.vent_covers[chosen].source);
}

void draw_exhaust(VentForm& form, const model::Catalogue& catalogue) {
    auto& source = form.source;
    draw_text("What takes the air out", Type::strong);
    draw_radio_line<bool>("is", source.is_round, {{true, "a round hole"}, {false, "a rectangle"}});
    if (source.is_round) {
        draw_short_line("diameter", source.diameter, "4", form.is_fresh);
    } else {
        draw_short_line("wide", source.exhaust_width, "6");
        draw_short_beside("high", "high", source.exhaust_height, "4");
    }
    choose_cover("exhaust cover", catalogue, source.exhaust_cover);
}

void draw_intake(VentForm& form, const VentWords& words, const model::Catalogue& catalogue) {
    draw_text("Openings that let it in", Type::strong);
    choose_cover("intake cover", catalogue, form.source.intake_cover);
    draw_short_line("net area", form.source.ratio, "1");
    ImGui::SameLine();
    draw_text("times that of the exhaust; 1 or more is common practice", Type::small,
              colour::quiet);
    draw_short_line("openings", form.count, "2");
    draw_short_beside(std::string("each ") + words.other, words.each, form.height, "2");
    draw_radio_line<bool>("set", form.is_stacked, {{false, "side by side"}, {true, words.stacked}});
    draw_short_line(words.from[0], form.from[0], "in the middle");
    draw_short_beside(words.from[1], words.from[1], form.from[1], "in the middle");
    draw_short_line("gap between", form.gap, "1");
}

void draw_result(const VentAnswer& answer,
                 const VentForm& form,
                 const VentWords& words,
                 const engine::TapeStyle& shown) {
    if (answer.sizing) {
        const auto& sizing = *answer.sizing;
        const auto area = [&](double mm2) { return area_text(mm2, shown); };
        const std::string needed = "The exhaust lets out " + area(sizing.exhaust_net_mm2) +
                                   " net, so " + area(sizing.needed_net_mm2) +
                                   " net must come in: openings of " +
                                   area(sizing.needed_gross_mm2) + ".";
        const auto width =
            quantity_text({.kind = engine::QuantityKind::length, .length = sizing.width}, shown);
        const std::string each = "Each " + width + " " + words.along + " and " + form.height + " " +
                                 words.other + ": together they let in " +
                                 area(sizing.reached_net_mm2) + " net.";
        draw_wrapped(needed);
        log_item("needed", needed);
        draw_wrapped(each, Type::strong);
        log_item("each", each);
    }
    if (answer.trouble.empty()) return;
    draw_wrapped(answer.trouble, Type::text, answer.sizing ? colour::red : colour::amber);
    log_item("trouble", answer.trouble);
}

// Other cut-outs or a member may be in the way: what resolve then says of the panel's cut-outs.
std::optional<Change> tried_change(VentForm& form,
                                   const Derived& derived,
                                   const model::Catalogue& catalogue,
                                   const model::VentRow& row) {
    const model::PutVents edit{.frame = form.frame, .panel = form.panel, .row = row};
    form.trouble.clear();
    const auto trial = model::apply(*derived.project, edit);
    if (!trial) {
        form.trouble = engine::to_text(trial.error());
        return std::nullopt;
    }
    for (const auto& finding : model::resolve(*trial, catalogue).findings) {
        const bool is_of_opening =
            finding.code == "bad_cut_out" &&
            finding.what.find("\"" + edit.name + " ") != std::string::npos &&
            std::ranges::any_of(finding.concerns, [&](const auto& subject) {
                return subject.frame == form.frame && subject.name == form.panel;
            });
        if (!is_of_opening) continue;
        form.trouble = finding.what + "; move the openings or choose others";
        return std::nullopt;
    }
    return change_of(edit);
}

}  // namespace

VentForm vent_form(const Derived& derived, const std::string& frame, const std::string& panel) {
    const bool metric = is_metric(derived.project->shown);
    VentForm form{.frame = frame, .panel = panel};
    form.source.diameter = metric ? "100 mm" : "4 in";
    form.source.exhaust_cover = "open hole";
    form.source.intake_cover = "metal louvre";
    form.height = metric ? "50 mm" : "2 in";
    form.gap = metric ? "25 mm" : "1 in";
    take_openings(form, derived);
    return form;
}

VentOutcome draw_vent_form(VentForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue) {
    VentOutcome outcome;
    const std::string title = "Openings for air in " + form.panel;
    const DialogScope dialog("Vents", title.c_str(), scaled(620));
    if (!dialog) return outcome;
    const bool is_choosing =
        ImGui::IsPopupOpen("exhaust cover list") || ImGui::IsPopupOpen("intake cover list");
    draw_exhaust(form, catalogue);
    ImGui::Dummy(scaled(1, 2));
    const auto words = vent_words(form, derived);
    draw_intake(form, words, catalogue);
    draw_rule();
    const auto answer = vent_answer(form, derived, catalogue);
    draw_result(answer, form, words, derived.project->shown);
    if (ImGui::IsAnyItemActive()) form.trouble.clear();  // said of what stood there before
    if (!form.trouble.empty()) {
        draw_wrapped(form.trouble, Type::text, colour::red);
        log_item("refused", form.trouble);
    }
    draw_wrapped(
        "This sizes openings and nothing more. A vent for gas, batteries or a heater follows the "
        "instructions of its maker and the local code.",
        Type::small, colour::quiet);
    ImGui::Dummy(scaled(1, 6));
    const char* verb =
        !openings_now(form, derived).empty() ? "Replace the openings" : "Put the openings in";
    const bool can_put = answer.row.has_value();
    const bool is_clicked =
        draw_button("Put", {.text = verb, .weight = Weight::main, .enabled = can_put});
    log_item("verb", verb);
    if (is_clicked || (can_put && !is_choosing && is_pressed(key::enter))) {
        outcome.change = tried_change(form, derived, catalogue, *answer.row);
    }
    ImGui::SameLine();
    outcome.is_cancelled = draw_button("Cancel") || (!is_choosing && is_pressed(key::escape));
    form.is_fresh = false;
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor

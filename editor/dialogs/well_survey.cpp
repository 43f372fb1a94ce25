#include "editor/dialogs/well_survey.h"

#include "editor/dialogs/form_line.h"
#include "editor/dialogs/survey_parts.h"
#include "editor/dialogs/survey_picture.h"
#include "editor/dimension_values.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/obstacle_words.h"

#include <cmath>

namespace editor {
namespace {

// What is set once for a van.
void draw_place(CheckedFields& fields, WellSurvey& survey) {
    draw_radio_line<model::Sense>("stands at", survey.inside,
                                  {{model::Sense::plus, "the left wall: smaller X"},
                                   {model::Sense::minus, "the right wall: larger X"}});
    fields.draw_lengths({"that wall, X", "wall", survey.wall, "0"},
                        {"bulkhead, Y", "datum", survey.datum, "0"});
    fields.draw_length("floor, Z", "floor", survey.floor, "0");
}

void draw_rounding(CheckedFields& fields, WellSurvey& survey) {
    bool is_active = fields.draw_reading(
        'k', survey.rounding_is_gap ? "gap at the rounded edge" : "radius of the rounded edge",
        "rounding", survey.rounding, "0", true);
    if (is_active) survey.active = 'k';
    ImGui::Dummy(scaled(14, 1));
    ImGui::SameLine();
    draw_check("rounding is gap", survey.rounding_is_gap,
               "k is the gap to the metal below two straightedges");
    draw_hint(
        "Lay one straightedge on the top and one against the side. From where they cross, "
        "measure to the metal, in the middle between the two");
}

void draw_readings(CheckedFields& fields, WellSurvey& survey) {
    struct Reading {
        char letter;
        const char* word;
        const char* name;
        std::string* text;
        const char* hint;
        bool may_be_empty;
    };
    const Reading readings[] = {
        {'a', "bulkhead to its near end", "start", &survey.start, "", false},
        {'b', "its length", "length", &survey.length, "", false},
        {'c', "its far end to the rear", "behind", &survey.behind, "to check", true},
        {'d', "bulkhead to the rear", "room length", &survey.room_length, "to check", true},
        {'e', "its height", "height", &survey.height, "", false},
        {'f', "reach from the wall, at the floor", "reach", &survey.reach, "", false},
        {'g', "reach at the top", "top reach", &survey.top_reach, "as f: upright", true},
        {'h', "from there across", "across", &survey.across, "to check", true},
        {'i', "reach of what lies opposite", "opposite", &survey.opposite, "0: the wall", true},
        {'j', "wall to wall, at the floor", "room width", &survey.room_width, "to check", true}};
    for (const auto& it : readings) {
        if (fields.draw_reading(it.letter, it.word, it.name, *it.text, it.hint, it.may_be_empty)) {
            survey.active = it.letter;
        }
    }
    draw_rounding(fields, survey);
    if (fields.draw_reading('l', "radius of its upright edges", "corner", survey.corner, "0",
                            true)) {
        survey.active = 'l';
    }
}

model::Nm rounding_of(const WellSurvey& survey,
                      const model::WellTape& tape,
                      const Derived& derived) {
    if (survey.rounding_is_gap) return model::well_rounding(tape).value_or(0);
    return read_length(survey.rounding, derived).value_or(0);
}

std::optional<model::WheelWell> well_of(const WellSurvey& survey,
                                        const model::WellTape& tape,
                                        const Derived& derived) {
    return model::well_as_measured({.inside = survey.inside,
                                    .wall = read_length(survey.wall, derived).value_or(0),
                                    .datum = read_length(survey.datum, derived).value_or(0),
                                    .floor = read_length(survey.floor, derived).value_or(0),
                                    .rounding = rounding_of(survey, tape, derived),
                                    .corner = read_length(survey.corner, derived).value_or(0)},
                                   tape);
}

std::string or_nothing(const std::string& text) { return text.empty() ? "0" : text; }

// Inward to the tape's mark, so that no more is taken off its edge than was measured.
std::string rounding_text(const WellSurvey& survey,
                          const model::WellTape& tape,
                          const Derived& derived) {
    if (!survey.rounding_is_gap) return or_nothing(survey.rounding);
    const auto step = engine::tape_step(derived.project->shown).nm();
    const auto radius = engine::Length::from_nm(rounding_of(survey, tape, derived) / step * step);
    return formula_of({.kind = engine::QuantityKind::length, .length = radius},
                      derived.project->shown);
}

model::SurveyWheelWell edit_of(const WellSurvey& survey,
                               const model::WellTape& tape,
                               const Derived& derived) {
    const double lean = model::well_lean(tape).value_or(0.0);
    return {.obstacle = survey.name,
            .inside = survey.inside,
            .wall = or_nothing(survey.wall),
            .datum = or_nothing(survey.datum),
            .floor = or_nothing(survey.floor),
            .start = survey.start,
            .length = survey.length,
            .height = survey.height,
            .reach = survey.reach,
            .lean = lean > 0.0 ? formula_of({.kind = engine::QuantityKind::angle, .value = lean},
                                            derived.project->shown)
                               : "0",
            .rounding = rounding_text(survey, tape, derived),
            .corner = or_nothing(survey.corner),
            .note = note_of(model::well_closings(tape), derived.project->shown)};
}

void draw_result(WellSurvey& survey,
                 const model::WellTape& tape,
                 const Derived& derived,
                 const model::Catalogue& catalogue) {
    draw_closings(model::well_closings(tape), derived.project->shown);
    if (!model::well_lean(tape)) {
        const char* words =
            "its side leans out over the floor, or by more than 60 degrees: measure f and g again";
        draw_wrapped(words, Type::small, colour::red);
        log_item("lean trouble", words);
    }
    if (const auto well = well_of(survey, tape, derived)) {
        draw_measured(survey.trial, *well, derived, catalogue);
    }
}

}  // namespace

WellSurvey new_well_survey(const Derived& derived) {
    return {.name = free_obstacle_name(*derived.project, "wheel well")};
}

model::WellTape tape_of(const WellSurvey& survey, const Derived& derived) {
    const auto read = [&](const std::string& text) { return read_length(text, derived); };
    return {.start = read(survey.start),
            .length = read(survey.length),
            .behind = read(survey.behind),
            .room_length = read(survey.room_length),
            .height = read(survey.height),
            .reach = read(survey.reach),
            .top_reach = read(survey.top_reach),
            .across = read(survey.across),
            .opposite = read(survey.opposite),
            .room_width = read(survey.room_width),
            .rounding_gap = survey.rounding_is_gap ? read(survey.rounding) : std::nullopt};
}

FormOutcome draw_well_survey(WellSurvey& survey,
                             const Derived& derived,
                             const model::Catalogue& catalogue) {
    const DialogScope dialog("Well", "A wheel well by the tape", scaled(720),
                             DialogScope::Fields::scroll);
    if (!dialog) return {};
    CheckedFields fields(derived, &survey.asked);
    draw_form_line("name", survey.name, "left wheel well", survey.is_fresh);
    draw_place(fields, survey);
    constexpr float picture = 270.0F;
    draw_beside_picture(
        picture,
        [&] { draw_well_picture(picture, survey.active, survey.inside == model::Sense::minus); },
        [&] { draw_readings(fields, survey); });
    const auto tape = tape_of(survey, derived);
    draw_result(survey, tape, derived, catalogue);
    const bool can_put = !survey.name.empty() && model::well_lean(tape);
    return draw_survey_end(survey, can_put, fields.are_all_known(), derived,
                           [&] { return edit_of(survey, tape, derived); });
}

}  // namespace editor
